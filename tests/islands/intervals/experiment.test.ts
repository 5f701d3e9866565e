/** What is drawn, in an address and back: the same choices, whatever is written there. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cellOf,
  curvesOf,
  DEFAULT_EXPERIMENT,
  drawAgain,
  type Experiment,
  readExperiment,
  STUDIES,
  writeExperiment,
} from '../../../src/islands/intervals/experiment.ts';
import { CURVES } from '../../../src/model/settings.ts';
import { LAYOUTS, type Layout } from '../../../src/model/simulation.ts';
import { ALL_TRUTHS, type TruthName } from '../../../src/model/truths.ts';

const experiments: fc.Arbitrary<Experiment> = fc.record({
  truth: fc.constantFrom(...(Object.keys(ALL_TRUTHS) as TruthName[])),
  studies: fc.integer({ min: STUDIES.least, max: STUDIES.most }),
  reserves: fc.constantFrom(...(Object.keys(LAYOUTS) as Layout[])),
  fit: fc.constantFrom(...CURVES),
  against: fc.constantFrom(...CURVES, 'none' as const),
  seed: fc.integer({ min: 1, max: 2 ** 31 - 1 }),
});

describe('an experiment', () => {
  it('is read from its address as it was written', () => {
    fc.assert(
      fc.property(experiments, (experiment) => {
        const { fit, against } = experiment;
        // A curve beside itself is one curve.
        const told = { ...experiment, against: against === fit ? 'none' : against };
        expect(readExperiment(writeExperiment(experiment))).toEqual({ experiment: told, unread: [] });
      }),
      { seed: 1 },
    );
    expect(writeExperiment(DEFAULT_EXPERIMENT)).toBe('');
    expect(writeExperiment({ ...DEFAULT_EXPERIMENT, truth: 'shallow line', seed: 3 })).toBe(
      '?truth=shallow+line&seed=3',
    );
  });

  it('stands at its default where an address does not hold, and the part is named', () => {
    const { experiment, unread } = readExperiment(
      '?truth=<img src=x>&studies=3&seed=0&fit=zigzag&colour=red&reserves=spread',
    );
    expect(experiment).toEqual({ ...DEFAULT_EXPERIMENT, reserves: 'spread' });
    expect([...unread].sort()).toEqual(['colour', 'fit', 'seed', 'studies', 'truth']);
  });

  it('is never thrown off by any address', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.constantFrom('truth', 'studies', 'seed', 'fit', 'x'), fc.string()), (parts) => {
        const { experiment } = readExperiment(`?${new URLSearchParams(parts)}`);
        expect(readExperiment(writeExperiment(experiment)).experiment).toEqual(experiment);
      }),
      { seed: 1 },
    );
  });

  it('has one curve or two that differ', () => {
    expect(curvesOf({ ...DEFAULT_EXPERIMENT, against: 'none' })).toEqual(['line']);
    expect(curvesOf({ ...DEFAULT_EXPERIMENT, against: 'line' })).toEqual(['line']);
    expect(curvesOf(DEFAULT_EXPERIMENT)).toEqual(['line', 'flexible']);
    expect(cellOf(DEFAULT_EXPERIMENT)).toEqual({ truth: 'saturating', studies: 8, layout: 'near' });
  });

  it('drawn again has the next seed and nothing else, and begins anew after the last', () => {
    expect(drawAgain(DEFAULT_EXPERIMENT)).toEqual({ ...DEFAULT_EXPERIMENT, seed: 2 });
    expect(drawAgain({ ...DEFAULT_EXPERIMENT, seed: 2 ** 31 - 1 }).seed).toBe(1);
  });
});
