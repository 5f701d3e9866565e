/** The line that says what a move did: what moved, from where to where, and what that came to; or that nothing did. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../../src/evidence/table.ts';
import { formatTarget } from '../../../src/figures/format.ts';
import { stateMove } from '../../../src/islands/evidence/moveWords.ts';
import { analyse } from '../../../src/model/analyse.ts';
import { bandOf } from '../../../src/model/bands.ts';
import { type SettingsInput, settingsSchema } from '../../../src/model/settings.ts';
import { makeArms } from '../../support/tables.ts';

const { arms } = readArms(readFileSync(new URL('../../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const fit = (changes: SettingsInput, rows = arms) => analyse(rows, settingsSchema.parse(changes));
const start = fit({});
const move = (changes: SettingsInput) => stateMove(start, fit(changes));

describe('the line of a move', () => {
  it('names the control, from where to where, and the target, its interval and the growth kept in each band', () => {
    const line = fit({ curve: 'line' });
    const said = stateMove(start, line);
    expect(said).toMatch(/^Curve: from flexible curve to straight line\. Light loads: target from /u);
    for (const name of ['light', 'heavy'] as const) {
      const [was, is] = [start, line].map((one) => formatTarget(bandOf(one, name).target));
      expect(said).toContain(`target from ${was} to ${is}, interval`);
    }
    // By hand from the drawn straight line of heavy loads, at the former target.
    const { point } = bandOf(start, 'heavy').target;
    const [at0, slope] = bandOf(line, 'heavy').coefficients.map(({ estimate }) => estimate);
    const kept = (100 * (at0 + slope * (point ?? Number.NaN))) / at0;
    expect(said).toContain(`growth kept at ${point?.toFixed(1)} from 90\u00a0% to ${kept.toFixed(0)}\u00a0%.`);
  });

  it('says what stays where only the target, or only the band, moved', () => {
    expect(move({ confidence: 0.8 })).toMatch(
      /^Confidence: from 95\u00a0% to 80\u00a0%\. Light loads: target from (\S+) \(.*\) to \1 \(/u,
    );
    expect(move({ keptShare: 0.8 })).toMatch(/^Growth to keep: from 90\u00a0% to 80\u00a0%\. .*target from/u);
  });

  it('counts the rows that a filter takes', () => {
    expect(move({ include: { trainingStatus: ['trained'] } })).toMatch(
      /^Training status: from all to trained\. .* \d+ rows fewer are fitted\.$/u,
    );
  });

  it('stands loads together against each of those apart, and the other way', () => {
    const together = fit({ split: null });
    expect(stateMove(start, together)).toMatch(
      /^Loads: from light and heavy apart to all loads together\. All loads: target .*; before, light loads: target .*; heavy loads: target /u,
    );
    expect(stateMove(together, start)).toMatch(/Light loads: target .*; before, all loads: target/u);
  });

  it('says nothing of the curve where its unit is another', () => {
    expect(move({ metric: 'standardised' })).not.toMatch(/the curve/u);
  });

  it('names three changes and counts the others', () => {
    expect(move({ curve: 'log', weighting: 'equal', split: 50, keptShare: 0.8, confidence: 0.8 })).toMatch(
      /^Curve: .*; Weighting: .*; Split: .*; and 2 more\./u,
    );
  });
});

describe('where nothing moved it says so, and why', () => {
  it.each([
    [
      { include: { yearFrom: 1900 } },
      /Published from: from the first to 1900\. Nothing moved: the rows .* are the same ones\.$/u,
    ],
    [{ seed: 7 }, /Nothing moved: growth against reserve does not depend on it\.$/u],
    [{ missingSds: 'missing' }, /Nothing moved: every row that is fitted has a spread of its own\.$/u],
  ] as const)('%j', (changes, words) => {
    expect(move(changes)).toMatch(words);
  });

  it('but not where only the band of the curve did', () => {
    expect(move({ confidence: 0.951 })).not.toMatch(/Nothing moved/u);
  });
});

describe('without a fit', () => {
  const few = makeArms([{}, { study: 'Rail 2021', attempted_failure: 'no', reserve_reps: '3' }]);
  const none = fit({}, few);

  it('now, it says why, and what stood before', () => {
    expect(stateMove(start, none)).toMatch(/Heavy loads: no fit, since .*; before, target \d/u);
  });

  it('before, it says what there is now', () => {
    expect(stateMove(none, start)).toMatch(/Heavy loads: target \d.*; before, there was no fit, since /u);
  });

  it('before or after, nothing moved', () => {
    expect(stateMove(none, fit({ curve: 'line' }, few))).toMatch(/Nothing moved: there is no fit, before or after\.$/u);
  });
});
