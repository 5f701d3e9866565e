/** The guided steps: what each changes, from settings and an analysis that are known; that it changes nothing else; and where it says nothing. */
import { describe, expect, it } from 'vitest';
import { SPLIT } from '../../../src/islands/evidence/controlList.ts';
import { findChange, passOver, stateTaught } from '../../../src/islands/evidence/guideFindings.ts';
import { GUIDE_STEPS, refuseGuide } from '../../../src/islands/evidence/guideSteps.ts';
import { analyse } from '../../../src/model/analyse.ts';
import { mapFilters } from '../../../src/model/filters.ts';
import type { Analysis, Band, Target } from '../../../src/model/result.ts';
import { type Settings, settingsSchema } from '../../../src/model/settings.ts';
import { makeArms } from '../../support/tables.ts';

/** Far from the defaults, so that a step that resets something is seen. */
const start = settingsSchema.parse({
  weighting: 'precision',
  curve: 'log',
  split: 50,
  keptShare: 0.8,
  include: { sex: ['female'], reserveBasis: ['prescribed', 'reported'], withoutStudies: ['Crane 1999'] },
});
const made = analyse(makeArms([{}]), settingsSchema.parse({}));
const options = { ...mapFilters(() => []), reserveBasis: ['prescribed', 'reported'] };

type Row = readonly [study: string, reserve: number, effect: number, standardError: number, load?: number];

const target = (point: number | null, low: number | null = 1, high: number | null = 4): Target => ({
  keptShare: 0.9,
  point,
  low: point === null ? null : low,
  high: point === null ? null : high,
  set: [],
  shown: point === null || low === null ? null : { point, low, high },
  whole: null,
  reachedEdge: false,
  reason: point === null ? 'no target: too few' : null,
});

function fill(band: Band, rows: readonly Row[], growth: number | null, of: Target = target(2)): Band {
  const fitted = rows.map(([study, reserve, effect, standardError, load = 55], i) => ({
    line: 2 + i,
    study,
    reserve,
    effect,
    standardError,
    load,
    weight: 1 / rows.length,
  }));
  const atFailure = growth === null ? null : { estimate: growth, standardError: 0, df: 9, ciLow: 0, ciHigh: 0, p: 1 };
  return {
    ...band,
    failure: null,
    target: of,
    fitted: fitted as unknown as Band['fitted'],
    atFailure: atFailure as Band['atFailure'],
    curvePoints: [0, 2, 8].map((reserve) => ({
      reserve,
      estimate: 0.05,
      ciLow: 0.04,
      ciHigh: 0.06,
      df: 9,
      predictionLow: null,
      predictionHigh: null,
    })),
  };
}

const LIGHT: readonly Row[] = [
  ['Wren 2001', 0, 0.2, 0.012],
  ['Snipe 2003', 0, 0.09, 0.01],
];
const HEAVY: readonly Row[] = [
  ['Wren 2001', 0.5, 0.06, 0.012],
  ['Heron 2002', 0, 0.01, 0.02],
  ['Rail 2004', 1, -0.4, 0.03, 70],
  ['Teal 2005', 0.9, 0.07, 0.03],
];

interface Known {
  readonly settings?: Settings;
  readonly light?: readonly Row[];
  readonly heavy?: readonly Row[];
  readonly growth?: number | null;
  readonly targets?: readonly [light: Target, heavy: Target];
}

function analysisOf({
  settings = start,
  light = LIGHT,
  heavy = HEAVY,
  growth = 0.05,
  targets = [target(2), target(2)],
}: Known = {}): Analysis {
  if (!('light' in made.bands)) throw new Error('expected two bands');
  const bands = {
    light: fill(made.bands.light, light, 0, targets[0]),
    heavy: fill(made.bands.heavy, heavy, growth, targets[1]),
  };
  return { ...made, settings, bands };
}

function stepOf(title: string) {
  const step = GUIDE_STEPS.find((one) => one.title === title);
  if (!step) throw new Error(`no step ${title}`);
  return step;
}

/** Base and change of a step, from the settings that the guide was begun with. */
function go(title: string, from: Settings = start, known: Known = {}) {
  const step = stepOf(title);
  const base = step.base(from);
  const context = { analysis: analysisOf({ ...known, settings: base }), options };
  return { base, after: step.change(context), whyNot: step.whyNot(context), rings: step.rings(context) };
}
const without = (...studies: string[]) => ({ ...start.include, withoutStudies: ['Crane 1999', ...studies] });

describe('each step', () => {
  it.each<[string, Partial<Settings>, Partial<Settings>]>([
    ['Count every row alike', {}, { weighting: 'equal' }],
    ['Count by precision', { weighting: 'mixed' }, { weighting: 'precision' }],
    // By 1/v of heavy loads: Wren has 1/0.012² = 6,944, Heron 1/0.02² = 2,500; Snipe’s 1/0.01² = 10,000 is light.
    ['Take out the study that counts most', {}, { include: without('Wren 2001') }],
    ['Let studies differ', {}, { weighting: 'mixed' }],
    ['Straighten or bend', { weighting: 'mixed' }, { curve: 'line' }],
    ['Move the split', {}, { split: 60 }],
    // At failure 0.05: Heron lies 0.04 below, Teal 0.02 above; Rail is not near failure, light loads are not followed.
    ['Leave out one study', { weighting: 'mixed' }, { include: without('Heron 2002') }],
    ['Doubt the reserve', {}, { include: { ...start.include, reserveBasis: ['reported'] } }],
  ])('“%s” starts from the reader’s own settings and changes one thing', (title, from, change) => {
    const { base, after, whyNot, rings } = go(title);
    expect(base).toEqual({ ...start, ...from });
    expect(after).toEqual({ ...base, ...change });
    expect(whyNot).toBeNull();
    expect(rings.spots.length).toBeGreaterThan(0);
  });

  it('is tested here', () => {
    expect(GUIDE_STEPS).toHaveLength(8);
    expect(new Set(GUIDE_STEPS.map(({ title }) => title)).size).toBe(8);
  });

  it('changes something whatever the reader began with', () => {
    for (const weighting of ['mixed', 'precision', 'equal'] as const)
      for (const curve of ['line', 'flexible'] as const)
        for (const { title } of GUIDE_STEPS) {
          const { base, after, whyNot } = go(title, { ...start, weighting, curve });
          if (whyNot === null) expect(after, `${title}, ${weighting}, ${curve}`).not.toEqual(base);
        }
  });
});

describe('a step says why it says nothing', () => {
  it.each<[string, Known, Settings | undefined, RegExp]>([
    ['Move the split', {}, { ...start, split: null }, /^Loads are fitted together here/u],
    ['Move the split', {}, { ...start, split: SPLIT.max }, /^The split stands as high as it goes/u],
    ['Move the split', {}, { ...start, split: SPLIT.max + 5 }, /^The split stands as high as it goes/u],
    [
      'Move the split',
      { heavy: [['Rail 2004', 0, 0.1, 0.01, 75]] },
      undefined,
      /^No row that counts here was lifted at 50 to below 60\u00a0%/u,
    ],
    ['Take out the study that counts most', { light: [], heavy: [HEAVY[0]] }, undefined, /^There is only one study/u],
    ['Let studies differ', { light: [], heavy: [HEAVY[0]] }, undefined, /^There is only one study/u],
    [
      'Leave out one study',
      {
        heavy: [
          ['Rail 2004', 1, 0.1, 0.01],
          ['Teal 2005', 2, 0.1, 0.01],
        ],
      },
      undefined,
      /^No row that is fitted was near failure with heavy loads/u,
    ],
    [
      'Straighten or bend',
      { light: LIGHT, heavy: [HEAVY[0], HEAVY[1]] },
      { ...start, curve: 'flexible' },
      /^Only two different reserves were studied with heavy loads/u,
    ],
    [
      'Doubt the reserve',
      {},
      { ...start, include: { ...start.include, reserveBasis: ['reported'] } },
      /^Only studies that measured reserve/u,
    ],
    [
      'Doubt the reserve',
      {},
      { ...start, include: { ...start.include, reserveBasis: ['prescribed', 'velocity-loss'] } },
      /^The filter of how reserve was known leaves no study that measured it/u,
    ],
  ])('“%s”', (title, known, from, reason) => {
    expect(go(title, from, known).whyNot).toMatch(reason);
  });

  it('where no study measured reserve, or none says how it was known', () => {
    for (const words of [['prescribed'], []]) {
      const context = { analysis: analysisOf(), options: { ...options, reserveBasis: words } };
      expect(stepOf('Doubt the reserve').whyNot(context)).toBe('No study of this table says that it measured reserve.');
    }
  });

  it('where all that say how they knew reserve measured it: others may not say', () => {
    const settings = { ...start, include: { ...start.include, reserveBasis: [] } };
    const context = { analysis: analysisOf({ settings }), options: { ...options, reserveBasis: ['reported'] } };
    expect(stepOf('Doubt the reserve').whyNot(context)).toBe('Every study that says how it knew reserve measured it.');
  });

  it('for all steps, where no band has a target', () => {
    expect(refuseGuide(analysisOf({ targets: [target(null), target(null)] }))).toBe(
      'There is no target here to follow: no target: too few.',
    );
    expect(refuseGuide(analysisOf({ targets: [target(2), target(null)] }))).toBeNull();
  });
});

describe('what is ringed', () => {
  it('lies where the rows lie', () => {
    const { rings } = go('Leave out one study');
    expect(rings.band).toBe('heavy');
    expect(rings.spots).toEqual([{ x: 0, y: 100 * Math.expm1(0.01), words: 'the study, Heron 2002 at reserve 0' }]);
    expect(go('Move the split').rings.spots.map(({ x }) => x)).toEqual([0.5, 0, 0.9]);
  });

  it('is of the light figure, where only that has a target', () => {
    const targets = [target(2), target(null)] as const;
    expect(go('Doubt the reserve', start, { targets }).rings).toMatchObject({ band: 'light', spots: [{ x: 2 }] });
    const { rings } = go('Take out the study that counts most', start, { targets });
    // Snipe counts most with light loads, Wren with heavy ones.
    expect(rings).toMatchObject({ band: 'light', spots: [{ words: 'the study, Snipe 2003 at reserve 0' }] });
  });

  it('is a row without a fit too, where it changes sides', () => {
    const analysis = analysisOf({ targets: [target(2), target(null)] });
    if (!('heavy' in analysis.bands)) throw new Error('expected two bands');
    const { fitted: unfitted, ...heavy } = analysis.bands.heavy;
    const bands = { ...analysis.bands, heavy: { ...heavy, fitted: [], unfitted: unfitted as never } };
    const context = { analysis: { ...analysis, bands }, options };
    expect(stepOf('Move the split').whyNot(context)).toBeNull();
    expect(
      stepOf('Move the split')
        .rings(context)
        .spots.map(({ x }) => x),
    ).toEqual([0.5, 0, 0.9]);
  });
});

describe('what a step came to', () => {
  const of = (before: Target, after: Target) => [before, after].map((one) => analysisOf({ targets: [target(2), one] }));
  const come = (asks: 'target' | 'width', before: Target, after: Target) => {
    const [one, other] = of(before, after);
    return findChange({ ...stepOf('Count every row alike'), asks }, { analysis: one, options }, other);
  };

  it('is nearer or further from a quarter of a repetition on', () => {
    expect(come('target', target(2), target(1.75)).right).toBe('less');
    expect(come('target', target(2), target(1.76)).right).toBe('same');
    expect(come('target', target(2), target(2.25))).toMatchObject({ right: 'more', moved: 0.25 });
    expect(come('target', target(2), target(null))).toMatchObject({ right: null, moved: null });
  });

  it('is wider or narrower from a tenth on, and widest without an upper end', () => {
    const width = (low: number, high: number | null) => target(2, low, high);
    expect(come('width', width(1, 3), width(1, 3.2)).right).toBe('more');
    expect(come('width', width(1, 3), width(1, 3.19)).right).toBe('same');
    expect(come('width', width(1, 3), width(1, 2.5)).right).toBe('less');
    expect(come('width', width(1, 3), width(1, null)).right).toBe('more');
    expect(come('width', width(1, null), width(0, null)).right).toBe('same');
    expect(come('width', width(1, null), width(1, 3)).right).toBe('less');
  });

  it('is said with the target before and after, and where loads are split otherwise', () => {
    expect(come('target', target(2), target(1)).brief).toBe(
      'Heavy loads: target 2.0 (1.0 to 4.0), then 1.0 (1.0 to 4.0).',
    );
    const together = { ...analysisOf(), bands: { all: fill(made.bands as never, HEAVY, 0.05) } } as Analysis;
    const context = { analysis: analysisOf(), options };
    expect(findChange(stepOf('Count every row alike'), context, together)).toMatchObject({
      right: null,
      lesson: '',
      brief: expect.stringMatching(/no curve of its own/u),
    });
  });

  it('is summed up by what moved the target most and least', () => {
    const found = (moved: number | null) => ({ ...passOver(''), moved, wasAsked: true });
    const none = Array.from({ length: 6 }, () => null);
    expect(stateTaught([found(-1.2), found(0.1), ...none])).toBe(
      'The target moved most with “Count every row alike” (by 1.2 towards failure), least with “Count by precision” (by 0.1 away from failure): it rests on the former, and hardly on the latter.',
    );
    expect(stateTaught([found(-1.2), found(0.5), ...none])).toMatch(/: it rests on each of these choices\.$/u);
    expect(stateTaught([found(-0.2), found(0.1), ...none])).toMatch(/^None of these changes moved the target/u);
    expect(stateTaught([found(null), found(0.1), found(-0.5), ...none])).toMatch(
      /No target was left with “Count every row alike”\.$/u,
    );
    expect(stateTaught([passOver('one study'), found(0.5), ...none])).toBe('');
  });
});
