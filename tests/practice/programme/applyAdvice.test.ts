/**
 * Applying the advice. That every changed line is then as advised and safe, that nothing else changes and that a second
 * time changes nothing is held on programmes of chance; each reason for leaving a line on one made for it.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stateLeft, stateMove } from '../../../src/figures/adviceMoves.ts';
import { applyAdvice, makeMoveIn, makeMoves } from '../../../src/practice/programme/applyAdvice.ts';
import { writeForAthlete } from '../../../src/practice/programme/athleteText.ts';
import { fromCsv } from '../../../src/practice/programme/csvView.ts';
import { addLine, copyLine, deleteLine, type LineList, NO_LINES } from '../../../src/practice/programme/edit.ts';
import { type Cells, EDITOR_COLUMNS } from '../../../src/practice/programme/editorColumns.ts';
import type { CheckedLine } from '../../../src/practice/programme/line.ts';
import { reportLines, resolveBegun } from '../../../src/practice/programme/lineReports.ts';
import { reportProgramme } from '../../../src/practice/programme/report.ts';
import { TOO_MANY } from '../../../src/practice/tellGuarded.ts';
import { analysis, exampleWeek, exercises, regatta } from './shipped.ts';

const listOf = (...lines: readonly Partial<Cells>[]) =>
  lines.reduce<LineList>(
    (list, cells) => addLine(list, list.lines.length, { day: 'Monday', sets: '3', ...cells }),
    NO_LINES,
  );

/** Lines that could be checked, by id, as a page has them. */
function check(list: LineList): ReadonlyMap<number, CheckedLine> {
  const resolved = resolveBegun(list, exercises);
  const { first } = reportProgramme(analysis, { first: resolved.text, second: null, exercises, calendar: regatta });
  const { byId } = reportLines(first, resolved);
  return new Map(
    [...byId].flatMap(([id, { checked, problems }]) =>
      checked && problems.length === 0 ? [[id, checked] as const] : [],
    ),
  );
}
const apply = (list: LineList, only: number | null = null) => applyAdvice(list, exercises, check(list), only);
const example = fromCsv(exampleWeek, 'week', NO_LINES).list ?? NO_LINES;

const line: fc.Arbitrary<Partial<Cells>> = fc.record({
  exercise: fc.constantFrom(
    'barbell back squat',
    'squats',
    'bench press',
    'leg press',
    'arm curl',
    'seated row',
    'sled drag',
    '',
  ),
  repetitions: fc.oneof(fc.integer({ min: 1, max: 40 }).map(String), fc.constantFrom('6-8', '', 'many', '150')),
  load: fc.oneof(fc.integer({ min: 5, max: 100 }).map(String), fc.constantFrom('72,5', '80 %', '')),
  possible: fc.oneof({ weight: 3, arbitrary: fc.constant('') }, fc.integer({ min: 3, max: 40 }).map(String)),
  reserve: fc.oneof(fc.integer({ min: 0, max: 30 }).map(String), fc.constantFrom('', '0.6', '2.5', '1-2')),
  company: fc.constantFrom('', 'alone', 'spotter', 'safety arms'),
});

describe('Applying the advice', () => {
  it('makes every line that it changes as advised and safe, changes nothing else, and nothing a second time', () => {
    let moved = 0;
    fc.assert(
      fc.property(fc.array(line, { maxLength: 6 }), (cells) => {
        const before = listOf(...cells);
        const { moves, left, unchecked, asAdvised } = apply(before);
        const after = makeMoves(before, moves);
        const checked = check(after);
        const changed = new Map(moves.map((move) => [move.id, move]));
        moved += moves.length;
        for (const [i, one] of after.lines.entries()) {
          const move = changed.get(one.id);
          if (!move) {
            expect(one).toBe(before.lines[i]);
            continue;
          }
          expect(checked.get(one.id)).toMatchObject({ against: 'inside', unsafe: false });
          for (const column of EDITOR_COLUMNS.filter((name) => name !== 'repetitions' && name !== 'reserve'))
            expect(one.cells[column]).toBe(before.lines[i].cells[column]);
          // A whole total stays; of another its whole part.
          const { repetitions, reserve } = move.checked.line;
          expect(move.repetitions + move.reserve).toBe(Math.floor(repetitions + reserve + 1e-9));
        }
        const again = apply(after);
        expect(again.moves).toEqual([]);
        expect(makeMoves(after, again.moves)).toBe(after);
        const begun = before.lines.filter(({ cells: own }) => Object.values(own).some((text, j) => text && j > 1));
        expect(moves.length + left.length + unchecked.length + asAdvised).toBeLessThanOrEqual(begun.length);
        for (const { id, checked: one } of left) {
          expect(changed.has(id)).toBe(false);
          expect(one.against !== 'inside' || one.unsafe).toBe(true);
        }
      }),
      { numRuns: 600, seed: 17 },
    );
    expect(moved).toBeGreaterThan(150);
  });

  it('makes the worked example safe, and says each change with its reason', () => {
    const { moves, left } = apply(example);
    const squat = moves.find(({ checked }) => checked.unsafe);
    expect(squat?.checked.line).toMatchObject({ day: 5, repetitions: 9, reserve: 0 });
    expect(squat && stateMove(squat)).toMatch(
      /^\d in reserve instead of 0, \d repetitions instead of 9 at the same load: done and left are 9 together, as before\. Less than 1 in reserve alone under a load that can pin was not safe\.$/u,
    );
    expect([...check(makeMoves(example, moves)).values()].filter(({ unsafe }) => unsafe)).toEqual([]);
    expect(left).toEqual([]);
  });

  it('names a set alone under a load that can pin where no reserve makes it safe', () => {
    const list = listOf({ exercise: 'squat', repetitions: '1', load: '95', reserve: '0', company: 'alone' });
    const { moves, left } = apply(list);
    expect(moves).toEqual([]);
    expect(left).toMatchObject([{ id: 1, why: 'no repetition', checked: { unsafe: true } }]);
    expect(stateLeft(left[0])).toMatch(
      /^Not safe as written, and left so\. .* Take a lighter load\. Or set safety arms/u,
    );
    const atMost = apply(listOf({ exercise: 'squat', repetitions: '1', load: '100', reserve: '0', company: 'alone' }));
    expect(atMost.left).toMatchObject([{ why: 'no advice', checked: { unsafe: true } }]);
    expect(stateLeft(atMost.left[0])).toMatch(
      /^Not safe .* about 1\.0 repetitions .* Take a lighter load, or set safety/u,
    );
  });

  it('names a line for which there is no advice, with the reason', () => {
    const list = listOf({ exercise: 'squat', repetitions: '8', load: '75', reserve: '0', company: 'alone' });
    const sentence = 'This evidence gives no number to follow at this load.';
    const known = [...check(list)].map(
      ([id, one]) => [id, { ...one, advised: { ...one.advised, reserve: null, sentence } }] as const,
    );
    const { moves, left } = applyAdvice(list, exercises, new Map(known));
    expect([moves, left.map(stateLeft)]).toEqual([[], [`Not safe as written, and left so. ${sentence}`]]);
  });

  it('leaves repetitions that do not fit the load, and says the question', () => {
    const [found] = apply(
      listOf({ exercise: 'squat', repetitions: '30', load: '80', reserve: '12', company: 'spotter' }),
    ).left;
    expect(found).toMatchObject({ why: 'questioned' });
    expect(stateLeft(found)).toMatch(/^Is the set right: 30 repetitions with 12 left at 80/u);
  });

  it('leaves a set of which nothing would be done, and one of more than are possible', () => {
    const few = apply(listOf({ exercise: 'arm curl', repetitions: '1', load: '75', reserve: '0' }));
    expect(few.left).toMatchObject([{ why: 'no repetition' }]);
    expect(stateLeft(few.left[0])).toMatch(
      /are 1 together: with \d in reserve none would be done\. Take a lighter load/u,
    );
    const many = apply(listOf({ exercise: 'arm curl', repetitions: '149', load: '20', reserve: '10' }));
    expect(many.left).toMatchObject([{ why: 'too many' }]);
  });

  it('leaves what does not fit the repetitions that the line itself says are possible, and nobody is told to do it', () => {
    for (const reserve of ['2', '5']) {
      const list = listOf({ exercise: 'push-up', repetitions: '12', load: '', possible: '12', reserve });
      const { left, asAdvised } = apply(list);
      expect([left.length, asAdvised]).toEqual([1, 0]);
      expect(stateLeft(left[0])).toBe(
        `Is the set right: 12 repetitions with ${reserve} left at 74\u00a0% of 1RM? Expected: about the 12 possible together, as the line gives them. Look at repetitions, reserve and those possible.`,
      );
      const checked = left[0].checked;
      const told = writeForAthlete([{ checked, cells: list.lines[0].cells }], { week: null, event: null });
      expect(told).toContain(TOO_MANY);
      expect(told).not.toMatch(/End the set when/u);
    }
  });

  it('counts what could not be checked, and leaves a line that says nothing alone', () => {
    const found = apply(
      listOf({ exercise: 'squat' }, { sets: '' }, { exercise: 'sled drag', repetitions: '8', load: '75' }),
    );
    expect(found).toMatchObject({ moves: [], left: [], unchecked: [1, 3] });
  });

  it('of one line goes to the line of version two that came of it, or of the same set, or to one of its own', () => {
    const id = example.lines.findIndex(({ cells }) => cells.day === 'Friday') + 1;
    const from = example.lines[id - 1];
    const { moves, left, unchecked, asAdvised } = apply(example, id);
    expect([moves.length, left.length, unchecked.length, asAdvised]).toEqual([1, 0, 0, 0]);
    const into = (version: LineList) => makeMoveIn(version, from, moves[0]);
    const wanted = { repetitions: String(moves[0].repetitions), reserve: String(moves[0].reserve) };
    expect(into(example)).toEqual(makeMoves(example, moves));
    const moved = deleteLine(copyLine(example, id), id);
    expect(into(moved).lines).toHaveLength(example.lines.length);
    expect(into(moved).lines.find(({ id: own }) => own === example.nextId)?.cells).toMatchObject(wanted);
    const other = listOf({ exercise: 'arm curl' });
    expect(into(other).lines.at(-1)?.cells).toEqual({ ...from.cells, ...wanted });
  });
});
