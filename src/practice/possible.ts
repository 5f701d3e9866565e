/**
 * Repetitions possible at a load for any exercise. Where an exercise has no published relation of its
 * own at that load, the bench press stands in for it and the result says so; the leg press allows
 * more repetitions than that (Nuzzo et al. 2024, see evidence/repetitions.ts).
 */
import {
  loadForRepetitions,
  loadsWithMean,
  loadsWithSpread,
  meanRepetitions,
  type Relation,
  spreadOfRepetitions,
} from '../evidence/repetitions.ts';

const STAND_IN: Relation = 'bench press';
/** Per cent of 1RM at which one repetition is possible, by definition of 1RM. */
export const ONE_REPETITION_MAXIMUM = 100;

/** Loads with a published mean that are asked for, per cent of 1RM: below 20 % over 100 repetitions are possible. */
export const LOAD_RANGE = { from: 20, to: 95 } as const;
/** Repetitions possible at the ends of that range, whole numbers. */
export const POSSIBLE_REPETITIONS = { from: 3, to: 100 } as const;
/** Whole repetitions for which a load is published at all. */
export const PUBLISHED_REPETITIONS = { from: 3, to: 127 } as const;

export interface Possible {
  /** Mean over people. */
  readonly mean: number;
  /** SD between people; null outside the loads for which it is published. */
  readonly sd: number | null;
  /** Exercise whose relation was read. */
  readonly relation: Relation;
  /** True where that is not the exercise's own. */
  readonly standsIn: boolean;
}

/**
 * @param load per cent of 1RM
 * @param relation of the exercise; null where it has none
 * @returns null where nothing is published for the load
 */
export function possibleAt(load: number, relation: Relation | null): Possible | null {
  const sd = spreadOfRepetitions(load);
  const own = relation === null ? null : meanRepetitions(load, relation);
  if (relation !== null && own !== null) return { mean: own, sd, relation, standsIn: false };
  const mean = meanRepetitions(load, STAND_IN);
  return mean === null ? null : { mean, sd, relation: STAND_IN, standsIn: true };
}

export interface LoadForPossible {
  /** Per cent of 1RM. */
  readonly load: number;
  /** Exercise whose relation was read. */
  readonly relation: Relation;
  /** Why it is not the load at which so many are possible, as a clause; null where it is. */
  readonly bound: string | null;
}

/**
 * Load at which so many repetitions are possible on average; null where none is published. Where another exercise’s
 * would be a load at which the exercise itself allows more, its own heaviest load is the nearest that is known.
 */
export function loadForPossible(repetitions: number, relation: Relation | null): LoadForPossible | null {
  const own = relation === null ? null : loadForRepetitions(repetitions, relation);
  if (relation !== null && own !== null) return { load: own, relation, bound: null };
  const load = loadForRepetitions(repetitions, STAND_IN);
  if (load === null) return null;
  const allowed = relation === null ? null : meanRepetitions(load, relation);
  if (relation === null || allowed === null) return { load, relation: STAND_IN, bound: null };
  const { from, to } = loadsWithMean(relation);
  const [nearest, word, heaviness] = allowed > repetitions ? [to, 'fewer', 'heaviest'] : [from, 'more', 'lightest'];
  const most = meanRepetitions(nearest, relation) ?? Number.NaN;
  return {
    load: nearest,
    relation,
    bound: `no ${word} than about ${most.toFixed(0)} possible repetitions are published for the ${relation}, so that its ${heaviness} load at hand, ${nearest}\u00a0%, stands for ${repetitions}`,
  };
}

/**
 * Repetitions that are not exceeded on average at a load: those possible there, above the published loads those of the
 * heaviest, and at 1RM the one that it is.
 *
 * @returns null below the published loads, where more are possible than any advice asks for
 */
export function boundOfPossible(load: number, relation: Relation | null): Possible | null {
  if (load >= ONE_REPETITION_MAXIMUM) return { mean: 1, sd: 0, relation: relation ?? STAND_IN, standsIn: false };
  return possibleAt(load, relation) ?? (load > LOAD_RANGE.to ? possibleAt(LOAD_RANGE.to, relation) : null);
}

/** Most whole repetitions that a set can leave, since one has to be done. */
export function mostReserve({ mean }: Possible): number {
  return Math.floor(mean) - 1;
}

/** “At this load no more than about 2.6 repetitions are possible on average: no set leaves 3 in reserve.” */
export function refuseReserve(possible: Possible, reserve: number): string {
  return `At this load ${statePossible(possible)}: no set leaves ${reserve} in reserve.`;
}

export function statePossible({ mean }: Possible): string {
  return `no more than about ${mean.toFixed(1)} repetitions are possible on average`;
}

/** With its source: “About 9 repetitions are possible on average, 6 to 11 for about two people in three (published for …).” */
export function statePossibleInFull(possible: Possible): string {
  const { relation, standsIn } = possible;
  const { from, to } = loadsWithSpread('leg press');
  const whose = standsIn
    ? `published for the ${relation}, which stands in here; in the leg press more are possible (at hand from ${from} to ${to}\u00a0%)`
    : `published for the ${relation}`;
  return `${beginPossible(possible)} (${whose}).`;
}

/** The same for a lifter, who trains one exercise and is told of no other: that one stands in is said without its name. */
export function statePossibleForLifter(possible: Possible): string {
  const whose = possible.standsIn ? ' (not published for this exercise: those of another stand in)' : '';
  return `${beginPossible(possible)}${whose}.`;
}

/** “published for the bench press; squat and leg curl may differ”: whose numbers they are, and of whom that is not known. */
export function statePublishedFor(
  { relation, standsIn }: Pick<Possible, 'relation' | 'standsIn'>,
  who = 'this exercise',
): string {
  return `published for the ${relation}${standsIn ? `; ${who} may differ` : ''}`;
}

function beginPossible({ mean, sd }: Possible): string {
  const spread =
    sd === null
      ? '; the spread between people is not published for this load'
      : `, ${Math.max(0, mean - sd).toFixed(0)} to ${(mean + sd).toFixed(0)} for about two people in three`;
  return `About ${mean.toFixed(0)} repetitions are possible on average${spread}`;
}
