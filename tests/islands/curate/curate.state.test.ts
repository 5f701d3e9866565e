/**
 * The form that makes rows. Recovered numbers against worked examples of the Cochrane Handbook (chapter 6;
 * text of edition 5.1, §7.7.3 and §16.4.6.4, which prints two or three digits), everything else against the
 * table's own readers.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeEffects } from '../../../src/evidence/effects.ts';
import { formatProblem } from '../../../src/evidence/problem.ts';
import { reserveFromLoad } from '../../../src/evidence/reserve.ts';
import { ARM_COLUMNS, type ArmColumn } from '../../../src/evidence/schema.ts';
import { readArms } from '../../../src/evidence/table.ts';
import { EFFECT_METRICS } from '../../../src/evidence/vocabulary.ts';
import { writeArms } from '../../../src/evidence/writeTable.ts';
import { ARM_NAMES, REPORTS, toCells } from '../../../src/islands/curate/cells.ts';
import { type CuratingState, createCurating } from '../../../src/islands/curate/curate.state.ts';
import { defaultSettings } from '../../../src/model/settings.ts';
import { expectWithin } from '../../support/closeness.ts';
import { validTable } from '../../support/tableArbitrary.ts';
import { type Cells, makeArms, makeTable } from '../../support/tables.ts';

/** A form with the valid row of the test tables in it, changed. */
function formWith(changes: Cells): CuratingState {
  const state = createCurating();
  type(state, { ...toCells(makeArms([{}])[0]), ...changes });
  return state;
}

function type(state: CuratingState, cells: Cells): void {
  for (const [name, text] of Object.entries(cells)) state.enter(name as ArmColumn, text);
}

function shown(state: CuratingState, quantity: string): number {
  const numbers = state.reading.value.numbers?.numbers ?? [];
  const found = numbers.find((number) => number.quantity === quantity);
  if (!found)
    throw new Error(`${quantity} is not shown; shown: ${numbers.map((number) => number.quantity).join(', ')}`);
  return found.value;
}

const NO_STATISTICS = { baseline_sd: '', followup_mean: '', followup_sd: '', correlation: '' };

describe('recovered numbers shown', () => {
  it('of a difference of 3.8 with p = 0.008 on 45 df have a standard error of 1.37 (Cochrane Handbook)', () => {
    const state = formWith({ ...NO_STATISTICS, n: '46', change_mean: '3.8', change_p: '0.008' });
    expectWithin(shown(state, 'SD of the change') / Math.sqrt(46), 1.37, 0.005, 'SE');
  });

  it('of a 95 % interval in a large sample have a standard error of its width over 3.92 (Cochrane Handbook)', () => {
    const n = 100_000;
    const interval = { change_mean: '1', change_ci_low: '0.02', change_ci_high: '1.98' };
    const state = formWith({ ...NO_STATISTICS, n: String(n), ...interval });
    expectWithin(shown(state, 'SD of the change') / Math.sqrt(n), 1.96 / 3.92, 1e-4, 'SE');
  });

  it('of SDs 2.38 and 2.21 and a standard error of 0.583 in 10 people have a correlation of 0.68 (Cochrane Handbook)', () => {
    const sds = { baseline_sd: '2.38', followup_sd: '2.21', change_se: '0.583', correlation: '' };
    const state = formWith({ n: '10', baseline_mean: '7', followup_mean: '6.5', ...sds });
    // Half a unit of the last printed digit of SE and r, through r = (s₁² + s₂² − n SE²) / (2 s₁ s₂).
    expectWithin(shown(state, 'correlation of before with after'), 0.68, 0.006, 'r');
  });

  it('name their formula, and its source where it has one', () => {
    const state = formWith({ ...NO_STATISTICS, baseline_sd: '6', change_mean: '3', change_t: '4' });
    const told = (state.reading.value.numbers?.numbers ?? []).map(({ quantity, how, source }) => [
      quantity,
      how,
      source,
    ]);
    expect(told).toContainEqual([
      'SD of the change',
      't: |change / t| × √n',
      'Cochrane Handbook for Systematic Reviews of Interventions, chapter 6',
    ]);
    expect(told).toContainEqual(['SD after', 'assumed equal to the SD before', null]);
    // The two metrics rest on the same numbers, each told once.
    expect(new Set(told.map(String)).size).toBe(told.length);
  });

  it('come with a warning where three SDs imply a correlation outside 0 to 1', () => {
    const state = formWith({ correlation: '', change_sd: '14' });
    expect(state.reading.value.warnings.map(({ expected }) => expected).join()).toMatch(
      /imply a correlation from 0 to 1/u,
    );
    expect(state.reading.value.numbers?.effects[0].effect).not.toBeNull();
  });

  it.each<[string, Cells]>([
    ['means, SDs and a correlation', {}],
    ['means and SDs alone', { correlation: '' }],
    ['a change with its SD', { ...NO_STATISTICS, change_mean: '3', change_sd: '2.4' }],
    ['a change with its interval', { ...NO_STATISTICS, change_mean: '3', change_ci_low: '1', change_ci_high: '5' }],
    ['fatigue', { outcome: 'fatigue', hours_after: '24', correlation: '' }],
    [
      'a ready-made effect',
      { ...NO_STATISTICS, baseline_mean: '', effect: '0.4', effect_variance: '0.02', effect_metric: 'standardised' },
    ],
  ])('of %s are those that the table gives once it is read', (_what, cells) => {
    const state = formWith(cells);
    const live = state.reading.value.numbers?.effects ?? [];
    expect(state.keep()).toBe(true);
    const { arms, problems } = readArms(state.csvOf(true), 'copied.csv');
    expect(problems).toEqual([]);
    const { outcome } = arms[0];
    const assumedCorrelation = defaultSettings.assumedCorrelation[outcome];
    const read = EFFECT_METRICS.map((metric) => computeEffects(arms, { outcome, metric, assumedCorrelation }));
    expect(live.map(({ effect, noEffect }) => (effect ? [effect.y, effect.v] : noEffect))).toEqual(
      read.map(({ effects, excluded }) => (effects.length > 0 ? [effects[0].y, effects[0].v] : excluded[0].reason)),
    );
    expect(live.some(({ effect }) => effect !== null)).toBe(true);
    expect(state.readings.value[0].numbers?.effects.map(({ effect }) => effect?.v)).toEqual(
      live.map(({ effect }) => effect?.v),
    );
  });

  it('stand before study, arm and exercise are named, and wait for what they rest on', () => {
    const state = createCurating();
    type(state, { n: '12', outcome: 'growth', baseline_mean: '40', baseline_sd: '6', followup_mean: '43' });
    expectWithin(state.reading.value.numbers?.effects[0].effect?.y ?? Number.NaN, Math.log(43 / 40), 1e-15, 'y');
    expect(state.reading.value.needed.map(({ column }) => column)).toContain('study');
    expect(state.keep()).toBe(false);
    state.enter('n', 'twelve');
    expect(state.reading.value.numbers).toBeNull();
    expect(state.reading.value.waitsFor).toEqual(['n']);
  });
});

describe('what is said of a row', () => {
  it.each<[string, Cells]>([
    ['a decimal comma', { baseline_sd: '6,3' }],
    ['an unknown word', { design: 'cross-over' }],
    ['markup in a name', { arm: '<b>' }],
    ['a range for a number', { baseline_mean: '38-42' }],
    ['failure with a reserve', { reserve_reps: '2' }],
    ['an interval the wrong way round', { change_mean: '3', change_ci_low: '5', change_ci_high: '1' }],
    ['no change', { followup_mean: '', followup_sd: '' }],
    ['no year', { year: '' }],
    ['means that do not give the change', { change_mean: '9' }],
  ])('with %s is what the table’s readers say, word for word', (_what, cells) => {
    const state = formWith(cells);
    const { problems, needed, warnings } = state.reading.value;
    const table = readArms(makeTable([{ ...toCells(makeArms([{}])[0]), ...cells }]), 'this page');
    const words = (list: readonly Parameters<typeof formatProblem>[0][]) => list.map(formatProblem).sort();
    expect(words([...problems, ...needed])).toEqual(words(table.problems));
    expect(words(warnings)).toEqual(words(table.warnings));
    expect(problems.length + needed.length + warnings.length).toBeGreaterThan(0);
    expect(state.keep()).toBe(table.problems.length === 0);
  });

  it('comes as far as it can be read, and never of a cell that cannot', () => {
    const limits = { change_mean: '3', change_ci_low: '5', change_ci_high: '1' };
    const state = formWith({ ...limits, study: '', design: '', reserve_reps: 'two', reserve_sd: '1', change_sd: '14' });
    const { problems, needed, warnings } = state.reading.value;
    expect(needed.map(({ column }) => column)).toEqual(['study', 'design']);
    expect(problems.map(({ column }) => column)).toEqual(['reserve_reps', 'change_ci_high', 'change_mean']);
    expect(warnings.map(({ column, line }) => [column, line])).toEqual([['change_sd', 2]]);
  });

  it('looks at the rows made before', () => {
    const state = formWith({});
    state.keep();
    type(state, { ...toCells(makeArms([{}])[0]), arm: 'another', year: '2013' });
    expect(state.reading.value.problems.map(({ expected }) => expected)).toEqual([
      '2012, as line 2 says of study Plover 2012',
    ]);
    type(state, { arm: 'to failure', year: '2012' });
    expect(state.reading.value.problems.map(({ kind }) => kind)).toEqual(['duplicate']);
  });
});

describe('rows', () => {
  it('of any valid table go through the form and come out as they were, also after a reload', () => {
    fc.assert(
      fc.property(validTable, (arms) => {
        const state = createCurating();
        for (const arm of arms) {
          type(state, toCells(arm));
          expect(state.reading.value.needed.concat(state.reading.value.problems)).toEqual([]);
          // Every cell that holds something has its field on the form.
          const fields = REPORTS.filter(({ name }) => state.reports.value.includes(name)).flatMap(
            ({ columns }) => columns,
          );
          const hidden = ARM_NAMES.filter(
            (name) => ARM_COLUMNS[name].group === 'statistics' && !fields.some((one) => one === name),
          );
          for (const name of hidden) expect(arm[name], name).toBeNull();
          expect(state.keep()).toBe(true);
        }
        expect(state.csvOf(true)).toBe(writeArms(arms));
        expect(readArms(state.csvOf(true), '').arms).toEqual(arms);
        for (const place of arms.keys()) {
          state.edit(place);
          expect(state.keep()).toBe(true);
        }
        expect(state.csvOf(true)).toBe(writeArms(arms));
      }),
      { seed: 6, numRuns: 60 },
    );
  });

  it('are copied with the header or without it', () => {
    const state = formWith({});
    state.keep();
    expect(state.csvOf(true)).toBe(`${Object.keys(ARM_COLUMNS).join(',')}\n${state.csvOf(false)}`);
    expect(state.csvOf(false).split('\n')).toHaveLength(2);
  });

  it('of a study take over a correction of its facts, and those of an arm one of its training', () => {
    const state = formWith({});
    state.keep();
    type(state, { ...toCells(makeArms([{}])[0]), measure: 'cross-sectional area' });
    state.keep();
    type(state, { ...toCells(makeArms([{}])[0]), arm: 'short of failure', attempted_failure: 'no', reserve_reps: '3' });
    state.keep();
    state.edit(1);
    type(state, { year: '2013', load_pct_1rm: '80' });
    expect(state.placed.value.carried).toEqual({ columns: ['year', 'load_pct_1rm'], rows: 2 });
    expect(state.keep()).toBe(true);
    expect(state.rows.value.map(({ year, load_pct_1rm: load }) => [year, load])).toEqual([
      ['2013', '80'],
      ['2013', '80'],
      ['2013', '75'],
    ]);
    expect(state.readings.value.flatMap(({ problems }) => problems)).toEqual([]);
    expect(state.done.value).toMatch(/year, load_pct_1rm were changed in 2 other rows too/u);
  });

  it.each([
    ['parallel', ['', '']],
    ['within-person', ['a', '12']],
  ])('of a %s design hand people on to the next arm only where they are the same', (design, people) => {
    const state = formWith({ design, cohort: 'a' });
    state.keep();
    const { cohort, n, study, arm, exercise, baseline_mean: mean, reserve_reps: reserve } = state.draft.value;
    expect([cohort, n]).toEqual(people);
    expect([study, arm, exercise, mean, reserve]).toEqual(['Plover 2012', '', 'leg press', '', '']);
  });

  it('hand the arm on to its next measure', () => {
    const state = formWith({ cohort: 'a' });
    state.keep();
    state.nextMeasure(0);
    const { arm, cohort, reserve_reps: reserve, outcome, measure, baseline_mean: mean } = state.draft.value;
    expect([arm, cohort, reserve, outcome, measure, mean]).toEqual(['to failure', 'a', '0', '', '', '']);
  });

  it('that were removed, and entries that were cleared, can be had back without losing what was entered since', () => {
    const state = formWith({});
    state.keep();
    const csv = state.csvOf(true);
    state.remove(0);
    expect(state.rows.value).toEqual([]);
    state.enter('arm', 'typed since');
    state.takeBack();
    expect(state.csvOf(true)).toBe(csv);
    expect(state.draft.value.arm).toBe('typed since');
    state.enter('baseline_mean', '40');
    state.report('before', false);
    expect(state.draft.value.baseline_mean).toBe('');
    expect(state.reports.value).not.toContain('before');
    state.takeBack();
    expect(state.draft.value.baseline_mean).toBe('40');
    state.empty();
    expect(state.isEmpty.value).toBe(true);
    state.takeBack();
    expect(state.draft.value.arm).toBe('typed since');
  });

  it('keep the row in hand in hand when an earlier one is removed', () => {
    const state = formWith({});
    state.keep();
    type(state, { ...toCells(makeArms([{}])[0]), measure: 'cross-sectional area' });
    state.keep();
    state.edit(1);
    state.remove(0);
    expect(state.at.value).toBe(0);
    expect(state.keep()).toBe(true);
    expect(state.rows.value.map(({ measure }) => measure)).toEqual(['cross-sectional area']);
  });
});

describe('the reserve helper', () => {
  it('fills in what the published relation gives for the row’s load and repetitions, with its spread', () => {
    const state = formWith({ attempted_failure: '', reserve_reps: '', load_pct_1rm: '75', reps_per_set: '9' });
    state.askReserve('relation', 'leg press');
    const { found } = state.fromLoad.value;
    const estimate = reserveFromLoad(75, 9, 'leg press');
    if (!found || estimate.mean === null) throw new Error('no estimate');
    state.takeReserve(found);
    const { reserve_reps: reserve, reserve_sd: sd, reserve_basis: basis } = state.draft.value;
    expectWithin(Number(reserve), estimate.mean, 0.005, 'reserve');
    expectWithin(Number(sd), estimate.sd, 0.005, 'SD');
    expect(basis).toBe('load-table');
    expect(state.reading.value.problems).toEqual([]);
  });

  it('finds 8 with SD 0.8 where 60 % of 20 ± 2 repetitions were done', () => {
    const state = createCurating();
    for (const [name, text] of [
      ['share_pct', '60'],
      ['maximum', '20'],
      ['maximum_sd', '2'],
    ] as const) {
      expect(state.fromShare.value.found).toBeNull();
      state.askReserve(name, text);
    }
    expect(state.fromShare.value.found).toEqual({
      reserve_reps: '8',
      reserve_sd: '0.8',
      reserve_basis: 'share-of-maximum',
    });
  });

  it('says why there is none without load, and outside the published loads', () => {
    expect(formWith({ load_pct_1rm: '' }).fromLoad.value.reason).toMatch(/load_pct_1rm/u);
    expect(formWith({ load_pct_1rm: '20', reps_per_set: '9' }).fromLoad.value.reason).toMatch(
      /40 to 90 % of 1RM, not 20/u,
    );
  });
});
