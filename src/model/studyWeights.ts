/** What each study counts for. */
import { dot } from '../numerics/dot.ts';
import type { Fit } from './mixed.ts';

/** Share of each study in 1'Φ⁻¹1, what it counts for in a pooled mean, in the order of the fit's studies. */
export function studyWeights({ data, whitening }: Fit): number[] {
  const weights = data.studies.map((_, k) => {
    const ones = whitening.whitenedOnes.subarray(data.studyStart[k], data.studyStart[k + 1]);
    return dot(ones, ones);
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}
