/** What the form kept in the browser is read again as it was, or refused with the reason. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ARM_NAMES, EMPTY_CELLS, fill } from '../../../src/islands/curate/cells.ts';
import { type Curating, NOTHING_CURATED, readCurating, writeCurating } from '../../../src/islands/curate/savedForm.ts';
import { CELLS } from '../../support/awkwardTexts.ts';

const line = fc
  .oneof(fc.constantFrom(...CELLS), fc.string({ unit: 'grapheme' }))
  .map((text) => text.replace(/[\r\n]/gu, ''));
const cells = fc
  .array(line, { minLength: ARM_NAMES.length, maxLength: ARM_NAMES.length })
  .map((texts) => fill((name) => texts[ARM_NAMES.indexOf(name)]));

describe('what was kept', () => {
  it('is read as it was, whatever stands in the cells', () => {
    fc.assert(
      fc.property(fc.array(cells, { maxLength: 3 }), cells, fc.boolean(), (rows, draft, isExplained) => {
        const kept: Curating = { ...NOTHING_CURATED, rows, draft, at: rows.length > 0 ? 0 : null, isExplained };
        expect(readCurating(writeCurating(kept))).toEqual({ curating: kept, problem: null });
      }),
      { seed: 6, numRuns: 50 },
    );
  });

  it('by an earlier version without a column has the column empty', () => {
    const { note: _, ...older } = { ...EMPTY_CELLS, study: 'Plover 2012' };
    const { curating } = readCurating(JSON.stringify({ ...NOTHING_CURATED, draft: older }));
    expect(curating?.draft).toEqual({ ...EMPTY_CELLS, study: 'Plover 2012' });
  });

  it.each([
    ['no JSON', '{', /expected JSON/u],
    ['a number', '3', /the whole/u],
    ['a line break in a cell', JSON.stringify({ ...NOTHING_CURATED, draft: { study: 'a\nb' } }), /draft\.study/u],
    [
      'a row in hand that is not there',
      JSON.stringify({ ...NOTHING_CURATED, at: 0 }),
      /at: expected a row that is there/u,
    ],
    ['an unknown kind of number', JSON.stringify({ ...NOTHING_CURATED, reports: ['median'] }), /reports\.0/u],
  ])('as %s is refused with the place', (_what, text, problem) => {
    const read = readCurating(text);
    expect(read.curating).toBeNull();
    expect(read.problem).toMatch(problem);
  });
});
