/** Measurements halfway through a training, beside those of its end: kept, told apart from slips, and out of every fit. */
import { describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { compareBeyondFailure } from '../../src/model/beyondFailure.ts';
import { compareRows } from '../../src/model/rowChanges.ts';
import { selectRows } from '../../src/model/selection.ts';
import { defaultSettings } from '../../src/model/settings.ts';
import { type Cells, makeArms, makeTable } from '../support/tables.ts';

/** Two measures after 5 and after 10 weeks; the end of the first stands before its middle. */
const ROWS: readonly Cells[] = [
  { weeks: '10', followup_mean: '47' },
  { weeks: '5', followup_mean: '43' },
  { weeks: '5', measure: 'cross-sectional area', unit: 'cm²' },
  { weeks: '10', measure: 'cross-sectional area', unit: 'cm²' },
];

const problemsOf = (rows: readonly Cells[]) =>
  readArms(makeTable(rows), 'test.csv').problems.map(({ line, column, expected }) => ({ line, column, expected }));

describe('a measurement halfway', () => {
  it('names the row of the end, wherever it stands, and the end names none', () => {
    expect(makeArms(ROWS).map(({ line, later }) => [line, later])).toEqual([
      [2, undefined],
      [3, { line: 2, weeks: 10 }],
      [4, { line: 5, weeks: 10 }],
      [5, undefined],
    ]);
  });

  it('is left out of the dose-response with both times', () => {
    const { effects, excluded } = selectRows(makeArms(ROWS), defaultSettings);
    expect(effects.map(({ arm }) => arm.line).toSorted()).toEqual([2, 5]);
    expect(excluded).toEqual(
      [
        [3, 2],
        [4, 5],
      ].map(([line, end]) => ({
        line,
        reason: `was measured after 5 weeks; line ${end} has the same after 10, the end of the training`,
      })),
    );
  });

  it('is left out of the comparison of work beyond failure', () => {
    const arms = makeArms([...ROWS, ...ROWS.map((row) => ({ ...row, arm: 'drops', beyond_failure: 'load-drops' }))]);
    const drops = compareBeyondFailure(arms, defaultSettings).find(({ kind }) => kind === 'load-drops');
    expect(drops?.rows).toBe(4);
  });

  it('is found again where a cell of it was corrected, and where its week was', () => {
    const changed = (at: number, cells: Cells) => {
      const after = makeArms(ROWS.map((row, i) => (i === at ? { ...row, ...cells } : row)));
      return compareRows(makeArms(ROWS), after).changed.flatMap((study) => [
        ...study.changed.flatMap(({ cells }) => cells),
        ...study.added,
        ...study.removed,
      ]);
    };
    expect(changed(1, { followup_mean: '44' })).toEqual([{ column: 'followup_mean', before: 43, after: 44 }]);
    expect(changed(1, { weeks: '6' })).toEqual([{ column: 'weeks', before: 5, after: 6 }]);
  });
});

describe('rows that differ in weeks and are no measurement halfway', () => {
  it('contradict one another where the ends of two measures differ', () => {
    expect(problemsOf([{ weeks: '10' }, { weeks: '12', measure: 'cross-sectional area' }])).toEqual([
      { line: 3, column: 'weeks', expected: '10, as line 2 says of arm to failure of Plover 2012' },
    ]);
  });

  it('are the same row twice where the weeks are the same, and contradict where one has none', () => {
    expect(problemsOf([ROWS[0], ROWS[1], ROWS[1]]).map(({ line, expected }) => [line, expected])).toEqual([
      [4, 'a measurement that line 3 does not have already'],
    ]);
    expect(problemsOf([{ weeks: '10' }, { weeks: '' }])).toMatchObject([{ line: 3, column: 'weeks' }]);
  });

  it('are times of one session where the outcome is fatigue', () => {
    const [first, second] = makeArms(
      ['24', '48'].map((hours_after) => ({ outcome: 'fatigue', measure: 'jump height', hours_after })),
    );
    expect([first.later, second.later]).toEqual([undefined, undefined]);
  });
});
