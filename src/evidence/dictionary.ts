/** The data dictionary, for people (Markdown) and machines (Frictionless Data Package), from the schema. */
import Papa from 'papaparse';
import type { DescribedColumn } from './column.ts';
import { DESCRIBED_ARM_COLUMNS } from './columnMeanings.ts';
import { EXERCISE_COLUMNS } from './exercises.ts';
import { STUDY_COLUMNS } from './schema.ts';

type Columns = Readonly<Record<string, DescribedColumn<unknown>>>;

/** A column as a reader is told about it. */
export interface ColumnExplanation {
  readonly name: string;
  /** Which of the row's facts the column belongs to. */
  readonly group: string;
  readonly required: boolean;
  /** What a cell is, with its unit. */
  readonly cell: string;
  readonly meaning: string;
  readonly example: string;
}

/** What stands in each column, in the order of the table. */
export function explainColumns(columns: Columns = DESCRIBED_ARM_COLUMNS): readonly ColumnExplanation[] {
  return Object.entries(columns).map(([name, { group, required, expected, unit, description, example }]) => ({
    name,
    group,
    required,
    cell: `${expected}${unit ? ` (${unit})` : ''}`,
    meaning: description,
    example,
  }));
}

/** The columns of a table with their explanations, as a CSV file to stand beside an empty one. */
export function explainColumnsAsCsv(columns: Columns = DESCRIBED_ARM_COLUMNS): string {
  const rows = explainColumns(columns).map(({ name, group, required, cell, meaning, example }) => [
    name,
    group,
    required ? 'yes' : 'no',
    cell,
    meaning,
    example,
  ]);
  return `${Papa.unparse([['column', 'group', 'required', 'a cell is', 'meaning', 'example'], ...rows], { newline: '\n' })}\n`;
}

/** Text of `data/README.md`. */
export function writeDictionary(): string {
  return `${[
    '# The evidence tables',
    '',
    '> **The studies in `arms.csv` and `studies.csv` here are invented for demonstration.** No such studies exist; those in `published/` are real. Build the site from a table of your own (README.md of the project) to make it say something about the world.',
    '',
    'This page is written from the schema in `src/evidence/schema.ts` by `npm run dictionary`; do not edit it by hand. `datapackage.json` says the same of `arms.csv` and `studies.csv` for machines.',
    '',
    'Files are CSV (RFC 4180) in UTF-8 with a header row and a decimal point. A byte-order mark is accepted; semicolons and tabs are recognised as delimiters. Where a table of your own is opened or checked it may also be UTF-16, Windows-1252 or a spreadsheet (`.xlsx`, `.ods`), have decimal commas (asked about once) or usual words for columns (asked about). Columns may stand in any order; optional columns may be missing.',
    '',
    '## arms.csv',
    '',
    'One row is one measurement on one arm of one study.',
    '',
    ...listColumns(DESCRIBED_ARM_COLUMNS),
    '## studies.csv',
    '',
    'One row is one study, with what a reference list needs.',
    '',
    ...listColumns(STUDY_COLUMNS),
    '## exercises.csv',
    '',
    'One row is one exercise, with what the rules of safety need to know of it. Common practice, no source; not part of the evidence and not invented.',
    '',
    ...listColumns(EXERCISE_COLUMNS),
    '## repetitions.json, published.csv',
    '',
    'Published values with their sources and how each is known: repetitions possible at a load, and pooled results for comparison. Not invented.',
    '',
    '## published/',
    '',
    'Results of published trials in the same columns, read from abstracts: its `README.md` says how, what is missing and with which cautions. Not invented.',
    '',
    '## calibration.json',
    '',
    'How often the intervals hold a known truth in simulated tables, written by `npm run calibrate`.',
    '',
    '## plan-agreement.json',
    '',
    'How far what is foretold of planned studies is from simulated ones that are fitted in full, written by `npm run agreement`.',
    '',
    '## demonstration-truth.json',
    '',
    'The truth that the invented studies were drawn from, written by `npm run demo`; the site shows it beside the estimates of that table only.',
    '',
    '## checks.json',
    '',
    'How far the engine is from the values that it is checked against, and their sources, written by `tests/reference/checks.test.ts`.',
    '',
    '## example-week.csv, example-week-to-targets.csv',
    '',
    'An invented week of a rowing club, as the programme check reads it, and a second version that follows the targets.',
    '',
    ...GUIDE,
  ].join('\n')}\n`;
}

/** Content of `data/datapackage.json`. */
export function makePackage(): object {
  const resource = (name: string, title: string, columns: Columns, primaryKey: readonly string[]) => ({
    name,
    path: `${name}.csv`,
    title,
    profile: 'tabular-data-resource',
    format: 'csv',
    mediatype: 'text/csv',
    encoding: 'utf-8',
    schema: {
      fields: Object.entries(columns).map(([field, { description, unit, example, expected, field: schema }]) => ({
        name: field,
        description: `${description} A cell is ${expected}.${unit ? ` Unit: ${unit}.` : ''}`,
        example,
        ...schema,
      })),
      missingValues: [''],
      ...(primaryKey.length > 0 ? { primaryKey } : {}),
    },
  });
  return {
    profile: 'tabular-data-package',
    name: 'resistance-training-study-arms',
    title: 'Study arms of resistance training by proximity to failure (invented for demonstration)',
    description: 'Invented data: no such studies exist.',
    licenses: [{ name: 'MIT', title: 'MIT License' }],
    resources: [
      resource('arms', 'One measurement on one arm of one study a row', DESCRIBED_ARM_COLUMNS, []),
      resource('studies', 'One study a row', STUDY_COLUMNS, ['study']),
    ],
  };
}

function listColumns(columns: Columns): string[] {
  const explained = explainColumns(columns);
  const groups = [...new Set(explained.map(({ group }) => group))];
  return groups.flatMap((group) => [
    `### ${group}`,
    '',
    '| column | required | a cell is | meaning | example |',
    '| --- | --- | --- | --- | --- |',
    ...explained
      .filter((column) => column.group === group)
      .map(
        ({ name, required, cell, meaning, example }) =>
          `| \`${name}\` | ${required ? 'yes' : ''} | ${cell} | ${meaning} | ${example} |`,
      ),
    '',
  ]);
}

const GUIDE = [
  '## How to code an arm',
  '',
  'One row is one measurement of one arm. The page “Curating a study” of the site makes rows as you type and shows at once what follows from them; the empty table is `template.csv` there. Then `npm run check -- FILE`.',
  '',
  '### Failure and reserve',
  '',
  '- **Which event was failure?** Read the definition, not the word. If form decided, *technique*; if a shortened repetition ended the set, *full range*; if the muscle could do no more although a little momentum or a shorter range was allowed, *muscular*; if the rules of the lift decided, *task*. “To volitional failure” without more says none of these: leave the cell empty, and quote the sentence in `note`.',
  '- **To failure.** Reserve 0 and `attempted_failure` yes only where a repetition was attempted and not completed. Stopping because no further repetition was thought possible is reserve 0 with `attempted_failure` no.',
  '- **Reserve.** Take what was measured before what was asked, and what was asked before what was prescribed; say which in `reserve_basis`. A range such as 1-2 goes in as printed; its middle counts, and its width / √12 stands for `reserve_sd` where that is empty. Where sets differ (the first far from failure, the last at it), enter the mean over sets and their spread.',
  '- **Reserve not reported.** Where load and repetitions are known, reserve is the repetitions possible at that load minus those done: *load-table*, with its spread. Where a share of the maximum is known (60 % of the repetitions possible at 20RM leave 8): *share-of-maximum*. The page works both out. Where neither is known leave reserve empty: the row is listed as left out of the dose-response and still serves the rest.',
  '- **Beyond failure.** Partials and load drops after failure go in as arms of their own with reserve 0; the dose-response leaves them out and a comparison of their own reads them.',
  '',
  '### People',
  '',
  '- **Who was measured?** Rows that measured the same people share a `cohort` word: two muscles of one arm, two limbs of one person, both halves of a crossover, two times after one session. Different people get different words or none.',
  '- **Dropouts.** `n` is the people whose numbers stand in the row, measured both times, not those who were recruited. Where a measure lost people (a scan that only some had) its row has the smaller `n`. An analysis with missing people filled in is second to one of those measured; if it is all there is, say so in `note`.',
  '- **No training, no arm.** A control group that did not train has no reserve and is not entered.',
  '',
  '### Which row, when several exist',
  '',
  '- **Several muscles or measures:** each once, the same people never twice for the same muscle and measure. Of several sites of one muscle take their mean where the paper gives it with its SD, else the site nearest the middle, named in `measure`.',
  '- **Several times:** growth and strength have one row, from before training to its end. A measurement halfway may stand beside it with its own `weeks`: it is shown and fits leave it out. One after a pause is not entered. Fatigue has a row for each time after the session, with its hours in `hours_after` and one `cohort` for all.',
  '- **Several analyses:** the one with most people; unadjusted before adjusted.',
  '- **Several papers on the same people:** one study, named after the first, its rows from whichever paper prints them best; say which in `source_place`.',
  '',
  '### Statistics',
  '',
  '- **Enter what the paper prints** and nothing that you worked out: the recovery of standard deviations and correlations from what is printed is done here and shown with its formula. `effect` is for what a paper prints as an effect.',
  '- **SD or standard error?** Look in the legend and the methods, then at the size: an SD of muscle size or strength is seldom below a tenth of the mean, a standard error often is (rule of thumb, no source). Each mean has a column for either (`baseline_sd`, `baseline_se`).',
  '- **Medians** go in with their quartiles (`baseline_median`, `baseline_q1`, `baseline_q3`, the same after and of the change): mean and SD are made of them as of a normal sample (Luo et al. 2018; Wan et al. 2014). Where the paper shows or names skewness, leave the row out. A range from least to greatest is no measure of spread.',
  '- **Figures only.** Enlarge the figure, measure against its axis, twice, and enter the mean of both; `source_place` names the figure and `note` says “read from the figure”. Make sure what the bars are; bars that no legend explains are not entered.',
  '- **Per cent change reported only?** It goes in (`percent_change`). With its SD, standard error or interval, with t, F or p, or with a standardised effect it has a variance; alone it is left out of the fit, with the reason, unless missing SDs are filled in on Evidence.',
  '- **A standardised effect** goes in with what it was divided by (`effect_standardiser`) and whether it was corrected for small samples (`effect_corrected`). Leave both empty where the paper does not say: the SD before is then assumed, and the row says so.',
  '- **p as a bound** goes in as printed: “<0.001” counts as 0.001, “>0.05” as no number.',
];
