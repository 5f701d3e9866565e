/** What is possible but unusual in a table: warnings that a curator should look at. */
import { toPercent } from '../numerics/percent.ts';
import { computeEffects } from './effects.ts';
import type { Problem } from './problem.ts';
import { correlationFromSds } from './recover.ts';
import { meanRepetitions } from './repetitions.ts';
import type { Arm, ArmColumn } from './schema.ts';
import { resolveStatistics } from './statistics.ts';
import { OUTCOMES } from './vocabulary.ts';

/** A row this many SDs from the other rows of its outcome is unusual. */
const FAR_EFFECT_SDS = 4;
/** Rows an outcome needs before one of them can be called unusual. */
const LEAST_ROWS = 10;
/**
 * Reserve plus repetitions are far above what a load allows beyond this multiple of the published mean
 * and so many more: some three published SDs between people above it from 60 to 90 % of 1RM, more with
 * lighter loads (rule of thumb, no source).
 */
const FAR_REPETITIONS = { factor: 1.6, more: 2 } as const;
/** Stands in where what is asked for (distance from other rows, SD of the change) does not depend on it. */
const ANY_CORRELATION = 0.5;
/** Columns that say how much the change varied, in the order in which they are taken. */
const SPREADS_OF_CHANGE = [
  'change_sd',
  'change_se',
  'change_ci_low',
  'change_t',
  'change_p',
] as const satisfies readonly ArmColumn[];

/** Warnings for the rows of a table, in no order. */
export function findUnusual(arms: readonly Arm[], file: string): Problem[] {
  return [
    ...arms.flatMap((arm) => checkCorrelation(arm, file)),
    ...arms.flatMap((arm) => checkChange(arm, file)),
    ...arms.flatMap((arm) => checkRepetitions(arm, file)),
    ...farEffects(arms, file),
  ];
}

function checkCorrelation(arm: Arm, file: string): Problem[] {
  if (arm.baseline_sd === null || arm.followup_sd === null) return [];
  const { changeSd } = resolveStatistics(arm, ANY_CORRELATION);
  if (changeSd === null) return [];
  const implied = correlationFromSds(arm.baseline_sd, arm.followup_sd, changeSd);
  if (implied >= 0 && implied <= 1) return [];
  const column = SPREADS_OF_CHANGE.find((name) => arm[name] !== null) ?? 'change_sd';
  return [
    warn(
      arm,
      file,
      column,
      String(arm[column]),
      `SDs that imply a correlation from 0 to 1, not ${implied.toFixed(2)}`,
      'Check the three SDs; a standard error may stand in for one of them.',
    ),
  ];
}

/** Means before and after, and the mean change, that differ by more than the rounding of the three. */
function checkChange(arm: Arm, file: string): Problem[] {
  const { baseline_mean: before, followup_mean: after, change_mean: change } = arm;
  if (before === null || after === null || change === null) return [];
  const decimals = Math.min(...[before, after, change].map(decimalsOf));
  // Half a unit of the last digit for each of the three numbers; a hair for binary fractions.
  const rounding = 1.5 * 10 ** -decimals + 1e-9;
  if (Math.abs(after - before - change) <= rounding) return [];
  return [
    warn(
      arm,
      file,
      'change_mean',
      String(change),
      `a change of ${(after - before).toFixed(decimals)}, the mean after minus the mean before`,
      'Means are used before the mean change; correct one of the three, or say in the note why they differ.',
    ),
  ];
}

function decimalsOf(value: number): number {
  return String(value).split('.')[1]?.length ?? 0;
}

function checkRepetitions(arm: Arm, file: string): Problem[] {
  if (arm.load_pct_1rm === null || arm.reps_per_set === null || arm.reserve_reps === null) return [];
  const possible = meanRepetitions(arm.load_pct_1rm);
  const total = arm.reps_per_set + arm.reserve_reps;
  if (possible === null || total <= FAR_REPETITIONS.factor * possible + FAR_REPETITIONS.more) return [];
  return [
    warn(
      arm,
      file,
      'reserve_reps',
      String(arm.reserve_reps),
      `repetitions and reserve together near the ${possible.toFixed(0)} usually possible at ${arm.load_pct_1rm} % of 1RM, not ${total}`,
      'Check load, repetitions and reserve.',
    ),
  ];
}

/** Distance of each effect from the mean of the others, in the others' SD. */
function farEffects(arms: readonly Arm[], file: string): Problem[] {
  return OUTCOMES.flatMap((outcome) => {
    const { effects } = computeEffects(arms, { outcome, metric: 'log-ratio', assumedCorrelation: ANY_CORRELATION });
    if (effects.length < LEAST_ROWS) return [];
    const count = effects.length - 1;
    const mean = effects.reduce((total, { y }) => total + y, 0) / effects.length;
    const squares = effects.reduce((total, { y }) => total + (y - mean) ** 2, 0);
    return effects.flatMap(({ arm, y }) => {
      const deviation = (y - mean) * (effects.length / count);
      // Where the others are all equal the difference may come out a rounding below 0.
      const othersSquares = Math.max(0, squares - ((y - mean) ** 2 * effects.length) / count);
      const sd = Math.sqrt(othersSquares / (count - 1));
      if (!(Math.abs(deviation) > FAR_EFFECT_SDS * sd)) return [];
      return [
        warn(
          arm,
          file,
          null,
          `a change of ${toPercent(y).toFixed(1)} %`,
          `a change within ${FAR_EFFECT_SDS} SDs of the other ${outcome} rows`,
          'Check means and units.',
        ),
      ];
    });
  });
}

function warn(arm: Arm, file: string, column: string | null, value: string, expected: string, remedy: string): Problem {
  return { kind: 'unusual', file, line: arm.line, column, value, expected, remedy };
}
