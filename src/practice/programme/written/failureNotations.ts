/** Failure: how far from it, which only a number says; or at it, which leaves nothing in reserve. */
import {
  COUNT_SPAN,
  END,
  FAILURE,
  MANY,
  makeNotation,
  type Notation,
  REPS,
  type Said,
  SETS,
  TIMES,
} from './notation.ts';
import { parseSpan } from './numbers.ts';
import type { Found } from './understood.ts';

export const NONE_LEFT: Found = { field: 'reserve', value: { least: 0, most: 0 } };

/** Between words that belong together: also “near-failure” and “(close to) failure”. */
const GAP = String.raw`[\s()-]+`;
const NO = String.raw`(?:do(?:es)?\s|should\s|must\s|can)?not|\p{L}{2,6}n['’]t|dont|no|non|pre|sub|never|avoid(?:ing)?|without|before|instead\sof|rather\sthan`;
const NEAR =
  'close|closer|near|nearer|nearly|nearing|almost|just|short|shy|shortly|approaching|towards?|around|about|within|virtually|practically|from|off|away|miss(?:ing)?';
/** Of no number: “a few”, “a rep”; or what is done there. */
const VAGUE = String.raw`(?:(?:an?|the|no|none|nothing|some|few|several|couple|of|${REPS}|stop(?:ping)?|staying|stay|end(?:ing)?|finish(?:ing)?|leave|leaving|left|keep|keeping)\s)*`;
const LINK = `or|and|to|of|from|at|until|till|off|away|short|shy|before|the|point|an?|any|all|way|quite|too|very|go|going|take|taking|taken|train|training|reach|reaching|hit|hitting|push|pushing|get|getting|come|coming|work|working|sets?|${REPS}`;
const OF_ONE_SET = String.raw`(?:(?:on|in|for|only|the|your)\s)*(?:last|final|first|top|second|third|fourth|fifth|\d{1,2}(?:st|nd|rd|th))\s(?:(?:\p{L}+|\d{1,2})\s)?(?:sets?|one)`;
const AT = '(?:to|till|until|at|@)\\s?';
/** How far: “short of failure by 2 reps”. */
const BY = String.raw`[\s,(–-]+by\s(${COUNT_SPAN})(?:[\s-]?${REPS})?(?![.,]?\d|\s?(?:%|${SETS})|${TIMES}\d)`;

const refuse = (pattern: string, remedy: string) =>
  makeNotation(pattern + END, () => ({
    refused: { field: 'reserve', expected: 'how many repetitions are left', remedy, isVague: remedy === NUMBER },
  }));

export const AMOUNT_IN_RESERVE = String.raw`in\s(?:the\s)?(?:reserve|tank)|left(?:\sin\sthe\stank)?(?!\s(?:arms?|feet|foot|hands?|legs?|sides?)${END})|rir`;
const AMOUNT = String.raw`${COUNT_SPAN}\s?(?:${REPS}\s)?(?:${AMOUNT_IN_RESERVE})|(?:rir|rpe|reserve)\s?[:=]?\s?${COUNT_SPAN}|${COUNT_SPAN}\s?rpe`;
const THEN_LEFT = String.raw`(?:\sonly)?[\s:=–-]*(?:(?:${LINK}|with|is)\s)*(?:@\s?)?(?:${FAILURE}|${AMOUNT}|${MANY})`;
const LAST_SET =
  'Write the other sets with what is left in them, “2 RIR”, and this one on a line of its own: “1x8”, its load, “0 RIR” for failure.';
const NUMBER = 'Write the number, “2 RIR”.';

export const FAILURES: readonly Notation[] = [
  refuse(OF_ONE_SET + THEN_LEFT, LAST_SET),
  refuse(String.raw`(?:${AT})?(?:${FAILURE}|${AMOUNT})[\s(]+(?:only\s)?${OF_ONE_SET}(?!${THEN_LEFT})`, LAST_SET),
  makeNotation(
    String.raw`(${COUNT_SPAN})\s?(?:${REPS}\s)?(?:(?:short\sof|shy\sof|from|off|away\sfrom|before)\s${FAILURE}|shy(?!\sof))${END}`,
    sayCounted,
  ),
  makeNotation(String.raw`(?:${AT})?${FAILURE}(?:\sminus\s|-(?=\d))(${COUNT_SPAN})(?:\s${REPS})?${END}`, sayCounted),
  makeNotation(`${VAGUE}(?:${NEAR})(?:${GAP}(?:${LINK}))*${GAP}${FAILURE}${BY}${END}`, sayCounted),
  refuse(
    String.raw`an?\s(?:${REPS}\s)?or\s(?:so|${COUNT_SPAN})\s?(?:${REPS}\s)?(?:${AMOUNT_IN_RESERVE}|(?:short\sof|shy\sof|from|off|away\sfrom|before)\s${FAILURE})`,
    NUMBER,
  ),
  refuse(String.raw`within\s${COUNT_SPAN}\s?(?:${REPS}\s)?(?:of|from)\s${FAILURE}`, NUMBER),
  refuse(
    String.raw`(?:rir\s?[:=]?\s)?${VAGUE}(?:${NO}|${NEAR})(?:${GAP}(?:${LINK}))*(?:${GAP}\p{L}+)?${GAP}${FAILURE}(?:${BY})?`,
    NUMBER,
  ),
  refuse(
    String.raw`(?:${AT})?${FAILURE}(?:\s(?:is|to\sbe|must\sbe|should\sbe))*\s(?:not|never|avoided|near|close|or\s[\p{L}\d]+)`,
    NUMBER,
  ),
  refuse(String.raw`(?:${AT})?${FAILURE}\s?[:=]\s?no`, NUMBER),
  makeNotation(`(?:${AT})?(${FAILURE})${END}`, (written) => ({
    found: [NONE_LEFT],
    assumed: `“${written}” is taken as 0 repetitions in reserve.`,
  })),
];

/** Said of what is left, and no number of it. */
export const LEFT_OPEN: Notation = refuse(
  String.raw`${VAGUE}(?:in\s(?:the\s)?(?:reserve|tank)|(?<=${REPS}\s)left)`,
  NUMBER,
);

function sayCounted(written: string): Said {
  return { found: [{ field: 'reserve', value: parseSpan(written) }] };
}
