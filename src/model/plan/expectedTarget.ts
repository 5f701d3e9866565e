/**
 * What is expected of an interval whose study is still to be done: the medians over the outcomes that the study may
 * have.
 *
 * An outcome gives a target with an upper end, one without, or none. Of those with a target the medians of estimate,
 * lower end, upper end and width are taken, an interval without an upper end counting as wider than any other; so a
 * width is a number only where more outcomes than not have one. The least reserve is 0: an interval that begins there
 * is as wide as from 0 to its upper end. Medians and not means, since a single outcome without an end would make a mean
 * endless; each is of its own, so that the median width need not be the distance of the median ends. Working model and
 * simulation are summed up by the same functions.
 */
import type { KeptShare } from '../keptShare.ts';
import type { Target } from '../result.ts';
import type { WholeRange } from '../wholeRepetitions.ts';

/** Repetitions in reserve. */
export interface ExpectedTarget {
  /** Medians over the outcomes with a target; null where more than half of all outcomes have none. */
  readonly point: number | null;
  readonly low: number | null;
  /** null also where at least half of these set no upper end. */
  readonly high: number | null;
  readonly width: number | null;
  /** Why the width is null; null where it is a number. */
  readonly widthMissing: 'no-target' | 'no-upper-end' | null;
  /** Shares of all outcomes, 0 to 1: no target; a target whose interval has no upper end. */
  readonly refused: number;
  readonly unbounded: number;
}

/** The growth kept at a reserve as a share of that at 0; 1 is all of it. */
export interface ExpectedKept {
  readonly reserve: number;
  readonly estimate: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly width: number | null;
  readonly widthMissing: 'no-growth' | 'no-end' | null;
  /**
   * Share of all outcomes in which growth at 0 is not distinguishable from nothing, so that there is no share of it.
   */
  readonly refused: number;
}

/** Whole repetitions to tell, with the share of outcomes that would tell them; null stands for no target. */
export interface WholeShare {
  readonly whole: WholeRange | null;
  readonly share: number;
}

export type TargetOutcome = Pick<Target, 'point' | 'low' | 'high' | 'whole'>;

/** @param outcomes one at least */
export function expectTarget(outcomes: readonly TargetOutcome[]): ExpectedTarget {
  const given = outcomes.flatMap(({ point, low, high }) =>
    point === null || low === null ? [] : [{ middle: point, low, high: high ?? Number.POSITIVE_INFINITY }],
  );
  const { middle: point, ...medians } = summarise(given, outcomes.length, ['no-target', 'no-upper-end']);
  const unbounded = given.filter(({ high }) => high === Number.POSITIVE_INFINITY).length / outcomes.length;
  return { point, ...medians, unbounded };
}

/** @param outcomes one at least; null where growth at 0 is not distinguishable from nothing */
export function expectKept(reserve: number, outcomes: readonly (KeptShare | null)[]): ExpectedKept {
  const given = outcomes.flatMap((one) =>
    one
      ? [
          {
            middle: one.estimate,
            low: one.low ?? Number.NEGATIVE_INFINITY,
            high: one.high ?? Number.POSITIVE_INFINITY,
          },
        ]
      : [],
  );
  const { middle: estimate, ...medians } = summarise(given, outcomes.length, ['no-growth', 'no-end']);
  return { reserve, estimate, ...medians };
}

/**
 * Medians of the intervals that outcomes give; none where more than half of all outcomes give none.
 *
 * @param missing what a width is missing for: an interval, or an end of it
 */
function summarise<None extends string, Endless extends string>(
  given: readonly { readonly middle: number; readonly low: number; readonly high: number }[],
  outcomes: number,
  [none, endless]: readonly [None, Endless],
) {
  const refused = 1 - given.length / outcomes;
  const told = refused > 0.5 ? [] : given;
  const width = finiteMedian(told.map(({ low, high }) => high - low));
  const widthMissing = width === null ? (told.length === 0 ? none : endless) : null;
  return {
    middle: finiteMedian(told.map(({ middle }) => middle)),
    low: finiteMedian(told.map(({ low }) => low)),
    high: finiteMedian(told.map(({ high }) => high)),
    width,
    widthMissing,
    refused,
  };
}

/** Whole repetitions by how often they come out, the most frequent first. */
export function shareWholes(outcomes: readonly TargetOutcome[]): readonly WholeShare[] {
  const counts = new Map<string, { readonly whole: WholeRange | null; count: number }>();
  for (const { whole } of outcomes) {
    const known = counts.get(keyOf(whole));
    if (known) known.count++;
    else counts.set(keyOf(whole), { whole, count: 1 });
  }
  return [...counts]
    .sort(([a, { count: m }], [b, { count: n }]) => n - m || (a < b ? -1 : 1))
    .map(([, { whole, count }]) => ({ whole, share: count / outcomes.length }));
}

/**
 * Share of outcomes that would tell something else than is told today; to tell nothing is something else than to tell a
 * number.
 */
export function chanceOfMove(today: WholeRange | null, wholes: readonly WholeShare[]): number {
  return wholes.reduce((sum, { whole, share }) => (keyOf(whole) === keyOf(today) ? sum : sum + share), 0);
}

function keyOf(whole: WholeRange | null): string {
  return whole ? `${whole.least}-${whole.most}` : '';
}

/** The middle of the values; null where it is not finite, or there are none. */
function finiteMedian(values: readonly number[]): number | null {
  const sorted = Float64Array.from(values).sort();
  const [below, above] = [sorted[(sorted.length - 1) >> 1], sorted[sorted.length >> 1]];
  return Number.isFinite(below) && Number.isFinite(above) ? (below + above) / 2 : null;
}
