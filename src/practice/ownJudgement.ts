/**
 * How one lifter judges, from test sets of their own: the repetitions they said were in reserve, and those they then
 * did to failure. A few sets say little, so their mean error is shrunk towards that of people in general.
 *
 *     y_j = done − said = θ + e_j     θ ~ N(μ, τ²) between people     e_j ~ N(0, σ²) between sets, j = 1 … n
 *     w = τ² / (τ² + σ²/n)            mean of θ: w ȳ + (1 − w) μ      its SE: √(w σ²/n), and τ without a set
 *
 * The normal–normal posterior, from memory (Lindley & Smith 1972, J R Stat Soc B 34:1; Efron & Morris 1975, J Am Stat
 * Assoc 70:311). μ and τ are the published ones (judgement.ts) and taken as known.
 *
 * σ: no SD within people was at hand. The published SD is of people's single predictions and so holds both parts; it
 * bounds either from above. Taken as σ it makes few sets count for less than they might, never for more. From three
 * sets on their own SD s counts too, pooled by degrees of freedom: σ² = (2 · published² + (n − 1) s²) / (n + 1).
 * Without the published part three sets of the same error would claim a lifter who never errs.
 *
 * Not reckoned with: said early in a set less is known than near its end, and lifters learn from test sets.
 */
import { countOf } from '../numerics/countOf.ts';
import { normalQuantile } from '../numerics/distributions.ts';
import { writePercent } from '../numerics/percent.ts';
import { inTenths, type Judgement, PUBLISHED_JUDGEMENT } from './judgement.ts';

/** One set done to failure, whole repetitions. */
export interface TestSet {
  /** Repetitions in reserve, as said during the set. */
  readonly said: number;
  /** Repetitions done from then on, to failure. */
  readonly done: number;
}

/** Repetitions that a test set may be entered with: more are no question of reserve. */
export const TEST_SET = { from: 0, to: 30 } as const;
/** Test sets that are kept: more than anybody does to failure for this. */
export const MOST_TEST_SETS = 20;
/** Test sets from which on their own SD counts: two give one difference, which is no spread. */
export const LEAST_FOR_OWN_SPREAD = 3;
/** Degrees of freedom that the published SD counts for beside a lifter's own (common practice, no source). */
const PUBLISHED_DF = 2;
/** Confidence of the interval that is told, whatever is asked of the evidence's. */
const CONFIDENCE = 0.95;

export interface OwnJudgement extends Judgement {
  readonly sets: number;
  /** Mean of done minus said, repetitions; null without a set. */
  readonly ownMean: number | null;
  /** Standard error of `bias`, repetitions. */
  readonly standardError: number;
  /** SD from set to set that the shrinking reckons with, repetitions. */
  readonly betweenSets: number;
  /** Share of `bias` that the own sets decide, 0 to below 1; the published mean decides the rest. */
  readonly weight: number;
}

/** @throws where a set is no pair of whole repetitions within `TEST_SET` */
export function judgeOwn(sets: readonly TestSet[]): OwnJudgement {
  for (const { said, done } of sets) {
    for (const value of [said, done]) if (!isWholeCount(value)) throw new Error(refuseCount(value));
  }
  const errors = sets.map(({ said, done }) => done - said);
  const n = errors.length;
  const { bias: mu, spread: tau } = PUBLISHED_JUDGEMENT;
  if (n === 0) {
    return { ...PUBLISHED_JUDGEMENT, sets: 0, ownMean: null, standardError: tau, betweenSets: tau, weight: 0 };
  }
  const ownMean = errors.reduce((sum, error) => sum + error, 0) / n;
  const betweenSets = spreadBetweenSets(errors, ownMean);
  const varianceOfMean = betweenSets ** 2 / n;
  const weight = tau ** 2 / (tau ** 2 + varianceOfMean);
  const bias = weight * ownMean + (1 - weight) * mu;
  const standardError = Math.sqrt(weight * varianceOfMean);
  return {
    bias,
    // Of the next set: both parts. The published SD holds both already.
    spread: n < LEAST_FOR_OWN_SPREAD ? tau : Math.hypot(standardError, betweenSets),
    // Safety is not shrunk away.
    lowest: Math.min(bias, ownMean),
    sets: n,
    ownMean,
    standardError,
    betweenSets,
    weight,
  };
}

/** Whether a number may stand in a test set. */
export function isWholeCount(value: number): boolean {
  return Number.isInteger(value) && value >= TEST_SET.from && value <= TEST_SET.to;
}

/** What the sets say, what is taken of it, and how sure that is. */
export function stateOwn({ sets, ownMean, bias, standardError, weight }: OwnJudgement): string {
  const published = PUBLISHED_JUDGEMENT.bias.toFixed(2);
  if (ownMean === null) return `No test set yet: ${published} more done than said are taken, as published of people.`;
  const from = `${countOf(sets, 'test set')}: ${tellError(ownMean)} on average. Taken: ${tellError(bias)} (standard error ${standardError.toFixed(1)}), of which the sets decide ${writePercent(Number(weight.toFixed(2)))} and the published ${published} the rest.`;
  return `${from} ${howSure(bias, standardError)}`;
}

function spreadBetweenSets(errors: readonly number[], mean: number): number {
  const published = PUBLISHED_JUDGEMENT.spread;
  if (errors.length < LEAST_FOR_OWN_SPREAD) return published;
  const squares = errors.reduce((sum, error) => sum + (error - mean) ** 2, 0);
  return Math.sqrt((PUBLISHED_DF * published ** 2 + squares) / (PUBLISHED_DF + errors.length - 1));
}

/** Whether it is settled to which side the lifter errs, by an approximate 95 % interval. */
function howSure(bias: number, standardError: number): string {
  const reach = normalQuantile((1 + CONFIDENCE) / 2) * standardError;
  const [low, high] = [bias - reach, bias + reach];
  const interval = `between ${showError(low)} and ${showError(high)} (about ${writePercent(CONFIDENCE)})`;
  if (low > 0) return `That they stop early is fairly sure: ${interval}.`;
  if (high < 0) return `That they have fewer left than they say is fairly sure: ${interval}.`;
  return `Not sure yet whether they stop early or late: ${interval}. More test sets would tell.`;
}

/** “1.2 more done than said” */
function tellError(error: number): string {
  const size = Math.abs(inTenths(error)).toFixed(1);
  if (Number(size) === 0) return 'as many done as said';
  return `${size} ${error > 0 ? 'more' : 'fewer'} done than said`;
}

function showError(error: number): string {
  const shown = inTenths(error).toFixed(1);
  if (Number(shown) === 0) return '0.0';
  return error > 0 ? `+${shown}` : shown.replace('-', '−');
}

function refuseCount(value: number): string {
  return `invalid test set; expected whole repetitions from ${TEST_SET.from} to ${TEST_SET.to}, received ${value}`;
}
