/**
 * From an analysis and a situation to what a lifter is told: a range of whole repetitions to leave,
 * guarded by safety, with what it is worth and what it costs.
 *
 * - growth, accessory work: from the cautious to the practical target.
 * - main lift of strength: the load leads; reserve is what the planned repetitions leave.
 * - staying fresh: at least what is recovered before the event, and up to the target where that is more.
 *
 * What is said is lowered by how much people stop early, so that what is really left is meant.
 */
import type { PracticeAnalysis } from '../model/full.ts';
import { cautionsFor, isUnguarded, LEAST_RESERVE_WHEN_PINNED } from './cautions.ts';
import { statePractice } from './commonPractice.ts';
import { type EventAnswer, judgeSession } from './event.ts';
import { type EvidenceNear, evidenceNear } from './evidenceNear.ts';
import { type Judgement, reallyLeft } from './judgement.ts';
import { type KeptAnswer, keptAt } from './kept.ts';
import { type MainLift, planMainLift } from './mainLift.ts';
import { LOAD_RANGE, POSSIBLE_REPETITIONS, type Possible, possibleAt } from './possible.ts';
import { leastReserveInTime, type RecoveryAnswer, recoveryAfter } from './recovery.ts';
import type { Situation } from './situation.ts';
import { type SourcedTarget, targetNear } from './targetTable.ts';
import { type ReserveRange, tellLifter } from './tellLifter.ts';

/** What ending sets with one number in reserve is worth and costs. */
export interface ReserveChoice {
  /** As said, whole repetitions. */
  readonly reserve: number;
  readonly kept: KeptAnswer;
  readonly recovery: RecoveryAnswer;
}

export interface Advice extends SourcedTarget {
  /** null where there is no number to follow. */
  readonly reserve: ReserveRange | null;
  /** Why the range is not the evidence's own, a sentence each. */
  readonly raised: readonly string[];
  /** What to tell the lifter. */
  readonly sentence: string;
  /** One fewer, each number of the range, one more; none where there is no range. */
  readonly choices: readonly ReserveChoice[];
  /** What will really be left where the lifter aims at the range; null where there is none. */
  readonly trained: { readonly low: number; readonly mean: number; readonly high: number } | null;
  /** True where what will really be left reaches outside the target's interval: a test set would tell. */
  readonly testSet: boolean;
  readonly possible: Possible | null;
  readonly mainLift: MainLift | null;
  readonly event: EventAnswer | null;
  readonly near: EvidenceNear;
  readonly practice: readonly string[];
  readonly cautions: readonly string[];
}

/** Rounding allowed where a whole number is meant. */
const SLACK = 1e-9;

export function advise(analysis: PracticeAnalysis, situation: Situation): Advice {
  const { load, exercise, judgement, status, hoursToEvent, purpose } = situation;
  const possible = possibleAt(load, exercise.relation);
  const mainLift =
    purpose === 'strength, main lift' ? planMainLift(situation.planned, possible, leastSafe(situation)) : null;
  const sourced = targetNear(analysis, load);
  const { reserve, raised, sentence } = mainLift ?? chooseReserve(analysis, situation, sourced);
  const trained = mainLift ? mainLift.left : reserve && spanTrained(reserve, judgement);
  return {
    ...sourced,
    reserve,
    raised,
    sentence,
    choices: reserve ? listChoices(analysis, situation, reserve) : [],
    trained,
    testSet: !mainLift && trained !== null && leavesInterval(trained, sourced) && judgement.spread > 0,
    possible,
    mainLift,
    event: hoursToEvent === null ? null : judgeSession(analysis, status, hoursToEvent, trained?.low ?? 0),
    near: evidenceNear(analysis, load, trained ? trained.mean : null),
    practice: statePractice(possible?.mean ?? beyondPublished(load), exercise),
    cautions: cautionsFor(situation),
  };
}

/** Repetitions that stand for a load without published ones: very many below those loads, one above them. */
function beyondPublished(load: number): number {
  return load < LOAD_RANGE.from ? POSSIBLE_REPETITIONS.to : 1;
}

/** Least reserve that may be said: 1 under an unguarded load that can pin, more for who overrates it. */
function leastSafe(situation: Situation): number {
  if (!isUnguarded(situation)) return 0;
  return Math.ceil(LEAST_RESERVE_WHEN_PINNED + Math.max(0, -situation.judgement.bias) - SLACK);
}

/** A range, why it is not the evidence's own, and what to say. */
export type ChosenReserve = Pick<Advice, 'reserve' | 'raised' | 'sentence'>;

/** The range of any purpose but a main lift of strength. */
export function chooseReserve(
  analysis: PracticeAnalysis,
  situation: Situation,
  { target }: SourcedTarget = targetNear(analysis, situation.load),
): ChosenReserve {
  const floor = leastSafe(situation);
  const guard =
    floor > 0 ? ` Whatever the evidence, leave at least ${floor}: nothing would take the load off you.` : '';
  const fresh = situation.purpose === 'staying fresh' ? freshReserve(analysis, situation) : null;
  if (fresh?.refusal) return { reserve: null, raised: [], sentence: `${fresh.refusal}${guard}` };
  if (fresh === null && (target.point === null || target.cautious === null)) {
    return { reserve: null, raised: [], sentence: `This evidence gives no number to follow at this load.${guard}` };
  }
  const { bias } = situation.judgement;
  const said = (reserve: number | null) => Math.max(0, Math.floor((reserve ?? 0) - bias + SLACK));
  const wanted = { least: said(target.cautious), most: said(target.point) };
  const recovered = fresh?.least ?? 0;
  const least = Math.max(floor, fresh ? recovered : wanted.least);
  const reserve = { least, most: Math.max(least, wanted.most) };
  const raised = [
    ...(floor > wanted.least && floor >= least
      ? ['Raised for safety: this exercise can pin the lifter and nothing would take the load.']
      : []),
    ...(fresh && recovered > wanted.least ? [fresh.why] : []),
  ];
  return { reserve, raised, sentence: tellLifter(reserve) };
}

interface Fresh {
  /** Fewest repetitions to say. */
  readonly least: number;
  readonly why: string;
  /** Set where no session is recovered in time: what to do instead. */
  readonly refusal: string | null;
}

/** Plans backwards from the event; null where no hours are given, and growth's range stands. */
function freshReserve(analysis: PracticeAnalysis, { hoursToEvent, status, judgement }: Situation): Fresh | null {
  if (hoursToEvent === null) return null;
  const { time, verdict, shortest } = leastReserveInTime(analysis.fatigue, status, hoursToEvent);
  if (!time) {
    const hours = Math.ceil(hoursToEvent);
    const instead = shortest
      ? `Even with ${shortest.reserve} in reserve the expected recovery takes ${Math.ceil(shortest.hours)} hours and ${hours} are left: move the session, or leave it out.`
      : `This evidence has no recovery of ${status} people, so no reserve can be planned backwards from the event: move the session, or keep well away from failure.`;
    return { least: 0, why: '', refusal: instead };
  }
  const surely = verdict === 'in time' ? '' : ', though its interval reaches past the event';
  return {
    least: Math.max(0, Math.ceil(time.reserve - judgement.bias - SLACK)),
    why: `Raised for the event: the least reserve expected to be recovered in time is ${time.reserve} (${Math.ceil(time.hours)} hours)${surely}.`,
    refusal: null,
  };
}

function listChoices(analysis: PracticeAnalysis, situation: Situation, { least, most }: ReserveRange): ReserveChoice[] {
  const { load, judgement, status } = situation;
  const first = Math.max(leastSafe(situation), least - 1);
  return Array.from({ length: most + 2 - first }, (_, i) => {
    const reserve = first + i;
    const { mean } = reallyLeft(reserve, judgement);
    return {
      reserve,
      kept: keptAt(analysis, load, mean),
      recovery: recoveryAfter(analysis.fatigue, status, mean),
    };
  });
}

function spanTrained({ least, most }: ReserveRange, judgement: Judgement) {
  return {
    low: reallyLeft(least, judgement).low,
    mean: reallyLeft((least + most) / 2, judgement).mean,
    high: reallyLeft(most, judgement).high,
  };
}

function leavesInterval({ high }: { readonly high: number }, { target }: SourcedTarget): boolean {
  return target.point !== null && high > (target.high ?? target.point);
}
