/** Settings as an address: what is written is read again, and nothing written by others breaks it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSettings, writeSettings } from '../../../src/islands/analysis/settingsAddress.ts';
import {
  ADJUSTMENTS,
  CURVES,
  defaultSettings,
  METRICS,
  settingsSchema,
  WEIGHTINGS,
} from '../../../src/model/settings.ts';

const share = fc.integer({ min: 50, max: 99 }).map((percent) => percent / 100);
const anySettings = fc
  .record({
    outcome: fc.constantFrom('growth', 'strength'),
    metric: fc.constantFrom(...METRICS),
    split: fc.option(fc.integer({ min: 30, max: 85 })),
    curve: fc.constantFrom(...CURVES),
    weighting: fc.constantFrom(...WEIGHTINGS),
    rho: fc.constantFrom(0, 0.5, 0.95),
    assumedCorrelation: fc.record({ growth: share, strength: share, fatigue: share }),
    adjust: fc.subarray([...ADJUSTMENTS]),
    keptShare: share,
    confidence: share,
    seed: fc.nat(),
    include: fc.record({
      muscle: fc.array(fc.string({ minLength: 1 }), { maxLength: 3 }),
      withoutStudies: fc.array(fc.string({ minLength: 1 }), { maxLength: 2 }),
      yearFrom: fc.option(fc.integer({ min: 1990, max: 2030 })),
    }),
  })
  .map((settings) => settingsSchema.parse(settings));

describe('the address of settings', () => {
  it('is empty for the defaults', () => {
    expect(writeSettings(defaultSettings)).toBe('');
    expect(readSettings('')).toEqual({ settings: defaultSettings, notice: null });
  });

  it('reads back to the same settings, whatever they are', () => {
    fc.assert(
      fc.property(anySettings, (settings) => {
        expect(readSettings(writeSettings(settings))).toEqual({ settings, notice: null });
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('takes any query without an exception, into valid settings', () => {
    const part = fc.tuple(
      fc.constantFrom('v', 'split', 'curve', 'r', 'muscle', 'adjust', 'from', '__proto__', 'constructor', 'x'),
      fc.string(),
    );
    fc.assert(
      fc.property(fc.array(part), (parts) => {
        const { settings } = readSettings(`?v=1&${new URLSearchParams(parts)}`);
        expect(settingsSchema.parse(settings)).toEqual(settings);
      }),
      { seed: 6, numRuns: 500 },
    );
  });

  it('keeps the good parts beside a bad one and names the bad one', () => {
    const { settings, notice } = readSettings('?v=1&curve=log&rho=7');
    expect(settings).toEqual({ ...defaultSettings, curve: 'log' });
    expect(notice).toMatch(/rho/u);
  });
});
