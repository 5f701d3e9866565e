/**
 * Repetitions possible at a load: published mean and spread between people, for the bench press and,
 * as far as it is at hand, the leg press. The numbers, their source and how each is known stand in
 * data/repetitions.json (Nuzzo, Pinto, Nosaka & Steele 2024, Sports Med 54:303).
 *
 * Means are joined by straight lines, so that more load never allows more repetitions and the way
 * back is exact. Nothing is said outside the published points.
 */
import published from '../../data/repetitions.json' with { type: 'json' };

/** Exercises whose relation of repetitions to load is published. */
export const RELATIONS = ['bench press', 'leg press'] as const;
/** As a sentence names it; in full, with how each number is known, in data/repetitions.json. */
export const REPETITIONS_SOURCE = 'Nuzzo et al. 2024, read second-hand';
export type Relation = (typeof RELATIONS)[number];

export interface RepetitionsPossible {
  readonly mean: number;
  /** Between-person SD. */
  readonly sd: number;
}

type Point = readonly [load: number, value: number];

const { from_pct_1rm: SPREAD_FROM, to_pct_1rm: SPREAD_TO } = published.between_person_sd;
const [SPREAD_AT_LOW, SPREAD_AT_HIGH] = published.between_person_sd.sd_at_pct_1rm.map(toPoint);
const MEANS: Readonly<Record<Relation, readonly Point[]>> = {
  'bench press': published.relations['bench press'].mean_repetitions_at_pct_1rm.map(toPoint),
  'leg press': published.relations['leg press'].mean_repetitions_at_pct_1rm.map(toPoint),
};

/** Repetitions possible at a load; null where the mean or its spread (40–90 % of 1RM) is not published. */
export function repetitionsAtLoad(load: number, relation: Relation = 'bench press'): RepetitionsPossible | null {
  const mean = meanRepetitions(load, relation);
  const sd = spreadOfRepetitions(load);
  return mean === null || sd === null ? null : { mean, sd };
}

/** Loads, per cent of 1RM, for which both the mean and its spread are published. */
export function loadsWithSpread(relation: Relation): { readonly from: number; readonly to: number } {
  const { from, to } = loadsWithMean(relation);
  return { from: Math.max(SPREAD_FROM, from), to: Math.min(SPREAD_TO, to) };
}

/** Loads, per cent of 1RM, for which the mean is published. */
export function loadsWithMean(relation: Relation): { readonly from: number; readonly to: number } {
  const loads = MEANS[relation].map(([load]) => load);
  return { from: loads[0], to: loads[loads.length - 1] };
}

/** Mean repetitions possible; null outside the published loads (bench press 15–95 %, leg press 70–80 %). */
export function meanRepetitions(load: number, relation: Relation = 'bench press'): number | null {
  for (const [low, high] of segmentsOf(relation)) {
    if (load >= low[0] && load <= high[0]) return join(low, high, load);
  }
  return null;
}

/** SD between people of the repetitions possible, 40–90 % of 1RM; null outside. */
export function spreadOfRepetitions(load: number): number | null {
  return load >= SPREAD_FROM && load <= SPREAD_TO ? join(SPREAD_AT_LOW, SPREAD_AT_HIGH, load) : null;
}

/** Load at which a mean number of repetitions is possible, the inverse of `meanRepetitions`; null outside. */
export function loadForRepetitions(repetitions: number, relation: Relation = 'bench press'): number | null {
  for (const [low, high] of segmentsOf(relation)) {
    if (repetitions <= low[1] && repetitions >= high[1]) return join(swap(low), swap(high), repetitions);
  }
  return null;
}

/** Value at `x` on the line through two points. */
function join([x0, y0]: Point, [x1, y1]: Point, x: number): number {
  if (x === x1) return y1;
  return y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
}

function segmentsOf(relation: Relation): (readonly [Point, Point])[] {
  const points = MEANS[relation];
  return points.slice(1).map((point, i) => [points[i], point]);
}

function swap([load, repetitions]: Point): Point {
  return [repetitions, load];
}

function toPoint([load, value]: readonly number[]): Point {
  return [load, value];
}
