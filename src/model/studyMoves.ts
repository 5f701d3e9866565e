/**
 * Which study's change moved a band's answer most.
 *
 * The new table is fitted again with the change of one study at a time undone: a study that was added
 * is left out, one that was removed is put back, one whose rows changed has its old rows. What the
 * study moved is the answer of the new table minus that. The moves of several studies need not add up
 * to the whole difference, since each is taken with all other changes in place.
 *
 * Only studies are refitted whose change reaches the band's regression (effect, variance, reserve,
 * cohort, covariates); a note, or a row of another outcome, moves nothing.
 */
import type { Effect } from '../evidence/effects.ts';
import { type BandFit, fitEffects, rangeOf, slopeOf, targetOf } from './bandFit.ts';
import { countDistinctStudies } from './counts.ts';
import type { Estimate, Target } from './result.ts';
import { COVARIATES } from './selection.ts';
import type { Settings } from './settings.ts';
import { SCAN_STEPS } from './target.ts';

/** Slope and target of one fit of a band. */
export interface BandAnswer {
  readonly studies: number;
  readonly rows: number;
  /** Reserve from 0 to `high` is what the slope is the mean of. */
  readonly studiedReserve: { readonly low: number; readonly high: number } | null;
  /** Mean slope per repetition on the analysis scale; null where nothing could be fitted. */
  readonly slope: Estimate | null;
  readonly target: Target;
  /** Why there is no fit; null where there is one. */
  readonly reason: string | null;
}

export interface StudyMove {
  readonly study: string;
  readonly change: 'added' | 'removed' | 'changed';
  /** Rows of the study in the band's fit, in the old and in the new table. */
  readonly rowsBefore: number;
  readonly rowsAfter: number;
  /** Answer of the new table with this study's change undone. */
  readonly undone: BandAnswer;
  /** New table minus `undone`, per repetition; null where one of the two has no slope. */
  readonly slopeMoved: number | null;
  /** New table minus `undone`, repetitions; null where one of the two has no target. */
  readonly targetMoved: number | null;
  /** came: there is a target only with the second table, or this change; went: only without it; none: in neither. */
  readonly targetChange: 'moved' | 'came' | 'went' | 'none';
  /** Why a move is null; null where none is. */
  readonly reason: string | null;
}

/** How far the second of two answers is from the first. */
export type AnswerMove = Pick<StudyMove, 'slopeMoved' | 'targetMoved' | 'targetChange' | 'reason'>;

export interface StudyMoves {
  /**
   * The largest move first: a target that came or went, then by the move of the target, then by that of the slope
   * (all without sign).
   */
  readonly moves: readonly StudyMove[];
  /** Changed studies whose change does not reach this band's regression. */
  readonly untouched: readonly string[];
  /** Changed studies that were not refitted, since there were more than the limit. */
  readonly notRefitted: readonly string[];
}

export interface ChangedStudy extends Pick<StudyMove, 'study' | 'change'> {}

/** @param step distance of the reserves that are scanned for the target, repetitions */
export function answerOf(band: BandFit, settings: Settings, step: number = SCAN_STEPS.fine): BandAnswer {
  return {
    studies: countDistinctStudies(band.effects),
    rows: band.effects.length,
    studiedReserve: rangeOf(band.reserves),
    slope: slopeOf(band, settings.confidence),
    target: targetOf(band, settings, step),
    reason: band.outcome.failure?.reason ?? null,
  };
}

/**
 * @param before @param after the band's effects in the two tables
 * @param changed studies whose rows differ
 * @param mostRefits studies refitted at most; those with most rows in the band go first
 */
export function measureMoves(
  before: readonly Effect[],
  after: readonly Effect[],
  changed: readonly ChangedStudy[],
  settings: Settings,
  mostRefits: number,
): StudyMoves {
  const touched = changed
    .map((one) => ({ ...one, old: effectsOf(before, one.study), now: effectsOf(after, one.study) }))
    .filter(({ old, now }) => whatIsFitted(old, settings) !== whatIsFitted(now, settings))
    .sort((a, b) => b.old.length + b.now.length - a.old.length - a.now.length || (a.study < b.study ? -1 : 1));
  const answer = (effects: readonly Effect[]) =>
    answerOf(fitEffects(effects, { ...settings, answerOnly: true }), settings, SCAN_STEPS.coarse);
  const whole = answer(after);
  const moves = touched.slice(0, mostRefits).map(({ study, change, old, now }): StudyMove => {
    const undone = answer([...after.filter(({ arm }) => arm.study !== study), ...old]);
    return { study, change, rowsBefore: old.length, rowsAfter: now.length, undone, ...compareAnswers(undone, whole) };
  });
  const names = new Set(touched.map(({ study }) => study));
  return {
    moves: moves.sort(byMove),
    untouched: changed.map(({ study }) => study).filter((study) => !names.has(study)),
    notRefitted: touched.slice(mostRefits).map(({ study }) => study),
  };
}

/** Second answer minus first. */
export function compareAnswers(first: BandAnswer, second: BandAnswer): AnswerMove {
  const [from, to] = [first.target.point, second.target.point];
  const slopes = [first.slope?.estimate ?? null, second.slope?.estimate ?? null];
  const missing = [first, second].find(({ target }) => target.point === null);
  return {
    slopeMoved: slopes[0] === null || slopes[1] === null ? null : slopes[1] - slopes[0],
    targetMoved: from === null || to === null ? null : to - from,
    targetChange: from === null ? (to === null ? 'none' : 'came') : to === null ? 'went' : 'moved',
    reason: missing?.target.reason ?? null,
  };
}

function effectsOf(effects: readonly Effect[], study: string): readonly Effect[] {
  return effects.filter(({ arm }) => arm.study === study);
}

/** Everything of a study's rows that a fit reads, whatever their order. */
function whatIsFitted(effects: readonly Effect[], settings: Settings): string {
  const rows = effects.map(({ arm, y, v }) =>
    JSON.stringify([arm.cohort, arm.reserve_reps, y, v, ...settings.adjust.map((name) => COVARIATES[name].of(arm))]),
  );
  return rows.sort().join('\n');
}

function byMove(a: StudyMove, b: StudyMove): number {
  return (
    sizeOf(b) - sizeOf(a) || Math.abs(b.slopeMoved ?? 0) - Math.abs(a.slopeMoved ?? 0) || (a.study < b.study ? -1 : 1)
  );
}

/** A target that came or went is more than any that moved. */
function sizeOf({ targetChange, targetMoved }: StudyMove): number {
  return targetChange === 'came' || targetChange === 'went' ? Number.POSITIVE_INFINITY : Math.abs(targetMoved ?? 0);
}
