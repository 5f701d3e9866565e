/**
 * What changed between two tables of rows. Proven: on edited tables that the old rows with the changes
 * applied are the new rows; each kind of change on a case of its own; what cannot be told apart is said.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ARM_COLUMNS, type Arm, type ArmColumn } from '../../src/evidence/schema.ts';
import { readArms } from '../../src/evidence/table.ts';
import { compareRows } from '../../src/model/rowChanges.ts';
import { makeArms } from '../support/tables.ts';

const { arms: shipped } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const columns = Object.keys(ARM_COLUMNS) as ArmColumn[];
const contentOf = (arm: Arm) => JSON.stringify(columns.map((column) => arm[column]));
const sorted = (arms: readonly Arm[]) => arms.map(contentOf).sort();

const two = makeArms([{}, { arm: 'b', attempted_failure: 'no', reserve_reps: '3' }]);
const [first, second] = two;

describe('two tables with the same rows', () => {
  it('differ in nothing, whatever the order of rows and the lines', () => {
    const turned = [...shipped].reverse().map((arm, i) => ({ ...arm, line: i + 40 }));
    const changes = compareRows(shipped, turned);
    expect(changes).toMatchObject({ added: [], removed: [], renamed: [], changed: [] });
    expect(changes.unchanged).toHaveLength(48);
    expect(changes.unchanged).toEqual([...changes.unchanged].sort());
  });

  it('differ in nothing where both are empty', () => {
    expect(compareRows([], [])).toEqual({ added: [], removed: [], renamed: [], changed: [], unchanged: [] });
  });
});

describe('a changed table', () => {
  const edit = fc.record({
    place: fc.nat(shipped.length - 1),
    kind: fc.constantFrom('cell', 'drop', 'add', 'arm', 'drop study', 'rename study'),
    value: fc.integer({ min: 1, max: 9 }),
  });

  it('is the old one with the changes applied, and every row is told once', () => {
    const seen = { changed: 0, added: 0, removed: 0, renamed: 0 };
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 8 }), (edits) => {
        let after: Arm[] = [...shipped];
        for (const { place, kind, value } of edits) {
          const arm = shipped[place];
          const change = (to: Partial<Arm>) => after.map((one) => (one.line === arm.line ? { ...one, ...to } : one));
          if (kind === 'cell') after = change({ baseline_mean: value, note: `note ${value}` });
          if (kind === 'arm') after = change({ arm: `arm ${value}` });
          if (kind === 'drop') after = after.filter(({ line }) => line !== arm.line);
          if (kind === 'drop study') after = after.filter(({ study }) => study !== arm.study);
          if (kind === 'add') after.push({ ...arm, measure: `measure ${after.length}`, line: 1000 + after.length });
          if (kind === 'rename study') {
            after = after.map((one) => (one.study === arm.study ? { ...one, study: `${arm.study} b` } : one));
          }
        }
        const changes = compareRows(shipped, after);
        const newNames = new Map(changes.renamed.map((pair) => [pair.before, pair.after]));
        const cellsOf = new Map(changes.changed.flatMap(({ changed }) => changed.map((row) => [row.before.line, row])));
        const gone = new Set(changes.changed.flatMap(({ removed }) => removed.map(({ line }) => line)));
        const came = new Set(changes.changed.flatMap(({ added }) => added.map(({ line }) => line)));
        const kept = shipped
          .filter(({ line, study }) => !gone.has(line) && !changes.removed.includes(study))
          .map((arm) => {
            const cells = cellsOf.get(arm.line)?.cells ?? [];
            for (const { column, before } of cells) expect(before).toBe(arm[column]);
            return {
              ...arm,
              ...Object.fromEntries(cells.map((cell) => [cell.column, cell.after])),
              study: newNames.get(arm.study) ?? arm.study,
            };
          });
        const added = after.filter(({ line, study }) => came.has(line) || changes.added.includes(study));
        expect(sorted([...kept, ...added])).toEqual(sorted(after));
        seen.changed += cellsOf.size;
        seen.added += came.size;
        seen.removed += gone.size;
        seen.renamed += newNames.size;
      }),
      { seed: 21, numRuns: 150 },
    );
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(20);
  });

  it('names a changed cell with both values and both lines', () => {
    const after = [first, { ...second, followup_mean: 44, attempted_failure: null, line: 9 }];
    expect(compareRows(two, after).changed).toMatchObject([
      {
        study: 'Plover 2012',
        unchanged: 1,
        added: [],
        removed: [],
        doubled: [],
        changed: [
          {
            before: { arm: 'b', line: 3 },
            after: { arm: 'b', line: 9 },
            cells: [
              { column: 'attempted_failure', before: false, after: null },
              { column: 'followup_mean', before: 43, after: 44 },
            ],
          },
        ],
      },
    ]);
  });

  it.each(['arm', 'exercise', 'muscle', 'measure', 'unit'] as const)(
    'takes a row with another %s and everything else the same for the same row',
    (column) => {
      const [study] = compareRows(two, [first, { ...second, [column]: 'other' }]).changed;
      expect(study.changed.map(({ cells }) => cells)).toEqual([[{ column, before: second[column], after: 'other' }]]);
      expect([study.added, study.removed]).toEqual([[], []]);
    },
  );

  it('takes a row with another arm and another mean for one removed and one added', () => {
    const [study] = compareRows(two, [first, { ...second, arm: 'c', followup_mean: 44 }]).changed;
    expect([study.removed.map(({ arm }) => arm), study.added.map(({ arm }) => arm), study.changed]).toEqual([
      ['b'],
      ['c'],
      [],
    ]);
  });

  it('finds a study under another name, and not where it has changed too', () => {
    const renamed = two.map((arm) => ({ ...arm, study: 'Plover 2012a' }));
    expect(compareRows(two, renamed)).toMatchObject({
      renamed: [{ before: 'Plover 2012', after: 'Plover 2012a' }],
      added: [],
      removed: [],
    });
    expect(compareRows(two, [renamed[0]])).toMatchObject({
      renamed: [],
      added: ['Plover 2012a'],
      removed: ['Plover 2012'],
    });
  });

  it('says which rows are doubled, where rows of a table that was not validated share their identity', () => {
    const doubled = [first, { ...first, n: 20, line: 4 }];
    const [study] = compareRows(doubled, [{ ...first, n: 30 }]).changed;
    expect([study.removed.length, study.added.length, study.changed.length]).toEqual([2, 1, 0]);
    expect(study.doubled.map(({ line }) => line)).toEqual([2, 4]);
    // The one that is the same in every column is known all the same.
    expect(compareRows(doubled, [first]).changed[0]).toMatchObject({ unchanged: 1, removed: [{ line: 4 }] });
  });

  it.each(['__proto__', 'constructor'])('may have a study named %s', (study) => {
    const after = [...two, { ...first, study }];
    expect(compareRows(two, after)).toMatchObject({ added: [study], changed: [] });
    expect(compareRows(after, two)).toMatchObject({ removed: [study], changed: [] });
  });
});
