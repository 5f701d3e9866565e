/** What is possible but unusual in a table: warnings that a curator should look at. */
import { toPercent } from '../numerics/percent.ts';
import { computeEffects } from './effects.ts';
import { findLookAlikes } from './lookAlike.ts';
import type { Problem } from './problem.ts';
import { loadsWithMean, meanRepetitions } from './repetitions.ts';
import type { Arm } from './schema.ts';
import { quoteCells } from './selfCheck.ts';
import { findUnsharedCohorts } from './sharedCohorts.ts';
import { OUTCOMES } from './vocabulary.ts';
import { writeCell } from './writeTable.ts';

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
/** The greatest load with a published mean; heavier ones allow no more repetitions. */
const HEAVIEST_PUBLISHED = loadsWithMean('bench press').to;
/** Stands in where what is asked for, the distance from other rows, hardly depends on it. */
const ANY_CORRELATION = 0.5;
/** Per cent beyond which a change is told as “more than”. */
const MOST_PERCENT = 1e6;

/** Warnings for the rows of a table, in no order. */
export function findUnusual(arms: readonly Arm[], file: string): Problem[] {
  return [
    ...arms.flatMap((arm) => checkRepetitions(arm, file)),
    ...farEffects(arms, file),
    ...findUnsharedCohorts(arms, file),
    ...findLookAlikes(arms, file),
  ];
}

/** Repetitions and reserve, or the one of them that is known, above what a load allows. */
function checkRepetitions(arm: Arm, file: string): Problem[] {
  const { load_pct_1rm: load, reps_per_set: repetitions, reserve_reps: reserve } = arm;
  if (load === null) return [];
  const published = Math.min(load, HEAVIEST_PUBLISHED);
  const possible = meanRepetitions(published);
  const total = (repetitions ?? 0) + (reserve ?? 0);
  if (possible === null || total <= FAR_REPETITIONS.factor * possible + FAR_REPETITIONS.more) return [];
  const known = (['load_pct_1rm', 'reps_per_set', 'reserve_reps'] as const).filter((name) => arm[name] !== null);
  const column = reserve === null ? 'reps_per_set' : 'reserve_reps';
  const what =
    reserve === null ? 'repetitions' : repetitions === null ? 'a reserve' : 'repetitions and reserve together';
  return [
    warn(
      arm,
      file,
      column,
      writeCell(arm[column]),
      `${what} near the ${possible.toFixed(0)} usually possible at ${published} % of 1RM, not ${total}`,
      `Check ${quoteCells(arm, known)}.`,
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
          `a change of ${writeChange(y)}`,
          `a change within ${FAR_EFFECT_SDS} SDs of the other ${outcome} rows`,
          'Check means and units.',
        ),
      ];
    });
  });
}

function writeChange(logRatio: number): string {
  const percent = toPercent(logRatio);
  return percent > MOST_PERCENT ? `more than ${MOST_PERCENT.toLocaleString('en')} %` : `${percent.toFixed(1)} %`;
}

function warn(arm: Arm, file: string, column: string | null, value: string, expected: string, remedy: string): Problem {
  return { kind: 'unusual', file, line: arm.line, column, value, expected, remedy };
}
