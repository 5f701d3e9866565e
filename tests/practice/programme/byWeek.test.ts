/** Weeks read for themselves: the same numbers as a programme of that week alone, by the same rules. */
import { describe, expect, it } from 'vitest';
import { RESERVE_PARTS } from '../../../src/practice/programme/byWeek.ts';
import { weekToShow } from '../../../src/practice/programme/checkedWeeks.ts';
import { weekOfDay } from '../../../src/practice/programme/columns.ts';
import { reportProgramme } from '../../../src/practice/programme/report.ts';
import { blockOf } from './blockOf.ts';
import { analysis, exampleToTargets, exampleWeek, exercises, regatta } from './shipped.ts';

const check = (first: string, calendar = regatta) => {
  const { first: version } = reportProgramme(analysis, { first, second: null, exercises, calendar });
  if (!version.check) throw new Error(JSON.stringify(version.problems));
  return version.check;
};
const none = { ...regatta, event: null };

describe('the weeks of a block', () => {
  const block = check(blockOf(exampleWeek, 4, 3), none);

  it('are those that have lines', () => {
    expect(block.weeks.map(({ week }) => week)).toEqual([1, 2, 4]);
  });

  it('each say what a programme of that week alone says', () => {
    for (const { week, all, byLoads, setsByReserve, sessions, longest } of block.weeks) {
      const lines = blockOf(exampleWeek, 4, 3).trim().split('\n');
      const own = lines.filter((line, i) => i === 0 || weekOfDay(Number(line.split(',')[0])) === week);
      const alone = check(own.join('\n'), none);
      expect(all.kept).toEqual(alone.overall.kept);
      expect(all.sets).toBe(alone.overall.sets);
      expect(sessions).toEqual(alone.sessions);
      expect(setsByReserve.reduce((sum, sets) => sum + sets, 0)).toBe(all.sets);
      expect(byLoads.map(({ band }) => band)).toEqual(['light', 'heavy']);
      expect(byLoads.reduce((sum, { sets }) => sum + sets, 0)).toBe(all.sets);
      const hours = sessions.map(({ recovery }) => recovery.time?.hours ?? 0);
      expect(longest?.recovery.time?.hours).toBe(Math.max(...hours));
    }
  });

  it('keep less the more is left, where the curve falls', () => {
    const [first, second] = block.weeks;
    expect(second.all.kept?.estimate).toBeLessThan(first.all.kept?.estimate ?? 0);
  });

  it('count each set once, by what it leaves', () => {
    const week = 'day,exercise,sets,repetitions,load,possible,reserve,company\n';
    const { weeks } = check(
      `${week}Mon,leg press,1,8,70,,0,spotter\nMon,leg press,2,8,70,,1.9,spotter\nTue,leg press,4,8,70,,2,spotter\nTue,leg press,8,8,70,,3.5,spotter\nTue,leg press,16,8,70,,4,spotter\n`,
    );
    expect(weeks[0].setsByReserve).toEqual([3, 12, 16]);
    expect(RESERVE_PARTS.every(({ from }, i) => i === 0 || from === RESERVE_PARTS[i - 1].below)).toBe(true);
  });

  it('of which the evidence says nothing have no share, and say how many sets were left out', () => {
    const { weeks } = check(
      'day,exercise,sets,repetitions,load,possible,reserve,company\n1,leg press,3,8,70,,2,spotter\n8,leg press,5,2,70,,30,spotter\n',
    );
    expect(weeks.map(({ all: { kept, setsLeftOut } }) => [kept === null, setsLeftOut])).toEqual([
      [false, 0],
      [true, 5],
    ]);
  });
});

describe('an event in a week of the block', () => {
  it('is as many hours away as its days are, whatever the week', () => {
    const block = check(blockOf(exampleWeek, 3), { ...regatta, event: { day: 20, hour: 10 } });
    const friday = block.sessions.find(({ day }) => day === 19);
    expect(friday?.hoursToEvent).toBe(15);
    expect(block.sessions.find(({ day }) => day === 5)?.hoursToEvent).toBe(15 + 14 * 24);
    expect(block.worst?.day).toBe(19);
    expect(weekToShow(block.sessions)).toBe(3);
  });

  it('has the last week before it looked at first, and the first week where there is none', () => {
    const sessions = check(blockOf(exampleWeek, 3), { ...regatta, event: { day: 10, hour: 10 } }).sessions;
    expect(weekToShow(sessions)).toBe(2);
    expect(weekToShow(check(blockOf(exampleWeek, 3), none).sessions)).toBe(1);
  });
});

describe('two versions of a block', () => {
  const { comparison } = reportProgramme(analysis, {
    first: blockOf(exampleWeek, 2),
    second: blockOf(exampleToTargets, 2),
    exercises,
    calendar: { ...regatta, event: { day: 13, hour: 10 } },
  });

  it('are compared over all their weeks, and at the event', () => {
    expect(comparison?.overall.sets).toEqual({ first: 74, second: 74 });
    expect(comparison?.overall.difference).not.toBeNull();
    expect(comparison?.drop).not.toBeNull();
  });
});
