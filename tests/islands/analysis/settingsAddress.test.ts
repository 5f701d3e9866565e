/** Settings as an address: what is written is read again, and nothing written by others breaks it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSettings, writeSettings } from '../../../src/islands/analysis/settingsAddress.ts';
import { readChoices } from '../../../src/islands/target/situationAddress.ts';
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
      fc.constantFrom('split', 'curve', 'r', 'muscle', 'adjust', 'from', '__proto__', 'constructor', 'x'),
      fc.string(),
    );
    fc.assert(
      fc.property(fc.array(part), (parts) => {
        for (const version of ['1', '2', '3']) {
          const { settings } = readSettings(`?v=${version}&${new URLSearchParams(parts)}`);
          expect(settingsSchema.parse(settings)).toEqual(settings);
        }
      }),
      { seed: 6, numRuns: 500 },
    );
  });

  it('keeps the good parts beside a bad one and names the bad one', () => {
    const { settings, notice } = readSettings('?v=2&curve=log&rho=7');
    expect(settings).toEqual({ ...defaultSettings, curve: 'log' });
    expect(notice).toMatch(/rho/u);
  });

  it('of version 1 gives what it gave: the straight line where it names no curve, which is said', () => {
    expect(readSettings('?v=1&split=50')).toEqual({
      settings: { ...defaultSettings, split: 50, curve: 'line' },
      notice: 'The address is from when a straight line was the default, and keeps it; now a flexible curve is.',
    });
    for (const curve of ['line', 'spline', 'flexible'] as const) {
      expect(readSettings(`?v=1&curve=${curve}`)).toEqual({ settings: { ...defaultSettings, curve }, notice: null });
    }
  });

  it('of version 1 stands at the straight line, too, where its curve cannot be read', () => {
    const { settings, notice } = readSettings('?v=1&curve=zigzag&split=50');
    expect(settings).toEqual({ ...defaultSettings, split: 50, curve: 'line' });
    expect(notice).toMatch(/defaults: curve\. The address is from when a straight line was the default/u);
  });

  it('of another version is not read, and says so', () => {
    const { settings, notice } = readSettings('?v=3&split=50');
    expect(settings).toEqual(defaultSettings);
    expect(notice).toMatch(/not of version 2/u);
  });

  it('takes the share to keep and the level in per cent, too, as Target writes them', () => {
    for (const [written, share] of [
      ['85', 0.85],
      ['0.85', 0.85],
      ['99.5', 0.995],
    ] as const) {
      const { settings, notice } = readSettings(`?v=2&keep=${written}`);
      expect([settings.keptShare, notice], written).toEqual([share, null]);
    }
    expect(readSettings('?v=2&level=90').settings.confidence).toBe(0.9);
    for (const wrong of ['keep=1', 'keep=100', 'keep=-5', 'level=100'])
      expect(readSettings(`?v=2&${wrong}`).notice, wrong).toMatch(/could not be read/u);
    // What is no share stays as it is written.
    expect(readSettings('?v=2&split=60').settings.split).toBe(60);
    expect(readChoices('?keep=0.85&confidence=0.9', []).values).toEqual({ keep: 85, confidence: 90 });
    expect(readChoices('?keep=0.4&confidence=1', []).unread).toEqual(['keep', 'confidence']);
  });
});
