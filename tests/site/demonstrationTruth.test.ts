/** The truth beside the estimates: of the very table that was drawn from it, and of no other. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { analyseInFull } from '../../src/model/full.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { compareWithTruth } from '../../src/site/demonstrationTruth.ts';

const text = readFileSync('data/arms.csv', 'utf8');
const { arms } = readArms(text, 'arms.csv');
const analysis = analyseInFull(arms, settingsSchema.parse({}));

describe('the truth of the demonstration', () => {
  it('stands beside target, growth and shares of both bands, each with whether its interval holds it', () => {
    const comparison = compareWithTruth(text, analysis);
    expect(comparison?.rows).toHaveLength(14);
    expect(comparison?.rows[0]).toEqual({
      loads: 'Light loads',
      what: 'target at 90\u00a0%, repetitions',
      truth: '1.0',
      estimate: '0.4 (0.2 to 1.1)',
      isHeld: true,
    });
    expect(comparison?.straight).toMatch(
      /with light loads, which misses the truth of 1\.0; .* holds the truth of 3\.0\.$/u,
    );
  });

  it('says that an interval misses where it does', () => {
    if (!('light' in analysis.bands)) throw new Error('expected two bands');
    const { light, heavy } = analysis.bands;
    const far = { ...light, target: { ...light.target, point: 4, low: 3, high: 5 } };
    expect(compareWithTruth(text, { ...analysis, bands: { light: far, heavy } })?.rows[0].isHeld).toBe(false);
  });

  it('vanishes with another table, one character apart, and with other settings', () => {
    expect(compareWithTruth(`${text} `, analysis)).toBeNull();
    const other = { ...analysis, settings: { ...analysis.settings, keptShare: 0.8 } };
    expect(compareWithTruth(text, other)).toBeNull();
  });
});
