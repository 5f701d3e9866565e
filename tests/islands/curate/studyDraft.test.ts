/** A study of any valid table goes through the form and comes out as it was: taken up whole, typed in, and after a reload. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groupRows } from '../../../src/evidence/groupRows.ts';
import type { Arm, ArmColumn } from '../../../src/evidence/schema.ts';
import { readArms } from '../../../src/evidence/table.ts';
import { writeArms } from '../../../src/evidence/writeTable.ts';
import { ARM_NAMES, toCells } from '../../../src/islands/curate/cells.ts';
import { type CuratingState, createCurating } from '../../../src/islands/curate/curate.state.ts';
import { makeRows } from '../../../src/islands/curate/draftRows.ts';
import { gridOfFacts, gridOfResults, listMeasureFacts, listStudyFacts } from '../../../src/islands/curate/grids.ts';
import { columnsOf } from '../../../src/islands/curate/levels.ts';
import { readCurating, writeCurating } from '../../../src/islands/curate/savedForm.ts';
import {
  idOf,
  type Place,
  placeAbove,
  placeOf,
  readPlace,
  type StudyDraft,
} from '../../../src/islands/curate/studyDraft.ts';
import { validTable } from '../../support/tableArbitrary.ts';
import { makeArms } from '../../support/tables.ts';
import { FROM, formWith, resultAt, rowOf } from './formWith.ts';

/** A form that each study of a table was taken up into. */
function takeUp(arms: readonly Arm[]): { readonly state: CuratingState; readonly sorted: readonly Arm[] } {
  const state = createCurating();
  const studies = [...groupRows(arms, ({ study }) => study)];
  for (const [study, rows] of studies) state.takeUp(rows.map(toCells), { table: 'mine.csv', study });
  return { state, sorted: studies.flatMap(([, rows]) => rows) };
}

/** Types a draft into the blank study of another form, entry by entry. */
function typeIn(state: CuratingState, draft: StudyDraft): void {
  while (state.draft.value.arms.length < draft.arms.length) state.addArm();
  while (state.draft.value.arms.length > draft.arms.length) state.removeArm(state.draft.value.arms[0].id);
  while (state.draft.value.measures.length < draft.measures.length) state.addMeasure();
  state.setByDesign(draft.peopleByDesign);
  for (const column of [...columnsOf('study'), ...columnsOf('arm')]) {
    if (column !== 'arm') state.setApart(column, draft.apart.includes(column));
  }
  const idsHere = new Map<number, number>();
  for (const [i, { id }] of draft.arms.entries()) idsHere.set(id, state.draft.value.arms[i].id);
  for (const [i, { id, own, reports }] of draft.measures.entries()) {
    const here = state.draft.value.measures[i].id;
    idsHere.set(id, here);
    for (const column of own) state.setOwn(here, column, true);
    for (const name of reports) state.setReport(here, name, true);
  }
  for (const name of draft.extras) state.setExtra(name, true);
  const here = (id: number) => idsHere.get(id) ?? 0;
  for (const { id: arm } of draft.arms) {
    for (const { id: measure } of draft.measures) {
      for (const column of ARM_NAMES) {
        const result = { arm, measure };
        for (const place of [placeOf(draft, result, column), placeAbove(draft, result, column)]) {
          const own = { arm: here(arm), measure: here(measure) };
          state.enter(
            { ...place, ...('arm' in place && { arm: own.arm }), ...('measure' in place && { measure: own.measure }) },
            readPlace(draft, place),
          );
        }
      }
    }
  }
}

/** Entries of the study in hand that the form shows. */
function shownEntries(draft: StudyDraft): ReadonlySet<string> {
  const places: readonly Place[] = [
    ...listStudyFacts(draft).map((column): Place => ({ of: 'study', column })),
    ...gridOfFacts(draft).flat(),
    ...draft.measures.flatMap((measure) => [
      ...listMeasureFacts(measure).map((column): Place => ({ of: 'measure', measure: measure.id, column })),
      ...gridOfResults(draft, measure).flat(),
    ]),
  ];
  return new Set(places.map(idOf));
}

describe('a study of any valid table', () => {
  it('is taken up and put back as it was, without a problem, with every text on the form, also after a reload', () => {
    let [rows, studies] = [0, 0];
    fc.assert(
      fc.property(validTable, (arms) => {
        const { state, sorted } = takeUp(arms);
        expect(state.csvOf(true)).toBe(writeArms(sorted));
        const { problems, arms: read } = readArms(state.csvOf(true), '');
        expect(problems).toEqual([]);
        expect(read.map((arm) => ({ ...arm, line: 0 }))).toEqual(sorted.map((arm) => ({ ...arm, line: 0 })));
        for (const draft of state.curating.value.studies) {
          studies++;
          const reading = state.readings.value.get(draft.id);
          expect([...(reading?.problems ?? []), ...(reading?.needed ?? [])]).toEqual([]);
          const shown = shownEntries(draft);
          for (const row of makeRows(draft)) {
            rows++;
            for (const column of ARM_NAMES) {
              const isSaid = column === 'cohort' && draft.peopleByDesign;
              if (row.cells[column] !== '' && !isSaid) expect(shown).toContain(idOf(placeOf(draft, row, column)));
            }
          }
        }
        const kept = readCurating(writeCurating(state.curating.value));
        expect(kept.curating).toEqual(state.curating.value);
      }),
      { seed: 16, numRuns: 80 },
    );
    expect(rows).toBeGreaterThan(300);
    expect(studies).toBeGreaterThan(150);
  });

  it('typed in entry by entry makes the same rows', () => {
    fc.assert(
      fc.property(validTable, (arms) => {
        const [first] = [...groupRows(arms, ({ study }) => study).values()];
        const { state: whole } = takeUp(first);
        const state = createCurating();
        typeIn(state, whole.draft.value);
        const lines = (text: string) => text.trim().split('\n').sort();
        // Texts have no line breaks, so that a line is a row.
        expect(lines(state.csvOf(true))).toEqual(lines(whole.csvOf(true)));
      }),
      { seed: 17, numRuns: 60 },
    );
  });

  it('keeps ranges, bounds and digits as they are printed', () => {
    const printed = {
      reps_per_set: '8-12',
      load_pct_1rm: '70–80',
      change_p: '<0.001',
      baseline_mean: '40.00',
      sex: 'not said',
    };
    const state = formWith({ ...printed, attempted_failure: '', reserve_reps: '1 to 3' });
    const [{ cells }] = state.reading.value.rows;
    expect(cells).toMatchObject({ ...printed, reserve_reps: '1 to 3' });
    expect(state.reading.value.problems).toEqual([]);
    expect(readArms(state.csvOf(true), '').arms[0].ranges).toMatchObject({
      reps_per_set: { low: 8, high: 12 },
      load_pct_1rm: { low: 70, high: 80 },
      change_p: { low: 0, high: 0.001 },
      reserve_reps: { low: 1, high: 3 },
    });
  });
});

describe('a study taken up', () => {
  it('has each fact where it is the same: of the study, of an arm, of a measure or of a result', () => {
    const state = formWith(
      { arm: 'a', age_mean_years: '21', n: '12', note: 'x' },
      { arm: 'a', age_mean_years: '21', n: '11', measure: 'area', note: 'y' },
      { arm: 'b', age_mean_years: '25', n: '12', note: 'x' },
      { arm: 'b', age_mean_years: '25', n: '10', measure: 'area', note: 'z' },
    );
    const draft = state.draft.value;
    const where = (column: ArmColumn, arm: number, measure: number) =>
      placeOf(draft, resultAt(draft, arm, measure), column).of;
    expect(where('year', 0, 0)).toBe('study');
    expect(where('exercise', 1, 0)).toBe('study');
    expect(where('age_mean_years', 1, 1)).toBe('arm');
    expect(where('n', 1, 1)).toBe('result');
    expect(where('note', 0, 0)).toBe('measure');
    expect(where('note', 0, 1)).toBe('result');
    expect([draft.arms.length, draft.measures.length]).toEqual([2, 2]);
  });

  it.each([
    ['the design', 'parallel', ['a', 'b'], true],
    ['the design', 'within-person', ['a', 'a'], true],
    ['the curator', 'parallel', ['a', 'a'], false],
    ['the curator', 'within-person', ['', ''], false],
  ])('has %s say who is the same people where a %s study has the cohorts %s', (_who, design, cohorts, byDesign) => {
    const state = formWith(...cohorts.map((cohort, i) => ({ design, cohort, arm: `arm ${i}` })));
    expect(state.draft.value.peopleByDesign).toBe(byDesign);
    expect(state.reading.value.rows.map(({ cells }) => cells.cohort)).toEqual(cohorts);
  });

  it('that is in the form already is put in hand as it stands there', () => {
    const state = formWith({});
    state.enter({ of: 'study', column: 'year' }, '2013');
    const { id } = state.draft.value;
    state.startNext();
    state.takeUp(makeArms([{}]).map(toCells), FROM);
    expect([state.draft.value.id, state.draft.value.cells.year]).toEqual([id, '2013']);
    expect(state.curating.value.studies).toHaveLength(1);
  });

  it('keeps a row that stands twice twice', () => {
    const state = formWith({}, {});
    expect(state.rows.value).toEqual([rowOf({}), rowOf({})].map((row) => ({ ...row })));
    expect(state.reading.value.problems.map(({ kind }) => kind)).toEqual(['duplicate']);
  });
});
