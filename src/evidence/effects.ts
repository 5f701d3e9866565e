/**
 * The effect of one row and its sampling variance: the log ratio (logRatio.ts; per cent change = 100 (eʸ − 1)) or the
 * standardised change (standardisedChange.ts). A ready-made effect of the metric with its variance is taken as it is
 * printed; else the row's statistics give it; else, where the settings ask for it, the pooled spread of other rows.
 */

import { hasPeople } from './countedArm.ts';
import { AS_BEFORE, type Computed } from './effectFormulas.ts';
import { logRatioOf } from './logRatio.ts';
import { type PooledSpread, pooledEffect } from './pooledSpread.ts';
import { logRatioOfErrors } from './printedError.ts';
import type { Recovered } from './recover.ts';
import { restsOn } from './restsOn.ts';
import type { Arm } from './schema.ts';
import { standardisedOf } from './standardisedChange.ts';
import { byBaselineSd } from './standardisedEffect.ts';
import { resolveStatistics } from './statistics.ts';
import type { EFFECT_METRICS, OUTCOMES, RestsOn } from './vocabulary.ts';

export interface Effect {
  readonly arm: Arm;
  /** Effect in the metric asked for. */
  readonly y: number;
  /** Sampling variance of y, above 0. */
  readonly v: number;
  /** Correlation of baseline with follow-up that v was computed with; null where v needs none. */
  readonly correlation: number | null;
  /** How effect and variance, and every number behind them that was not simply reported, were obtained, in order. */
  readonly steps: readonly Recovered[];
  /** The weakest that effect, variance, people and reserve rest on. */
  readonly restsOn: RestsOn;
}

export interface EffectChoice {
  readonly outcome: (typeof OUTCOMES)[number];
  readonly metric: (typeof EFFECT_METRICS)[number];
  /** Stands in where a row gives no correlation, −1 to 1 open. */
  readonly assumedCorrelation: number;
  /** Stands in for SDs that rows do not print; left out where nothing does. */
  readonly pooled?: PooledSpread | null;
}

export interface ComputedEffects {
  readonly effects: readonly Effect[];
  readonly excluded: readonly { readonly line: number; readonly reason: string }[];
}

/**
 * Largest effect, and least and largest variance, that a fit can weigh with the 16 digits of a number. A doubled mean
 * has a log ratio of 0.7; beyond these limits stand slips and tests.
 */
const COMPUTABLE = { effect: 1e6, leastVariance: 1e-24, mostVariance: 1e24 } as const;

/** Effects of the rows of one outcome; rows of other outcomes are not looked at. */
export function computeEffects(arms: readonly Arm[], choice: EffectChoice): ComputedEffects {
  const effects: Effect[] = [];
  const excluded: { line: number; reason: string }[] = [];
  for (const arm of arms) {
    if (arm.outcome !== choice.outcome) continue;
    const result = computeEffect(arm, choice);
    if (typeof result === 'string') excluded.push({ line: arm.line, reason: result });
    else effects.push(result);
  }
  return { effects, excluded };
}

const NO_PEOPLE =
  'the number of people in the arm is not known (`n` is empty), which a variance needs where no standard error is printed';

/** The effect of a row, or the reason why it has none in this metric. */
export function computeEffect(arm: Arm, choice: Omit<EffectChoice, 'outcome'>): Effect | string {
  const { metric, assumedCorrelation, pooled } = choice;
  if (arm.effect !== null && arm.effect_variance !== null && arm.effect_metric === metric) {
    return finish(arm, readyMade({ ...arm, effect: arm.effect }, arm.effect_variance, choice));
  }
  if (!hasPeople(arm)) {
    const ofErrors = metric === 'log-ratio' ? logRatioOfErrors(arm, assumedCorrelation) : null;
    return ofErrors ? finish(arm, ofErrors) : NO_PEOPLE;
  }
  const fromPool = () => (pooled ? pooledEffect(arm, pooled, metric, assumedCorrelation) : null);
  const first = pooled?.use === 'all' ? fromPool() : null;
  if (first && typeof first !== 'string') return finish(arm, first);
  const own = metric === 'log-ratio' ? logRatioOf(arm, assumedCorrelation) : standardisedOf(arm, assumedCorrelation);
  if (typeof own !== 'string') return finish(arm, own);
  const reason = reasonOf(arm, metric, own);
  if (!pooled || printsSpread(arm, assumedCorrelation)) return reason;
  const filled = fromPool();
  if (!filled || typeof filled === 'string') return filled ? `${reason}; ${filled}` : reason;
  return finish(arm, filled);
}

/** The reason of the statistics, behind that of a ready-made effect where one stands in the row. */
function reasonOf({ effect_metric: given }: Arm, metric: EffectChoice['metric'], own: string): string {
  if (given === null) return own;
  return given === metric
    ? `its ready-made effect has no variance, and ${own}`
    : `its ready-made effect is ${given}, and ${own}`;
}

/** True where the row's own spread can be had, though not in every metric. */
function printsSpread(arm: Arm, assumedCorrelation: number): boolean {
  if (!hasPeople(arm)) return false;
  const { baselineSd, followupSd, changeSd } = resolveStatistics(arm, assumedCorrelation);
  return baselineSd !== null || followupSd !== null || changeSd !== null;
}

/** A ready-made effect; a standardised one by another SD, or without its correction, as one by the SD before. */
function readyMade(
  arm: Arm & { readonly effect: number },
  variance: number,
  { metric, assumedCorrelation }: Omit<EffectChoice, 'outcome'>,
): Computed {
  const how = 'reported';
  const r = arm.correlation ?? assumedCorrelation;
  const { d, factor, steps } =
    metric === 'standardised' ? byBaselineSd(arm, r) : { d: arm.effect, factor: 1, steps: [] };
  const v = variance * factor ** 2;
  return {
    y: d,
    v,
    correlation: arm.effect_standardiser === 'change-sd' && metric === 'standardised' ? r : null,
    steps: [
      ...steps,
      { quantity: 'effect', value: d, how: steps.length > 0 ? AS_BEFORE : how },
      { quantity: 'variance', value: v, how: factor === 1 ? how : 'the printed variance times the square of the same' },
    ],
  };
}

function finish(arm: Arm, computed: Computed | string): Effect | string {
  if (typeof computed === 'string') return computed;
  const { y, v, correlation, steps } = computed;
  if (!(v > 0) || !Number.isFinite(v) || !Number.isFinite(y)) {
    return 'its reported statistics give no variance above 0';
  }
  const extreme = refuseExtreme(y, v);
  return extreme ?? { arm, y, v, correlation, steps, restsOn: restsOn(arm, steps) };
}

function refuseExtreme(y: number, v: number): string | null {
  const { effect, leastVariance, mostVariance } = COMPUTABLE;
  if (Math.abs(y) <= effect && v >= leastVariance && v <= mostVariance) return null;
  return `its effect of ${y.toPrecision(3)} with a variance of ${v.toPrecision(3)} cannot be computed with (effects up to ${effect}, variances from ${leastVariance} to ${mostVariance})`;
}
