/**
 * From an analysis and a situation to what a lifter is told: a range of whole repetitions to leave,
 * guarded by safety, with what it is worth and what it costs.
 *
 * - growth, accessory work: the whole repetitions of the target.
 * - main lift of strength: the load leads; reserve is what the planned repetitions leave.
 * - staying fresh: at least what is recovered before the event, and up to the target where that is more; no number
 *   where the event asks for nothing and there is no target.
 *
 * What is said is lowered by how much people stop early, so that what is really left is meant.
 */

import type { PracticeAnalysis } from '../model/full.ts';
import type { WholeRange } from '../model/wholeRepetitions.ts';
import { cautionsFor } from './cautions.ts';
import { type ChosenReserve, chooseReserve, leastSafe } from './chooseReserve.ts';
import { statePractice } from './commonPractice.ts';
import { type EventAnswer, judgeSession } from './event.ts';
import { type EvidenceNear, evidenceNear } from './evidenceNear.ts';
import { type Judgement, reallyLeft, TAKEN_AS_SAID } from './judgement.ts';
import { type KeptAnswer, keptAt } from './kept.ts';
import { type MainLift, planMainLift } from './mainLift.ts';
import {
  boundOfPossible,
  LOAD_RANGE,
  mostReserve,
  POSSIBLE_REPETITIONS,
  type Possible,
  possibleAt,
} from './possible.ts';
import { type RecoveryAnswer, recoveryAfter } from './recovery.ts';
import type { Situation } from './situation.ts';
import { type SourcedTarget, targetNear } from './targetTable.ts';

/** What ending sets with one number in reserve is worth and costs. */
export interface ReserveChoice {
  /** As said, whole repetitions. */
  readonly reserve: number;
  readonly kept: KeptAnswer;
  readonly recovery: RecoveryAnswer;
}

export interface Advice extends SourcedTarget, ChosenReserve {
  /** One fewer, each number of the range, one more, as far as safe and possible; none where there is no range. */
  readonly choices: readonly ReserveChoice[];
  /** What will really be left where the lifter aims at the range; null where there is none. */
  readonly trained: { readonly low: number; readonly mean: number; readonly high: number } | null;
  /** True where what will really be left reaches beyond the upper end of the target's interval: a test set would tell. */
  readonly testSet: boolean;
  readonly possible: Possible | null;
  readonly mainLift: MainLift | null;
  readonly event: EventAnswer | null;
  readonly near: EvidenceNear;
  readonly practice: readonly string[];
  readonly cautions: readonly string[];
}

/** Where no range is advised a session is judged as if its sets went to failure. */
const AT_FAILURE = { low: 0, high: 0 } as const;

/** All that is said for one set. */
export function advise(analysis: PracticeAnalysis, situation: Situation): Advice {
  const { load, exercise, judgement, status, hoursToEvent, purpose } = situation;
  const possible = possibleAt(load, exercise.relation);
  const mainLift =
    purpose === 'strength, main lift' ? planMainLift(situation.planned, possible, leastSafe(situation)) : null;
  const sourced = targetNear(analysis, load);
  const { reserve, adjustments, sentence } = mainLift ?? chooseReserve(analysis, situation, sourced);
  const trained = mainLift ? mainLift.left : reserve && spanTrained(reserve, judgement);
  // What planned repetitions leave is counted, not judged by the lifter.
  const judged = mainLift ? TAKEN_AS_SAID : judgement;
  const bound = boundOfPossible(load, exercise.relation);
  const sayable = { judgement: judged, most: bound ? mostReserve(bound) : Number.POSITIVE_INFINITY };
  return {
    ...sourced,
    reserve,
    adjustments,
    sentence,
    choices: reserve ? listChoices(analysis, situation, reserve, judged) : [],
    trained,
    testSet: !mainLift && trained !== null && leavesInterval(trained, sourced) && judgement.spread > 0,
    possible,
    mainLift,
    event: hoursToEvent === null ? null : judgeSession(analysis, status, hoursToEvent, trained ?? AT_FAILURE, sayable),
    near: evidenceNear(analysis, load, trained ? trained.mean : null),
    practice: statePractice(possible?.mean ?? beyondPublished(load), exercise),
    cautions: cautionsFor(situation),
  };
}

/** Repetitions that stand for a load without published ones: very many below those loads, one above them. */
function beyondPublished(load: number): number {
  return load < LOAD_RANGE.from ? POSSIBLE_REPETITIONS.to : 1;
}

function listChoices(
  analysis: PracticeAnalysis,
  situation: Situation,
  { least, most }: WholeRange,
  judgement: Judgement,
): ReserveChoice[] {
  const { load, exercise, status } = situation;
  const bound = boundOfPossible(load, exercise.relation);
  const first = Math.max(leastSafe(situation), least - 1);
  const last = Math.max(most, Math.min(most + 1, bound ? mostReserve(bound) : most + 1));
  return Array.from({ length: last + 1 - first }, (_, i) => {
    const reserve = first + i;
    const { mean } = reallyLeft(reserve, judgement);
    return {
      reserve,
      kept: keptAt(analysis, load, mean),
      recovery: recoveryAfter(analysis.fatigue, status, mean),
    };
  });
}

function spanTrained({ least, most }: WholeRange, judgement: Judgement) {
  return {
    low: reallyLeft(least, judgement).low,
    mean: reallyLeft((least + most) / 2, judgement).mean,
    high: reallyLeft(most, judgement).high,
  };
}

/** Never where the interval has no upper end: nothing lies beyond it then. */
function leavesInterval({ high }: { readonly high: number }, { target }: SourcedTarget): boolean {
  return target.point !== null && target.high !== null && high > target.high;
}
