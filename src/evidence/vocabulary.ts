/** The words that cells of the evidence tables may hold. */

/** Which change a row measured. */
export const OUTCOMES = ['growth', 'strength', 'fatigue'] as const;
export const DESIGNS = ['parallel', 'within-person', 'crossover'] as const;
/** The curator's judgement of how far bias may have moved the result. */
export const CONCERNS = ['low', 'some', 'high'] as const;
export const TRAINING_STATUSES = ['untrained', 'trained'] as const;
export const SEXES = ['female', 'male', 'mixed'] as const;
/** Joints that move: one, or several. */
export const JOINTS = ['single', 'multi'] as const;
/** Which event counted as failure. */
export const FAILURE_DEFINITIONS = ['technique', 'full range', 'muscular', 'task'] as const;
/** How reserve was known. */
export const RESERVE_BASES = [
  'reported',
  'prescribed',
  'repetitions',
  'share-of-maximum',
  'velocity-loss',
  'load-table',
] as const;
/** Work after failure. */
export const BEYOND_FAILURE = ['none', 'partials', 'load-drops', 'rest-pause', 'assisted'] as const;
export const EFFECT_METRICS = ['log-ratio', 'standardised'] as const;
/** What a standardised effect was divided by. */
export const STANDARDISERS = ['baseline-sd', 'pooled-sd', 'change-sd'] as const;
/** How an interval was made: by a sampling distribution, or from a posterior (highest density or equal tails). */
export const INTERVAL_KINDS = ['confidence', 'credible'] as const;
/**
 * What a row's numbers rest on, the strongest first: printed as they are; recovered by arithmetic from what is printed;
 * assumed where the paper does not say it; pooled from other rows of the table.
 */
export const RESTS_ON = ['printed', 'recovered', 'assumed', 'pooled'] as const;
export type RestsOn = (typeof RESTS_ON)[number];
/** For which rows the pooled spread of other rows stands in: those that print none, or all with means. */
export const POOLED_FOR = ['missing', 'all'] as const;
/** What of the paper was read. */
export const READINGS = ['full text', 'abstract', 'second-hand'] as const;

/** Whether a row's sets went on after failure; an empty cell means that they did not. */
export function wentBeyondFailure({
  beyond_failure: kind,
}: {
  readonly beyond_failure: (typeof BEYOND_FAILURE)[number] | null;
}): boolean {
  return kind !== null && kind !== 'none';
}
