/**
 * One week in many notations: each reads to the same programme, or is refused with a message that names the
 * fix; nothing is changed or dropped silently. Then random programmes in random notations.
 */
import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../../src/evidence/problem.ts';
import { LINES } from './notations/lines.ts';
import { REFUSED } from './notations/refused.ts';
import { TABLES } from './notations/tables.ts';
import { readWhole } from './written.ts';

const WEEK = [
  { day: 1, exercise: 'barbell back squat', sets: 4, repetitions: 6, load: 80, reserve: 2, company: 'spotter' },
  { day: 1, exercise: 'Romanian deadlift', sets: 3, repetitions: 8, load: 72.5, reserve: 3, company: 'alone' },
  { day: 4, exercise: 'bench press', sets: 3, repetitions: 10, load: 70, reserve: 2, company: 'spotter' },
  { day: 4, exercise: 'pulldown', sets: 3, repetitions: 12, load: 65, reserve: 2, company: 'alone' },
];

/** Words and numbers of a text that nothing that was read, noted or asked mentions. */
function findDropped(text: string) {
  const { written } = readWhole(text);
  const said = [
    ...written.lines.flatMap((line) => [
      line.text,
      ...line.notes,
      ...line.unread.map(({ text: unread }) => unread),
      ...[
        line.day,
        line.exercise,
        line.sets,
        line.repetitions,
        line.load,
        line.possible,
        line.reserve,
        line.company,
      ].map((reading) => reading?.readFrom.text ?? ''),
    ]),
    ...written.notRead.map(({ value }) => value),
    ...written.notes.map(({ text: note }) => note),
  ].join(' ');
  return (text.match(/[\p{L}\p{N}]+/gu) ?? []).filter((word) => !said.includes(word));
}

describe('a week written', () => {
  it('in at least 60 ways is tried', () => {
    const count = [TABLES, LINES, REFUSED].map((all) => Object.keys(all).length);
    expect(count[0] + count[1] + count[2]).toBeGreaterThanOrEqual(85);
  });

  it.each(Object.entries({ ...TABLES, ...LINES }))('with %s is the same programme', (_, text) => {
    const { written, programme, sets } = readWhole(text);
    expect(written.notRead.map(formatProblem)).toEqual([]);
    expect(programme.problems.map(formatProblem)).toEqual([]);
    expect(sets).toEqual(WEEK);
  });

  it.each(Object.entries(LINES))('with %s has every word read, noted or asked about', (_, text) => {
    expect(findDropped(text)).toEqual([]);
  });

  it.each(Object.entries(REFUSED))('with %s is refused and told the fix', (_, [text, fix]) => {
    const { written } = readWhole(text);
    expect(written.notRead.length).toBeGreaterThan(0);
    expect(written.notRead.map(formatProblem).join('\n')).toMatch(fix);
    for (const line of written.lines) {
      const isAsked = written.notRead.some((one) => one.line === line.line);
      const known = WEEK.find(({ exercise }) => exercise === line.exercise?.value);
      if (isAsked || !known || !text.includes('\nThu\n')) continue;
      expect(line).toMatchObject({
        sets: { value: { most: known.sets } },
        repetitions: { value: { most: known.repetitions } },
        load: { value: { most: known.load, unit: '%' } },
        reserve: { value: { most: known.reserve } },
      });
    }
  });

  it('and refused is not checked as if it were another', () => {
    for (const [name, [text]] of Object.entries(REFUSED)) {
      const { programme, written, sets } = readWhole(text);
      const isStopped = programme.problems.length > 0 || programme.asked.length > 0;
      const isWhole = sets.every((one) => WEEK.some((set) => JSON.stringify(set) === JSON.stringify(one)));
      expect(isStopped || isWhole || written.notRead.some(({ kind }) => kind !== 'unusual'), name).toBe(true);
    }
  });
});
