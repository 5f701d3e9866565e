/** An analysis to take home: as JSON, its rows as CSV, and scripts that fit them again elsewhere. */
import Papa from 'papaparse';
import { isDemonstration } from '../../evidence/demonstration.ts';
import type { Arm } from '../../evidence/schema.ts';
import { analyse } from '../../model/analyse.ts';
import type { Settings } from '../../model/settings.ts';
import { MISSING_SDS_WORDS } from '../settingsWords.ts';
import { writePythonScript } from './pythonScript.ts';
import { fitBands, listSiteNumbers, writeDesignTable } from './rows.ts';
import { writeRScript } from './rScript.ts';

export interface TakeHomeFile {
  readonly name: string;
  /** Media type. */
  readonly type: string;
  readonly text: string;
}

export function packTakeHome(arms: readonly Arm[], settings: Settings): readonly TakeHomeFile[] {
  const demonstration = isDemonstration(arms);
  const bands = fitBands(arms, settings);
  const rows = writeDesignTable(bands);
  const siteNumbers = Papa.unparse([...listSiteNumbers(bands, settings)], {
    newline: '\n',
    columns: ['band', 'quantity', 'value'],
  });
  const designs = bands.map(
    ({ name, source }) =>
      `Columns of the design, ${name} loads: ${source.terms.map((term, j) => `x${j + 1} ${term}`).join(', ')}.`,
  );
  const head = [
    'Shy of Failure: the regression of the site, fitted again from its rows.',
    ...(demonstration ? ['DEMONSTRATION: the studies behind these rows are invented.'] : []),
    'y is the effect, v its sampling variance; rows of one cohort in a study measured the same people.',
    ...(settings.missingSds === 'off' ? [] : [`Missing SDs: ${MISSING_SDS_WORDS[settings.missingSds]}; v has it.`]),
    ...designs,
  ];
  const content = { rows, siteNumbers, settings, head };
  const stem = demonstration ? 'demonstration-analysis' : 'analysis';
  const analysis = {
    ...(demonstration ? { demonstration: 'the studies behind these numbers are invented' } : {}),
    ...analyse(arms, settings),
  };
  return [
    { name: `${stem}.json`, type: 'application/json', text: `${JSON.stringify(analysis, null, 2)}\n` },
    { name: `${stem}-rows.csv`, type: 'text/csv', text: `${rows}\n` },
    { name: `${stem}.R`, type: 'text/plain', text: writeRScript(content) },
    { name: `${stem}.py`, type: 'text/x-python', text: writePythonScript(content) },
  ];
}
