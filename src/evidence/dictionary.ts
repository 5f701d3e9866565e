/** The data dictionary, for people (Markdown) and machines (Frictionless Data Package), from the schema. */
import type { Column } from './column.ts';
import { EXERCISE_COLUMNS } from './exercises.ts';
import { ARM_COLUMNS, STUDY_COLUMNS } from './schema.ts';

type Columns = Readonly<Record<string, Column<unknown>>>;

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
export function explainColumns(columns: Columns = ARM_COLUMNS): readonly ColumnExplanation[] {
  return Object.entries(columns).map(([name, { group, required, expected, unit, description, example }]) => ({
    name,
    group,
    required,
    cell: `${expected}${unit ? ` (${unit})` : ''}`,
    meaning: description,
    example,
  }));
}

/** Text of `data/README.md`. */
export function writeDictionary(): string {
  return `${[
    '# The evidence tables',
    '',
    '> **The studies in this folder are invented for demonstration.** No such studies exist. Put your own table in the place of `arms.csv` and `studies.csv` to make the site say something about the world.',
    '',
    'This page is written from the schema in `src/evidence/schema.ts` by `npm run dictionary`; do not edit it by hand. The same dictionary for machines is `datapackage.json`.',
    '',
    'Files are CSV (RFC 4180) in UTF-8 with a header row and a decimal point. A byte-order mark is accepted; semicolons and tabs are recognised as delimiters. Columns may stand in any order; optional columns may be missing.',
    '',
    '## arms.csv',
    '',
    'One row is one measurement on one arm of one study.',
    '',
    ...listColumns(ARM_COLUMNS),
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
    '## example-week.csv, example-week-to-targets.csv',
    '',
    'An invented week of a rowing club, as the programme check reads it, and a second version that follows the targets.',
    '',
    ...GUIDE,
  ].join('\n')}\n`;
}

/** Content of `data/datapackage.json`. */
export function describePackage(): object {
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
      resource('arms', 'One measurement on one arm of one study a row', ARM_COLUMNS, []),
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
  '- **Which event was failure?** Read the definition, not the word. If form decided, *technique*; if a shortened repetition ended the set, *full range*; if the muscle could do no more although a little momentum or a shorter range was allowed, *muscular*; if the rules of the lift decided, *task*. Leave the cell empty where the paper does not say.',
  '- **Reserve.** Take what was measured before what was asked, and what was asked before what was prescribed; say which in `reserve_basis`. A range such as 1–2 goes in as its mean, with half its width (or the reported SD) in `reserve_sd`. Where only load and repetitions are known, reserve is the repetitions possible at that load minus those done: enter it as *load-table* with its spread.',
  '- **To failure.** Reserve 0 and `attempted_failure` yes only where a repetition was attempted and not completed. Stopping just before is reserve 0 with `attempted_failure` no.',
  '- **Beyond failure.** Partials and load drops after failure go in as arms of their own with reserve 0; the dose-response leaves them out and a comparison of their own reads them.',
  '- **Who was measured?** Rows that measured the same people share a `cohort` word: two muscles of one arm, two limbs of one person, two times after one session. Different people get different words or none.',
  '- **Several rows possible?** Enter each muscle and each measure once. Of several times take the one at the end of training; of several analyses the one with most people; never the same people twice for the same muscle and measure.',
  '- **Statistics.** Enter what the paper prints and nothing that you worked out: the recovery of standard deviations and correlations from what is printed is done here and shown with its formula. `effect` is for papers that give no means.',
  '- **Per cent change reported only?** It is not enough for a variance; write to the authors or leave the row out.',
];
