/** Tables of study arms around a known truth, for measuring what is foretold of planned studies. */
import { ARM_COLUMNS, type Arm } from '../../src/evidence/schema.ts';
import { SCATTER } from '../../src/model/coverage.ts';
import { type Layout, type SimulatedTable, simulateGrowth } from '../../src/model/simulation.ts';
import { TRUTHS } from '../../src/model/truths.ts';
import { makeRandom } from '../../src/numerics/random.ts';

/** Load of every arm, per cent of 1RM: all loads are one band. */
const LOAD = 50;
const EMPTY_ROW = Object.fromEntries(Object.keys(ARM_COLUMNS).map((column) => [column, null]));

/** A table of so many studies. */
export function drawTable(truth: keyof typeof TRUTHS, layout: Layout, studies: number, seed: number): readonly Arm[] {
  return toArms(simulateGrowth(TRUTHS[truth], SCATTER, layout, studies, makeRandom(seed)));
}

/** Simulated effects as rows that print them ready-made. */
export function toArms({ observations, reserves }: Pick<SimulatedTable, 'observations' | 'reserves'>): readonly Arm[] {
  return observations.map(
    ({ study, cohort, y, v }, i) =>
      ({
        ...EMPTY_ROW,
        line: i + 2,
        study,
        year: 2000,
        design: 'parallel',
        arm: cohort ?? `row ${i}`,
        cohort,
        exercise: 'any',
        load_pct_1rm: LOAD,
        reserve_reps: reserves[i],
        outcome: 'growth',
        measure: 'muscle thickness',
        effect: y,
        effect_variance: v,
        effect_metric: 'log-ratio',
      }) as unknown as Arm,
  );
}
