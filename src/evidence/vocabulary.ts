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
export const RESERVE_BASES = ['reported', 'prescribed', 'share-of-maximum', 'velocity-loss', 'load-table'] as const;
/** Work after failure. */
export const BEYOND_FAILURE = ['none', 'partials', 'load-drops'] as const;
export const EFFECT_METRICS = ['log-ratio', 'standardised'] as const;

/** Whether a row's sets went on after failure; an empty cell means that they did not. */
export function wentBeyondFailure({
  beyond_failure: kind,
}: {
  readonly beyond_failure: (typeof BEYOND_FAILURE)[number] | null;
}): boolean {
  return kind !== null && kind !== 'none';
}
