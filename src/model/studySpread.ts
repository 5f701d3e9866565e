/** How far the eigenvalues of a study's block of the working covariance lie apart. */
import type { Observations } from './observations.ts';
import type { Whitening } from './whitening.ts';

/** A bound of the condition of Φ of study k: its largest variance, shared ones counted for all rows, over its smallest. */
export function spreadOfStudy(data: Observations, whitening: Whitening, k: number): number {
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (let g = data.studyGroups[k]; g < data.studyGroups[k + 1]; g++) {
    for (let i = data.groupStart[g]; i < data.groupStart[g + 1]; i++) {
      const d = 1 / whitening.rootWeight[i] ** 2;
      least = Math.min(least, d);
      most = Math.max(most, d * whitening.groupStretch[g] ** 2);
    }
  }
  const rows = data.studyStart[k + 1] - data.studyStart[k];
  return rows === 1 ? 1 : (most + whitening.at.tau2 * rows) / least;
}
