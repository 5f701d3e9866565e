/** Tables that are wrong as a file, in their header, in a line or in one cell. */
import { ARM_COLUMNS } from '../../src/evidence/schema.ts';
import { type Cells, makeTable } from '../support/tables.ts';

export interface WrongTable {
  readonly kind: string;
  readonly text: string;
  readonly line: number | null;
  readonly column: string | null;
  readonly expected: RegExp;
}

/** A table whose second row (line 3) has the changes. */
export const second = (changes: Cells) => makeTable([{}, { arm: 'other', ...changes }]);
const cell = (kind: string, column: keyof typeof ARM_COLUMNS, value: string, expected: RegExp): WrongTable => ({
  kind,
  text: second({ [column]: value }),
  line: 3,
  column,
  expected,
});
const all = Object.keys(ARM_COLUMNS);
const without = (column: string) => all.filter((name) => name !== column);

const copied = second({ change_sd: '2.4', change_se: '2.4' });

export const WRONG_FILES: readonly WrongTable[] = [
  { kind: 'an empty file', text: '', line: null, column: null, expected: /a header row/ },
  { kind: 'only blank lines', text: '\n\n\r\n', line: null, column: null, expected: /a header row/ },
  { kind: 'only a header', text: makeTable([]), line: null, column: null, expected: /at least one row/ },
  {
    kind: 'a missing required column',
    text: makeTable([{}], without('exercise')),
    line: 1,
    column: 'exercise',
    expected: /a column named exercise/,
  },
  {
    kind: 'a misspelled column',
    text: makeTable([{}]).replace('reserve_reps', 'Reserve reps'),
    line: 1,
    column: 'Reserve reps',
    expected: /reserve_reps/,
  },
  {
    kind: 'a misspelled short column',
    text: makeTable([{}]).replace('weeks', 'Week'),
    line: 1,
    column: 'Week',
    expected: /`weeks` is missing/,
  },
  {
    kind: 'a misspelled column that is near several',
    text: makeTable([{}]).replace('change_t', 'Change t').replace('change_sd', 'changesd'),
    line: 1,
    column: 'Change t',
    expected: /`change_t` is missing/,
  },
  {
    kind: 'a terminal command in a column name',
    text: makeTable([{}]).replace('weeks', 'weeks\u001bc'),
    line: 1,
    column: 'weeks\u001bc',
    expected: /`weeks` is missing/,
  },
  {
    kind: 'no column name at all',
    text: 'a|b\n1|2',
    line: 1,
    column: null,
    expected: /column names of the data dictionary, separated by commas, semicolons or tabs/,
  },
  {
    kind: 'characters that are not UTF-8',
    text: second({ study: 'M\ufffdwe 2012' }),
    line: 3,
    column: null,
    expected: /UTF-8/,
  },
  { kind: 'a column twice', text: makeTable([{}], [...all, 'n']), line: 1, column: 'n', expected: /every column once/ },
  {
    kind: 'a picture instead of a table',
    text: '\u0089PNG\r\n\u001a\n\u0000\u0000',
    line: 1,
    column: 'study',
    expected: /a column named study/,
  },
  {
    kind: 'a web page instead of a table',
    text: '<!doctype html><html><body>no</body></html>',
    line: 1,
    column: 'study',
    expected: /a column named study/,
  },
  {
    kind: 'an unknown delimiter',
    text: makeTable([{}]).replaceAll(',', '|'),
    line: 1,
    column: 'study',
    expected: /a column named study/,
  },
  {
    kind: 'a line with a cell too few',
    text: `${makeTable([{}])}\nPlover 2012,2012`,
    line: 3,
    column: null,
    expected: /as many as the header/,
  },
  {
    kind: 'a line with a cell too many',
    text: `${second({})},x`,
    line: 3,
    column: null,
    expected: /as many as the header/,
  },
  {
    kind: 'a quotation mark that is never closed',
    text: second({ note: 'x' }).replace(/x$/u, '"x'),
    line: 3,
    column: null,
    expected: /quotation mark/,
  },
  cell('a required cell left empty', 'study', '', /^a value$/),
  cell('text in a number', 'year', 'twenty', /a whole number from 1900 to 2100/),
  cell('a range in a number', 'baseline_mean', '38-42', /a number above 0/),
  cell('a range that ends before it begins', 'reserve_reps', '3-1', /a number from 0 to 30, or a range/),
  cell('a range beyond the limits', 'load_pct_1rm', '80-120', /up to 100/),
  cell('a range of three', 'reps_per_set', '6-8-10', /or a range such as 8-12/),
  cell('a decimal comma', 'baseline_mean', '40,5', /a number above 0/),
  cell('a bound of p that is no probability', 'change_p', '<5', /above 0 and up to 1/),
  cell('a bound of a number that has none', 'baseline_mean', '<40', /a number above 0/),
  cell('a mean with its spread', 'baseline_mean', '40 ± 6', /a number above 0/),
  cell('a unit beside a number', 'followup_mean', '43 mm', /a number above 0/),
  cell('a per cent sign', 'load_pct_1rm', '75%', /a number above 0 and up to 100/),
  cell('a load of 120', 'load_pct_1rm', '120', /up to 100/),
  cell('a load of 0', 'load_pct_1rm', '0', /above 0/),
  cell('a negative SD', 'baseline_sd', '-6', /above 0/),
  cell('an SD of 0', 'followup_sd', '0', /above 0/),
  cell('n of 1', 'n', '1', /a whole number from 2/),
  cell('n with a fraction', 'n', '12.5', /a whole number/),
  cell('a negative mean', 'baseline_mean', '-40', /above 0/),
  cell('a negative reserve', 'reserve_reps', '-1', /from 0 to 30/),
  cell('a reserve of 31', 'reserve_reps', '31', /from 0 to 30/),
  cell('a correlation of 1', 'correlation', '1', /above -1 and below 1/),
  cell('an infinite number', 'followup_mean', '1e999', /a number above 0/),
  cell('a hexadecimal number', 'n', '0x10', /a whole number/),
  cell('“NaN”', 'baseline_sd', 'NaN', /a number above 0/),
  cell('an unknown design', 'design', 'cohort', /one of parallel, within-person, crossover/),
  cell('a word in capitals', 'outcome', 'Growth', /one of growth, strength, fatigue/),
  cell('“true” for yes', 'attempted_failure', 'true', /yes or no/),
  cell('HTML in a name', 'arm', '<img src=x onerror=alert(1)>', /plain text/),
  cell('a spreadsheet formula in a name', 'arm', '=HYPERLINK("https://example.org")', /not starting with =/),
  cell('a formula that starts with +', 'exercise', '+1+2', /not starting with =/),
  cell('a formula after a semicolon', 'exercise', 'press;=1+2', /after a semicolon/),
  cell('a soft hyphen in a name', 'study', 'Plo\u00adver 2012', /control characters/),
  cell('a space without width in a name', 'study', 'Plover\u200b 2012', /control characters/),
  cell('half a character in a name', 'arm', 'to \ud83d failure', /control characters/),
  cell('a control character in a name', 'arm', 'to\u0000failure', /without markup or control characters/),
  cell('a change of writing direction in a name', 'arm', 'to \u202efailure', /control characters/),
  cell('a cell of 200,000 characters', 'note', 'x'.repeat(200_000), /up to 500 characters/),
  cell('a name of an object property is text, a bad number is not', 'n', '__proto__', /a whole number/),
  cell('a load as a share of 1RM', 'load_pct_1rm', '0.75', /per cent of 1RM, 75 and not the share 0\.75/),
  cell('all of 1RM as a share', 'load_pct_1rm', '1', /per cent of 1RM/),
  cell('reserve in a set to failure', 'reserve_reps', '2', /0, since `attempted_failure` is yes/),
  {
    kind: 'an SD copied as a standard error',
    text: copied,
    line: 3,
    column: 'change_se',
    expected: /`change_sd` \(2\.4\)/,
  },
  {
    kind: 'an interval without width',
    text: second({ change_ci_low: '3', change_ci_high: '3' }),
    line: 3,
    column: 'change_ci_high',
    expected: /above `change_ci_low`/,
  },
];
