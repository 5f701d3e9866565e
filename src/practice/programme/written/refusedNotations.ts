/** What would be misread if it were read in parts: refused, each with the way to write it. */
import {
  END,
  LENGTH,
  makeNotation,
  type Notation,
  REPETITIONS_EXPECTED,
  SPAN,
  TIME,
  TIMES,
  WEIGHT,
  WHOLE,
} from './notation.ts';
import type { Field } from './understood.ts';

const LOAD_EXPECTED = 'a load in % of 1RM';

const refuse = (
  pattern: string,
  field: Field | null,
  expected: string,
  remedy: (...groups: readonly string[]) => string,
) => makeNotation(pattern, (...groups) => ({ refused: { field, expected, remedy: remedy(...groups) } }));

export const REFUSED: readonly Notation[] = [
  refuse(
    String.raw`(?:(\d{1,3})${TIMES})?(\d{1,3}(?:\s?\/\s?\d{1,3})+)${END}(?!\s?(?:%|${WEIGHT}|rir|rpe))`,
    'repetitions',
    'one number of repetitions for all sets of a line',
    (_sets, list) => `Write a line for each set: ${eachSet(list)}, each with its load.`,
  ),
  refuse(
    String.raw`(\d{1,3})${TIMES}(\d{1,3}(?:,\d{1,3})+)(?!\d|\.\d|\s?(?:%|${WEIGHT}|rir|rpe|reps?\s|in\s|left))`,
    'repetitions',
    'one number of repetitions for all sets of a line',
    (_sets, list) => `Write a line for each set: ${eachSet(list)}, each with its load.`,
  ),
  refuse(
    String.raw`(\d{1,3})${TIMES}(${WHOLE})\s?\+`,
    'repetitions',
    REPETITIONS_EXPECTED,
    (sets, repetitions) =>
      `Write “${sets}x${repetitions}” without the plus; for a last set to failure a line of its own, with the repetitions that you expect and 0 in reserve.`,
  ),
  refuse(
    String.raw`\d{1,3}${TIMES}${SPAN}\s?(?:${TIME}|${LENGTH})(?![\p{L}\p{N}])`,
    'repetitions',
    REPETITIONS_EXPECTED,
    () => 'Times and distances are not checked here; leave the line out, or write repetitions.',
  ),
  refuse(
    String.raw`${SPAN}\s?(%|${WEIGHT})${TIMES}(\d{1,3})${TIMES}(\d{1,3})${END}`,
    null,
    'sets before repetitions, and the load apart from them',
    (unit, a, b) =>
      `Write “${b}x${a}” for ${b} sets of ${a}, or “${a}x${b}” for ${a} sets of ${b}, then the load in ${unit}.`,
  ),
  refuse(
    String.raw`(?:bw|body[\s-]?weight)\s?[+−-]\s?${SPAN}\s?${WEIGHT}?|[+−]\s?${SPAN}\s?(?:${WEIGHT}|%)|-${SPAN}\s?(?:${WEIGHT}|%)`,
    'load',
    LOAD_EXPECTED,
    () =>
      'Write the whole load, not what is added or taken off; with body weight write the repetitions possible, “possible 14”.',
  ),
  refuse(
    String.raw`(?:bw|body[\s-]?weight)(?=\s*(?:$|[,;:|@)\dx×]))`,
    'load',
    LOAD_EXPECTED,
    () => 'Body weight has no per cent of 1RM: write the repetitions possible in a set, “possible 14”.',
  ),
  refuse(
    String.raw`${SPAN}\s?%\s?(?:of\s)?(?:tm|training\smax|body\s?weight|bw|[2-9]\s?rm|\d{2}\s?rm)${END}`,
    'load',
    LOAD_EXPECTED,
    () => 'Write the load in per cent of 1RM; of anything else it would be another load.',
  ),
  refuse(
    String.raw`(?:not|no|avoid|without|never|before)\s(?:\p{L}+\s)?failure${END}`,
    'reserve',
    'how many repetitions are left',
    () => 'Write the number, “2 RIR”.',
  ),
  refuse(String.raw`1\s?RM${END}`, 'load', LOAD_EXPECTED, () => 'Write “100%” where 1RM itself is lifted.'),
];

/** “1x5”, “1x3”, “1x1” */
function eachSet(list: string): string {
  return list
    .split(/[/,]/u)
    .map((repetitions) => `“1x${repetitions.trim()}”`)
    .join(', ');
}
