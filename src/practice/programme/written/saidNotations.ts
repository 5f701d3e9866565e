/** What a notation says, field by field. */
import type { Company } from '../../cautions.ts';
import { AMOUNT_IN_RESERVE, NONE_LEFT } from './failureNotations.ts';
import {
  COUNT_SPAN,
  COUNT_WORDS,
  END,
  FAILURE,
  LAST_SPAN,
  MANY,
  makeNotation,
  type Notation,
  REPETITIONS_EXPECTED,
  REPS,
  type Said,
  SETS,
  SPAN,
  TIMES,
  WEIGHT,
  WHOLE,
} from './notation.ts';
import { parseSpan } from './numbers.ts';
import { sayRating } from './rating.ts';
import type { Found } from './understood.ts';

const say = (field: 'sets' | 'repetitions' | 'possible' | 'reserve', written: string): Found => ({
  field,
  value: parseSpan(written),
});
const company = (pattern: string, value: Company) =>
  makeNotation(`(?:${pattern})${END}`, () => ({ found: [{ field: 'company', value }] }));

export const SAYING: readonly Notation[] = [
  makeNotation(
    String.raw`(?:@|at\s|leave\s|leaving\s|keep\s|keeping\s|with\s)?\s?(${COUNT_SPAN})\s?(?:${REPS}\s)?(?:${AMOUNT_IN_RESERVE})${END}`,
    (written) => ({ found: [say('reserve', written)] }),
  ),
  makeNotation(
    String.raw`@?\s?(?:rir|(?:${REPS}\s)?in\sreserve|reserve|${REPS}\sleft)\s?(?:of|:|=|@)?\s?(${LAST_SPAN}|${COUNT_WORDS})(?:\s${REPS})?${END}`,
    (written) => ({ found: [say('reserve', written)] }),
  ),
  makeNotation(
    String.raw`(?:leave|leaving)\s(${LAST_SPAN}(?!\s?(?:%|${WEIGHT}))|${COUNT_WORDS}(?=\s*(?:$|[,;.|)])))${END}`,
    (written) => ({ found: [say('reserve', written)] }),
  ),
  makeNotation(String.raw`@?\s?rpe\s?(?:of|:|=|@)?\s?(${LAST_SPAN})${END}`, sayRating),
  makeNotation(String.raw`@?\s?(${SPAN})\s?rpe${END}`, sayRating),
  makeNotation(String.raw`(${WHOLE})\s?${REPS}${TIMES}(${WHOLE})\s?${SETS}?${END}`, sayRepetitionsFirst),
  makeNotation(String.raw`(${WHOLE})${TIMES}(${WHOLE})\s?${SETS}${END}`, sayRepetitionsFirst),
  makeNotation(
    String.raw`(${WHOLE})\s?${SETS}\s?(?:of|x|×)\s?(${WHOLE})(?:\s?${REPS})?(?!\.?\d|\s?(?:%|${WEIGHT}))${END}`,
    (sets, repetitions) => ({ found: [say('sets', sets), say('repetitions', repetitions)] }),
  ),
  makeNotation(
    String.raw`(${WHOLE})${TIMES}(${WHOLE})(?:\s?${REPS})?(?!\.?\d|\s?(?:%|${WEIGHT}${END}))(?=x\d|[^\p{L}\p{N}]|$)`,
    (sets, repetitions) => ({
      found: [say('sets', sets), say('repetitions', repetitions)],
      ...(isUnusualOrder(sets, repetitions)
        ? { assumed: `In “${sets}x${repetitions}” sets are taken to stand first: ${sets} sets of ${repetitions}.` }
        : {}),
    }),
  ),
  makeNotation(String.raw`(${WHOLE})${TIMES}(?=${MANY}|(?:to\s)?${FAILURE}|f${END})(?:f${END})?`, (sets) => ({
    found: [say('sets', sets)],
  })),
  makeNotation(`${MANY}${END}`, () => ({
    found: [NONE_LEFT],
    refused: {
      field: 'repetitions',
      expected: REPETITIONS_EXPECTED,
      remedy: 'Write the repetitions that you expect, and 0 in reserve: “3x12 0 RIR”.',
    },
    assumed: 'As many repetitions as possible are taken as 0 in reserve.',
  })),
  makeNotation(String.raw`(${WHOLE})\s?${SETS}${END}`, (written) => ({ found: [say('sets', written)] })),
  makeNotation(String.raw`(${SPAN})\s?${REPS}\spossible${END}`, (written) => ({ found: [say('possible', written)] })),
  makeNotation(String.raw`(${WHOLE})[\s-]?${REPS}${END}`, (written) => ({ found: [say('repetitions', written)] })),
  makeNotation(
    String.raw`sets?\s?(?:[:=]\s?|(?=\d{1,3}\s?[,;]?\s?${REPS}))(${WHOLE})(?!\s?(?:%|x|×|${WEIGHT}))${END}`,
    (written) => ({ found: [say('sets', written)] }),
  ),
  makeNotation(String.raw`${REPS}\s?[:=]?\s?(${WHOLE})(?!\s?(?:%|x|×|${WEIGHT}|rir|left|in\s))${END}`, (written) => ({
    found: [say('repetitions', written)],
  })),
  makeNotation(
    String.raw`(${SPAN})\s?(?:%|percent|per\scent|pct)(?:\s?(?:of\s)?(?:(e)?1\s?rm|max(?:imum)?))?(?!\p{L})`,
    (written, estimated) => ({
      found: [{ field: 'load', value: { ...parseSpan(written), unit: '%' } }],
      ...(estimated ? { assumed: 'Per cent of an estimated 1RM are taken as of 1RM.' } : {}),
    }),
  ),
  makeNotation(String.raw`%\s?(?:(?:of\s)?1\s?rm\s?[:=]?|[:=])\s?(${LAST_SPAN})${END}`, (written) => ({
    found: [{ field: 'load', value: { ...parseSpan(written), unit: '%' } }],
  })),
  makeNotation(String.raw`@?\s?(${SPAN})\s?(?:kgs?|kilos?|kilograms?)${END}`, (written) => ({
    found: [{ field: 'load', value: { ...parseSpan(written), unit: 'kg' } }],
  })),
  makeNotation(String.raw`@?\s?(${SPAN})\s?(?:lbs?|pounds?)${END}`, (written) => ({
    found: [{ field: 'load', value: { ...parseSpan(written), unit: 'lb' } }],
  })),
  makeNotation(String.raw`possible\s?[:=]?\s?(${LAST_SPAN})${END}|(${SPAN})\spossible${END}`, (after, before) => ({
    found: [say('possible', after ?? before)],
  })),
  makeNotation(String.raw`@?\s?(\d{1,2})\s?RM${END}`, (written) => ({
    found: [say('possible', written)],
    assumed: `The load of ${written}RM is the one at which ${written} repetitions are possible.`,
  })),
  company(String.raw`(?:no|without)\s(?:a\s)?(?:spotter|spot|safety\sarms|safeties)|unspotted|alone|solo`, 'alone'),
  company(
    String.raw`(?:with\s|w\/\s?|in\s)?(?:the\s)?(?:safety\s(?:arms?|bars?|pins?)|safeties|spotter\sarms)`,
    'safety arms',
  ),
  company(String.raw`(?:with\s|w\/\s?)?(?:a\s)?(?:spotter|spotted|spot)`, 'spotter'),
];

/** Sets above which, with fewer repetitions than sets, the order is said aloud. */
const MANY_SETS = 7;

function isUnusualOrder(sets: string, repetitions: string): boolean {
  return parseSpan(sets).most > Math.max(MANY_SETS, parseSpan(repetitions).most);
}

function sayRepetitionsFirst(repetitions: string, sets: string): Said {
  return { found: [say('sets', sets), say('repetitions', repetitions)] };
}
