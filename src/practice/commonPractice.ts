/**
 * What coaches commonly do, by how many repetitions are possible in a set. Common practice, no
 * source: shown beside the evidence and never mixed with it.
 */

export const COMMON_PRACTICE_TAG = 'common practice, no source';

/** Beyond this reserve sets are commonly held to do little for growth (common practice, no source). */
export const FURTHEST_USEFUL_RESERVE = 5;

export interface RepetitionRange {
  /** How the range is named in a sentence. */
  readonly name: string;
  /** Repetitions possible in the set: from, inclusive, up to, exclusive; null for no limit. */
  readonly from: number;
  readonly below: number | null;
  /** Repetitions possible at which the range's targets are asked for: its middle, as people train in it. */
  readonly typical: number;
  /** Most reserve in common practice. */
  readonly upTo: number;
}

export const REPETITION_RANGES: readonly RepetitionRange[] = [
  { name: 'below 10', from: 1, below: 10, typical: 6, upTo: 3 },
  { name: '10 to 20', from: 10, below: 21, typical: 15, upTo: 2 },
  { name: 'above 20', from: 21, below: null, typical: 30, upTo: 1 },
];

/** The range that a number of possible repetitions, at least 1, falls into. */
export function rangeOfRepetitions(possible: number): RepetitionRange {
  const found = REPETITION_RANGES.find(({ from, below }) => possible >= from && (below === null || possible < below));
  return found ?? REPETITION_RANGES[0];
}
