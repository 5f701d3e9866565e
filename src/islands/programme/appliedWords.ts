/** What applying the advice did, in words: it is read again after a reload, when the check that it came of is gone. */
import { stateLeft, stateMove } from '../../figures/adviceMoves.ts';
import { formatPlain } from '../../figures/format.ts';
import type { AppliedAdvice } from '../../practice/programme/applyAdvice.ts';
import { writeDay } from '../../practice/programme/columns.ts';
import type { CheckedLine } from '../../practice/programme/line.ts';

export interface AppliedLine {
  /** Of the line of version one. */
  readonly id: number;
  /** “squat on Monday, 80 %” */
  readonly name: string;
  readonly said: string;
}

export interface AppliedWords {
  readonly moves: readonly AppliedLine[];
  readonly left: readonly AppliedLine[];
  /** Ids of lines that were not checked. */
  readonly unchecked: readonly number[];
  /** Lines that were as advised already. */
  readonly asAdvised: number;
}

export function sayApplied({ moves, left, unchecked, asAdvised }: AppliedAdvice): AppliedWords {
  return {
    moves: moves.map((move) => ({ id: move.id, name: nameOf(move.checked), said: stateMove(move) })),
    left: left.map((one) => ({ id: one.id, name: nameOf(one.checked), said: stateLeft(one) })),
    unchecked,
    asAdvised,
  };
}

function nameOf({ line }: CheckedLine): string {
  return `${line.exercise.name} on ${writeDay(line.day)}, ${formatPlain(line.load)}\u00a0%`;
}
