/**
 * What the form says of a study. Recovered numbers against worked examples of the Cochrane Handbook (chapter 6; text of
 * edition 5.1, §7.7.3 and §16.4.6.4, which prints two or three digits), everything else against the table's own readers.
 */
import { describe, expect, it } from 'vitest';
import { computeEffects } from '../../../src/evidence/effects.ts';
import { formatProblem } from '../../../src/evidence/problem.ts';
import { readArms } from '../../../src/evidence/table.ts';
import { EFFECT_METRICS } from '../../../src/evidence/vocabulary.ts';
import { type CuratingState, createCurating } from '../../../src/islands/curate/curate.state.ts';
import { defaultSettings } from '../../../src/model/settings.ts';
import { expectWithin } from '../../support/closeness.ts';
import { type Cells, makeTable } from '../../support/tables.ts';
import { firstRow, formWith, rowOf, type } from './formWith.ts';

function shown(state: CuratingState, quantity: string): number {
  const numbers = firstRow(state).numbers?.numbers ?? [];
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

  it('name their formula, and its source where it has one, each once', () => {
    const state = formWith({ ...NO_STATISTICS, baseline_sd: '6', change_mean: '3', change_t: '4' });
    const told = (firstRow(state).numbers?.numbers ?? []).map(({ quantity, how, source }) => [quantity, how, source]);
    expect(told).toContainEqual([
      'SD of the change',
      't: |change / t| × √n',
      'Cochrane Handbook for Systematic Reviews of Interventions, chapter 6',
    ]);
    expect(told).toContainEqual(['SD after', 'assumed equal to the SD before', null]);
    expect(new Set(told.map(String)).size).toBe(told.length);
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
    const live = firstRow(state).numbers?.effects ?? [];
    const { arms, problems } = readArms(state.csvOf(true), 'copied.csv');
    expect(problems).toEqual([]);
    const { outcome } = arms[0];
    const assumedCorrelation = defaultSettings.assumedCorrelation[outcome];
    const read = EFFECT_METRICS.map((metric) => computeEffects(arms, { outcome, metric, assumedCorrelation }));
    expect(live.map(({ effect, noEffect }) => (effect ? [effect.y, effect.v] : noEffect))).toEqual(
      read.map(({ effects, excluded }) => (effects.length > 0 ? [effects[0].y, effects[0].v] : excluded[0].reason)),
    );
    expect(live.some(({ effect }) => effect !== null)).toBe(true);
  });

  it('stand before study, arm and exercise are named, and wait for what they rest on', () => {
    const state = createCurating();
    type(state, { n: '12', outcome: 'growth', baseline_mean: '40', baseline_sd: '6', followup_mean: '43' });
    expectWithin(firstRow(state).numbers?.effects[0].effect?.y ?? Number.NaN, Math.log(43 / 40), 1e-15, 'y');
    expect(state.reading.value.needed.map(({ column }) => column)).toContain('study');
    type(state, { n: 'twelve' });
    expect(firstRow(state).numbers).toBeNull();
    expect(firstRow(state).waitsFor).toEqual(['n']);
  });
});

describe('what is said of a study', () => {
  it.each<[string, Cells]>([
    ['a decimal comma', { baseline_sd: '6,3' }],
    ['an unknown word', { design: 'cross-over' }],
    ['markup in a name', { arm: '<b>' }],
    ['a range upside down', { reserve_reps: '2-1', attempted_failure: '' }],
    ['failure with a reserve', { reserve_reps: '2' }],
    ['an interval the wrong way round', { change_mean: '3', change_ci_low: '5', change_ci_high: '1' }],
    ['no change', { followup_mean: '', followup_sd: '' }],
    ['no year', { year: '' }],
    ['means that do not give the change', { change_mean: '9' }],
  ])('with %s is what the table’s readers say, word for word', (_what, cells) => {
    const state = formWith(cells);
    const { problems, needed, warnings } = state.reading.value;
    const table = readArms(makeTable([rowOf(cells)]), 'this page');
    const words = (list: readonly Parameters<typeof formatProblem>[0][]) => list.map(formatProblem).sort();
    expect(words([...problems, ...needed])).toEqual(words(table.problems));
    expect(words(warnings)).toEqual(words(table.warnings));
    expect(problems.length + needed.length + warnings.length).toBeGreaterThan(0);
  });

  it('comes as far as it can be read, and never of a cell that cannot', () => {
    const limits = { change_mean: '3', change_ci_low: '5', change_ci_high: '1' };
    const state = formWith({ ...limits, study: '', design: '', reserve_reps: 'two', reserve_sd: '1', change_sd: '14' });
    const { problems, needed, warnings } = state.reading.value;
    expect(needed.map(({ column }) => column)).toEqual(['study', 'design']);
    expect(problems.map(({ column }) => column)).toEqual(['reserve_reps', 'change_ci_high', 'change_mean']);
    expect(warnings.map(({ column }) => column)).toEqual(['change_sd']);
  });

  it('is said once, at the entry that it concerns, however many rows it is in', () => {
    const arms = ['to failure', 'short'].flatMap((arm) => [
      { arm, year: 'MMXII', attempted_failure: '', reserve_reps: '' },
      { arm, year: 'MMXII', attempted_failure: '', reserve_reps: '', measure: 'cross-sectional area', unit: 'cm2' },
    ]);
    const state = formWith(...arms);
    expect(state.reading.value.rows).toHaveLength(4);
    expect(state.reading.value.problems.map(({ place }) => place)).toEqual([{ of: 'study', column: 'year' }]);
    type(state, { followup_sd: '0' }, 1, 1);
    const { arms: ids, measures } = state.draft.value;
    expect(state.reading.value.problems.map(({ place }) => place)).toContainEqual({
      of: 'result',
      arm: ids[1].id,
      measure: measures[1].id,
      column: 'followup_sd',
    });
  });

  it('holds for facts before a number is entered, but asks for no number then', () => {
    const state = createCurating();
    expect(state.reading.value.needed).toEqual([]);
    type(state, { study: 'Stilt 2024', year: '24' });
    const { problems, needed } = state.reading.value;
    expect(problems.map(({ column }) => column)).toEqual(['year']);
    expect(needed.map(({ column }) => column)).toEqual(['design', 'arm', 'exercise', 'outcome', 'measure', 'arm']);
  });

  it('looks at the other studies, which are one table', () => {
    const state = formWith({});
    state.startNext();
    type(state, rowOf({ arm: 'another', year: '2013' }));
    expect(state.reading.value.problems.map(({ expected }) => expected)).toEqual([
      '2012, as line 2 says of study Plover 2012',
    ]);
    type(state, { arm: 'to failure', year: '2012' });
    expect(state.reading.value.problems.map(({ kind, place }) => [kind, place.column])).toEqual([
      ['duplicate', 'measure'],
    ]);
  });
});
