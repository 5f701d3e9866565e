/** What the form kept in the browser is read again as it was, taken over from the form before it, or refused with the reason. */
import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { ARM_NAMES, fill, isBlank } from '../../../src/islands/curate/cells.ts';
import { createCurating } from '../../../src/islands/curate/curate.state.ts';
import { isBlankStudy, makeRows } from '../../../src/islands/curate/draftRows.ts';
import { NOTHING_CURATED, readCurating, writeCurating } from '../../../src/islands/curate/savedForm.ts';
import { CELLS } from '../../support/awkwardTexts.ts';
import { pretendBrowser } from '../pretendBrowser.ts';
import { formWith, rowOf, type } from './formWith.ts';

const STORE = 'shy-of-failure curating';
const line = fc
  .oneof(fc.constantFrom(...CELLS), fc.string({ unit: 'grapheme' }))
  .map((text) => text.replace(/[\r\n]/gu, '').trim());
const cells = fc
  .array(line, { minLength: ARM_NAMES.length, maxLength: ARM_NAMES.length })
  .map((texts) => fill((name) => texts[ARM_NAMES.indexOf(name)]));

afterEach(() => vi.unstubAllGlobals());

describe('what was kept', () => {
  it('is read as it was, whatever stands in it', () => {
    fc.assert(
      fc.property(fc.array(cells, { minLength: 1, maxLength: 3 }), fc.boolean(), (rows, isExplained) => {
        const state = formWith(...rows);
        state.explain(isExplained);
        const kept = state.curating.value;
        expect(readCurating(writeCurating(kept))).toEqual({ curating: kept, takenOver: 0, problem: null });
      }),
      { seed: 6, numRuns: 50 },
    );
  });

  it('is taken up at the next visit, and every change of it is kept', () => {
    const state = formWith({});
    pretendBrowser('', { [STORE]: writeCurating(state.curating.value) });
    const next = createCurating();
    const end = next.connect();
    expect(next.csvOf(true)).toBe(state.csvOf(true));
    type(next, { year: '2013' });
    end();
    expect(readCurating(localStorage.getItem(STORE) ?? '').curating).toEqual(next.curating.value);
  });

  it('is nothing in a browser that keeps nothing, which is said', () => {
    pretendBrowser('', 'forbidden');
    const state = createCurating();
    state.connect();
    expect(state.kept.isKept.value).toBe(false);
  });

  it.each([
    ['no JSON', '{', /expected JSON/u],
    ['a number', '3', /the whole/u],
    [
      'a line break in a cell',
      JSON.stringify({ ...NOTHING_CURATED, studies: [{ ...NOTHING_CURATED.studies[0], cells: { study: 'a\nb' } }] }),
      /studies\.0\.cells\.study/u,
    ],
    [
      'a study in hand that is not there',
      JSON.stringify({ ...NOTHING_CURATED, inHand: 4 }),
      /inHand: expected a study/u,
    ],
    ['an id that is free and taken', JSON.stringify({ ...NOTHING_CURATED, nextId: 2 }), /nextId: expected an id/u],
    [
      'an unknown kind of number',
      JSON.stringify({
        ...NOTHING_CURATED,
        studies: [
          {
            ...NOTHING_CURATED.studies[0],
            measures: [{ ...NOTHING_CURATED.studies[0].measures[0], reports: ['mode'] }],
          },
        ],
      }),
      /reports\.0/u,
    ],
  ])('as %s is refused with the place', (_what, text, problem) => {
    const read = readCurating(text);
    expect(read.curating).toBeNull();
    expect(read.problem).toMatch(problem);
  });
});

describe('what the form before this one kept, row by row', () => {
  /** As that form wrote it. */
  const oldText = (old: object) =>
    JSON.stringify({ draft: fill(() => ''), at: null, reports: ['before'], reserve: {}, isExplained: true, ...old });
  const [short, heron] = [{ arm: 'short' }, { study: 'Heron 2018', year: '2018' }].map(rowOf);

  it('becomes studies with the same rows, and the one in its form is in hand', () => {
    const { note: _, ...draft } = { ...heron, arm: 'in the form', baseline_mean: '' };
    const { curating, takenOver } = readCurating(oldText({ rows: [rowOf({}), heron, short], draft }));
    if (!curating) throw new Error('it was refused');
    expect(takenOver).toBe(4);
    expect(curating.studies.flatMap(makeRows).map((row) => row.cells)).toEqual([
      rowOf({}),
      short,
      heron,
      { ...draft, note: '' },
    ]);
    expect(curating.studies.find(({ id }) => id === curating.inHand)?.cells.study).toBe('Heron 2018');
  });

  it('has a row that was being corrected once, as it was being corrected', () => {
    const { curating } = readCurating(oldText({ rows: [rowOf({}), short], draft: { ...short, weeks: '9' }, at: 1 }));
    expect(curating?.studies.flatMap(makeRows).map(({ cells: { arm, weeks } }) => [arm, weeks])).toEqual([
      ['to failure', ''],
      ['short', '9'],
    ]);
  });

  it('keeps the facts of a row that had no number yet as an arm', () => {
    const facts = fill((name) => (name === 'study' || name === 'arm' ? 'named' : ''));
    const { curating } = readCurating(oldText({ rows: [], draft: facts }));
    const [study] = curating?.studies ?? [];
    expect([study.cells.study, study.arms[0].cells.arm]).toEqual(['named', 'named']);
    expect(isBlankStudy(study)).toBe(false);
  });

  it('is nothing where that form was empty', () => {
    const { curating, takenOver } = readCurating(oldText({ rows: [] }));
    expect([curating, takenOver]).toEqual([NOTHING_CURATED, 0]);
  });

  it('loses no text, whatever stood in its rows', () => {
    fc.assert(
      fc.property(fc.array(cells, { maxLength: 4 }), (rows) => {
        const { curating } = readCurating(oldText({ rows }));
        const made = (curating?.studies ?? []).flatMap(makeRows).map((row) => row.cells);
        const sorted = (all: readonly object[]) => all.map((row) => JSON.stringify(row)).sort();
        const withNumbers = rows.filter((row) => !isBlank(row));
        expect(sorted(made)).toEqual(sorted(withNumbers));
      }),
      { seed: 7, numRuns: 50 },
    );
  });

  it('is said to be taken over, and stays as it was until something is changed', () => {
    pretendBrowser('', { [STORE]: oldText({ rows: [rowOf({}), heron] }) });
    const state = createCurating();
    const end = state.connect();
    expect(state.kept.takenOver.value).toBe('What you had entered row by row was taken over: 2 rows as 2 studies.');
    expect(localStorage.getItem(STORE)).toBe(oldText({ rows: [rowOf({}), heron] }));
    type(state, { weeks: '8' });
    end();
    const next = createCurating();
    next.connect();
    expect([next.kept.takenOver.value, next.csvOf(true)]).toEqual(['', state.csvOf(true)]);
  });
});
