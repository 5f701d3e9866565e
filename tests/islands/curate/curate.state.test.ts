/** What is done with a study in the form: arms, measures and facts come, go and come back, and nothing is lost unsaid. */
import { describe, expect, it } from 'vitest';
import { reserveFromLoad } from '../../../src/evidence/reserve.ts';
import { ARM_COLUMNS } from '../../../src/evidence/schema.ts';
import { createCurating } from '../../../src/islands/curate/curate.state.ts';
import { gridOfFacts, gridOfResults, listMeasureFacts, listNumbers } from '../../../src/islands/curate/grids.ts';
import { expectWithin } from '../../support/closeness.ts';
import { FROM, formWith, placeIn, type rowOf, type } from './formWith.ts';

const TWO = [{ arm: 'to failure' }, { arm: 'short', attempted_failure: 'no', reserve_reps: '3' }];

describe('a fact', () => {
  it('of all arms is entered once, and becomes one of each arm and back again', () => {
    const state = formWith(...TWO);
    expect(state.draft.value.apart).not.toContain('load_pct_1rm');
    state.setApart('load_pct_1rm', true);
    expect(state.rows.value.map(({ load_pct_1rm: load }) => load)).toEqual(['75', '75']);
    type(state, { load_pct_1rm: '30' }, 1);
    expect(state.rows.value.map(({ load_pct_1rm: load }) => load)).toEqual(['75', '30']);
    state.setApart('load_pct_1rm', false);
    expect(state.rows.value.map(({ load_pct_1rm: load }) => load)).toEqual(['75', '75']);
    type(state, { weeks: '8' });
    expect(state.undos.value.map(({ what }) => what)).toEqual(['“Load, % of 1RM” is 75 in all arms now.']);
    state.takeBack();
    expect(state.rows.value.map(({ load_pct_1rm: load, weeks }) => [load, weeks])).toEqual([
      ['75', '8'],
      ['30', '8'],
    ]);
  });

  it('that no arm differs in becomes one of all without a word', () => {
    const state = formWith(...TWO);
    state.setApart('load_pct_1rm', true);
    state.setApart('load_pct_1rm', false);
    expect(state.undos.value).toEqual([]);
    expect(state.rows.value.map(({ load_pct_1rm: load }) => load)).toEqual(['75', '75']);
  });

  it('that few papers print is cleared with its tick, and comes back', () => {
    const state = formWith(...TWO);
    state.setExtra('RM', true);
    type(state, { load_rm: '8-12' });
    state.setExtra('RM', false);
    expect(state.rows.value.map(({ load_rm: rm }) => rm)).toEqual(['', '']);
    state.takeBack();
    expect(state.rows.value.map(({ load_rm: rm }) => rm)).toEqual(['8-12', '8-12']);
    expect(state.draft.value.extras).toEqual(['RM']);
  });
});

describe('the people of the arms', () => {
  it.each([
    ['parallel', ['a', 'b']],
    ['within-person', ['a', 'a']],
    ['crossover', ['a', 'a']],
    ['', ['', '']],
  ])('follow from the design “%s”', (design, cohorts) => {
    const state = createCurating();
    for (const arm of [0, 1]) type(state, { arm: `arm ${arm}`, baseline_mean: '40' }, arm);
    type(state, { design });
    expect(state.rows.value.map(({ cohort }) => cohort)).toEqual(cohorts);
  });

  it('are the same in an arm of one name that trained two exercises', () => {
    const state = createCurating();
    state.setApart('exercise', true);
    for (const arm of [0, 1]) type(state, { arm: 'heavy', exercise: `exercise ${arm}`, baseline_mean: '40' }, arm);
    type(state, { design: 'parallel' });
    expect(state.rows.value.map(({ cohort }) => cohort)).toEqual(['a', 'a']);
  });

  it('are named by hand from those of the design on, and the design says them again', () => {
    const state = formWith({ ...TWO[0], cohort: 'a' }, { ...TWO[1], cohort: 'b' });
    state.setByDesign(false);
    type(state, { cohort: 'a' }, 1);
    expect(state.rows.value.map(({ cohort }) => cohort)).toEqual(['a', 'a']);
    state.setByDesign(true);
    expect(state.rows.value.map(({ cohort }) => cohort)).toEqual(['a', 'b']);
    state.takeBack();
    expect(state.rows.value.map(({ cohort }) => cohort)).toEqual(['a', 'a']);
  });
});

describe('an arm and a measure', () => {
  it('that were removed come back at their place, without losing what was entered since', () => {
    const state = formWith(...TWO, { ...TWO[0], measure: 'area' });
    const csv = state.csvOf(true);
    const [first] = state.draft.value.arms;
    state.removeArm(first.id);
    expect(state.rows.value.map(({ arm }) => arm)).toEqual(['short']);
    state.removeMeasure(state.draft.value.measures[0].id);
    expect(state.rows.value).toEqual([]);
    type(state, { year: '2013' });
    state.takeBack();
    state.takeBack();
    expect(state.csvOf(true)).toBe(csv.replaceAll('Plover 2012,2012', 'Plover 2012,2013'));
  });

  it('are never the last that is removed', () => {
    const state = formWith({});
    state.removeArm(state.draft.value.arms[0].id);
    state.removeMeasure(state.draft.value.measures[0].id);
    expect(state.rows.value).toHaveLength(1);
  });

  it('without a number make no row, which is told', () => {
    const state = formWith(...TWO, { ...TWO[0], measure: 'area' });
    const [, short] = state.draft.value.arms;
    const [, area] = state.draft.value.measures;
    expect(state.reading.value.empty).toEqual([{ arm: short.id, measure: area.id }]);
    type(state, { baseline_mean: '1' }, 1, 1);
    expect(state.reading.value.empty).toEqual([]);
    expect(state.rows.value).toHaveLength(4);
  });

  it('are printed alike: a new measure has the kinds of number of the one before', () => {
    const state = formWith({});
    state.setReport(state.draft.value.measures[0].id, 'p', true);
    const id = state.addMeasure();
    const added = state.draft.value.measures.find((measure) => measure.id === id);
    expect(added?.reports).toEqual(state.draft.value.measures[0].reports);
    expect(added?.reports).toContain('p');
  });
});

describe('kinds of number', () => {
  it('show their columns, and those of intervals and effects their choices', () => {
    const state = createCurating();
    const [{ id }] = state.draft.value.measures;
    const measure = () => state.draft.value.measures[0];
    expect(listNumbers(measure())).toEqual(['baseline_mean', 'baseline_sd', 'followup_mean', 'followup_sd']);
    expect(listMeasureFacts(measure())).not.toContain('ci_level');
    state.setReport(id, 'percent interval', true);
    expect(listNumbers(measure()).slice(-2)).toEqual(['percent_change_ci_low', 'percent_change_ci_high']);
    expect(listMeasureFacts(measure())).toContain('ci_level');
    state.setReport(id, 'effect', true);
    expect(listMeasureFacts(measure())).toEqual(expect.arrayContaining(['effect_standardiser', 'effect_corrected']));
  });

  it('are cleared with their tick, but for what another kind shares, and come back', () => {
    const state = formWith({ change_mean: '3', change_ci_low: '1', change_ci_high: '5', ci_level: '90' });
    const [{ id }] = state.draft.value.measures;
    state.setReport(id, 'percent interval', true);
    state.setReport(id, 'interval', false);
    expect(state.rows.value[0]).toMatchObject({
      change_ci_low: '',
      change_ci_high: '',
      ci_level: '90',
      change_mean: '3',
    });
    expect(state.undos.value.map(({ what }) => what)).toEqual(['The change: Interval: cleared.']);
    state.takeBack();
    expect(state.rows.value[0]).toMatchObject({ change_ci_low: '1', change_ci_high: '5' });
    expect(state.draft.value.measures[0].reports).toContain('interval');
  });

  it('appear where a problem asks for one of them', () => {
    const state = createCurating();
    const [{ id }] = state.draft.value.measures;
    state.setReport(id, 'means', false);
    const place = placeIn(state.draft.value, 'baseline_mean');
    state.reveal(place);
    expect(listNumbers(state.draft.value.measures[0])).toContain('baseline_mean');
  });
});

describe('a cell that a result has of its own', () => {
  it('counts before the arm’s, which counts where it is empty', () => {
    const state = formWith({ ...TWO[0], n: '12' }, { ...TWO[1], n: '14' });
    const [{ id }] = state.draft.value.measures;
    state.setOwn(id, 'n', true);
    expect(state.rows.value.map(({ n }) => n)).toEqual(['12', '14']);
    type(state, { n: '11' });
    expect(state.rows.value.map(({ n }) => n)).toEqual(['11', '14']);
    state.setOwn(id, 'n', false);
    expect(state.rows.value.map(({ n }) => n)).toEqual(['12', '14']);
    state.takeBack();
    expect(state.rows.value.map(({ n }) => n)).toEqual(['11', '14']);
  });
});

describe('a block of copied cells', () => {
  it('fills a measure’s grid, turns decimal commas to points, and says so', () => {
    const state = formWith(...TWO);
    const measure = state.draft.value.measures[0];
    const grid = gridOfResults(state.draft.value, measure);
    const before = state.csvOf(true);
    state.paste(grid, 0, 0, [
      ['40,5', '6,1', '43,25'],
      ['41', '\u22126', '44'],
    ]);
    expect(state.rows.value.map((row) => [row.baseline_mean, row.baseline_sd, row.followup_mean])).toEqual([
      ['40.5', '6.1', '43.25'],
      ['41', '-6', '44'],
    ]);
    expect(state.done.value).toBe('6 cells pasted. 3 decimal commas written as points.');
    state.takeBack();
    expect(state.csvOf(true)).toBe(before);
  });

  it('fills facts of arms, choices by their words, and tells what no entry takes', () => {
    const state = formWith(...TWO);
    const grid = gridOfFacts(state.draft.value);
    const row = grid.findIndex(([place]) => place.column === 'attempted_failure');
    state.paste(grid, row, 0, [
      ['no', 'yes'],
      ['2', '0', 'beyond the arms'],
    ]);
    expect(state.rows.value.map((one) => [one.attempted_failure, one.reserve_reps])).toEqual([
      ['no', '2'],
      ['yes', '0'],
    ]);
    const joints = grid.findIndex(([place]) => place.column === 'joints');
    state.paste(grid, joints, 0, [['several joints']]);
    expect(state.rows.value[1].joints).toBe('multi');
    state.paste(grid, joints, 0, [['many']]);
    expect(state.done.value).toBe('0 cells pasted. 1 cell left out: no entry takes it.');
  });
});

describe('studies', () => {
  it('that were removed, one or all, come back without losing what was entered since', () => {
    const state = formWith(...TWO);
    const csv = state.csvOf(true);
    state.remove(state.draft.value.id);
    expect(state.rows.value).toEqual([]);
    type(state, { study: 'typed since' });
    state.takeBack();
    expect(state.csvOf(true)).toBe(csv);
    expect(state.studies.value.map(({ cells }) => cells.study)).toEqual(['Plover 2012', 'typed since']);
    state.removeAll();
    expect(state.studies.value).toEqual([]);
    state.takeBack();
    expect(state.studies.value).toHaveLength(2);
  });

  it('are started one after the other, and none twice while it is blank', () => {
    const state = formWith({});
    state.startNext();
    state.startNext();
    expect(state.curating.value.studies).toHaveLength(2);
    expect(state.isEmpty.value).toBe(true);
    state.open(state.curating.value.studies[0].id);
    expect(state.curating.value.studies).toHaveLength(1);
    expect(state.draft.value.cells.study).toBe('Plover 2012');
  });

  it('are copied with the header or without it', () => {
    const state = formWith({});
    expect(state.csvOf(true)).toBe(`${Object.keys(ARM_COLUMNS).join(',')}\n${state.csvOf(false)}`);
    expect(state.csvOf(false).split('\n')).toHaveLength(2);
  });

  it('take their own place in the table that they are from, and in no other', () => {
    const state = formWith({});
    state.enter({ of: 'study', column: 'study' }, 'Plover 2013');
    expect(state.rowsFor('mine.csv').map(({ replaces }) => replaces)).toEqual([FROM.study]);
    expect(state.rowsFor('other.csv').map(({ replaces }) => replaces)).toEqual([null]);
    state.noteAdded('other.csv');
    expect(state.rowsFor('other.csv').map(({ replaces }) => replaces)).toEqual(['Plover 2013']);
  });

  it('lose their line breaks as they are entered', () => {
    const state = createCurating();
    state.enter({ of: 'study', column: 'study' }, 'Plover\r\n2012');
    expect(state.draft.value.cells.study).toBe('Plover 2012');
  });
});

describe('the reserve helper', () => {
  it('fills in what the published relation gives for an arm’s load and repetitions, with its spread', () => {
    const arm = { attempted_failure: '', reserve_reps: '', load_pct_1rm: '75' };
    const state = formWith({ ...TWO[0], ...arm, reps_per_set: '9' }, { ...TWO[1], ...arm, reps_per_set: '7' });
    state.askReserve('relation', 'leg press');
    const [, { id }] = state.draft.value.arms;
    const { found } = state.fromLoad(id);
    const estimate = reserveFromLoad(75, 7, 'leg press');
    if (!found || estimate.mean === null) throw new Error('no estimate');
    state.useReserve(id, found);
    const [other, filled] = state.rows.value;
    expectWithin(Number(filled.reserve_reps), estimate.mean, 0.005, 'reserve');
    expectWithin(Number(filled.reserve_sd), estimate.sd, 0.005, 'SD');
    expect(filled.reserve_basis).toBe('load-table');
    expect(other.reserve_reps).toBe('');
    expect(state.reading.value.problems).toEqual([]);
  });

  it('finds 8 with SD 0.8 where 60 % of 20 ± 2 repetitions were done', () => {
    const state = createCurating();
    for (const [name, text] of [
      ['share_pct', '60'],
      ['maximum', '20'],
      ['maximum_sd', '2'],
    ] as const) {
      expect(state.fromShare().found).toBeNull();
      state.askReserve(name, text);
    }
    const found = { reserve_reps: '8', reserve_sd: '0.8', reserve_basis: 'share-of-maximum' };
    expect(state.fromShare().found).toEqual(found);
  });

  it('says why there is none without load, and outside the published loads', () => {
    const reasonFor = (changes: Parameters<typeof rowOf>[0]) => {
      const state = formWith(changes);
      return state.fromLoad(state.draft.value.arms[0].id).reason;
    };
    expect(reasonFor({ load_pct_1rm: '' })).toMatch(/the arm’s load/u);
    expect(reasonFor({ load_pct_1rm: '20', reps_per_set: '9' })).toMatch(/40 to 90 % of 1RM, not 20/u);
  });

  it('can be taken back to what the arm had', () => {
    const state = formWith({ attempted_failure: '', reserve_reps: '4' });
    const [{ id }] = state.draft.value.arms;
    state.useReserve(id, { reserve_reps: '8', reserve_sd: '0.8', reserve_basis: 'share-of-maximum' });
    expect(state.rows.value[0].reserve_reps).toBe('8');
    state.takeBack();
    expect(state.rows.value[0]).toMatchObject({ reserve_reps: '4', reserve_sd: '' });
  });
});
