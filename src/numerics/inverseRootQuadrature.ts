/**
 * The inverse square root as a sum of inverses, for matrices that are easily shifted and inverted but
 * not decomposed:
 *     b^(−1/2) = (2/π) ∫₀^∞ dσ/(σ² + b) ≈ Σ_j weight_j/(σ_j² + b)      for every b in [low, high].
 *
 * σ = √low sc(t | 1 − k²), k² = low/high, makes the integrand periodic and analytic in t, so that the midpoint rule's
 * error falls as exp(−2π² N/(ln(high/low) + 3)) (Hale, Higham & Trefethen 2008, SIAM J Numer Anal 46:2505, §4).
 * Jacobi's amplitude comes from the arithmetic-geometric mean (Abramowitz & Stegun 1964, 16.4).
 */

export interface InverseRootNode {
  readonly sigma: number;
  readonly weight: number;
}

/** Natural logarithm of the error meant: e⁻³⁴ is some ten times below a double's rounding. */
const DIGITS = 34;
/** Steps of the mean: each doubles the digits, from 1e-12 apart to equal in fewer than ten. */
const MOST_STEPS = 16;

/**
 * Nodes, σ ascending; some 20 where all b are alike, 55 where they span twelve orders.
 *
 * @param low smallest b, above 0
 * @param high largest b, at least `low`
 */
export function inverseRootNodes(low: number, high: number): readonly InverseRootNode[] {
  const k = Math.sqrt(low / high);
  const half = Math.ceil(((Math.log(high / low) + 3) * DIGITS) / (4 * Math.PI ** 2));
  const count = 2 * half;
  const amplitude = makeAmplitude(k);
  const root = Math.sqrt(low);
  const step = amplitude.quarterPeriod / count;
  const lower = Array.from({ length: half }, (_, j) => {
    const phi = amplitude.at((j + 0.5) * step);
    const [sn, cn] = [Math.sin(phi), Math.cos(phi)];
    const slope = Math.sqrt(cn * cn + k * k * sn * sn) / (cn * cn);
    return { sigma: (root * sn) / cn, weight: (2 / Math.PI) * step * root * slope };
  });
  // sc(K − t) = 1/(k sc(t)): the upper half mirrors the lower one, without cosines that vanish.
  const mirror = low / k;
  const upper = lower.map(({ sigma, weight }) => ({ sigma: mirror / sigma, weight: (mirror * weight) / sigma ** 2 }));
  return [...lower, ...upper.reverse()];
}

/** Jacobi's amplitude am(t | 1 − k²) and its quarter period. */
function makeAmplitude(k: number): { quarterPeriod: number; at: (t: number) => number } {
  const means: (readonly [number, number])[] = [];
  let [a, b] = [1, k];
  while (a - b > Number.EPSILON * a && means.length < MOST_STEPS) {
    const next = (a + b) / 2;
    means.push([next, (a - b) / 2]);
    b = Math.sqrt(a * b);
    a = next;
  }
  return {
    quarterPeriod: Math.PI / (2 * a),
    at: (t) =>
      means.reduceRight(
        (phi, [mean, gap]) => (phi + Math.asin((gap / mean) * Math.sin(phi))) / 2,
        2 ** means.length * a * t,
      ),
  };
}
