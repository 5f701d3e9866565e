/**
 * The range of whole repetitions to leave, for any purpose but a main lift of strength: what the
 * evidence gives, lowered by how much the lifter stops early, raised by safety and by an event, and
 * never more than a set at the load can leave.
 */

import type { PracticeAnalysis } from '../model/full.ts';
import type { Target } from '../model/result.ts';
import { LEAST_TARGET_STUDIES } from '../model/target.ts';
import type { WholeRange } from '../model/wholeRepetitions.ts';
import { countOf } from '../numerics/countOf.ts';
import { isUnguarded, LEAST_RESERVE_WHEN_PINNED } from './cautions.ts';
import { slowestRecovery } from './event.ts';
import { type Judgement, reallyLeft, sayAtLeast, sayTarget } from './judgement.ts';
import { boundOfPossible, mostReserve, type Possible, refuseReserve, statePossible } from './possible.ts';
import { judgeEvent, leastReserveInTime, writeHours } from './recovery.ts';
import type { Situation } from './situation.ts';
import { type SourcedTarget, targetNear } from './targetTable.ts';
import { tellLifter } from './tellLifter.ts';

export interface ChosenReserve {
  /** null where there is no number to follow. */
  readonly reserve: WholeRange | null;
  /** Why the range is not the evidence's own, a sentence each. */
  readonly adjustments: readonly string[];
  /** What to tell the lifter, or why there is no number. */
  readonly sentence: string;
}

/**
 * Studies that advice needs: one more than a target, so that a target is left whichever study proves to be wrong
 * (common practice, no source).
 */
export const LEAST_ADVICE_STUDIES = LEAST_TARGET_STUDIES + 1;

/** Rounding allowed where a whole number is meant. */
const SLACK = 1e-9;

/** Least reserve that may be said: 1 under an unguarded load that can pin, more for who overrates it. */
export function leastSafe(situation: Situation): number {
  if (!isUnguarded(situation)) return 0;
  const { bias, lowest = bias } = situation.judgement;
  return Math.ceil(LEAST_RESERVE_WHEN_PINNED + Math.max(0, -Math.min(bias, lowest)) - SLACK);
}

export function chooseReserve(
  analysis: PracticeAnalysis,
  situation: Situation,
  { target, studies }: SourcedTarget = targetNear(analysis, situation.load),
): ChosenReserve {
  const { load, exercise, judgement } = situation;
  const floor = leastSafe(situation);
  const fresh = situation.purpose === 'staying fresh' ? freshReserve(analysis, situation) : null;
  if (fresh && fresh.refusal !== null) return refuse(fresh.refusal, floor);
  const noTarget = whyNoTarget(target, studies);
  if (!fresh && noTarget !== null) return refuse(noTarget, floor);
  const bound = boundOfPossible(load, exercise.relation);
  const ceiling = bound ? mostReserve(bound) : Number.POSITIVE_INFINITY;
  const recovered = fresh?.least ?? 0;
  const needed = Math.max(floor, recovered);
  if (bound && needed > ceiling) {
    const instead = recovered > floor ? 'move the session' : 'set safety arms or have a spotter';
    return refuse(`${refuseReserve(bound, needed)} Take a lighter load, or ${instead}.`, floor > ceiling ? 0 : floor);
  }
  // An event that asks for nothing is no reason to go to failure: without a target nothing else gives a number.
  if (noTarget !== null && recovered === 0) return refuse(`The event asks for no reserve. ${noTarget}`, floor);
  const wanted = noTarget === null ? (sayTarget(target, judgement)?.whole ?? NONE_WANTED) : NONE_WANTED;
  // Staying fresh never asks for less than growth does.
  const least = Math.max(needed, wanted.least);
  const most = fresh?.isLate(wanted.most) ? least : Math.max(least, wanted.most);
  if (fresh?.isLate(least)) {
    const who = least === wanted.least ? 'Growth' : least === floor ? 'Safety' : null;
    const why =
      who === null || least === 0
        ? `As this lifter judges, recovery from sets with ${least} said to be in reserve is not expected before the event`
        : `${who} asks for at least ${least} in reserve, after which recovery is not expected before the event`;
    return refuse(`${why}: move the session, or leave it out.`, floor);
  }
  // Who stops early leaves more than is said: of that, too, no more than a set can leave.
  const sayable = bound ? Math.max(needed, mostToSay(bound, ceiling, judgement)) : ceiling;
  const reserve = { least: Math.min(least, sayable), most: Math.min(most, sayable) };
  const adjustments = [
    floor > wanted.least && floor >= least
      ? 'Raised for safety: this exercise can pin the lifter and nothing would take the load.'
      : null,
    fresh && recovered > wanted.least ? fresh.why : null,
    bound && most > sayable ? `Lowered to what a set at this load can leave: ${statePossible(bound)}.` : null,
  ].filter((one) => one !== null);
  return { reserve, adjustments, sentence: tellLifter(reserve) };
}

/** Why growth gives no number to follow; null where it does. */
function whyNoTarget({ whole }: Target, studies: number): string | null {
  if (whole === null) return 'This evidence gives no number to follow at this load.';
  if (studies >= LEAST_ADVICE_STUDIES) return null;
  return `This evidence gives no number to follow at this load: it rests on ${studies} studies, and at least ${LEAST_ADVICE_STUDIES} are asked for, so that a target is left without any one of them.`;
}

/** Most whole repetitions to say of which one at least is done by who judges so; 0 where even that leaves more. */
function mostToSay({ mean }: Possible, ceiling: number, judgement: Judgement): number {
  for (let said = ceiling; said > 0; said--) if (reallyLeft(said, judgement).mean <= mean - 1 + SLACK) return said;
  return 0;
}

/** Where growth asks for nothing that can be told. */
const NONE_WANTED: WholeRange = { least: 0, most: 0 };

/** No number to follow; what safety asks for holds all the same. */
function refuse(why: string, floor: number): ChosenReserve {
  const guard =
    floor > 0 ? ` Whatever the evidence, leave at least ${floor}: nothing would take the load off you.` : '';
  return { reserve: null, adjustments: [], sentence: `${why}${guard}` };
}

type Fresh =
  /** No session is recovered in time: what to do instead. */
  | { readonly refusal: string }
  | {
      readonly refusal: null;
      /** Fewest repetitions to say. */
      readonly least: number;
      readonly why: string;
      /** Whether recovery after sets at which so many are said is not expected in time. */
      readonly isLate: (said: number) => boolean;
    };

/** Plans backwards from the event, whose hours it needs. */
function freshReserve(analysis: PracticeAnalysis, { hoursToEvent, status, judgement }: Situation): Fresh {
  if (hoursToEvent === null) {
    return { refusal: 'Say how many hours there are to the event: staying fresh is planned backwards from it.' };
  }
  const { time, verdict, shortest } = leastReserveInTime(analysis.fatigue, status, hoursToEvent);
  if (!time) {
    const left = `${countOf(Number(hoursToEvent.toFixed(1)), 'hour is', 'hours are')} left`;
    return {
      refusal: shortest
        ? `Even with ${shortest.reserve} in reserve the expected recovery takes ${writeHours(shortest.hours)} and ${left}: move the session, or leave it out.`
        : `This evidence has no recovery of ${status} people, so no reserve can be planned backwards from the event: move the session, or keep well away from failure.`,
    };
  }
  const hours = writeHours(time.hours);
  const least = sayAtLeast(time.reserve, judgement);
  const asSaid = least === time.reserve ? '' : ` This lifter is to say ${least}, so that as many are really left.`;
  return {
    refusal: null,
    least,
    why:
      verdict === 'in time'
        ? `Raised for the event: the least reserve whose recovery is in time with its whole interval is ${time.reserve} (${hours}).${asSaid}`
        : `Raised for the event: the least reserve expected to be recovered in time is ${time.reserve} (${hours}), though its interval reaches past the event.${asSaid}`,
    isLate: (said) => {
      const after = slowestRecovery(analysis, status, reallyLeft(said, judgement)).time;
      return after !== null && judgeEvent(after, hoursToEvent) === 'not in time';
    },
  };
}
