/** The message to an athlete: the coach’s own numbers and ranges, when to end a set, safety, and no statistics. */
import { describe, expect, it } from 'vitest';
import { ALWAYS } from '../../../src/practice/cautions.ts';
import {
  type AthleteLine,
  findToLookAt,
  sayTold,
  writeForAthlete,
} from '../../../src/practice/programme/athleteText.ts';
import { NO_LINES, replaceLines } from '../../../src/practice/programme/edit.ts';
import type { Cells } from '../../../src/practice/programme/editorColumns.ts';
import { resolveBegun } from '../../../src/practice/programme/lineReports.ts';
import { reportProgramme } from '../../../src/practice/programme/report.ts';
import { tellLifter } from '../../../src/practice/tellLifter.ts';
import { analysis, exercises, regatta } from './shipped.ts';

function linesOf(...all: readonly Partial<Cells>[]): readonly AthleteLine[] {
  const list = replaceLines(NO_LINES, all);
  const resolved = resolveBegun(list, exercises);
  const { first } = reportProgramme(analysis, { first: resolved.text, second: null, exercises, calendar: regatta });
  if (!first.check) throw new Error(JSON.stringify(first.problems));
  return first.check.lines.map((checked, i) => ({ checked, cells: list.lines[i].cells }));
}
const PRESS = {
  day: 'Mon',
  exercise: 'leg press',
  sets: '3',
  repetitions: '10',
  load: '70',
  reserve: '2',
  company: 'spotter',
};
const write = (...all: readonly Partial<Cells>[]) => writeForAthlete(linesOf(...all), { week: null, event: null });

describe('the message', () => {
  it('has the set, and when to end it in the words that lifters are told', () => {
    expect(write(PRESS)).toContain(
      `MONDAY\n- leg press: 3 × 10 at 70\u00a0% of 1RM, with a spotter. Leave 2 in reserve. ${tellLifter({ least: 2, most: 2 })}`,
    );
  });

  it('keeps ranges as the coach wrote them', () => {
    const text = write({ ...PRESS, repetitions: '6-8', load: '70-75%', reserve: '1-2' });
    expect(text).toContain('3 × 6 to 8 at 70 to 75\u00a0% of 1RM');
    expect(text).toContain(`Leave 1 to 2 in reserve. ${tellLifter({ least: 1, most: 2 })}`);
  });

  it('names the repetitions possible where no load in per cent was written', () => {
    expect(write({ ...PRESS, load: '', possible: '14', repetitions: '12', reserve: '' })).toContain(
      '3 × 12 with a load for 14 repetitions at most, with a spotter. Leave 2 in reserve.',
    );
  });

  it('tells whole repetitions where a reserve was worked out with decimals', () => {
    const [{ checked }] = linesOf({ ...PRESS, reserve: '' });
    const { reserve } = checked.line;
    expect(reserve % 1).toBeGreaterThan(0);
    expect(write({ ...PRESS, reserve: '' })).toContain(
      `Leave ${Math.floor(reserve)} to ${Math.ceil(reserve)} in reserve.`,
    );
  });

  it('ends a set without reserve with the last good repetition', () => {
    expect(write({ ...PRESS, reserve: '0' })).toContain(
      'Leave none in reserve. End the set when no further good repetition is possible.',
    );
  });

  it('asks for no set alone that can pin, nor for one that does not fit its load', () => {
    expect(write({ ...PRESS, reserve: '0', company: '' })).toMatch(
      /NOT ALONE: this exercise can pin you\. With a spotter or safety arms: .* Alone leave at least 1\./u,
    );
    const questioned = write({ ...PRESS, exercise: 'squat', repetitions: '20', load: '80' });
    expect(questioned).toContain('Ask your coach before this set');
    expect(questioned).not.toContain('Leave 2 in reserve');
  });

  it('has the coach’s note, each caution with its exercises, those for everybody, and the event', () => {
    const lines = linesOf({ ...PRESS, note: 'slow down' }, { ...PRESS, exercise: 'squat', day: 'Wed' });
    const text = writeForAthlete(lines, { week: null, event: { day: 13, hour: 9 } });
    expect(text).toContain('Note: slow down');
    expect(text).toContain('- leg press, squat: Agree with the spotter before the set when to take the bar.');
    for (const caution of ALWAYS) expect(text).toContain(`- ${caution}`);
    expect(text).toContain('Event: Saturday of week 2, 9:00');
  });

  it('names the week of the event wherever the programme has several', () => {
    const event = { day: 6, hour: 9 };
    const one = linesOf(PRESS);
    const several = linesOf(PRESS, { ...PRESS, week: '2' });
    expect(writeForAthlete(one, { week: null, event })).toContain('Event: Saturday, 9:00');
    for (const week of [null, 1, 2]) {
      expect(writeForAthlete(several, { week, event })).toContain('Event: Saturday of week 1, 9:00');
    }
  });

  it('has no statistics', () => {
    expect(write(PRESS, { ...PRESS, day: 'Tue', exercise: 'arm curl' })).not.toMatch(
      /growth|interval|evidence|advised|stud(?:y|ies)|hours|reps\b|RIR/iu,
    );
  });

  it('is of one week, or of all by week and day whatever their order, weeks named in a block only', () => {
    const lines = linesOf({ ...PRESS, week: '2', day: 'Tue' }, { ...PRESS, day: 'Thu' }, PRESS);
    const heads = (text: string) => text.split('\n').filter((line) => /^[A-Z0-9 ]+$/u.test(line));
    const of = (week: number | null) => heads(writeForAthlete(lines, { week, event: null }));
    expect(of(null)).toEqual(['WEEK 1', 'MONDAY', 'THURSDAY', 'WEEK 2', 'TUESDAY', 'SAFETY']);
    expect(of(2)).toEqual(['WEEK 2', 'TUESDAY', 'SAFETY']);
    expect(heads(write(PRESS))).toEqual(['MONDAY', 'SAFETY']);
    expect([sayTold(lines, 1), sayTold(lines, null)]).toEqual(['2 lines of week 1', '3 lines']);
  });

  it('has the coach look at what it warns of first, by the number in the editor', () => {
    const lines = linesOf(
      PRESS,
      { ...PRESS, reserve: '0', company: 'alone' },
      { ...PRESS, exercise: 'squat', repetitions: '20', load: '80' },
    ).map(({ checked }) => checked);
    expect(findToLookAt(lines, (line) => line - 1)).toEqual({ unsafe: [2], questioned: [3] });
  });
});
