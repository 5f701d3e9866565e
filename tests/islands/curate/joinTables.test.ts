/** New rows below a table: nothing is joined that the table's readers refuse, and nothing is lost unsaid. */
import { describe, expect, it } from 'vitest';
import { ARM_COLUMNS } from '../../../src/evidence/schema.ts';
import { readArms } from '../../../src/evidence/table.ts';
import { joinTables } from '../../../src/islands/curate/joinTables.ts';
import { type Cells, makeTable } from '../../support/tables.ts';

const OWN = {
  name: 'mine.csv',
  text: makeTable([{}, { arm: 'short of failure', attempted_failure: 'no', reserve_reps: '3' }]),
};
const NEW: Cells = { study: 'Wren 2020', year: '2020' };

function join(table: typeof OWN | null, rows: readonly Cells[]) {
  return joinTables(table, makeTable(rows), table?.name ?? 'new.csv');
}

describe('rows joined to a table', () => {
  it('stand below its rows, which stay as they were', () => {
    const joined = join(OWN, [NEW]);
    if (joined.kind !== 'joined') throw new Error(joined.reason);
    const values = (text: string) => readArms(text, '').arms;
    expect(values(joined.text)).toEqual([
      ...values(OWN.text),
      ...values(makeTable([NEW])).map((arm) => ({ ...arm, line: 4 })),
    ]);
    expect([joined.facts, joined.added, joined.unread]).toEqual([
      { name: 'mine.csv', studies: 2, rows: 3, demonstration: false },
      1,
      [],
    ]);
  });

  it('are the table where there was none', () => {
    const joined = join(null, [NEW]);
    if (joined.kind !== 'joined') throw new Error(joined.reason);
    expect([joined.facts.studies, joined.facts.rows, joined.facts.name]).toEqual([1, 1, 'new.csv']);
  });

  it('are read from another delimiter and order of columns too', () => {
    const [header, ...lines] = OWN.text.split('\n');
    const turned = [header, ...lines].map((row) => row.trim().split(',').reverse().join(';')).join('\n');
    const joined = joinTables({ name: 'turned.csv', text: turned }, makeTable([NEW]), 'turned.csv');
    expect(joined.kind === 'joined' && joined.facts.rows).toBe(3);
  });

  it('that repeat a measurement are refused, with their lines', () => {
    const refused = join(OWN, [{}, NEW]);
    expect(refused).toMatchObject({
      kind: 'refused',
      reason: 'the rows do not go with the table; the new rows are lines 4 to 5',
    });
    expect(refused.kind === 'refused' && refused.problems.map(({ line, kind }) => [line, kind])).toEqual([
      [4, 'duplicate'],
    ]);
  });

  it('are refused where they or the table have problems of their own, by name', () => {
    expect(join(OWN, [{ ...NEW, n: 'many' }])).toMatchObject({ kind: 'refused', reason: 'the new rows have problems' });
    const bad = { name: 'bad.csv', text: makeTable([{ n: 'many' }]) };
    const refused = join(bad, [NEW]);
    expect(refused).toMatchObject({ kind: 'refused', reason: 'bad.csv has problems of its own' });
    expect(refused.kind === 'refused' && refused.problems).toHaveLength(1);
  });

  it('leave every character of the table as it was, also in columns that are not read', () => {
    const [header, ...lines] = OWN.text.split('\n');
    const text = [`${header.trim()},shoe size`, ...lines.map((row) => `${row.trim()},"42"`)].join('\r\n');
    const joined = joinTables({ name: 'wide.csv', text }, makeTable([NEW]), 'wide.csv');
    if (joined.kind !== 'joined') throw new Error(joined.reason);
    expect(joined.text.startsWith(`${text}\r\nWren 2020,2020,`)).toBe(true);
    expect([joined.unread, joined.change]).toEqual([[], '1 row of the form was added']);
  });

  it('with columns that the table does not have write it anew, and name those that are not read and so would be lost', () => {
    const narrow = makeTable([{}], ['shoe size', ...Object.keys(ARM_COLUMNS).filter((name) => name !== 'weeks')]);
    const joined = joinTables({ name: 'narrow.csv', text: narrow }, makeTable([{ ...NEW, weeks: '8' }]), 'narrow.csv');
    if (joined.kind !== 'joined') throw new Error(joined.reason);
    expect(joined.unread).toEqual(['shoe size']);
    expect(joined.change).toMatch(/with columns that it did not have, so that all of it was written anew$/u);
    expect(readArms(joined.text, '').arms.map(({ weeks }) => weeks)).toEqual([null, 8]);
  });
});
