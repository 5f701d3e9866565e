/**
 * Whether repetitions done and left together fit a load: a question to whoever wrote them, never a
 * refusal, since people differ.
 *
 * Repetitions possible at a load are taken as normal between people, with the published mean m and SD s
 * (evidence/repetitions.ts). Of people who lift the load,
 *
 *     1 − Φ((total − m) / s) could do the total or more,     Φ((total − m) / s) could do no more.
 *
 * Above the loads with a published spread the spread at the heaviest of them stands in as an upper bound,
 * and the share is not told; at 1RM one repetition is possible by definition. Below them nothing is said.
 *
 * Where whoever wrote the set says how many are possible, more than that are asked about first: of this lifter that is
 * known best.
 */
import { loadsWithSpread, type Relation, spreadOfRepetitions } from '../evidence/repetitions.ts';
import { countOf } from '../numerics/countOf.ts';
import { normalShareBelow } from '../numerics/normalShare.ts';
import { boundOfPossible, ONE_REPETITION_MAXIMUM, type Possible, possibleAt, statePublishedFor } from './possible.ts';

/** Between-person SDs beyond which a total is asked about: about 1 person in 44 on either side. */
const UNUSUAL_SDS = 2;
/** Repetitions by which done and left may miss those that a line says are possible: both are counted in whole ones. */
const ROUNDED = 1;
/** Smallest share that is told as a number: further out the normal distribution is not known to hold. */
const LEAST_SHARE = 0.001;

export type Plausibility =
  | { readonly kind: 'usual' }
  /** Nothing is published by which the load could be judged. */
  | { readonly kind: 'not known'; readonly reason: string }
  | {
      readonly kind: 'too many' | 'too few';
      /** Repetitions done and left together. */
      readonly total: number;
      /** Repetitions on average, the same ± 2 SD, and whose they are, completing “expected …”. */
      readonly expected: string;
      /** Share of people who could do so many, or could do no more, 0–1; null where it cannot be told. */
      readonly share: number | null;
      /** How unusual that is, as a sentence. */
      readonly unusual: string;
    };

/** The set that is asked about. */
export interface AskedSet {
  /** Per cent of 1RM, above 0 and up to 100. */
  readonly load: number;
  readonly repetitions: number;
  /** Repetitions in reserve. */
  readonly reserve: number;
  /** Repetitions possible, as the set itself gives them; null where it does not. */
  readonly possible: number | null;
  /** Published relation of the exercise; null where it has none. */
  readonly relation: Relation | null;
}

export function judgePlausibility({ possible, ...asked }: AskedSet): Plausibility {
  const total = asked.repetitions + asked.reserve;
  if (possible !== null && total > possible + ROUNDED) return besideGiven('too many', total, possible);
  const published = judgeByPublished(asked.load, total, asked.relation);
  const isAsked = published.kind === 'too many' || published.kind === 'too few';
  if (possible !== null && total < possible - ROUNDED && !isAsked) return besideGiven('too few', total, possible);
  return published;
}

/** “Are 20 repetitions with 2 left at 80 % of 1RM right? …”; null where nothing is to be asked. */
export function askAbout(asked: AskedSet, plausibility: Plausibility = judgePlausibility(asked)): string | null {
  if (plausibility.kind === 'usual' || plausibility.kind === 'not known') return null;
  const { load, repetitions, reserve } = asked;
  const set = `${countOf(repetitions, 'repetition')} with ${short(reserve)} left at ${short(load)}\u00a0% of 1RM`;
  return `Is the set right: ${set}? Expected: ${plausibility.expected}. ${plausibility.unusual}`;
}

function besideGiven(kind: 'too many' | 'too few', total: number, possible: number): Plausibility {
  return {
    kind,
    total,
    expected: `about the ${short(possible)} possible together, as the line gives them`,
    share: null,
    unusual: 'Look at repetitions, reserve and those possible.',
  };
}

function judgeByPublished(load: number, total: number, relation: Relation | null): Plausibility {
  if (load >= ONE_REPETITION_MAXIMUM) return total > 1 ? beyondMaximum(load, total) : { kind: 'usual' };
  const possible = possibleAt(load, relation);
  if (possible && possible.sd !== null) return judgeBySpread(load, total, possible, possible.sd);
  const { from, to } = loadsWithSpread('bench press');
  if (load < from) {
    return {
      kind: 'not known',
      reason: `how far people differ in repetitions is not published below ${from}\u00a0% of 1RM`,
    };
  }
  return judgeByBound(load, total, boundOfPossible(load, relation), spreadOfRepetitions(to));
}

function beyondMaximum(load: number, total: number): Plausibility {
  return {
    kind: 'too many',
    total,
    expected: `one repetition at ${short(load)} % of 1RM`,
    share: 0,
    unusual: '1RM is by definition the load that can be lifted once.',
  };
}

function judgeBySpread(load: number, total: number, possible: Possible, sd: number): Plausibility {
  const distance = (total - possible.mean) / sd;
  if (Math.abs(distance) <= UNUSUAL_SDS) return { kind: 'usual' };
  const share = normalShareBelow(-Math.abs(distance));
  const kind = distance > 0 ? 'too many' : 'too few';
  const give = `, give or take ${(UNUSUAL_SDS * sd).toFixed(0)}`;
  return {
    kind,
    total,
    expected: `${statePublished(load, possible)}${give} (${statePublishedFor(possible)})`,
    share,
    unusual: `${writeShare(share)} could do ${kind === 'too many' ? 'so many' : 'no more'} at this load.`,
  };
}

/** Only too many can be asked about where no more than the bound are possible, in an unpublished spread. */
function judgeByBound(load: number, total: number, bound: Possible | null, sd: number | null): Plausibility {
  if (!bound || sd === null) {
    return { kind: 'not known', reason: `no repetitions are published for ${short(load)}\u00a0% of 1RM` };
  }
  if (total <= bound.mean + UNUSUAL_SDS * sd) return { kind: 'usual' };
  return {
    kind: 'too many',
    total,
    expected: `no more than ${statePublished(load, bound)} (${statePublishedFor(bound)})`,
    share: null,
    unusual: 'How few people could do so many is not published for loads this heavy.',
  };
}

function statePublished(load: number, { mean }: Possible): string {
  return `about ${mean.toFixed(0)} possible at ${load.toFixed(0)} % of 1RM`;
}

function writeShare(share: number): string {
  if (share < LEAST_SHARE) return 'Fewer than 1 person in 1,000';
  return `About 1 person in ${Math.round(1 / share)}`;
}

function short(value: number): string {
  return String(Number(value.toFixed(1)));
}
