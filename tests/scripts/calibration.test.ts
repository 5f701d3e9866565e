/**
 * The calibration figures that the site shows: measured with the script's present truth, inside the
 * bounds asked of the engine, and repeatable.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  type Calibration,
  calibrate,
  KEPT_SHARE,
  REPETITIONS,
  SEED,
  STUDY_COUNTS,
  TRUTH,
} from '../../scripts/measure/calibration.ts';
import { LEAST_TARGET_STUDIES } from '../../src/model/target.ts';

const stored: { truth: object; keptShare: number; seed: number; results: readonly Calibration[] } = JSON.parse(
  readFileSync(new URL('../../data/calibration.json', import.meta.url), 'utf8'),
);

describe('data/calibration.json', () => {
  it('was measured with the present truth, share, seed and counts (else: npm run calibrate)', () => {
    expect(stored.truth).toMatchObject(TRUTH);
    expect([stored.keptShare, stored.seed]).toEqual([KEPT_SHARE, SEED]);
    expect(stored.results.map(({ studies, repetitions }) => [studies, repetitions])).toEqual(
      STUDY_COUNTS.map((studies) => [studies, REPETITIONS]),
    );
    expect(REPETITIONS).toBeGreaterThanOrEqual(2000);
  });

  it.each(stored.results)(
    'with $studies studies: slope interval 93.5 to 98 %, target interval at least 93.5 % or refused, few refusals',
    (result) => {
      expect(result.failures).toBeLessThanOrEqual(result.studies < 12 ? 0.01 * result.repetitions : 0);
      expect(result.slopeCoverage).toBeGreaterThanOrEqual(0.935);
      // Few degrees of freedom err on the safe side.
      expect(result.slopeCoverage).toBeLessThanOrEqual(result.studies < 12 ? 0.98 : 0.965);
      if (result.studies < LEAST_TARGET_STUDIES)
        expect(result.withoutTarget).toBe(result.repetitions - result.failures);
      else expect(result.targetCoverage).toBeGreaterThanOrEqual(0.935);
      // Three simulation errors: no bias that 4,000 tables could show.
      expect(Math.abs(result.slopeBias)).toBeLessThan(3 * result.slopeBiasError);
      expect(Math.abs(result.targetMedianBias ?? 0)).toBeLessThan(result.studies < 12 ? 0.2 : 0.05);
    },
  );

  it('is what the engine gives now, within four errors of 300 new tables', () => {
    const again = calibrate(12, 300, SEED + 1);
    const slopeCoverage = stored.results.find(({ studies }) => studies === 12)?.slopeCoverage ?? Number.NaN;
    expect(Math.abs(again.slopeCoverage - slopeCoverage)).toBeLessThan(
      4 * Math.sqrt((slopeCoverage * (1 - slopeCoverage)) / 300),
    );
    expect(calibrate(12, 20, SEED)).toEqual(calibrate(12, 20, SEED));
  });
});
