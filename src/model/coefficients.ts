/** The coefficients of a fit with their names and both standard errors. */
import { unitVector } from '../numerics/smallMatrices.ts';
import type { Fit } from './mixed.ts';
import type { Coefficient } from './result.ts';
import { inferContrast } from './robust.ts';

/**
 * @param terms names of the design's columns, in their order
 * @param confidence level of the intervals, 0 to 1 open
 */
export function listCoefficients(terms: readonly string[], fit: Fit, confidence: number): readonly Coefficient[] {
  return terms.map((term, j) => ({
    term,
    ...inferContrast(fit.inference, unitVector(terms.length, j), confidence),
    modelStandardError: fit.modelStandardErrors[j],
  }));
}
