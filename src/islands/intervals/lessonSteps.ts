/**
 * Why a straight line's interval can be wrong: a sequence of questions, each answered by tables that are drawn and
 * fitted then and there. A step says what is to be seen before its question is answered and after.
 */
import { PROMISE } from '../../figures/coverageCells.ts';
import { formatNumber, formatRange } from '../../figures/format.ts';
import type { Shown } from '../../figures/simulation/drawnTable.ts';
import { writeTrueTarget } from '../../figures/simulation/words.ts';
import { COVERAGE_QUESTION } from '../../model/coverage.ts';
import { ALL_TRUTHS } from '../../model/truths.ts';
import { toPercent } from '../../numerics/percent.ts';
import { inferShare } from '../../numerics/wilson.ts';
import { DEFAULT_EXPERIMENT, type Experiment, TABLES } from './experiment.ts';
import { type CurveResult, type Result, shareOf, trueTargetIn, writeResult } from './results.ts';

/** What can be seen of a run. */
interface Seen {
  readonly experiment: Experiment;
  readonly shown: Shown;
  /** Whether the intervals of all tables are shown, not only the first table. */
  readonly hasIntervals: boolean;
  /** Which of the curves' intervals to look at, by place. */
  readonly look: number;
}

export interface LessonStep {
  readonly title: string;
  readonly ask: string;
  /** Where on the figures to look, which only those have who see them ringed. */
  readonly where?: string;
  readonly choices: readonly { readonly id: string; readonly words: string }[];
  readonly before: Seen;
  readonly after: Seen;
  /** The choice that came true. */
  readonly right: (after: Result, before: Result) => string;
  readonly answer: (after: Result, before: Result) => string;
  /** What came, in a line of the summary. */
  readonly brief: (after: Result, before: Result) => string;
}

/** A share this far from another differs from it: about what 200 tables can tell. */
const TELLS = 0.07;
/** Widths that differ by less than this part are alike. */
const ALIKE = 1.15;

/** @param seed of the tables; the same gives the same lesson */
export function lessonSteps(seed: number): readonly LessonStep[] {
  const few: Experiment = { ...DEFAULT_EXPERIMENT, against: 'none', seed };
  const many: Experiment = { ...few, studies: 30 };
  const bending: Experiment = { ...many, against: 'flexible' };
  const straight: Experiment = { ...bending, truth: 'line' };
  const steep: Experiment = { ...bending, truth: 'square root' };
  const all = (experiment: Experiment, look = 0): Seen => ({ experiment, shown: 'fits', hasIntervals: true, look });
  const only = (shown: Shown): Seen => ({ experiment: few, shown, hasIntervals: false, look: 0 });
  const truth = writeTrueTarget(trueTargetIn(few));
  return [
    {
      title: 'A truth that we chose',
      ask: `Growth at reserve 0 is ${formatNumber(toPercent(ALL_TRUTHS[few.truth](0)), 1)}\u00a0%. How many repetitions may stay in reserve if 90\u00a0% of it are to be kept?`,
      where: 'Follow the dotted line from the ring.',
      choices: [
        { id: '0.5', words: 'about half of one' },
        { id: '2', words: 'about 2' },
        { id: '5', words: 'about 5' },
      ],
      before: only('curve'),
      after: only('truth'),
      right: () => nearest(['0.5', '2', '5'], trueTargetIn(few)),
      answer: () =>
        `${truth}, now ringed. The first repetitions left cost most here, so the target lies close to failure. With real studies nobody knows this line; here we do, so we can see who finds it.`,
      brief: () => `The true target is ${truth}.`,
    },
    {
      title: 'One table, one straight line',
      ask: `${few.studies} studies measured growth around that truth, each with error. An analyst fits a straight line and gives a 95\u00a0% interval for the target. Will it hold the true one?`,
      where: 'The true one is ringed at the foot.',
      choices: [
        { id: 'yes', words: 'Yes' },
        { id: 'no', words: 'No' },
      ],
      before: only('rows'),
      after: only('fits'),
      right: ({ line }) => (line?.first?.holds ? 'yes' : 'no'),
      answer: ({ line }) =>
        `${line ? stateFirst(line, truth) : ''} But one table proves nothing${line?.first?.holds ? ': a wrong shape can be lucky once' : line?.first?.holds === false ? ': of intervals that promise 95\u00a0%, 1 in 20 misses by bad luck' : ''}.`,
      brief: ({ line }) => (line ? stateFirst(line, truth) : ''),
    },
    {
      title: 'Two hundred tables',
      ask: `So we draw ${TABLES} such tables and fit the line to each. How many of its intervals will hold the truth?`,
      choices: [
        { id: '0.95', words: 'about 190, as promised' },
        { id: '0.5', words: 'about 100' },
        { id: '0.25', words: 'about 50' },
      ],
      before: only('fits'),
      after: all(few),
      right: ({ line }) => nearest(['0.95', '0.5', '0.25'], line ? shareOf(line) : 0),
      answer: ({ line }) =>
        `${line ? writeResult(line) : ''}. In brackets is what ${TABLES} tables leave open. No bad luck then: a line cannot bend, takes the steep start for a gentle slope, and puts the target too far from failure.`,
      brief: ({ line }) => `The line’s interval held the truth in ${line ? writeResult(line) : 'none'}.`,
    },
    {
      title: 'More studies',
      ask: `Thirty studies in a table in place of ${few.studies}. What happens to the share of intervals that hold the truth?`,
      choices: [
        { id: 'more', words: 'It rises' },
        { id: 'same', words: 'It stays' },
        { id: 'fewer', words: 'It falls' },
      ],
      before: all(few),
      after: all(many),
      right: ({ line: now }, { line: then }) => compare(now, then),
      answer: ({ line: now }, { line: then }) =>
        now && then
          ? `From ${writeResult(then)} to ${writeResult(now)}. A typical interval went from ${writeWidth(then)} to ${writeWidth(now)} repetitions, around the same wrong place. More studies make a wrong shape surer, not right.`
          : '',
      brief: ({ line: now }) => `With 30 studies the line’s held it in ${now ? writeResult(now) : 'none'}.`,
    },
    {
      title: 'A curve that can bend',
      ask: 'The flexible curve assumes no shape. It is fitted to the very same tables. How will its intervals compare with the line’s?',
      choices: [
        { id: 'short', words: 'They hold the truth and are as short' },
        { id: 'wide', words: 'They hold the truth and are wider' },
        { id: 'miss', words: 'They miss it as well' },
      ],
      before: all(many),
      after: all(bending, 1),
      right: ({ line, flexible }) => {
        if (!line || !flexible || !keepsPromise(flexible)) return 'miss';
        return (flexible.medianWidth ?? 0) > ALIKE * (line.medianWidth ?? 0) ? 'wide' : 'short';
      },
      answer: ({ line, flexible }) =>
        line && flexible
          ? `The flexible curve’s hold it in ${writeResult(flexible)}; the line’s in ${writeResult(line)}. Typical widths: ${writeWidth(flexible)} and ${writeWidth(line)} repetitions. An interval that is short because it takes a shape for granted is no better one.`
          : '',
      brief: ({ flexible }) =>
        `The flexible curve’s, on the same tables, in ${flexible ? writeResult(flexible) : 'none'}.`,
    },
    {
      title: 'If the truth is straight',
      ask: 'Now the truth is a straight line, and all else as before. Whose intervals hold it?',
      choices: [
        { id: 'line', words: 'Only the line’s' },
        { id: 'both', words: 'Both, and the line’s are shorter' },
        { id: 'flexible', words: 'Only the flexible curve’s' },
      ],
      before: all(bending),
      after: all(straight),
      right: ({ line, flexible }) => {
        const [isLine, isFlexible] = [line, flexible].map((one) => one !== undefined && keepsPromise(one));
        return isLine && isFlexible ? 'both' : isLine ? 'line' : 'flexible';
      },
      answer: ({ line, flexible }) =>
        line && flexible
          ? `The line’s in ${writeResult(line)}, the flexible curve’s in ${writeResult(flexible)}. Typical widths: ${writeWidth(line)} and ${writeWidth(flexible)} repetitions. That is the price of assuming no shape, and it would be a price for nothing if one knew that the truth is straight. A table of studies does not say so.`
          : '',
      brief: ({ line, flexible }) =>
        line && flexible
          ? `Around a straight truth the line’s held it in ${writeResult(line)} at ${writeWidth(line)} repetitions, the flexible curve’s in ${writeResult(flexible)} at ${writeWidth(flexible)}.`
          : '',
    },
    {
      title: 'Where the flexible curve fails, too',
      ask: 'A truth that is steeper at the start than the flexible curve can be: the first half repetition costs most. Does its interval keep the promise of 95\u00a0%?',
      choices: [
        { id: 'yes', words: 'Yes' },
        { id: 'no', words: 'No' },
      ],
      before: all(straight),
      after: all(steep, 1),
      right: ({ flexible }) => (flexible && keepsPromise(flexible) ? 'yes' : 'no'),
      answer: ({ line, flexible }) =>
        line && flexible
          ? `It holds the truth in ${writeResult(flexible)}, the line’s in ${writeResult(line)}. No interval is right about every truth. What it assumes belongs beside it, and so does how it was tried.`
          : '',
      brief: ({ flexible }) =>
        `Around a truth too sharp for it the flexible curve’s held it in ${flexible ? writeResult(flexible) : 'none'}.`,
    },
  ];
}

/** “0.90 (0.54 to 7.69): it misses the truth, 0.5.” */
function stateFirst({ first }: CurveResult, truth: string): string {
  const { point, low, high, holds } = first ?? { point: null, low: null, high: null, holds: null };
  if (point === null) return 'From this table the line gives no target.';
  return `The line’s target is ${formatNumber(point, 2)} (${formatRange(low, high, 2)}): the interval ${holds ? 'holds' : 'misses'} the truth, ${truth}.`;
}

/** Whether the share may be as high as a kept promise asks, as far as so many tables can tell. */
function keepsPromise({ given, held }: CurveResult): boolean {
  return given > 0 && inferShare(held, given, COVERAGE_QUESTION.confidence).high >= PROMISE.least;
}

function writeWidth({ medianWidth }: CurveResult): string {
  return medianWidth === null ? 'none' : formatNumber(medianWidth, 1);
}

function nearest(ids: readonly string[], value: number): string {
  return [...ids].sort((a, b) => Math.abs(Number(a) - value) - Math.abs(Number(b) - value))[0];
}

function compare(now: CurveResult | undefined, then: CurveResult | undefined): string {
  const change = now && then ? shareOf(now) - shareOf(then) : 0;
  return change > TELLS ? 'more' : change < -TELLS ? 'fewer' : 'same';
}
