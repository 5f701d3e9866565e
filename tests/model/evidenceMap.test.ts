/** The evidence map counts every arm of its outcome once: on the map, or apart with the reason. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { analyse } from '../../src/model/analyse.ts';
import { mapEvidence } from '../../src/model/evidenceMap.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { type Cells, makeArms } from '../support/tables.ts';

const shipped = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv').arms;
const settings = settingsSchema.parse({});

function mapOf(rows: readonly Cells[]) {
  const arms = makeArms(rows);
  return mapEvidence(arms, analyse(arms, settings));
}

describe('the evidence map', () => {
  it('of the shipped table has every growth arm on the map or apart, and once', () => {
    const map = mapEvidence(shipped, analyse(shipped, settings));
    const growth = shipped.filter(({ outcome }) => outcome === 'growth');
    const all = new Set(growth.map(({ study, arm }) => `${study}/${arm}`)).size;
    const sum = (counts: readonly { arms: number }[]) => counts.reduce((total, { arms }) => total + arms, 0);
    expect(map.arms + map.without.loadOrReserve + map.without.beyondFailure).toBe(all);
    expect(sum(map.places)).toBe(map.arms);
    expect(sum(map.cells) + map.outsideCells).toBe(map.arms);
    expect(map.regions.length).toBeGreaterThan(0);
  });

  it('counts two muscles of one arm once, and people of a cohort once', () => {
    const { places } = mapOf([
      { cohort: 'a', muscle: 'quadriceps' },
      { cohort: 'a', muscle: 'gluteus maximus' },
      { arm: 'second leg', cohort: 'a', n: '11' },
      { study: 'Wren 2001', year: '2001', n: '20' },
    ]);
    expect(places).toEqual([{ load: 75, reserve: 0, band: 'heavy', arms: 3, people: 32, studies: 2 }]);
  });

  it('puts apart what went beyond failure and what reports no load or reserve, and leaves other outcomes alone', () => {
    const { arms, without, outsideCells, cells } = mapOf([
      {},
      { arm: 'partials', beyond_failure: 'partials' },
      { arm: 'no load', load_pct_1rm: '' },
      { arm: 'no reserve', reserve_reps: '', attempted_failure: '' },
      { arm: 'far', reserve_reps: '14', attempted_failure: 'no' },
      { arm: 'strong', outcome: 'strength' },
    ]);
    expect({ arms, without, outsideCells }).toEqual({
      arms: 2,
      without: { loadOrReserve: 2, beyondFailure: 1 },
      outsideCells: 1,
    });
    expect(cells).toEqual([{ load: [75, 80], reserve: [0, 1], arms: 1, people: 12, studies: 1 }]);
  });

  it('counts arms none of whose rows is in the fit', () => {
    const ready: Cells = { baseline_mean: '', baseline_sd: '', followup_mean: '', followup_sd: '', correlation: '' };
    const standardised = { ...ready, effect: '0.4', effect_variance: '0.02', effect_metric: 'standardised' };
    expect(mapOf([{}, { arm: 'other', ...standardised }]).notFitted).toBe(1);
    expect(mapOf([{}, { muscle: 'brachialis', ...standardised }]).notFitted).toBe(0);
  });
});
