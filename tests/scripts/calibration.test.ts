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
    'with $studies studies: slope interval 93.5 to 96.5 %, target interval at least 93.5 %, no failure',
    (result) => {
      expect(result.failures).toBe(0);
      expect(result.slopeCoverage).toBeGreaterThanOrEqual(0.935);
      expect(result.slopeCoverage).toBeLessThanOrEqual(0.965);
      expect(result.targetCoverage).toBeGreaterThanOrEqual(0.935);
      // Three simulation errors: no bias that 4,000 tables could show.
      expect(Math.abs(result.slopeBias)).toBeLessThan(3 * result.slopeBiasError);
      expect(Math.abs(result.targetMedianBias)).toBeLessThan(0.05);
    },
  );

  it('is what the engine gives now, within four errors of 300 new tables', () => {
    const again = calibrate(12, 300, SEED + 1);
    const { slopeCoverage } = stored.results[0];
    expect(Math.abs(again.slopeCoverage - slopeCoverage)).toBeLessThan(
      4 * Math.sqrt((slopeCoverage * (1 - slopeCoverage)) / 300),
    );
    expect(calibrate(12, 20, SEED)).toEqual(calibrate(12, 20, SEED));
  });
});
