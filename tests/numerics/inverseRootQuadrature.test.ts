import { describe, expect, it } from 'vitest';
import { inverseRootNodes } from '../../src/numerics/inverseRootQuadrature.ts';

/** Largest relative error over b from `low` to `high`. */
function worstError(low: number, high: number): number {
  const nodes = inverseRootNodes(low, high);
  let worst = 0;
  for (let i = 0; i <= 100; i++) {
    const b = low * (high / low) ** (i / 100);
    const sum = nodes.reduce((total, { sigma, weight }) => total + weight / (sigma ** 2 + b), 0);
    worst = Math.max(worst, Math.abs(sum * Math.sqrt(b) - 1));
  }
  return worst;
}

describe('the inverse square root as a sum of inverses', () => {
  it.each([
    [1, 1e-14],
    [10, 1e-14],
    [1e4, 1e-13],
    [1e8, 1e-12],
    [1e12, 1e-11],
  ])('holds for every number of a range whose ends are %s apart, to %s', (ratio, tolerance) => {
    for (const low of [3e-9, 1, 1e6]) expect(worstError(low, low * ratio)).toBeLessThan(tolerance);
  });

  it('takes nodes in proportion to the orders of the range, and all of them above 0', () => {
    expect(inverseRootNodes(1, 1e12)).toHaveLength(54);
    expect(inverseRootNodes(1, 1e6).length).toBeLessThan(54 / 1.8 + 4);
    const nodes = inverseRootNodes(1e-8, 1);
    expect(nodes.every(({ sigma, weight }, i) => weight > 0 && sigma > (nodes[i - 1]?.sigma ?? 0))).toBe(true);
  });
});
