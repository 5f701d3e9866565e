/**
 * Wild cluster bootstrap of a contrast's p-value: a check on the t approximation that does not use
 * degrees of freedom.
 *
 * The residuals of the fit with the contrast held at 0 are multiplied, study by study, by random signs
 * or Webb's six points, the whitened regression is repeated, and the CR2 t statistics are compared
 * with the one observed (Cameron, Gelbach & Miller 2008, Rev Econ Stat 90:414; Webb 2023, Can J Econ
 * 56:839, six points where clusters are few). The variance components stay as estimated.
 *
 * Everything a resample needs is linear in the weights, so one costs O(studies · p).
 */
import { dot } from '../../numerics/dot.ts';
import { makeRandom } from '../../numerics/random.ts';
import type { Fit } from '../mixed.ts';
import { measureContrast, toScores } from '../robust.ts';

export interface BootstrapTest {
  /** Two-sided p-value, (1 + resamples at least as extreme)/(1 + resamples). */
  readonly p: number;
  readonly resamples: number;
  readonly weights: 'six points' | 'signs';
  /** The t statistic observed. */
  readonly t: number;
}

/** Below this number of studies signs alone give too few different resamples: 2¹¹ = 2,048. */
const FEW_STUDIES = 12;
const SIX_POINTS = [-Math.sqrt(1.5), -1, -Math.sqrt(0.5), Math.sqrt(0.5), 1, Math.sqrt(1.5)] as const;
/** Resamples: a p of 0.05 then has a standard error of 0.003. */
const RESAMPLES = 4999;
/** Share of t within which two statistics count as equal, so that the sample's own signs do. */
const SAME_T = 1e-9;

/**
 * @param contrast of the fit's coefficients, tested to be 0
 * @param seed of the weights, a whole number
 */
export function bootstrapContrast(fit: Fit, contrast: readonly number[], seed: number): BootstrapTest {
  const h = toScores(fit.inference, contrast);
  const { estimate, standardError } = measureContrast(fit.inference, contrast);
  const t = estimate === 0 ? 0 : estimate / standardError;
  const studies = reduceStudies(fit, h, estimate);
  const weights = studies.length < FEW_STUDIES ? 'six points' : 'signs';
  const { uniform } = makeRandom(seed);
  const draw = () => (weights === 'signs' ? (uniform() < 0.5 ? -1 : 1) : SIX_POINTS[Math.floor(6 * uniform())]);
  let extreme = 0;
  const drawn = new Float64Array(studies.length);
  for (let b = 0; b < RESAMPLES; b++) {
    const g = new Float64Array(h.length);
    studies.forEach(({ projected }, k) => {
      drawn[k] = draw();
      for (let c = 0; c < g.length; c++) g[c] += drawn[k] * projected[c];
    });
    let variance = 0;
    studies.forEach(({ score, overlapScores }, k) => {
      variance += (drawn[k] * score - dot(overlapScores, g)) ** 2;
    });
    if (Math.abs(dot(h, g)) >= Math.abs(t) * (1 - SAME_T) * Math.sqrt(variance)) extreme++;
  }
  return { p: (1 + extreme) / (1 + RESAMPLES), resamples: RESAMPLES, weights, t };
}

/** What a resample needs of a study, in the symbols of cr2.ts and h = R⁻'c. */
interface ReducedStudy {
  /** Q'(residuals under the null), length p. */
  readonly projected: Float64Array;
  /** h'U'F (residuals under the null). */
  readonly score: number;
  /** T h, length p. */
  readonly overlapScores: Float64Array;
}

/** Residuals under the null are e + Q v in whitened terms, v = h c'β/|h|². */
function reduceStudies({ inference, data, solution }: Fit, h: Float64Array, estimate: number): readonly ReducedStudy[] {
  const { p } = inference;
  const size2 = h.reduce((sum, value) => sum + value * value, 0);
  const v = h.map((value) => (value * estimate) / size2);
  return inference.parts.map(({ score, overlap }, k) => {
    const projected = new Float64Array(p);
    for (let c = 0; c < p; c++) {
      for (let i = data.studyStart[k]; i < data.studyStart[k + 1]; i++) {
        let residual = solution.residuals[i];
        for (let d = 0; d < p; d++) residual += solution.q[d][i] * v[d];
        projected[c] += solution.q[c][i] * residual;
      }
    }
    // U'F under the null: the score of the fit, and T'v for the part along Q.
    const restricted = score.map((value, r) => {
      let along = value;
      for (let c = 0; c < p; c++) along += overlap[c * p + r] * v[c];
      return along;
    });
    const overlapScores = Float64Array.from({ length: p }, (_, c) => {
      let sum = 0;
      for (let r = 0; r < p; r++) sum += overlap[c * p + r] * h[r];
      return sum;
    });
    return { projected, score: dot(h, restricted), overlapScores };
  });
}
