/**
 * People misjudge how many repetitions they have left. What is said and what is really trained differ
 * by a mean (bias) and from person to person (spread).
 *
 * Published: people predict 0.95 (0.17 to 1.73) repetitions fewer than they can do, 414 people
 * (Halperin et al. 2022, Sports Med 52:377, doi 10.1007/s40279-021-01559-x; abstract read);
 * between-person SD about 1.45 (second-hand).
 */
import type { Target } from '../model/result.ts';
import { type ShownTarget, showTarget } from '../model/wholeRepetitions.ts';

export const JUDGEMENTS = ['taken as said', 'as most people', 'own test sets'] as const;
export type JudgementKind = (typeof JUDGEMENTS)[number];

export interface Judgement {
  /** Repetitions really left minus those said to be left, mean; above 0 where people stop early. */
  readonly bias: number;
  /** SD of that difference, repetitions. */
  readonly spread: number;
  /**
   * Bias that safety reckons with where it is lower than the mean, repetitions: what a lifter's own sets showed as
   * they were. Left out where the mean is all that is known.
   */
  readonly lowest?: number;
}

export const PUBLISHED_JUDGEMENT: Judgement = { bias: 0.95, spread: 1.45 };
export const PUBLISHED_JUDGEMENT_SOURCE =
  'people stop 0.95 repetitions (0.17 to 1.73) before the number they name, with an SD of about 1.45 between people (Halperin et al. 2022, Sports Med 52:377; the SD second-hand)';

/** Nothing is misjudged: what is left is what is said. */
export const TAKEN_AS_SAID: Judgement = { bias: 0, spread: 0 };

/** @param own what test sets of this lifter showed; the other kinds do not read it */
export function judgementOf(kind: JudgementKind, own: Judgement): Judgement {
  if (kind === 'taken as said') return TAKEN_AS_SAID;
  return kind === 'as most people' ? PUBLISHED_JUDGEMENT : own;
}

/** A target in what is to be said, so that what is really left is the target's; null where there is no number. */
export function sayTarget({ point, low, high }: Target, { bias }: Judgement): ShownTarget | null {
  if (point === null || low === null) return null;
  const toSay = (reserve: number) => Math.max(0, reserve - bias);
  return showTarget({ point: toSay(point), low: toSay(low), high: high === null ? null : toSay(high) });
}

/** Repetitions misjudged as they are told, in tenths: 0.95 is 1.0, which `toFixed` calls 0.9, since it is stored a little smaller. */
export function inTenths(error: number): number {
  return (Math.sign(error) * Math.round(10 * Math.abs(error))) / 10;
}

/** “About 1.2 repetitions more are really left than are said.” */
export function stateDifference({ bias }: Judgement): string {
  const by = Math.abs(inTenths(bias)).toFixed(1);
  return Number(by) === 0
    ? 'As many repetitions are left as are said.'
    : `About ${by} repetitions ${bias > 0 ? 'more' : 'fewer'} are really left than are said.`;
}

/** Which numbers follow how the lifter judges, and which do not and why; null where nothing is misjudged. */
export function stateShift(judgement: Judgement): string | null {
  if (inTenths(judgement.bias) === 0) return null;
  return `${stateDifference(judgement)} The number to say, the first column, the targets to say and the card are moved by that; growth kept, recovery and the figure are those of what is really left. Common practice is not moved: it does not say which of the two it means.`;
}

/** What will really be left where a number is said: the mean, and about two people in three (± 1 SD). */
export function reallyLeft(
  said: number,
  { bias, spread }: Judgement,
): { readonly mean: number; readonly low: number; readonly high: number } {
  return {
    mean: Math.max(0, said + bias),
    low: Math.max(0, said + bias - spread),
    high: Math.max(0, said + bias + spread),
  };
}

/** Rounding allowed where a whole number is meant. */
const SLACK = 1e-9;

/** Fewest whole repetitions to say so that, as far down as `reallyLeft` tells what may be left, at least `reserve` are. */
export function sayAtLeast(reserve: number, { bias, spread }: Judgement): number {
  // Nothing is left below none, whatever is said.
  return reserve <= 0 ? 0 : Math.max(0, Math.ceil(reserve - bias + spread - SLACK));
}
