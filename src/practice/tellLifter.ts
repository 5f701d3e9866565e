/** What is said to the lifter before the set. */

export interface ReserveRange {
  /** Fewest and most repetitions to leave, whole numbers, as they are said to the lifter. */
  readonly least: number;
  readonly most: number;
}

export function tellLifter({ least, most }: ReserveRange): string {
  const good = (n: number) => `${n} more good repetition${n === 1 ? '' : 's'}`;
  if (most === 0) return 'Go on until no further repetition is possible.';
  if (least === most) return `End the set when you could do ${good(most)}.`;
  if (least === 0) return `End the set when you could do at most ${good(most)}.`;
  return `End the set when you could do ${least} to ${good(most)}.`;
}

export function count(repetitions: number): string {
  return `${repetitions} repetition${repetitions === 1 ? '' : 's'}`;
}
