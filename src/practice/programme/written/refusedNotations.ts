/** What would be misread if it were read in parts: refused, each with the way to write it. */
import {
  END,
  LENGTH,
  makeNotation,
  type Notation,
  REPETITIONS_EXPECTED,
  REPS,
  SETS,
  SPAN,
  TIME,
  TIMES,
  WEIGHT,
} from './notation.ts';
import { parseSpan } from './numbers.ts';
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
    String.raw`(${SPAN})${TIMES}(\d{1,3})${TIMES}(${SPAN})${END}(?![.,]\d|\s?(?:%|per\s?cent|pct|${WEIGHT}|${SETS}|${REPS}))`,
    null,
    'sets before repetitions, and the load apart from them, with its unit',
    sayThree,
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
  refuse(String.raw`1\s?RM${END}`, 'load', LOAD_EXPECTED, () => 'Write “100%” where 1RM itself is lifted.'),
];

/** Of three numbers with the load first nothing says which of the others are the sets; behind them they stand as usual. */
function sayThree(first: string, middle: string, last: string): string {
  const isLoadFirst = parseSpan(first).most >= parseSpan(last).most;
  const load = isLoadFirst ? first : last;
  const units = `“${load}%” of 1RM or “${load} kg”`;
  return isLoadFirst && last !== middle
    ? `Write “${last}x${middle}” for ${last} sets of ${middle}, or “${middle}x${last}” for ${middle} sets of ${last}, then the load with its unit, ${units}.`
    : `Write “${isLoadFirst ? last : first}x${middle}” for ${isLoadFirst ? last : first} sets of ${middle}, then the load with its unit, ${units}.`;
}
