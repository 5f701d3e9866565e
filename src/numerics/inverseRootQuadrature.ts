/**
 * The inverse square root as a sum of inverses, for matrices that are easily shifted and inverted but
 * not decomposed:
 *     b^(−1/2) = (2/π) ∫₀^∞ dσ/(σ² + b) ≈ Σ_j weight_j/(σ_j² + b)      for every b in [low, high].
 *
 * σ = √low sc(t | 1 − k²), k² = low/high, makes the integrand periodic and analytic in t, so that the midpoint rule's
 * error falls as exp(−2π² N/(ln(high/low) + 3)) (Hale, Higham & Trefethen 2008, SIAM J Numer Anal 46:2505, §4).
 * Jacobi's functions: Abramowitz & Stegun 1964, 16.4 and 16.14.
 */

export interface InverseRootNode {
  readonly sigma: number;
  readonly weight: number;
}

/** Natural logarithm of the error meant: e⁻³⁴ is some ten times below a double's rounding. */
const DIGITS = 34;
/** Steps of the mean: each doubles the digits, from 1e-12 apart to equal in fewer than ten. */
const MOST_STEPS = 16;
/** k above which Landen's ascent hardly ascends; below it Gauss's descent ends in cosines that lose digits. */
const NEAR_ONE = 0.5;

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
  const { quarterPeriod, amplitude } = descend(k);
  const root = Math.sqrt(low);
  const step = quarterPeriod / count;
  const lower = Array.from({ length: half }, (_, j) => {
    const t = (j + 0.5) * step;
    const sc = k > NEAR_ONE ? Math.tan(amplitude(t)) : ascend(t, k);
    // The derivative of sc is dn/cn², and dn² = cn² + k² sn².
    const slope = Math.sqrt((1 + sc * sc) * (1 + (k * sc) ** 2));
    return { sigma: root * sc, weight: (2 / Math.PI) * step * root * slope };
  });
  // sc(K − t) = 1/(k sc(t)): the upper half mirrors the lower one, without cosines that vanish.
  const mirror = low / k;
  const upper = lower.map(({ sigma, weight }) => ({ sigma: mirror / sigma, weight: (mirror * weight) / sigma ** 2 }));
  return [...lower, ...upper.reverse()];
}

/** sc(t | 1 − k²) for t up to half the quarter period, from sinh by Landen's ascent (16.14 there); k well below 1. */
function ascend(t: number, k: number): number {
  const shares: number[] = [];
  let rest = k;
  let inner = t;
  while (rest > Number.EPSILON) {
    rest = (rest / (1 + Math.sqrt(1 - rest * rest))) ** 2;
    shares.push(rest);
    inner /= 1 + rest;
  }
  return shares.reduceRight((sc, share) => ((1 + share) * sc) / (1 - share * sc * sc), Math.sinh(inner));
}

/** The amplitude am(t | 1 − k²) and its quarter period, by Gauss's descent. */
function descend(k: number): { quarterPeriod: number; amplitude: (t: number) => number } {
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
    amplitude: (t) =>
      means.reduceRight(
        (phi, [mean, gap]) => (phi + Math.asin((gap / mean) * Math.sin(phi))) / 2,
        2 ** means.length * a * t,
      ),
  };
}
