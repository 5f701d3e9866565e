/** Cells of a row's design that are empty, from what the paper prints in their place: a total, a range, an RM, a share. */
import type { CellRange, Derived } from './column.ts';
import { loadForRepetitions, meanRepetitions, spreadOfRepetitions } from './repetitions.ts';
import { reserveFromShare } from './reserve.ts';
import type { Arm, ArmColumn } from './schema.ts';
import { wentBeyondFailure } from './vocabulary.ts';

/** SD of a number that lies anywhere in a range with the same chance, in widths of the range. */
const UNIFORM_SD = 1 / Math.sqrt(12);

/** More decimals than any paper prints: 34.4 − 19.6 is 14.8, without what the two are off as binary numbers. */
const PRINTED_DECIMALS = 9;

/** The row with the cells that others give, each listed in `derived`; the row itself where nothing was to be filled. */
export function deriveDesign(arm: Arm): Arm {
  const derived = [deriveN(arm), deriveLoad(arm), ...deriveReserve(arm)].filter((cell) => cell !== null);
  if (derived.length === 0) return arm;
  return { ...arm, ...Object.fromEntries(derived.map(({ column, value }) => [column, value])), derived };
}

/** True where a cell is not from the paper but filled on an assumption. */
export function isEstimated({ derived }: Pick<Arm, 'derived'>, column: ArmColumn): boolean {
  return derived?.some((cell) => cell.column === column && cell.restsOn === 'assumed') ?? false;
}

/** An equal share of a total over arms, rounded down. */
function deriveN({ n, n_total: total, n_total_arms: arms }: Arm): Derived | null {
  if (n !== null || total === null || arms === null) return null;
  const value = Math.floor(total / arms);
  if (value < 2) return null;
  return { column: 'n', value, sd: null, how: `an equal share of ${total} over ${arms} arms`, restsOn: 'assumed' };
}

/** The load at which the RM is possible on average; its SD from that of repetitions between people and the range's width. */
function deriveLoad(arm: Arm): Derived | null {
  const { load_pct_1rm: given, load_rm: rm, ranges } = arm;
  if (given !== null || rm === null) return null;
  const value = loadForRepetitions(rm);
  if (value === null) return null;
  const how = `${writeRm(rm, ranges?.load_rm)} by the published repetitions in the bench press`;
  return { column: 'load_pct_1rm', value, sd: spreadOfLoad(value, ranges?.load_rm), how, restsOn: 'assumed' };
}

/** Per cent of 1RM over which the relation's slope at a load is taken. */
const SLOPE_STEP = 1;

function spreadOfLoad(load: number, range: CellRange | undefined): number | null {
  const sd = spreadOfRepetitions(load);
  const [fewer, more] = [meanRepetitions(load + SLOPE_STEP), meanRepetitions(load - SLOPE_STEP)];
  if (sd === null || fewer === null || more === null) return null;
  const perRepetition = (2 * SLOPE_STEP) / (more - fewer);
  return perRepetition * Math.hypot(sd, range ? (range.high - range.low) * UNIFORM_SD : 0);
}

function writeRm(rm: number, range: CellRange | undefined): string {
  return range ? `the middle of ${range.low} to ${range.high} RM` : `${rm} RM`;
}

/** The reserve from repetitions possible, and the SD of one that is printed as a range. */
function deriveReserve(arm: Arm): readonly (Derived | null)[] {
  const { reserve_reps: given, reserve_sd: sd, ranges } = arm;
  if (given !== null) {
    const range = ranges?.reserve_reps;
    if (sd !== null || !range) return [];
    const value = (range.high - range.low) * UNIFORM_SD;
    const how = `the width of ${range.low} to ${range.high} / √12: every reserve in it as likely`;
    return [{ column: 'reserve_sd', value, sd: null, how, restsOn: 'assumed' }];
  }
  const { reps_possible: possible, reps_per_set: done, share_of_maximum_pct: share } = arm;
  // Of sets to failure the difference of two means is no reserve.
  if (possible === null || arm.attempted_failure === true || wentBeyondFailure(arm)) return [];
  if (share !== null) {
    const { mean, how } = reserveFromShare(share / 100, possible, 0);
    return mean === null ? [] : [{ column: 'reserve_reps', value: mean, sd: null, how, restsOn: 'recovered' }];
  }
  if (done === null) return [];
  // Means of sets may be off by a fraction of a repetition; what is far above the possible is a problem of the row.
  const value = Math.max(0, Number((possible - done).toFixed(PRINTED_DECIMALS)));
  const how = `${possible} repetitions possible minus ${done} done with the same load`;
  return [{ column: 'reserve_reps', value, sd: null, how, restsOn: 'recovered' }];
}
