/** Targets of a sweep by level: against a small sweep made by hand. */
import { describe, expect, it } from 'vitest';
import type { BandSweep, SweepOutcome } from '../../src/model/checks/sweep.ts';
import { listSweepLevels } from '../../src/model/checks/sweepLevels.ts';

const combination: SweepOutcome['combination'] = {
  metric: 'log-ratio',
  correlation: 0.7,
  rho: 0.2,
  split: 50,
  curve: 'line',
  weighting: 'mixed',
  adjust: 'nothing',
  inclusion: 'all studies',
};
const outcome = (curve: 'line' | 'log', point: number | null): SweepOutcome => ({
  combination: { ...combination, curve },
  point,
  reachedEdge: false,
});
const sweep: BandSweep = {
  outcomes: [outcome('line', 3), outcome('line', 1), outcome('line', 2), outcome('line', null), outcome('log', null)],
  withoutTarget: 2,
  atEdge: 0,
  quantiles: [],
  shares: [
    { choice: 'curve', share: 0.5 },
    { choice: 'rho', share: 0.1 },
  ],
};

describe('listSweepLevels', () => {
  const levels = listSweepLevels(sweep);

  it('has every level of every choice, in the order of the shares', () => {
    expect(levels.map(({ choice, level }) => `${choice} ${level}`)).toEqual([
      'curve flexible',
      'curve line',
      'curve log',
      'curve quadratic',
      'curve spline',
      'rho 0.2',
      'rho 0.8',
    ]);
  });

  it('counts combinations and those without a target, and takes quantiles of the rest', () => {
    expect(levels[1]).toMatchObject({ combinations: 4, withoutTarget: 1, middle: 2 });
    // Of 1, 2, 3 the 5 and 95 % quantiles lie a tenth of a step inside the ends.
    expect(levels[1].low).toBeCloseTo(1.1, 12);
    expect(levels[1].high).toBeCloseTo(2.9, 12);
  });

  it('has no quantile where no target was found, also where no combination has the level', () => {
    expect(levels[2]).toMatchObject({ combinations: 1, withoutTarget: 1, low: null, middle: null, high: null });
    expect(levels[0]).toMatchObject({ combinations: 0, withoutTarget: 0, low: null, middle: null, high: null });
  });
});
