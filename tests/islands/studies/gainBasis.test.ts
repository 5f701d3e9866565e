/** What the shading of the map rests on: what is usual in the table is told apart from what is a setting. */
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { viewGains } from '../../../src/islands/analysis/gainsView.ts';
import { GainBasis } from '../../../src/islands/studies/GainLegend.tsx';
import { openPlanning } from '../../../src/model/plan/planningBase.ts';
import { defaultSettings, settingsSchema } from '../../../src/model/settings.ts';
import { makeArms } from '../../support/tables.ts';

const STUDIES = ['A 2001', 'B 2002'];

function basisOf(correlation: string, settings = defaultSettings, changes: Parameters<typeof makeArms>[0] = [{}, {}]) {
  const arms = makeArms(
    changes.map((change, i) => ({ study: STUDIES[i], year: String(2001 + i), correlation, ...change })),
  );
  const steps = viewGains(openPlanning(arms, settings), 40);
  let step = steps.next();
  while (!step.done) step = steps.next();
  return renderToString(h(GainBasis, { view: step.value, methods: '', planPage: '' })).replaceAll('\u00a0', ' ');
}

describe('what the shading rests on', () => {
  it('is called a median of the table only where the table says', () => {
    expect(basisOf('0.9')).toMatch(
      /correlation of before with after 0\.9 \(median of 2 rows of 2 studies of muscle thickness that give/u,
    );
  });

  it('is called a setting, never usual, where it is one', () => {
    const settings = settingsSchema.parse({ assumedCorrelation: { growth: 0.55 } });
    const said = basisOf('', settings);
    expect(said).toMatch(
      /correlation of before with after 0\.55 \(the setting for this outcome, since fewer than 2 studies give/u,
    );
    expect(said).toMatch(/standard deviation before training [\d.]+ % of the mean \(median of 2 rows/u);
    expect(said).not.toMatch(/usual/u);
  });

  it('says of the measure only that no other has more rows, which two measures of one row each bear out', () => {
    const weeks = '1';
    const said = basisOf('0.9', defaultSettings, [
      { measure: 'muscle thickness', weeks },
      { measure: 'volume', weeks },
    ]);
    expect(said).toMatch(
      /measures muscle thickness \(no other measure has more rows here\), over 1 week \(the median/u,
    );
    expect(said).not.toMatch(/most rows/u);
  });
});
