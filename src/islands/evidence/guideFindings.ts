/** What a step of the guide came to, in the numbers of its two analyses, and what all of them teach of a table. */
import * as z from 'zod/mini';
import '../../evidence/zodConfig.ts';
import { formatNumber, formatTarget } from '../../figures/format.ts';
import { stateMoved } from '../../figures/moved.ts';
import { findBand } from '../../model/bands.ts';
import type { Analysis, Target } from '../../model/result.ts';
import { LOAD_HEADINGS, LOAD_NAMES } from '../../practice/loadNames.ts';
import { followedBand } from './guideRings.ts';
import { GUIDE_STEPS, type GuideContext, type GuideStep, stateQuestion } from './guideSteps.ts';

export const findingSchema = z.object({
  /** The question as it was asked, of the analysis before; empty where nothing was. */
  question: z.string(),
  /** What moved and by how much; why nothing could be asked, where nothing was. */
  came: z.string(),
  /** What that shows; empty where no curve is left to follow. */
  lesson: z.string(),
  /** The target that was followed, before and after, in a line. */
  brief: z.string(),
  /** The choice that came true; null where none did, as where a target is gone. */
  right: z.nullable(z.string()),
  /** Repetitions by which the target moved that was followed; null where it cannot be said. */
  moved: z.nullable(z.number()),
  wasAsked: z.boolean(),
});

export type Finding = z.output<typeof findingSchema>;

/** What can be guessed. */
export const GUESSES = {
  target: [
    { id: 'less', words: 'Nearer to failure' },
    { id: 'same', words: 'It hardly moves' },
    { id: 'more', words: 'Further from failure' },
  ],
  width: [
    { id: 'less', words: 'Narrower' },
    { id: 'same', words: 'About as wide' },
    { id: 'more', words: 'Wider' },
  ],
} as const satisfies Readonly<Record<GuideStep['asks'], readonly { readonly id: string; readonly words: string }[]>>;

/** A target that moves by less hardly moves, repetitions: nobody trains by less than a quarter of one. */
const HARDLY = 0.25;
/** An interval is about as wide up to this ratio of its widths. */
const ABOUT = 1.1;

/** @param context of the step, before its change @param after the analysis with the change */
export function findChange(
  step: Pick<GuideStep, 'asks' | 'look' | 'lesson'>,
  context: GuideContext,
  after: Analysis,
): Finding {
  const before = context.analysis;
  const followed = followedBand(before);
  const band = followed && findBand(after.bands, followed.name);
  const [old, now] = [followed?.band.target, band?.target];
  const moved = old && now && old.point !== null && now.point !== null ? now.point - old.point : null;
  const right = step.asks === 'target' ? directionOf(moved, HARDLY) : old && now ? compareWidths(old, now) : null;
  const brief = followed
    ? `${LOAD_HEADINGS[followed.name]}: target ${formatTarget(followed.band.target)}, then ${now ? formatTarget(now) : 'no curve of its own'}.`
    : '';
  const lesson =
    followed && band && !band.failure
      ? step.lesson({ loads: LOAD_NAMES[followed.name], before: followed.band, after: band })
      : '';
  return {
    question: stateQuestion(step, context),
    came: stateMoved(before, after),
    lesson,
    brief,
    right,
    moved,
    wasAsked: true,
  };
}

/** A step that says nothing of the table. */
export function passOver(reason: string): Finding {
  return { question: '', came: reason, lesson: '', brief: reason, right: null, moved: null, wasAsked: false };
}

/** Which change moved the target most and which least, of those that were made; empty where fewer than two were. */
export function stateTaught(findings: readonly (Finding | null)[]): string {
  const moves = findings
    .flatMap((found, i) => (found && found.moved !== null ? [{ title: GUIDE_STEPS[i].title, by: found.moved }] : []))
    .sort((a, b) => Math.abs(b.by) - Math.abs(a.by));
  const gone = findings.flatMap((found, i) =>
    found?.wasAsked && found.moved === null ? [`“${GUIDE_STEPS[i].title}”`] : [],
  );
  const lost = gone.length > 0 ? `No target was left with ${gone.join(', ')}.` : '';
  const [first, last] = [moves[0], moves.at(-1)];
  if (!first || !last || first === last) return lost;
  const say = ({ title, by }: typeof first) =>
    `“${title}” (by ${formatNumber(Math.abs(by), 1)} ${by < 0 ? 'towards' : 'away from'} failure)`;
  if (Math.abs(first.by) < HARDLY)
    return `${gone.length > 0 ? 'No other' : 'None'} of these changes moved the target by a quarter of a repetition: it does not rest on them. ${lost}`.trim();
  const rests = Math.abs(last.by) < HARDLY ? 'the former, and hardly on the latter' : 'each of these choices';
  return `The target moved most with ${say(first)}, least with ${say(last)}: it rests on ${rests}. ${lost}`.trim();
}

function directionOf(change: number | null, hardly: number): string | null {
  if (change === null) return null;
  if (Math.abs(change) < hardly) return 'same';
  return change < 0 ? 'less' : 'more';
}

/** An interval without upper end is wider than any with one. */
function compareWidths(old: Target, now: Target): string | null {
  const [was, is] = [old, now].map(({ low, high }) =>
    low === null ? Number.NaN : (high ?? Number.POSITIVE_INFINITY) - low,
  );
  if (Number.isNaN(was) || Number.isNaN(is)) return null;
  if (was === is) return 'same';
  return directionOf(Math.log(is / was), Math.log(ABOUT));
}
