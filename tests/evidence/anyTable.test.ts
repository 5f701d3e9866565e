/** Right tables in every dress read the same, and no text at all makes the reading crash. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ARM_COLUMNS } from '../../src/evidence/schema.ts';
import { readArms } from '../../src/evidence/table.ts';
import { makeTable } from '../support/tables.ts';

const all = Object.keys(ARM_COLUMNS);

describe('a table in another dress', () => {
  const { arms } = readArms(makeTable([{}]), 'right.csv');

  it.each([
    ['a byte-order mark', `\ufeff${makeTable([{}])}`],
    ['semicolons', makeTable([{}]).replaceAll(',', ';')],
    ['tabs', makeTable([{}]).replaceAll(',', '\t')],
    ['line feeds only', makeTable([{}]).replaceAll('\r\n', '\n')],
    ['carriage returns only', makeTable([{}]).replaceAll('\r\n', '\r')],
    ['blank lines at its end', `${makeTable([{}])}\r\n\r\n`],
    ['spaces around a cell', makeTable([{ study: '  Plover 2012 ' }])],
    ['columns in another order', makeTable([{}], [...all].reverse())],
  ])('with %s reads the same', (_dress, text) => {
    const read = readArms(text, 'right.csv');
    expect(read.problems).toEqual([]);
    expect(read.arms).toEqual(arms);
  });

  it('with a column of its own is read, with a warning that names the column', () => {
    const { problems, warnings } = readArms(makeTable([{}], [...all, 'weather']), 'right.csv');
    expect(problems).toEqual([]);
    expect(warnings.map(({ column, line }) => [column, line])).toEqual([['weather', 1]]);
  });
});

describe('any text at all', () => {
  it('is read without an exception, into rows or problems', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (text) => {
        const { arms, problems } = readArms(text, 'any.csv');
        expect(arms.length + problems.length).toBeGreaterThan(0);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('in place of any part of a valid table is read without an exception', () => {
    const table = makeTable([{}, { arm: 'b', attempted_failure: 'no', reserve_reps: '3' }]);
    fc.assert(
      fc.property(
        fc.nat(table.length),
        fc.nat(40),
        fc.string({ unit: 'binary', maxLength: 20 }),
        (from, count, piece) => {
          const { arms, problems } = readArms(table.slice(0, from) + piece + table.slice(from + count), 'any.csv');
          expect(arms.length + problems.length).toBeGreaterThan(0);
        },
      ),
      { seed: 2, numRuns: 500 },
    );
  });
});
