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

/** Hours before an event within which failure is kept away from; less where accustomed (common practice, no source). */
export const HOURS_WITHOUT_FAILURE = { untrained: 48, trained: 24 } as const;

/** Sentences of common practice for a set. Common practice, no source. */
export function statePractice(
  possible: number,
  {
    stoppable,
    partials,
    canPin,
  }: { readonly stoppable: boolean; readonly partials: boolean; readonly canPin: boolean },
): readonly string[] {
  const { name, upTo } = rangeOfRepetitions(possible);
  const beyond =
    partials && !canPin && stoppable
      ? 'Partials after failure suit it, since it can be stopped anywhere in the range; load drops are of about 10–15\u00a0% each.'
      : partials
        ? 'Partials after failure only with catches set or someone at hand; load drops are of about 10–15\u00a0% each.'
        : 'Partials after failure do not suit it; load drops are of about 10–15\u00a0% each.';
  return [
    `Up to about ${upTo} in reserve where ${name} repetitions are possible; within about ${FURTHEST_USEFUL_RESERVE} for growth at all.`,
    beyond,
    `Away from failure in the ${HOURS_WITHOUT_FAILURE.untrained} hours before an event, about ${HOURS_WITHOUT_FAILURE.trained} when accustomed.`,
  ];
}
