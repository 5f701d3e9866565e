/** What is said to the lifter before the set. */
import type { WholeRange } from '../model/wholeRepetitions.ts';
import { countOf } from '../numerics/countOf.ts';

export function tellLifter({ least, most }: WholeRange): string {
  const good = (n: number) => countOf(n, 'more good repetition');
  // Reserve 0 ends with the last good repetition; failure is the attempt after it.
  if (most === 0) return 'End the set when no further good repetition is possible.';
  if (least === most) return `End the set when you could do ${good(most)}.`;
  if (least === 0) return `End the set when you could do at most ${good(most)}.`;
  return `End the set when you could do ${least} to ${good(most)}.`;
}
