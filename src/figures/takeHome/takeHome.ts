/** An analysis to take home: as JSON, its rows as CSV, and scripts and a notebook that fit them again elsewhere. */
import { isDemonstration } from '../../evidence/demonstration.ts';
import type { Arm } from '../../evidence/schema.ts';
import { analyse } from '../../model/analyse.ts';
import type { Settings } from '../../model/settings.ts';
import { stateSettings } from '../settingsWords.ts';
import { writeForPython, writeForR } from './dialects.ts';
import { writeComment } from './literals.ts';
import { splitCells, writeNotebook } from './notebook.ts';
import { type FittedBandRows, fitBands, writeDesignTable } from './rows.ts';
import { gatherScriptData } from './scriptData.ts';

export interface TakeHomeFile {
  readonly name: string;
  /** Media type. */
  readonly type: string;
  readonly text: string;
}

/** What is done with the rows, in each language: the text of `steps.R` and of `steps.py`. */
export interface Steps {
  readonly r: string;
  readonly python: string;
}

export function packTakeHome(arms: readonly Arm[], settings: Settings, steps: Steps): readonly TakeHomeFile[] {
  const demonstration = isDemonstration(arms);
  const bands = fitBands(arms, settings);
  const data = gatherScriptData(bands, settings);
  const head = writeHead(bands, settings, demonstration);
  const comment = head.map(writeComment).join('\n');
  const python = writeForPython(data);
  const stem = demonstration ? 'demonstration-analysis' : 'analysis';
  const analysis = {
    ...(demonstration ? { demonstration: 'the studies behind these numbers are invented' } : {}),
    ...analyse(arms, settings),
  };
  return [
    { name: `${stem}.json`, type: 'application/json', text: `${JSON.stringify(analysis, null, 2)}\n` },
    { name: `${stem}-rows.csv`, type: 'text/csv', text: `${writeDesignTable(bands)}\n` },
    {
      name: `${stem}.R`,
      type: 'text/plain',
      text: `${comment}\n# Run: Rscript this-file.R   (needs base R alone)\n\n${writeForR(data)}\n${steps.r}`,
    },
    {
      name: `${stem}.py`,
      type: 'text/x-python',
      text: `${comment}\n# Run: python3 this-file.py   (needs numpy and scipy)\n${PRINTS_ALL}\n# %%\n${python}\n${steps.python}`,
    },
    {
      name: `${stem}.ipynb`,
      type: 'application/x-ipynb+json',
      text: writeNotebook([
        { isWords: true, text: `# ${head[0]}\n\n${head.slice(1).map(escapeMarkdown).join('\n\n')}` },
        { isWords: false, text: python.trim() },
        ...splitCells(steps.python),
      ]),
    },
  ];
}

/** A terminal that cannot show a letter gets its number: no output ends in an error. */
export const PRINTS_ALL = `import sys

sys.stdout.reconfigure(errors="backslashreplace")
`;

function writeHead(bands: readonly FittedBandRows[], settings: Settings, demonstration: boolean): readonly string[] {
  const covariates = bands.flatMap(({ name, source: { terms, basis } }) => {
    const names = terms.slice(basis.terms.length);
    return names.length > 0 ? [`Covariates, ${name} loads, after the other columns: ${names.join(', ')}.`] : [];
  });
  return [
    'Shy of Failure: the regression of the site, fitted again from its rows',
    ...(demonstration ? ['DEMONSTRATION: the studies behind these rows are invented.'] : []),
    'y is the effect, v its sampling variance; rows of one cohort in a study measured the same people. Studies and cohorts go by their number.',
    ...covariates,
    'What was chosen:',
    ...stateSettings(settings).map(([name, value]) => `${name}: ${value}`),
  ];
}

/** Words of a table are words in a notebook, whatever markup they look like. */
function escapeMarkdown(text: string): string {
  return text.replace(/[\s\p{C}\p{Z}]+/gu, ' ').replace(/[\\`*_{}[\]<>#|~&$]/gu, '\\$&');
}
