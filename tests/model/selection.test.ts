/** Which rows an analysis reads: each reason to leave one out, alone, and what stands just on the other side of it. */
import { describe, expect, it } from 'vitest';
import { analyseFatigue } from '../../src/model/fatigue.ts';
import { bandOfLoad, groupByBand, splitByLoad } from '../../src/model/loads.ts';
import { COVARIATES, selectRows } from '../../src/model/selection.ts';
import { type SettingsInput, settingsSchema } from '../../src/model/settings.ts';
import { type Cells, makeArms } from '../support/tables.ts';

const select = (rows: readonly Cells[], settings: SettingsInput = {}) => {
  const { effects, excluded } = selectRows(makeArms(rows), settingsSchema.parse(settings));
  return { kept: effects.map(({ arm }) => arm.line), excluded };
};
/** Why the row is left out; null where it is kept. */
const reasonOf = (row: Cells, settings: SettingsInput = {}) => {
  const { kept, excluded } = select([row], settings);
  expect(kept.length + excluded.length).toBe(1);
  return excluded[0]?.reason ?? null;
};

/** A row that reports all that filters ask for. */
const FULL: Cells = {
  sex: 'female',
  joints: 'multi',
  muscle: 'quadriceps',
  concerns: 'low',
  failure_definition: 'muscular',
  reserve_basis: 'reported',
  sets: '3',
  sessions_per_week: '2',
  weeks: '8',
};

/** Nothing but a ready-made effect, which each test adds. */
const ONLY_EFFECT: Cells = { baseline_mean: '', baseline_sd: '', followup_mean: '', followup_sd: '', correlation: '' };

describe('a row', () => {
  it.each<[string, Cells, RegExp]>([
    [
      'of another outcome',
      { outcome: 'strength', measure: '1RM', unit: 'kg' },
      /^measures strength; this analysis is of growth$/u,
    ],
    ['beyond failure', { beyond_failure: 'partials' }, /^went beyond failure \(partials\)/u],
    ['without a reserve', { attempted_failure: 'no', reserve_reps: '' }, /^reserve is not known/u],
    ['without a load', { load_pct_1rm: '' }, /^load is not known/u],
    [
      'of a velocity loss without a reserve',
      { attempted_failure: 'no', reserve_reps: '', velocity_loss_pct: '20' },
      /a velocity loss of 20 % is printed, and no reserve is made of it$/u,
    ],
    ['that prints no spread', { baseline_sd: '', followup_sd: '', correlation: '' }, /no standard deviation/u],
    ['without people', { n: '' }, /number of people .* is not known/u],
  ])('%s is left out', (_, row, reason) => {
    expect(reasonOf(row)).toMatch(reason);
  });

  it('that went no further than failure, or says nothing of it, is kept', () => {
    expect([reasonOf({ beyond_failure: 'none' }), reasonOf({ beyond_failure: '' })]).toEqual([null, null]);
  });

  it('needs a load only where loads are told apart or held', () => {
    expect(reasonOf({ load_pct_1rm: '' }, { split: null })).toBeNull();
    expect(reasonOf({ load_pct_1rm: '' }, { split: null, adjust: ['load'] })).toBe(
      'load is not known, which the adjustment needs',
    );
  });

  it.each<[SettingsInput['adjust'], Cells, string]>([
    [['weekly-sets'], { sets: '' }, 'weekly sets'],
    [['weekly-sets'], { sessions_per_week: '' }, 'weekly sets'],
    [['weeks'], { weeks: '' }, 'weeks'],
    [['training-status', 'weeks'], { weeks: '' }, 'weeks'],
  ])('that does not report what %j holds is left out', (adjust, missing, name) => {
    expect(reasonOf({ ...FULL, ...missing }, { adjust })).toBe(`${name} is not known, which the adjustment needs`);
    expect(reasonOf(FULL, { adjust })).toBeNull();
    expect(reasonOf({ ...FULL, ...missing })).toBeNull();
  });

  it('is listed by line with the first reason that applies, whatever found it', () => {
    // The first gives an effect of another metric alone, which is found after all others.
    const rows: Cells[] = [
      { ...ONLY_EFFECT, effect: '0.4', effect_variance: '0.02', effect_metric: 'standardised' },
      { study: 'Wren 2020', year: '2020', beyond_failure: 'partials', load_pct_1rm: '' },
      { study: 'Rail 2021', year: '2021' },
      { study: 'Teal 2022', year: '2022', load_pct_1rm: '' },
    ];
    const { kept, excluded } = select(rows);
    expect(kept).toEqual([4]);
    expect(excluded.map(({ line }) => line)).toEqual([2, 3, 5]);
    expect(excluded[1].reason).toMatch(/beyond failure/u);
  });
});

describe('a filter', () => {
  it.each<[keyof NonNullable<SettingsInput['include']>, string, string, keyof Cells, string]>([
    ['trainingStatus', 'trained', 'untrained', 'training_status', 'training status'],
    ['sex', 'female', 'male', 'sex', 'sex'],
    ['joints', 'multi', 'single', 'joints', 'joints moved'],
    ['muscle', 'quadriceps', 'biceps brachii', 'muscle', 'muscle'],
    ['measure', 'muscle thickness', 'cross-sectional area', 'measure', 'measure'],
    ['concerns', 'low', 'high', 'concerns', 'concerns about bias'],
    ['design', 'parallel', 'within-person', 'design', 'design'],
    ['failureDefinition', 'muscular', 'task', 'failure_definition', 'failure meant'],
    ['reserveBasis', 'reported', 'prescribed', 'reserve_basis', 'reserve known from'],
  ])('%s keeps rows with one of its words', (name, word, other, column, shown) => {
    const include = { [name]: [word] } as SettingsInput['include'];
    const row = { ...FULL, [column]: word };
    expect(reasonOf(row, { include })).toBeNull();
    expect(reasonOf({ ...row, [column]: other }, { include })).toBe(`filtered out by ${shown}: ${other}`);
    expect(reasonOf({ ...row, [column]: other }, { include: { [name]: [word, other] } })).toBeNull();
    expect(reasonOf({ ...row, [column]: other }, { include: { [name]: [] } })).toBeNull();
  });

  it('leaves out a row that does not say, and says so', () => {
    expect(reasonOf({ ...FULL, sex: '' }, { include: { sex: ['female'] } })).toBe('filtered out by sex: not reported');
  });

  it('of years keeps its own ends', () => {
    const between = (yearFrom: number | null, yearTo: number | null) =>
      reasonOf(FULL, { include: { yearFrom, yearTo } });
    expect([between(2012, 2012), between(null, 2012), between(2012, null), between(null, null)]).toEqual([
      null,
      null,
      null,
      null,
    ]);
    expect(between(2013, null)).toBe('filtered out: published 2012');
    expect(between(null, 2011)).toBe('filtered out: published 2012');
  });

  it('of names leaves those out', () => {
    expect(reasonOf(FULL, { include: { withoutStudies: ['Plover 2012'] } })).toBe(
      'filtered out: study Plover 2012 is left out by name',
    );
    expect(reasonOf(FULL, { include: { withoutStudies: ['Plover 2013'] } })).toBeNull();
  });
});

it('covariates are the numbers of a row, weekly sets a product, training status 1 or 0', () => {
  const [row, other] = makeArms([FULL, { ...FULL, study: 'Wren 2020', year: '2020', training_status: 'untrained' }]);
  expect(Object.values(COVARIATES).map(({ of }) => of(row))).toEqual([75, 6, 8, 1]);
  expect(COVARIATES['training-status'].of(other)).toBe(0);
});

describe('loads', () => {
  const { effects } = selectRows(
    makeArms([
      { load_pct_1rm: '59.9' },
      { study: 'Wren 2020', year: '2020', load_pct_1rm: '60' },
      { study: 'Rail 2021', year: '2021', load_pct_1rm: '' },
    ]),
    settingsSchema.parse({ split: null }),
  );

  it('at the split are heavy, and none are told apart without one', () => {
    expect([bandOfLoad(59.9, 60), bandOfLoad(60, 60), bandOfLoad(60.1, 60), bandOfLoad(10, null)]).toEqual([
      'light',
      'heavy',
      'heavy',
      'all',
    ]);
  });

  it('that are not known are in neither band, and in the one of all', () => {
    const lines = (rows: typeof effects) => rows.map(({ arm }) => arm.line);
    expect(effects).toHaveLength(3);
    const { light, heavy } = splitByLoad(effects, 60);
    expect([lines(light), lines(heavy)]).toEqual([[2], [3]]);
    expect(groupByBand(effects, 60)).toEqual([
      ['light', light],
      ['heavy', heavy],
    ]);
    expect(groupByBand(effects, null)).toEqual([['all', effects]]);
  });
});

describe('what rows rest on', () => {
  const rows: readonly Cells[] = [
    {},
    { study: 'Wren 2013', year: '2013', followup_mean: '', followup_sd: '', change_mean: '3', change_se: '0.7' },
    { study: 'Owl 2014', year: '2014', n: '', n_total: '30', n_total_arms: '2' },
    { study: 'Tern 2015', year: '2015', baseline_sd: '', followup_sd: '', correlation: '' },
  ];
  const chosen = (settings: SettingsInput) => select(rows, settings).kept;

  it('keeps and leaves out rows, the reason naming it', () => {
    expect(chosen({})).toEqual(expect.arrayContaining([2, 3, 4]));
    expect(chosen({ include: { restsOn: ['printed'] } })).toEqual([2]);
    expect(chosen({ include: { restsOn: ['recovered'] } })).toEqual([3]);
    const { excluded } = select(rows, { include: { restsOn: ['printed', 'recovered'] } });
    expect(excluded.map(({ line, reason }) => [line, reason])).toEqual([
      [4, 'filtered out by effect rests on: assumed'],
      [5, 'it reports no standard deviation, which a variance needs'],
    ]);
  });

  it('is pooled where the settings ask for missing SDs, and can be filtered out again', () => {
    expect(chosen({ missingSds: 'missing' }).sort()).toEqual([2, 3, 4, 5]);
    expect(chosen({ missingSds: 'missing', include: { restsOn: ['pooled'] } })).toEqual([5]);
    expect(chosen({ missingSds: 'all', include: { restsOn: ['pooled'] } }).sort()).toEqual([2, 3, 4, 5]);
  });

  it('is told apart from how the paper was read', () => {
    const read = [{ how_read: 'abstract' }, { study: 'Wren 2013', year: '2013', how_read: 'full text' }];
    expect(select(read, { include: { howRead: ['full text'] } }).kept).toEqual([3]);
  });
});

describe('training status that is not said', () => {
  it('is missing for an adjustment by it, not untrained', () => {
    expect(reasonOf({ training_status: '' }, { adjust: ['training-status'] })).toBe(
      'training status is not known, which the adjustment needs',
    );
  });

  it('leaves rows out of fatigue by status, with the reason', () => {
    const arms = makeArms([
      { outcome: 'fatigue', hours_after: '24' },
      { study: 'Wren 2013', year: '2013', outcome: 'fatigue', hours_after: '24', training_status: 'not said' },
    ]);
    const { excluded, byStatus } = analyseFatigue(arms, settingsSchema.parse({}));
    expect(excluded).toEqual([{ line: 3, reason: 'training status is not known, and recovery is fitted by it' }]);
    expect(byStatus.reduce((sum, { rows: count }) => sum + count, 0)).toBe(1);
  });
});
