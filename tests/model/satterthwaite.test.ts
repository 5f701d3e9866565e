/**
 * The degrees of freedom from forms summed once, against P worked out for every pair of studies. Both are sums of
 * products of one size; agreement is asked to 1e-11.
 */
import { describe, expect, it } from 'vitest';
import { satterthwaiteDf, sumQuarticForms } from '../../src/model/satterthwaite.ts';
import type { StudyPart } from '../../src/model/studyPart.ts';
import { makeRandom, type Random } from '../../src/numerics/random.ts';
import { blockDiagonal } from '../../src/numerics/smallMatrices.ts';
import { expectRelative } from '../support/closeness.ts';

/** Parts whose P is positive semi-definite: N is at least T'T. */
function drawParts(p: number, studies: number, { normal }: Random): StudyPart[] {
  return Array.from({ length: studies }, (_, k) => {
    const overlap = Float64Array.from({ length: p * p }, () => 0.3 * normal());
    const rest = Float64Array.from({ length: p * p }, normal);
    const products = (m: Float64Array, i: number, j: number) =>
      Array.from({ length: p }, (_, r) => m[r * p + i] * m[r * p + j]).reduce((sum, one) => sum + one, 0);
    const spread = Float64Array.from({ length: p * p }, (_, at) => {
      const [i, j] = [Math.floor(at / p), at % p];
      return products(overlap, i, j) + products(rest, i, j);
    });
    return { study: `S${k}`, score: new Float64Array(p), spread, overlap };
  });
}

/** (Σ P_ii)² / Σ P_ij² with P_ij = [i=j] h'N_i h − (T_i h)'(T_j h), study by study. */
function dfByPairs(parts: readonly StudyPart[], h: Float64Array): number {
  const p = h.length;
  const times = (m: Float64Array) =>
    Array.from({ length: p }, (_, i) => h.reduce((sum, value, j) => sum + m[i * p + j] * value, 0));
  const along = (a: ArrayLike<number>, b: ArrayLike<number>) =>
    Array.from(a).reduce((sum, value, i) => sum + value * b[i], 0);
  const moved = parts.map(({ overlap }) => times(overlap));
  let trace = 0;
  let squares = 0;
  parts.forEach(({ spread }, i) => {
    parts.forEach((_, j) => {
      const entry = (i === j ? along(h, times(spread)) : 0) - along(moved[i], moved[j]);
      if (i === j) trace += entry;
      squares += entry ** 2;
    });
  });
  return trace ** 2 / squares;
}

describe('degrees of freedom from forms', () => {
  it.each([1, 2, 3, 4, 5, 8])('of %d coefficients are those of P, for any contrast', (p) => {
    const random = makeRandom(p);
    const parts = drawParts(p, 7, random);
    const forms = sumQuarticForms(p, parts);
    // One coefficient for each square and product of h, and for each product of four.
    expect(forms.trace).toHaveLength((p * (p + 1)) / 2);
    expect(forms.squares).toHaveLength((p * (p + 1) * (p + 2) * (p + 3)) / 24);
    for (let draw = 0; draw < 20; draw++) {
      const h = Float64Array.from({ length: p }, () => (random.uniform() < 0.3 ? 0 : random.normal()));
      if (h.every((value) => value === 0)) h[p - 1] = 1;
      expectRelative(satterthwaiteDf(forms, h), dfByPairs(parts, h), 1e-11, `contrast ${draw}`);
    }
  });

  it('of two fits side by side are those of one where only one is asked', () => {
    const random = makeRandom(9);
    const [first, second] = [drawParts(4, 6, random), drawParts(3, 6, random)];
    const beside = (a: Float64Array | null, b: Float64Array | null) => blockDiagonal(a, 4, b, 3);
    const parts = [
      ...first.map((part) => ({ ...part, spread: beside(part.spread, null), overlap: beside(part.overlap, null) })),
      ...second.map((part) => ({ ...part, spread: beside(null, part.spread), overlap: beside(null, part.overlap) })),
    ];
    const forms = sumQuarticForms(7, parts);
    const inFirst = Float64Array.of(1, -0.4, 0.2, 2);
    const inSecond = Float64Array.of(0.5, 1, -1);
    const df = (h: readonly number[]) => satterthwaiteDf(forms, Float64Array.from(h));
    expectRelative(df([...inFirst, 0, 0, 0]), dfByPairs(first, inFirst), 1e-11, 'first');
    expectRelative(df([0, 0, 0, 0, ...inSecond]), dfByPairs(second, inSecond), 1e-11, 'second');
    const both = Float64Array.of(...inFirst, ...inSecond);
    expectRelative(satterthwaiteDf(forms, both), dfByPairs(parts, both), 1e-11, 'both');
  });

  it('are none for a contrast of nothing', () => {
    const forms = sumQuarticForms(2, drawParts(2, 4, makeRandom(1)));
    expect(satterthwaiteDf(forms, new Float64Array(2))).toBeNaN();
  });
});
