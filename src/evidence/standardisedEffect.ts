/**
 * A printed change in SDs: which SD it was divided by, the SD that it gives beside a change, and the standardised
 * change by the SD before that it stands for.
 *
 * Where the paper does not say the SD, that before is assumed. By the SD of the change, d_c, it is
 * d_b = d_c √(2 (1 − r)) by that before, SDs before and after being equal (Morris & DeShon 2002, Psychol Methods 7:105).
 */
import type { Recovered } from './recover.ts';
import type { Arm } from './schema.ts';
import { smallSampleFactor } from './smallSampleFactor.ts';
import type { STANDARDISERS } from './vocabulary.ts';

/** An SD from a change and its standardised size. */
export interface SdOfEffect {
  readonly of: (typeof STANDARDISERS)[number];
  readonly sd: Recovered;
}

const QUANTITIES = {
  'baseline-sd': 'SD before',
  'pooled-sd': 'SD of before and after pooled',
  'change-sd': 'SD of the change',
} as const satisfies Record<(typeof STANDARDISERS)[number], string>;

/** SD = change / d; null where no standardised effect is printed, or its sign is not that of the change. */
export function sdOfStandardisedEffect(arm: Arm, change: number | null): SdOfEffect | null {
  if (arm.effect === null || arm.effect_metric !== 'standardised' || change === null) return null;
  const isCorrected = arm.effect_corrected === true;
  const correction = isCorrected ? smallSampleFactor((arm.n ?? Number.NaN) - 1) : 1;
  const value = (change * correction) / arm.effect;
  if (!(value > 0 && Number.isFinite(value))) return null;
  const of = arm.effect_standardiser ?? 'baseline-sd';
  const how = `mean change / standardised effect${isCorrected ? ' × J(n − 1)' : ''}`;
  if (arm.effect_standardiser !== null) {
    return { of, sd: { quantity: QUANTITIES[of], value, how, restsOn: 'recovered' } };
  }
  return {
    of,
    sd: { quantity: QUANTITIES[of], value, how: `${how}, assumed to be by the SD before`, restsOn: 'assumed' },
  };
}

/** The printed standardised effect by the SD before, with what was made of it. */
export interface ByBaselineSd {
  readonly d: number;
  /** Squared, what a printed variance is multiplied by. */
  readonly factor: number;
  readonly steps: readonly Recovered[];
}

/** @param correlation of before with after */
export function byBaselineSd(arm: Arm & { readonly effect: number }, correlation: number): ByBaselineSd {
  const quantity = 'standardised change by the SD before';
  const { effect, effect_standardiser: of, n } = arm;
  if (of === 'change-sd') {
    const factor = Math.sqrt(2 * (1 - correlation));
    const how = 'd × √(2 (1 − r)), the effect being by the SD of the change';
    return corrected(arm, factor, [{ quantity, value: factor * effect, how, restsOn: 'recovered' }]);
  }
  if (of === 'pooled-sd') {
    const how = 'the effect by the pooled SD, SDs before and after taken as equal';
    return corrected(arm, 1, [{ quantity, value: effect, how, restsOn: 'recovered' }]);
  }
  // A ready-made effect with its variance is one by the SD before, as the data dictionary says.
  if (of === null && arm.effect_variance === null && n !== null) {
    const how = 'the effect as printed, assumed to be by the SD before';
    return corrected(arm, 1, [{ quantity, value: effect, how, restsOn: 'assumed' }]);
  }
  return corrected(arm, 1, []);
}

/** With the correction for small samples, where the row says that the effect has none, or prints no variance with it. */
function corrected(arm: Arm & { readonly effect: number }, factor: number, steps: readonly Recovered[]): ByBaselineSd {
  const { effect, effect_corrected: isCorrected, effect_variance: variance, n } = arm;
  const isToCorrect = isCorrected === false || (isCorrected === null && variance === null);
  // Two people have no J, and a row without people keeps its effect as it is printed.
  if (!isToCorrect || n === null || n < 3) return { d: factor * effect, factor, steps };
  const both = factor * smallSampleFactor(n - 1);
  const how = isCorrected === false ? 'times J(n − 1)' : 'times J(n − 1), taken as not corrected for small samples';
  const value = both * effect;
  return {
    d: value,
    factor: both,
    steps: [...steps, { quantity: 'standardised change, corrected', value, how, restsOn: 'recovered' }],
  };
}
