/** What applying the advice did to a line, and why another was left, in sentences. */
import { LEAST_RESERVE_WHEN_PINNED } from '../practice/cautions.ts';
import { askAbout } from '../practice/plausible.ts';
import { type LeftLine, type Move, totalOf } from '../practice/programme/applyAdvice.ts';
import type { CheckedLine } from '../practice/programme/line.ts';
import { formatPlain } from './format.ts';

/** “3 in reserve instead of 0, and 5 repetitions instead of 8 at the same load: … ” */
export function stateMove({ checked, repetitions, reserve }: Move): string {
  const { line } = checked;
  const total = totalOf(line);
  const kept = repetitions + reserve;
  const together =
    Math.abs(total - kept) < 1e-9
      ? `done and left are ${formatPlain(kept)} together, as before`
      : `done and left are ${formatPlain(kept)} together, the whole repetitions of ${formatPlain(total)}`;
  const left = `${formatPlain(reserve)} in reserve instead of ${formatPlain(line.reserve)}`;
  const done =
    repetitions === line.repetitions
      ? `${repetitions} repetitions as before`
      : `${repetitions} repetitions instead of ${line.repetitions} at the same load`;
  return `${left}, ${done}: ${together}. ${stateWhy(checked)}`;
}

function stateWhy({ unsafe, against }: CheckedLine): string {
  if (unsafe) {
    return `Less than ${LEAST_RESERVE_WHEN_PINNED} in reserve alone under a load that can pin was not safe.`;
  }
  return against === 'closer' ? 'It was closer to failure than advised.' : 'It was further from failure than advised.';
}

/** Why a line stays as it is. */
export function stateLeft({ checked, why, wanted }: LeftLine): string {
  const danger = checked.unsafe ? 'Not safe as written, and left so. ' : '';
  return `${danger}${explain(checked, why, wanted)}`;
}

function explain(checked: CheckedLine, why: LeftLine['why'], wanted: number | null): string {
  const { line, advised, plausibility } = checked;
  switch (why) {
    case 'no advice':
      return advised.sentence;
    case 'questioned':
      return askAbout({ ...line, relation: line.exercise.relation }, plausibility) ?? '';
    case 'no repetition':
      return `Repetitions done and left are ${formatPlain(totalOf(line))} together: with ${wanted} in reserve none would be done. Take a lighter load.${checked.unsafe ? ' Or set safety arms, or have a spotter.' : ''}`;
    case 'too many':
      return `With ${wanted} in reserve more repetitions would be done than are possible: look at repetitions, reserve and those possible.`;
  }
}
