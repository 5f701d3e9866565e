/** New rows below a table: nothing is joined that the table's readers refuse, and nothing is lost unsaid. */
import { describe, expect, it } from 'vitest';
import { ARM_COLUMNS } from '../../../src/evidence/schema.ts';
import { readArms } from '../../../src/evidence/table.ts';
import { joinTables, listStudies, takeStudy } from '../../../src/islands/curate/joinTables.ts';
import { readCells } from '../../../src/islands/curate/tableCells.ts';
import { type Cells, makeTable } from '../../support/tables.ts';
import { rowOf } from './formWith.ts';

const OWN = {
  name: 'mine.csv',
  text: makeTable([{}, { arm: 'short of failure', attempted_failure: 'no', reserve_reps: '3' }]),
};
const NEW: Cells = { study: 'Wren 2020', year: '2020' };

function join(table: typeof OWN | null, rows: readonly Cells[]) {
  return joinTables(table, below(rows), table?.name ?? 'new.csv');
}

function below(rows: readonly Cells[]) {
  return [{ replaces: null, rows: rows.map(rowOf) }];
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
    const joined = joinTables({ name: 'turned.csv', text: turned }, below([NEW]), 'turned.csv');
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
    const joined = joinTables({ name: 'wide.csv', text }, below([NEW]), 'wide.csv');
    if (joined.kind !== 'joined') throw new Error(joined.reason);
    expect(joined.text.startsWith(`${text}\r\nWren 2020,2020,`)).toBe(true);
    expect([joined.unread, joined.change]).toEqual([[], '1 row of the form was added']);
  });

  it('with columns that the table does not have write it anew, and name those that are not read and so would be lost', () => {
    const narrow = makeTable([{}], ['shoe size', ...Object.keys(ARM_COLUMNS).filter((name) => name !== 'weeks')]);
    const joined = joinTables({ name: 'narrow.csv', text: narrow }, below([{ ...NEW, weeks: '8' }]), 'narrow.csv');
    if (joined.kind !== 'joined') throw new Error(joined.reason);
    expect(joined.unread).toEqual(['shoe size']);
    expect(joined.change).toMatch(/with columns that it did not have, so that all of it was written anew$/u);
    expect(readArms(joined.text, '').arms.map(({ weeks }) => weeks)).toEqual([null, 8]);
  });
});

describe('a study taken from a table', () => {
  const text = makeTable([
    { baseline_mean: '40.00', study: 'Wren 2020' },
    { arm: 'short', attempted_failure: 'no', reserve_reps: '1–3' },
    { study: 'Wren 2020', arm: 'other' },
    {},
  ]);
  const table = { name: 'mine.csv', text };

  it('is chosen from those of the table and has its cells as they are printed there', () => {
    expect(listStudies(table)).toEqual([
      { study: 'Wren 2020', rows: 2 },
      { study: 'Plover 2012', rows: 2 },
    ]);
    expect(takeStudy(table, 'Wren 2020').map(({ baseline_mean: mean }) => mean)).toEqual(['40.00', '40']);
    expect(takeStudy(table, 'Plover 2012').map(({ reserve_reps: reserve }) => reserve)).toEqual(['1–3', '0']);
  });

  it('takes its own place there, row by row, and others are not touched', () => {
    const rows = takeStudy(table, 'Plover 2012').map((row) => ({ ...row, weeks: '8' }));
    const more = rowOf({ arm: 'a third', weeks: '8' });
    const put = [{ replaces: 'Plover 2012', rows: [...rows, more] }, ...below([{ study: 'Heron 2018', year: '2018' }])];
    const joined = joinTables(table, put, 'mine.csv');
    if (joined.kind !== 'joined') throw new Error(joined.reason);
    expect([joined.putBack, joined.added, joined.facts.rows]).toEqual([3, 1, 6]);
    const read = readCells(joined.text, 'mine.csv');
    expect(read.map(({ study, arm, weeks }) => [study, arm, weeks])).toEqual([
      ['Wren 2020', 'to failure', ''],
      ['Plover 2012', 'short', '8'],
      ['Wren 2020', 'other', ''],
      ['Plover 2012', 'to failure', '8'],
      ['Plover 2012', 'a third', '8'],
      ['Heron 2018', 'to failure', ''],
    ]);
    expect(read[0].baseline_mean).toBe('40.00');
  });

  it('with fewer rows leaves none of the others behind, and with another name goes where it stood', () => {
    const [first] = takeStudy(table, 'Wren 2020');
    const joined = joinTables(table, [{ replaces: 'Wren 2020', rows: [{ ...first, study: 'Wren 2021' }] }], 'mine.csv');
    if (joined.kind !== 'joined') throw new Error(joined.reason);
    expect(readCells(joined.text, '').map(({ study }) => study)).toEqual(['Wren 2021', 'Plover 2012', 'Plover 2012']);
  });

  it('that the table has no more comes below the others', () => {
    const joined = joinTables(
      table,
      [{ replaces: 'Heron 2018', rows: [rowOf({ study: 'Heron 2018', year: '2018' })] }],
      'x',
    );
    expect(joined).toMatchObject({ kind: 'joined', added: 1, putBack: 0 });
  });

  it('stays as it is where nothing was changed', () => {
    const whole = listStudies(table).map(({ study }) => ({ replaces: study, rows: takeStudy(table, study) }));
    const joined = joinTables(table, whole, 'mine.csv');
    expect(joined.kind === 'joined' && joined.text.trim().split('\n')).toEqual(text.split('\r\n'));
  });
});
