/** What is said under a curve, and in the scripts that readers take home, of rows whose papers do not print it all. */
import { describe, expect, it } from 'vitest';
import { growthByReserve } from '../../src/figures/growthByReserve.ts';
import { packTakeHome } from '../../src/figures/takeHome/takeHome.ts';
import { analyse } from '../../src/model/analyse.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { type Cells, makeArms } from '../support/tables.ts';

/** Six studies of three reserves with heavy loads; of each study the row at 2 is changed. */
const tableOf = (changes: Cells) =>
  makeArms(
    Array.from({ length: 6 }, (_, k) =>
      [0, 2, 4].map(
        (reserve): Cells => ({
          study: `Study ${k}`,
          arm: `reserve ${reserve}`,
          attempted_failure: '',
          reserve_reps: String(reserve),
          followup_mean: String(43 - reserve / 4 + ((k * 7 + reserve * 3) % 5) / 10),
          ...(reserve === 2 ? changes : {}),
        }),
      ),
    ).flat(),
  );
const NO_SPREAD: Cells = { baseline_sd: '', followup_sd: '', correlation: '' };
const captionOf = (changes: Cells, missingSds: 'off' | 'missing' | 'all') => {
  const settings = settingsSchema.parse({ missingSds, curve: 'line' });
  return growthByReserve(analyse(tableOf(changes), settings), { band: 'heavy' }).caption;
};

describe('the words under a curve', () => {
  it('say nothing of rows that are printed or recovered', () => {
    expect(captionOf({}, 'off')).not.toMatch(/do not print/u);
    expect(captionOf({ followup_mean: '', followup_sd: '', change_mean: '3' }, 'off')).not.toMatch(/do not print/u);
  });

  it('count rows that rest on an assumption', () => {
    expect(captionOf({ n: '', n_total: '24', n_total_arms: '2' }, 'off')).toMatch(/6 rows on an assumption\.$/u);
  });

  it('count pooled rows and say what the target is without them', () => {
    expect(captionOf(NO_SPREAD, 'off')).toMatch(/^12 rows/u);
    expect(captionOf(NO_SPREAD, 'missing')).toMatch(
      /^18 rows .* 6 rows on the pooled spread of other rows\. Without pooled spreads (?:the target is \d|there is no target)/u,
    );
  });
});

describe('the analysis', () => {
  it('holds the targets without pooled spreads, which are those of the same settings without', () => {
    const arms = tableOf(NO_SPREAD);
    const choose = (missingSds: 'off' | 'missing') =>
      analyse(arms, settingsSchema.parse({ missingSds, curve: 'line', split: null }));
    const [off, filled] = [choose('off'), choose('missing')];
    expect(off.missingSds).toBeNull();
    expect(filled.missingSds?.rows).toBe(6);
    const without = filled.missingSds?.targetsWithout;
    if (!without || !('all' in without) || !('all' in off.bands)) throw new Error('not one band');
    expect(without.all.point).toBeCloseTo(off.bands.all.target.point ?? Number.NaN, 9);
  });
});

describe('the scripts to take home', () => {
  it('say that SDs were pooled, and only where they were', () => {
    const scriptsOf = (missingSds: 'off' | 'missing') =>
      packTakeHome(tableOf(NO_SPREAD), settingsSchema.parse({ missingSds }), { r: '', python: '' }).filter(({ name }) =>
        /\.(?:R|py)$/u.test(name),
      );
    for (const { text } of scriptsOf('missing')) expect(text).toMatch(/Missing SDs: the pooled spread of the measure/u);
    for (const { text } of scriptsOf('off')) expect(text).not.toMatch(/Missing SDs/u);
    expect(scriptsOf('off')).toHaveLength(2);
  });
});
