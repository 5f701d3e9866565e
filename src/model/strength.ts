/**
 * Strength against reserve and load side by side: the same mixed model with both as terms, and
 * whether the effect of reserve is small enough to be worth nothing.
 *
 * Equivalence by two one-sided tests (Schuirmann 1987, J Pharmacokinet Biopharm 15:657): at level
 * α = 1 − confidence the effect lies inside ± margin when the 1 − 2α interval does.
 */
import { mean } from 'simple-statistics';
import type { Arm } from '../evidence/schema.ts';
import { studentQuantile, studentTwoSidedP } from '../numerics/distributions.ts';
import { reservesOf, toObservations } from './bandFit.ts';
import { fitCarried } from './carriedFit.ts';
import { countDistinctStudies } from './counts.ts';
import { refuseConstantReserve } from './designRefusal.ts';
import type { Estimate, ExcludedRow, FitFailure } from './result.ts';
import { inferContrast } from './robust.ts';
import { selectRows } from './selection.ts';
import { JUDGED_REPETITIONS, type Settings } from './settings.ts';

export interface Equivalence {
  /** Difference over the judged repetitions, with its usual interval. */
  readonly difference: Estimate;
  /** Margin on the analysis scale. */
  readonly margin: number;
  /** Limits of the 1 − 2α interval. */
  readonly low: number;
  readonly high: number;
  /** p of the larger one-sided test: small where the difference lies inside the margin. */
  readonly p: number;
  /** inside: within the margin; apart from 0: the usual interval leaves out 0; open: neither can be said. */
  readonly verdict: 'inside' | 'apart from 0' | 'inside and apart from 0' | 'open';
}

export interface Strength {
  readonly rows: number;
  readonly studies: number;
  readonly excluded: readonly ExcludedRow[];
  /** Change at reserve 0 and mean load. */
  readonly atFailure: Estimate | null;
  /** Per repetition in reserve, load held. */
  readonly reserve: Estimate | null;
  /** Per point of per cent of 1RM, reserve held. */
  readonly load: Estimate | null;
  readonly equivalence: Equivalence | null;
  readonly failure: FitFailure | null;
}

/** @param arms all rows of the table; those of strength that report a load are fitted */
export function analyseStrength(arms: readonly Arm[], settings: Settings): Strength {
  const { effects: all, excluded } = selectRows(arms, { ...settings, outcome: 'strength' });
  const effects = all.filter(({ arm }) => arm.load_pct_1rm !== null);
  const withoutLoad = all
    .filter(({ arm }) => arm.load_pct_1rm === null)
    .map(({ arm }) => ({ line: arm.line, reason: 'load is not known, which this model needs' }));
  const reserves = reservesOf(effects);
  const loads = effects.map(({ arm }) => arm.load_pct_1rm ?? Number.NaN);
  const meanLoad = loads.length > 0 ? mean(loads) : Number.NaN;
  const common = {
    rows: effects.length,
    studies: countDistinctStudies(effects),
    excluded: [...excluded, ...withoutLoad],
  };
  const failed = (failure: FitFailure): Strength => ({
    ...common,
    atFailure: null,
    reserve: null,
    load: null,
    equivalence: null,
    failure,
  });
  const refusal = refuseConstantReserve(reserves);
  if (refusal) return failed(refusal);
  const columns = [reserves.map(() => 1), reserves, loads.map((load) => load - meanLoad)];
  const { fit, failure } = fitCarried(toObservations(effects), columns, settings);
  if (!fit) return failed(failure);
  const infer = (contrast: readonly number[]) => inferContrast(fit.inference, contrast, settings.confidence);
  return {
    ...common,
    atFailure: infer([1, 0, 0]),
    reserve: infer([0, 1, 0]),
    load: infer([0, 0, 1]),
    equivalence: judge(infer([0, JUDGED_REPETITIONS, 0]), settings),
    failure: null,
  };
}

function judge(difference: Estimate, { metric, smallestWorthwhile, confidence }: Settings): Equivalence {
  const asked = smallestWorthwhile[metric];
  const margin = metric === 'log-ratio' ? Math.log1p(asked / 100) : asked;
  const { estimate, standardError, df } = difference;
  const reach = studentQuantile(confidence, df) * standardError;
  const distance = (margin - Math.abs(estimate)) / standardError;
  const oneSided = studentTwoSidedP(distance, df) / 2;
  const inside = Math.abs(estimate) + reach <= margin;
  const apart = difference.ciLow > 0 || difference.ciHigh < 0;
  return {
    difference,
    margin,
    low: estimate - reach,
    high: estimate + reach,
    p: distance >= 0 ? oneSided : 1 - oneSided,
    verdict: inside && apart ? 'inside and apart from 0' : inside ? 'inside' : apart ? 'apart from 0' : 'open',
  };
}
