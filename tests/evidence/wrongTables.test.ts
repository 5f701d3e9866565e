/**
 * Wrong tables of every kind that a curator or an ill-meaning file may hold: each is refused with its
 * line, its column and what was expected, and nothing crashes.
 */
import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../src/evidence/problem.ts';
import { ARM_COLUMNS } from '../../src/evidence/schema.ts';
import { readArms } from '../../src/evidence/table.ts';
import { makeTable } from '../support/tables.ts';
import { second, WRONG_FILES, type WrongTable } from './wrongFiles.ts';

/** Rows that are wrong in themselves or beside others. */
const WRONG_ROWS: readonly WrongTable[] = [
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
    kind: 'a mean before and no change',
    text: second({ followup_mean: '', followup_sd: '' }),
    line: 3,
    column: 'followup_mean',
    expected: /a change in per cent \(`percent_change`\)/,
  },
  {
    kind: 'an interval in per cent upside down',
    text: second({ percent_change: '7', percent_change_ci_low: '11', percent_change_ci_high: '4' }),
    line: 3,
    column: 'percent_change_ci_high',
    expected: /above `percent_change_ci_low`/,
  },
  {
    kind: 'half an interval in per cent',
    text: second({ percent_change: '7', percent_change_ci_high: '11' }),
    line: 3,
    column: 'percent_change_ci_low',
    expected: /beside `percent_change_ci_high`/,
  },
  {
    kind: 'half the quartiles',
    text: second({ baseline_q1: '36' }),
    line: 3,
    column: 'baseline_q3',
    expected: /beside `baseline_q1`/,
  },
  {
    kind: 'quartiles upside down',
    text: second({ change_q1: '5', change_q3: '1' }),
    line: 3,
    column: 'change_q3',
    expected: /above the first \(`change_q1`, 5\)/,
  },
  {
    kind: 'a median outside its quartiles',
    text: second({ followup_q1: '38', followup_median: '50', followup_q3: '47' }),
    line: 3,
    column: 'followup_median',
    expected: /between the quartiles, 38 and 47/,
  },
  {
    kind: 'a standardiser without a standardised effect',
    text: second({ effect_standardiser: 'change-sd' }),
    line: 3,
    column: 'effect_standardiser',
    expected: /no standardised effect/,
  },
  {
    kind: 'a correction of a log ratio',
    text: second({ effect: '0.1', effect_variance: '0.001', effect_metric: 'log-ratio', effect_corrected: 'yes' }),
    line: 3,
    column: 'effect_corrected',
    expected: /no standardised effect/,
  },
  {
    kind: 'more repetitions done than possible',
    text: second({ reps_per_set: '12', reps_possible: '10' }),
    line: 3,
    column: 'reps_possible',
    expected: /at least the repetitions done in a set \(`reps_per_set`, 12\)/,
  },
  {
    kind: 'arms that share no total',
    text: second({ n_total_arms: '3' }),
    line: 3,
    column: 'n_total',
    expected: /beside `n_total_arms`/,
  },
  {
    kind: 'more people in the arm than in all',
    text: second({ n: '12', n_total: '10' }),
    line: 3,
    column: 'n',
    expected: /at most the people of all arms together \(`n_total`, 10\)/,
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
    kind: 'a cohort that grows with the hours, whatever the order of lines',
    text: makeTable([
      { outcome: 'fatigue', cohort: 'a', hours_after: '48', n: '14' },
      { outcome: 'fatigue', cohort: 'a', hours_after: '24', n: '12' },
    ]),
    line: 2,
    column: 'n',
    expected: /at most 12 people, as line 3 has in cohort a/,
  },
  {
    kind: 'a cohort that grows',
    text: makeTable([{ cohort: 'a' }, { cohort: 'a', measure: 'area', n: '20' }]),
    line: 3,
    column: 'n',
    expected: /at most 12 people/,
  },
];

const all = Object.keys(ARM_COLUMNS);
const WRONG_TABLES = [...WRONG_FILES, ...WRONG_ROWS];

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

  describe('whose header is wrong', () => {
    const three = [{}, { arm: 'b' }, { arm: 'c' }];
    const headerProblems = (text: string) =>
      readArms(text, 'wrong.csv')
        .problems.filter(({ line }) => line === 1)
        .map(formatProblem);
    const exchange = (one: string, other: string) =>
      makeTable(three).replace(/^.*$/mu, (header) =>
        header
          .split(',')
          .map((name) => (name === one ? other : name === other ? one : name))
          .join(','),
      );

    it('by two exchanged names is told where to look before its lines are', () => {
      expect(headerProblems(exchange('year', 'design'))).toEqual([
        'line 1, `design`: expected cells that are one of parallel, within-person, crossover, received “problems in 3 of 3 lines”. Look whether the header names the right column before you look at the lines.',
        'line 1, `year`: expected cells that are a whole number from 1900 to 2100, received “problems in 3 of 3 lines”. Look whether the header names the right column before you look at the lines.',
      ]);
    });

    it('by a name too few is told so once, beside its lines', () => {
      const text = makeTable(three).replace(/^(.*),note$/mu, '$1');
      expect(headerProblems(text)).toEqual([
        `line 1: expected as many names as the lines have cells, received “${Object.keys(ARM_COLUMNS).length - 1} names, another number in 3 of 3 lines”. Look for a missing or doubled name before you look at the lines.`,
      ]);
    });

    it('by an optional name that lines need is told which and by which line first', () => {
      const text = makeTable(
        [{}, { arm: 'b', change_ci_low: '1', change_ci_high: '4' }],
        all.filter((name) => name !== 'change_ci_high'),
      );
      expect(headerProblems(text)).toEqual([
        'line 1, `change_ci_high`: expected a column named change_ci_high, which 1 line(s) need, line 3 first, received nothing. Add the column; the data dictionary says what stands in it.',
      ]);
    });

    it('is not suspected for a problem in two lines, or in fewer than half', () => {
      expect(headerProblems(makeTable([{ n: '1' }, { arm: 'b', n: '1' }, { arm: 'c' }]))).toEqual([]);
      const seven = [...'abcdefg'].map((arm, i) => ({ arm, n: i < 3 ? '1' : '9' }));
      expect(headerProblems(makeTable(seven))).toEqual([]);
      expect(headerProblems(makeTable(seven.slice(0, 6)))).toHaveLength(1);
    });
  });

  it('gives the sentence with place, expectation, what was received and the remedy', () => {
    const [problem] = readArms(second({ reserve_reps: '3-1' }), 'wrong.csv').problems;
    expect(formatProblem(problem)).toBe(
      'line 3, `reserve_reps`: expected a number from 0 to 30, or a range such as 8-12, received “3-1”. Write the smaller number first.',
    );
  });

  it.each([
    ['baseline_sd', '<0.05', /a bound is not a value/i],
    ['change_mean', '−3.1', /Write the minus as -\./],
    ['change_mean', '−3·1', /Use a decimal point\./],
    ['baseline_mean', '42·1', /Use a decimal point\./],
    ['baseline_mean', '<42,1', /A bound is not a value/],
    ['baseline_mean', '42.1 mm', /Leave out the unit/],
    ['baseline_sd', '5-7', /the mean of the range/],
    ['baseline_mean', '40 ± 6', /the mean alone/],
    ['followup_mean', '43 mm', /leave out the unit/i],
    ['baseline_mean', '40,5', /decimal point/],
    ['load_pct_1rm', '75%', /per cent sign/],
    ['reserve_sd', 'n/a', /leave the cell empty/i],
    ['outcome', 'Growth', /small letters/],
    ['arm', '<b>bold', /markup/],
    ['arm', '@SUM(1)', /a letter or a digit before the sign/],
    ['arm', 'to failure;=1', /a space after the semicolon/],
    ['note', 'x'.repeat(501), /501 characters/],
  ] as const)('in %s that reads %s gets the remedy for it', (column, value, remedy) => {
    const { problems } = readArms(second({ [column]: value }), 'wrong.csv');
    expect(problems.find((problem) => problem.column === column)?.remedy).toMatch(remedy);
  });

  it('may have a cohort of other sizes in other outcomes', () => {
    const cohort = { cohort: 'a' };
    const { problems } = readArms(makeTable([cohort, { ...cohort, outcome: 'strength', n: '14' }]), 'right.csv');
    expect(problems).toEqual([]);
  });

  it('counts physical lines where quoted cells hold line breaks, which are themselves refused', () => {
    const { problems } = readArms(makeTable([{ note: 'one\ntwo' }, { arm: 'b', n: '1' }]), 'wrong.csv');
    expect(problems.map(({ line, column }) => [line, column])).toEqual([
      [2, 'note'],
      [4, 'n'],
    ]);
  });
});
