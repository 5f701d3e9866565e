/** What applying the advice did, in words: it is read again after a reload, when the check that it came of is gone. */
import { stateLeft, stateMove } from '../../figures/adviceMoves.ts';
import { upperFirst } from '../../figures/firstLetter.ts';
import { formatPlain } from '../../figures/format.ts';
import { countOf } from '../../numerics/countOf.ts';
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

/** “Version two: 4 lines changed, 1 left as written.” @param hasSecond false where there is still no version two */
export function sayCounts(
  { moves, left, unchecked }: Pick<AppliedAdvice, 'moves' | 'left' | 'unchecked'>,
  hasSecond: boolean,
): string {
  const others = left.length + unchecked.length;
  const kept = others === 0 ? '' : `${moves.length === 0 ? countOf(others, 'line') : others} left as written`;
  const changed = moves.length === 0 ? 'nothing was changed' : `${countOf(moves.length, 'line')} changed`;
  const said = [changed, kept].filter(Boolean).join(', ');
  return `${hasSecond ? `Version two: ${said}` : upperFirst(said)}.`;
}

function nameOf({ line }: CheckedLine): string {
  return `${line.exercise.name} on ${writeDay(line.day)}, ${formatPlain(line.load)}\u00a0%`;
}
