/**
 * Wrong tables of every kind that a curator or an ill-meaning file may hold: each is refused with its
 * line, its column and what was expected, and nothing crashes.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../src/evidence/problem.ts';
import { ARM_COLUMNS } from '../../src/evidence/schema.ts';
import { readArms } from '../../src/evidence/table.ts';
import { type Cells, makeTable } from '../support/tables.ts';

interface WrongTable {
  readonly kind: string;
  readonly text: string;
  readonly line: number | null;
  readonly column: string | null;
  readonly expected: RegExp;
}

/** A table whose second row (line 3) has the changes. */
const second = (changes: Cells) => makeTable([{}, { arm: 'other', ...changes }]);
const cell = (kind: string, column: keyof typeof ARM_COLUMNS, value: string, expected: RegExp): WrongTable => ({
  kind,
  text: second({ [column]: value }),
  line: 3,
  column,
  expected,
});
const all = Object.keys(ARM_COLUMNS);
const without = (column: string) => all.filter((name) => name !== column);

const WRONG_TABLES: readonly WrongTable[] = [
  { kind: 'an empty file', text: '', line: null, column: null, expected: /a header row/ },
  { kind: 'only blank lines', text: '\n\n\r\n', line: null, column: null, expected: /a header row/ },
  { kind: 'only a header', text: makeTable([]), line: null, column: null, expected: /at least one row/ },
  {
    kind: 'a missing required column',
    text: makeTable([{}], without('n')),
    line: 1,
    column: 'n',
    expected: /a column named n/,
  },
  {
    kind: 'a misspelled column',
    text: makeTable([{}]).replace('reserve_reps', 'Reserve reps'),
    line: 1,
    column: 'Reserve reps',
    expected: /reserve_reps/,
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
  cell('a required cell left empty', 'study', '', /plain text/),
  cell('text in a number', 'year', 'twenty', /a whole number from 1900 to 2100/),
  cell('a range in a number', 'reserve_reps', '1-2', /a number from 0 to 30/),
  cell('a decimal comma', 'baseline_mean', '40,5', /a number above 0/),
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
  cell('a control character in a name', 'arm', 'to\u0000failure', /without markup or control characters/),
  cell('a change of writing direction in a name', 'arm', 'to \u202efailure', /control characters/),
  cell('a cell of 200,000 characters', 'note', 'x'.repeat(200_000), /up to 500 characters/),
  cell('a name of an object property is text, a bad number is not', 'n', '__proto__', /a whole number/),
  cell('reserve in a set to failure', 'reserve_reps', '2', /0, since `attempted_failure` is yes/),
  {
    kind: 'reserve beyond failure',
    text: second({ beyond_failure: 'partials', attempted_failure: '', reserve_reps: '1' }),
    line: 3,
    column: 'reserve_reps',
    expected: /beyond_failure/,
  },
  {
    kind: 'a spread without its mean',
    text: second({ reserve_reps: '', attempted_failure: '', reserve_sd: '1' }),
    line: 3,
    column: 'reserve_reps',
    expected: /a mean beside/,
  },
  {
    kind: 'fatigue without hours',
    text: second({ outcome: 'fatigue' }),
    line: 3,
    column: 'hours_after',
    expected: /hours/,
  },
  {
    kind: 'hours without fatigue',
    text: second({ hours_after: '24' }),
    line: 3,
    column: 'hours_after',
    expected: /an empty cell/,
  },
  {
    kind: 'an interval upside down',
    text: second({ change_ci_low: '4', change_ci_high: '2' }),
    line: 3,
    column: 'change_ci_high',
    expected: /above `change_ci_low`/,
  },
  {
    kind: 'half an interval',
    text: second({ change_ci_low: '4' }),
    line: 3,
    column: 'change_ci_high',
    expected: /beside `change_ci_low`/,
  },
  {
    kind: 'a mean outside its interval',
    text: second({ change_mean: '9', change_ci_low: '1', change_ci_high: '4' }),
    line: 3,
    column: 'change_mean',
    expected: /inside its interval/,
  },
  {
    kind: 'an effect without its variance',
    text: second({ effect: '0.1', effect_metric: 'log-ratio' }),
    line: 3,
    column: 'effect_variance',
    expected: /beside `effect`/,
  },
  {
    kind: 'no statistics at all',
    text: second({ baseline_mean: '', baseline_sd: '', followup_mean: '', followup_sd: '', correlation: '' }),
    line: 3,
    column: 'baseline_mean',
    expected: /ready-made effect/,
  },
  {
    kind: 'means without any spread',
    text: second({ baseline_sd: '', followup_sd: '' }),
    line: 3,
    column: 'baseline_sd',
    expected: /standard deviation before/,
  },
  {
    kind: 'a loss of more than all',
    text: second({ followup_mean: '', followup_sd: '', change_mean: '-41' }),
    line: 3,
    column: 'change_mean',
    expected: /above −40/,
  },
  {
    kind: 'a study that changes its year',
    text: second({ year: '2013' }),
    line: 3,
    column: 'year',
    expected: /2012, as line 2 says of study Plover 2012/,
  },
  {
    kind: 'a study that changes its design',
    text: second({ design: 'crossover' }),
    line: 3,
    column: 'design',
    expected: /parallel, as line 2 says/,
  },
  {
    kind: 'two arms that contradict each other',
    text: makeTable([{}, { measure: 'area', load_pct_1rm: '30' }]),
    line: 3,
    column: 'load_pct_1rm',
    expected: /75, as line 2 says of arm to failure/,
  },
  { kind: 'a row twice', text: makeTable([{}, {}]), line: 3, column: null, expected: /line 2 does not have already/ },
  {
    kind: 'a cohort that grows',
    text: makeTable([{ cohort: 'a' }, { cohort: 'a', measure: 'area', n: '20' }]),
    line: 3,
    column: 'n',
    expected: /at most 12 people/,
  },
];

describe('a wrong table', () => {
  it(`is tried in at least 30 kinds (${WRONG_TABLES.length})`, () => {
    expect(new Set(WRONG_TABLES.map(({ kind }) => kind)).size).toBeGreaterThanOrEqual(30);
  });

  it.each(WRONG_TABLES)(
    'with $kind is refused with line, column and expectation',
    ({ text, line, column, expected }) => {
      const { problems } = readArms(text, 'wrong.csv');
      const found = problems.find((problem) => problem.line === line && problem.column === column);
      expect(found, JSON.stringify(problems)).toBeDefined();
      expect(found?.expected).toMatch(expected);
      expect(found?.file).toBe('wrong.csv');
      const message = found ? formatProblem(found) : '';
      expect(message.length).toBeLessThan(600);
      expect(message).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
    },
  );

  it('reports all of its problems at once, in the order of lines', () => {
    const { problems } = readArms(
      makeTable([
        { n: '1', year: 'x' },
        { arm: 'b', load_pct_1rm: '120' },
      ]),
      'wrong.csv',
    );
    expect(problems.map(({ line, column }) => [line, column])).toEqual([
      [2, 'year'],
      [2, 'n'],
      [3, 'load_pct_1rm'],
    ]);
  });

  it('gives the sentence with place, expectation, what was received and the remedy', () => {
    const [problem] = readArms(second({ reserve_reps: '1-2' }), 'wrong.csv').problems;
    expect(formatProblem(problem)).toBe(
      'line 3, `reserve_reps`: expected a number from 0 to 30, received “1-2”. Enter the mean of the range and put the spread in the column of the standard deviation.',
    );
  });

  it('counts physical lines where quoted cells hold line breaks, which are themselves refused', () => {
    const { problems } = readArms(makeTable([{ note: 'one\ntwo' }, { arm: 'b', n: '1' }]), 'wrong.csv');
    expect(problems.map(({ line, column }) => [line, column])).toEqual([
      [2, 'note'],
      [4, 'n'],
    ]);
  });
});

describe('a table in another dress', () => {
  const { arms } = readArms(makeTable([{}]), 'right.csv');

  it.each([
    ['a byte-order mark', `\ufeff${makeTable([{}])}`],
    ['semicolons', makeTable([{}]).replaceAll(',', ';')],
    ['tabs', makeTable([{}]).replaceAll(',', '\t')],
    ['line feeds only', makeTable([{}]).replaceAll('\r\n', '\n')],
    ['carriage returns only', makeTable([{}]).replaceAll('\r\n', '\r')],
    ['blank lines at its end', `${makeTable([{}])}\r\n\r\n`],
    ['spaces around a cell', makeTable([{ study: '  Plover 2012 ' }])],
    ['columns in another order', makeTable([{}], [...all].reverse())],
  ])('with %s reads the same', (_dress, text) => {
    const read = readArms(text, 'right.csv');
    expect(read.problems).toEqual([]);
    expect(read.arms).toEqual(arms);
  });

  it('with a column of its own is read, with a warning that names the column', () => {
    const { problems, warnings } = readArms(makeTable([{}], [...all, 'weather']), 'right.csv');
    expect(problems).toEqual([]);
    expect(warnings.map(({ column, line }) => [column, line])).toEqual([['weather', 1]]);
  });
});

describe('any text at all', () => {
  it('is read without an exception, into rows or problems', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (text) => {
        const { arms, problems } = readArms(text, 'any.csv');
        expect(arms.length + problems.length).toBeGreaterThan(0);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('in place of any part of a valid table is read without an exception', () => {
    const table = makeTable([{}, { arm: 'b', attempted_failure: 'no', reserve_reps: '3' }]);
    fc.assert(
      fc.property(
        fc.nat(table.length),
        fc.nat(40),
        fc.string({ unit: 'binary', maxLength: 20 }),
        (from, count, piece) => {
          const { arms, problems } = readArms(table.slice(0, from) + piece + table.slice(from + count), 'any.csv');
          expect(arms.length + problems.length).toBeGreaterThan(0);
        },
      ),
      { seed: 2, numRuns: 500 },
    );
  });
});
