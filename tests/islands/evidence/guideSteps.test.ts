/** The guided steps: what each sets, from settings and an analysis that are known, and that it changes nothing else. */
import { describe, expect, it } from 'vitest';
import { SPLIT } from '../../../src/islands/evidence/controlList.ts';
import { GUIDE_STEPS } from '../../../src/islands/evidence/guideSteps.ts';
import { analyse } from '../../../src/model/analyse.ts';
import type { Analysis, Band } from '../../../src/model/result.ts';
import { type Settings, settingsSchema } from '../../../src/model/settings.ts';
import { makeArms } from '../../support/tables.ts';

/** Far from the defaults, so that a step that resets something is seen. */
const start = settingsSchema.parse({
  weighting: 'precision',
  curve: 'log',
  split: 50,
  keptShare: 0.8,
  include: { sex: ['female'], reserveBasis: ['prescribed'], withoutStudies: ['Crane 1999'] },
});
const arms = makeArms([{}, { study: 'Wren 2020', year: '2020', load_pct_1rm: '30' }]);
const made = analyse(arms, settingsSchema.parse({}));
const together = analyse(arms, settingsSchema.parse({ split: null }));

type Row = readonly [study: string, reserve: number, effect: number, standardError: number];

function fill(band: Band, rows: readonly Row[], growth: number | null): Band {
  const fitted = rows.map(([study, reserve, effect, standardError]) => ({
    line: 2,
    study,
    reserve,
    effect,
    standardError,
    weight: 0,
  }));
  const atFailure = growth === null ? null : { estimate: growth, standardError: 0, df: 9, ciLow: 0, ciHigh: 0, p: 1 };
  return { ...band, fitted: fitted as unknown as Band['fitted'], atFailure: atFailure as Band['atFailure'] };
}

function analysisOf(light: readonly Row[], heavy: readonly Row[], growth: number | null = 0.05): Analysis {
  if (!('light' in made.bands)) throw new Error('expected two bands');
  return { ...made, bands: { light: fill(made.bands.light, light, 0), heavy: fill(made.bands.heavy, heavy, growth) } };
}

const LIGHT: readonly Row[] = [
  ['Wren 2001', 0, 0.2, 0.012],
  ['Snipe 2003', 0, 0.09, 0.01],
];
const HEAVY: readonly Row[] = [
  ['Wren 2001', 0.5, 0.06, 0.012],
  ['Heron 2002', 0, 0.01, 0.02],
  ['Rail 2004', 1, -0.4, 0.03],
  ['Teal 2005', 0.9, 0.07, 0.03],
];
const analysis = analysisOf(LIGHT, HEAVY);

function apply(title: string, from: Settings = start, of: Analysis = analysis): Settings {
  const step = GUIDE_STEPS.find((one) => one.title === title);
  if (!step) throw new Error(`no step ${title}`);
  return step.apply(from, of);
}
const without = (...studies: string[]) => ({ ...start.include, withoutStudies: ['Crane 1999', ...studies] });

describe('each step', () => {
  it.each<[string, Partial<Settings>]>([
    ['Count every row alike', { weighting: 'equal' }],
    ['Count by precision', { weighting: 'precision' }],
    // By 1/v: Wren has 2/0.012² = 13,889, Snipe in its one row 1/0.01² = 10,000.
    ['Take out the study that counts most', { weighting: 'precision', include: without('Wren 2001') }],
    ['Let studies differ', { weighting: 'mixed' }],
    ['Straighten or bend', { weighting: 'mixed', curve: 'line' }],
    ['Move the split', { split: 60 }],
    // At failure 0.05: Heron lies 0.04 below, Teal 0.02 above; Rail is not near failure, light loads are not asked.
    ['Leave out one study', { weighting: 'mixed', include: without('Heron 2002') }],
    ['Doubt the reserve', { include: { ...start.include, reserveBasis: ['reported', 'velocity-loss'] } }],
  ])('“%s” changes that one thing', (title, change) => {
    expect(apply(title)).toEqual({ ...start, ...change });
  });

  it('is tested here', () => {
    expect(GUIDE_STEPS).toHaveLength(8);
    expect(new Set(GUIDE_STEPS.map(({ title }) => title)).size).toBe(8);
  });

  it('sets its weighting also where the reader had another', () => {
    const equal = settingsSchema.parse({ weighting: 'equal' });
    for (const [title, weighting] of [
      ['Count by precision', 'precision'],
      ['Take out the study that counts most', 'precision'],
      ['Let studies differ', 'mixed'],
      ['Straighten or bend', 'mixed'],
      ['Leave out one study', 'mixed'],
    ]) {
      expect(apply(title, equal).weighting, title).toBe(weighting);
    }
  });
});

describe('straightening or bending', () => {
  it('takes the flexible curve where the reader started with the straight line, so that something changes', () => {
    expect(apply('Straighten or bend', settingsSchema.parse({ curve: 'line' })).curve).toBe('flexible');
    expect(apply('Straighten or bend', settingsSchema.parse({})).curve).toBe('line');
  });
});

describe('moving the split', () => {
  it('goes no further than the control does, and starts from its usual place where there was none', () => {
    expect(apply('Move the split', { ...start, split: SPLIT.max - 4 }).split).toBe(SPLIT.max);
    expect(apply('Move the split', { ...start, split: null }).split).toBe(SPLIT.usual + 10);
  });
});

describe('leaving out one study', () => {
  const leftOut = (heavy: readonly Row[], growth: number | null) =>
    apply('Leave out one study', start, analysisOf(LIGHT, heavy, growth)).include.withoutStudies.slice(1);

  it('takes the one furthest from the curve, above it as below', () => {
    expect(leftOut([...HEAVY, ['Avocet 2006', 0, 0.1, 0.02]], 0.05)).toEqual(['Avocet 2006']);
    expect(leftOut(HEAVY, 0.01)).toEqual(['Teal 2005']);
  });

  it('measures from 0 where there is no growth at failure, and leaves none out where none is near', () => {
    expect(leftOut(HEAVY, null)).toEqual(['Teal 2005']);
    expect(leftOut([['Rail 2004', 1, -0.4, 0.03]], 0.05)).toEqual([]);
  });

  it('looks at all rows where loads are fitted together', () => {
    if (!('all' in together.bands)) throw new Error('expected one band');
    const one = { ...together, bands: { all: fill(together.bands.all, [...LIGHT, ...HEAVY], 0.05) } };
    expect(apply('Leave out one study', start, one).include).toEqual(without('Wren 2001'));
    expect(apply('Take out the study that counts most', start, one).include).toEqual(without('Wren 2001'));
  });

  it('leaves none out of a table without a fitted row', () => {
    for (const title of ['Take out the study that counts most', 'Leave out one study']) {
      expect(apply(title, start, analysisOf([], [], null)).include, title).toEqual(start.include);
    }
  });
});
