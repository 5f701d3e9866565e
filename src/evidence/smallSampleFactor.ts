/** The correction of a standardised change for small samples (Hedges 1981, J Educ Stat 6:107). */
import gammaln from '@stdlib/math-base-special-gammaln';

/** J(m) = Γ(m/2) / (√(m/2) Γ((m − 1)/2)), exact, for m degrees of freedom above 1; NaN at or below 1. */
export function smallSampleFactor(m: number): number {
  return m > 1 ? Math.exp(gammaln(m / 2) - 0.5 * Math.log(m / 2) - gammaln((m - 1) / 2)) : Number.NaN;
}
