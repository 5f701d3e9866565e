/**
 * Recovery, events and the range that is said, by hand: an analysis whose recovery times are 60, 40 and 20 hours after
 * sets with 0, 2 and 4 in reserve, and targets that are given.
 */
import { describe, expect, it } from 'vitest';
import type { PracticeAnalysis } from '../../src/model/full.ts';
import type { Target } from '../../src/model/result.ts';
import { noTarget } from '../../src/model/target.ts';
import { showTarget } from '../../src/model/wholeRepetitions.ts';
import { advise } from '../../src/practice/advice.ts';
import { cautionsFor, GENERAL_CAUTIONS, guardCautions, isUnguarded } from '../../src/practice/cautions.ts';
import { chooseReserve, leastSafe } from '../../src/practice/chooseReserve.ts';
import { judgeSession } from '../../src/practice/event.ts';
import { judgementOf, PUBLISHED_JUDGEMENT, reallyLeft, TAKEN_AS_SAID } from '../../src/practice/judgement.ts';
import { mostReserve } from '../../src/practice/possible.ts';
import { judgeEvent, leastReserveInTime, recoveryAfter } from '../../src/practice/recovery.ts';
import type { Situation } from '../../src/practice/situation.ts';
import { analysis as shipped } from './programme/shipped.ts';
import { at } from './setAt.ts';

type Listed = readonly [reserve: number, hours: number, high: number | null];
const TIMES: readonly Listed[] = [
  [0, 60, 72],
  [2, 40, 50],
  [4, 20, null],
];
function withRecovery(times: readonly Listed[]): PracticeAnalysis {
  const byStatus = shipped.fatigue.byStatus.map((one) =>
    one.status === 'trained'
      ? { ...one, recovery: times.map(([reserve, hours, high]) => ({ reserve, hours, low: hours - 5, high })) }
      : { ...one, failure: { kind: 'too-few-studies', reason: 'one study is too few' }, recovery: [] },
  );
  return { ...shipped, fatigue: { ...shipped.fatigue, byStatus } } as PracticeAnalysis;
}
const analysis = withRecovery(TIMES);
const { fatigue } = analysis;

describe('recovery after a reserve', () => {
  const hours = (reserve: number) => recoveryAfter(fatigue, 'trained', reserve).time?.hours;

  it('is of the nearest listed one that is no greater', () => {
    expect([hours(0), hours(1.9), hours(2), hours(3.9), hours(4), hours(9)]).toEqual([60, 60, 40, 40, 20, 20]);
    const beyond = (reserve: number) => recoveryAfter(fatigue, 'trained', reserve).time?.isBeyondStudied;
    expect([beyond(3), beyond(4), beyond(4.1)]).toEqual([false, false, true]);
  });

  it('is not known below the listed ones, of people without a fit, or without rows', () => {
    const later = withRecovery(TIMES.slice(1));
    expect(recoveryAfter(later.fatigue, 'trained', 1.26).reason).toBe(
      'no session with 1.3 or fewer in reserve was studied in trained people',
    );
    expect(recoveryAfter(later.fatigue, 'trained', 0).reason).toBe(
      'no session with 0 in reserve was studied in trained people',
    );
    expect(recoveryAfter(fatigue, 'untrained', 1)).toEqual({ time: null, reason: 'one study is too few' });
    expect(recoveryAfter({ ...fatigue, byStatus: [] }, 'trained', 1).reason).toBe('no rows of trained people');
  });

  it('is in time with its whole interval, by the estimate, or not: at the very hour it is', () => {
    const verdict = (high: number | null, event: number) => judgeEvent({ hours: 40, high }, event);
    expect([verdict(50, 50), verdict(50, 49), verdict(50, 40), verdict(50, 39), verdict(null, 99)]).toEqual([
      'in time',
      'expected in time',
      'expected in time',
      'not in time',
      'expected in time',
    ]);
  });

  it('in time is of the least reserve, a whole interval before an estimate', () => {
    const least = (event: number) => {
      const { time, verdict, shortest } = leastReserveInTime(fatigue, 'trained', event);
      return [time?.reserve, verdict, shortest?.reserve];
    };
    expect([least(72), least(71), least(50), least(49), least(20), least(19)]).toEqual([
      [0, 'in time', 4],
      [2, 'in time', 4],
      [2, 'in time', 4],
      [2, 'expected in time', 4],
      [4, 'expected in time', 4],
      [undefined, 'not in time', 4],
    ]);
    expect(leastReserveInTime(fatigue, 'untrained', 50)).toEqual({
      time: null,
      verdict: 'not in time',
      shortest: null,
    });
  });
});

describe('a session before an event', () => {
  const judge = (hours: number, low: number, high = low) => judgeSession(analysis, 'trained', hours, { low, high });

  it('is judged by the end of what may be left that takes longer', () => {
    expect(judge(55, 0, 2).time?.hours).toBe(60);
    const turned = withRecovery([
      [0, 20, 30],
      [2, 40, 50],
    ]);
    expect(judgeSession(turned, 'trained', 55, { low: 0, high: 2 }).time?.hours).toBe(40);
    expect(judgeSession(turned, 'trained', 55, { low: 0, high: 0 }).time?.hours).toBe(20);
    // Below what was studied nothing is known, however well the other end is.
    const later = withRecovery(TIMES.slice(1));
    expect(judgeSession(later, 'trained', 55, { low: 0, high: 2 }).time).toBeNull();
  });

  it('says its verdict with the hours and what they mean', () => {
    expect(judge(72, 0)).toMatchObject({ hours: 72, verdict: 'in time' });
    expect(judge(72, 0).sentence).toBe(
      'Recovered before the event: within 2\u00a0% of full performance 60 hours after sets with 0 in reserve, and 72 hours are left.',
    );
    expect(judge(65, 0).sentence).toMatch(/^Expected .* not surely: .*; the interval goes up to 72 hours\.$/u);
    expect(judge(65, 4).sentence).toMatch(/; the interval has no upper limit\.$/u);
  });

  it('that is not in time names more reserve that would be, or the hours, never less reserve', () => {
    expect(judge(45, 0).sentence).toMatch(
      /^Not recovered .* Instead leave 2 in reserve \(40 hours\), or move the session to at least 60 hours before it\.$/u,
    );
    const said = (bias: number, most: number, end: string) =>
      expect(
        judgeSession(analysis, 'trained', 45, { low: 0, high: 0 }, { judgement: { bias, spread: 0 }, most }).sentence,
      ).toContain(`Instead ${end} (40 hours), or move the session`);
    // In what the lifter is to say, as the range above it is.
    said(-1, 9, 'leave 3 in reserve as this lifter says it, so that at least 2 are really left');
    said(0, 2, 'leave 2 in reserve');
    said(0, 1, 'take a lighter load and leave 2 in reserve');
    expect(judge(10, 4).sentence).toMatch(/10 hours are left\. Instead move the session to at least 20 hours before/u);
    const turned = withRecovery([
      [0, 20, 30],
      [2, 40, 50],
    ]);
    expect(judgeSession(turned, 'trained', 35, { low: 2, high: 2 }).sentence).toMatch(/Instead move the session/u);
  });

  it('of people whose recovery is not known says so', () => {
    expect(judgeSession(analysis, 'untrained', 30, { low: 1, high: 2 })).toEqual({
      hours: 30,
      time: null,
      verdict: null,
      sentence: 'Recovery is not known: one study is too few.',
    });
  });
});

describe('judgement', () => {
  it('is of the kind asked for, and only own test sets are read', () => {
    const own = { bias: -0.5, spread: 0.3 };
    expect(judgementOf('taken as said', own)).toEqual(TAKEN_AS_SAID);
    expect(judgementOf('as most people', own)).toEqual(PUBLISHED_JUDGEMENT);
    expect(judgementOf('own test sets', own)).toBe(own);
    expect([TAKEN_AS_SAID, PUBLISHED_JUDGEMENT]).toEqual([
      { bias: 0, spread: 0 },
      { bias: 0.95, spread: 1.45 },
    ]);
  });

  it('adds its bias to what is said, a spread to either side, and nothing is left below none', () => {
    expect(reallyLeft(3, { bias: 0.5, spread: 1 })).toEqual({ mean: 3.5, low: 2.5, high: 4.5 });
    expect(reallyLeft(1, { bias: -2, spread: 0.5 })).toEqual({ mean: 0, low: 0, high: 0 });
    expect(reallyLeft(1, { bias: -0.5, spread: 2 })).toEqual({ mean: 0.5, low: 0, high: 2.5 });
  });
});

describe('cautions', () => {
  const guard = (canPin: boolean, stoppable: boolean, company: 'alone' | 'spotter' | 'safety arms') => ({
    exercise: { canPin, stoppable, relation: 'bench press' as const },
    company,
  });

  it('bind by what can pin and who is there, in one of five ways', () => {
    expect(isUnguarded(guard(true, true, 'alone'))).toBe(true);
    expect([isUnguarded(guard(true, true, 'spotter')), isUnguarded(guard(false, true, 'alone'))]).toEqual([
      false,
      false,
    ]);
    const own = [
      guardCautions(guard(true, false, 'alone')),
      guardCautions(guard(true, false, 'spotter')),
      guardCautions(guard(true, true, 'safety arms')),
      guardCautions(guard(false, false, 'alone')),
      guardCautions(guard(false, true, 'spotter')),
    ];
    expect(own.map((list) => list.length)).toEqual([2, 1, 1, 1, 0]);
    expect(new Set(own.flat()).size).toBe(5);
    expect(own[0][0]).toMatch(/^Set safety arms or have a spotter/u);
    expect(own[1][0]).toMatch(/spotter before the set/u);
    expect(own[2][0]).toMatch(/lowest point/u);
    expect(own[3][0]).toMatch(/cannot be broken off safely/u);
  });

  it('that hold for every set follow those that bind it', () => {
    const none = cautionsFor(guard(false, true, 'alone'));
    expect(none).toHaveLength(3);
    expect(cautionsFor(guard(true, true, 'alone')).slice(2)).toEqual(none);
    expect(GENERAL_CAUTIONS.slice(-3)).toEqual(none);
    expect(GENERAL_CAUTIONS[0]).toMatch(/never taken to reserve 0/u);
  });
});

describe('the range that is said', () => {
  const target = (point: number, cautious: number): Target => ({
    ...noTarget(0.9, ''),
    point,
    low: cautious,
    ...showTarget({ point, low: cautious, high: null }),
    reason: null,
  });
  const choose = (change: Partial<Situation>, of: Target = target(3.5, 2.2), source = analysis) =>
    chooseReserve(source, { ...at(60), ...change }, { target: of, source: 'heavy', unreliable: false, studies: 10 });
  const bar = { ...at(60).exercise, canPin: true };
  const judged = (bias: number) => ({ judgement: { bias, spread: 1 } });

  it('is the evidence’s own less the bias, inside its interval', () => {
    expect(choose({})).toEqual({
      reserve: { least: 3, most: 3 },
      adjustments: [],
      sentence: 'End the set when you could do 3 more good repetitions.',
    });
    expect(choose(judged(1)).reserve).toEqual({ least: 2, most: 2 });
    expect(choose(judged(-1)).reserve).toEqual({ least: 4, most: 4 });
    expect(choose(judged(9)).reserve).toEqual({ least: 0, most: 0 });
    // A whole number less a rounding is that number.
    expect(choose(judged(0.1), target(3.1, 2.1)).reserve).toEqual({ least: 2, most: 3 });
  });

  it('is at least what safety asks for, and more for who overrates it', () => {
    const safe = (bias: number, company: Situation['company'] = 'alone') =>
      leastSafe({ ...at(60), exercise: bar, company, ...judged(bias) });
    expect([safe(0), safe(2), safe(-0.2), safe(-1), safe(-1.5), safe(-3, 'spotter')]).toEqual([1, 1, 2, 2, 3, 0]);
    const near = target(0.8, 0);
    expect(choose({}, near)).toMatchObject({ reserve: { least: 0, most: 0 }, adjustments: [] });
    const raised = choose({ exercise: bar }, near);
    expect(raised.reserve).toEqual({ least: 1, most: 1 });
    expect(raised.adjustments.join()).toMatch(/^Raised for safety/u);
    // What the evidence asks for anyway is raised by nothing.
    expect(choose({ exercise: bar }, target(1.5, 1)).adjustments).toEqual([]);
  });

  it('is no more than a set at the load can leave', () => {
    // 8.82 repetitions are possible at 80 % (Nuzzo et al. 2024, second-hand).
    expect(mostReserve({ mean: 8.82, sd: null, relation: 'bench press', standsIn: true })).toBe(7);
    const high = choose({ load: 80 }, target(12, 9));
    expect(high.reserve).toEqual({ least: 7, most: 7 });
    expect(high.adjustments).toEqual([
      'Lowered to what a set at this load can leave: no more than about 8.8 repetitions are possible on average.',
    ]);
    expect(choose({ load: 80 }, target(7.5, 5)).adjustments).toEqual([]);
  });

  it('is none without a target, and safety holds all the same', () => {
    const none = noTarget(0.9, 'no target');
    expect(choose({}, none)).toEqual({
      reserve: null,
      adjustments: [],
      sentence: 'This evidence gives no number to follow at this load.',
    });
    expect(choose({ exercise: bar }, none).sentence).toMatch(/Whatever the evidence, leave at least 1: nothing would/u);
  });

  describe('before an event', () => {
    const fresh = (hoursToEvent: number | null, change: Partial<Situation> = {}, of?: Target) =>
      choose({ purpose: 'staying fresh', hoursToEvent, ...change }, of);

    it('is raised to the least reserve in time, and says how sure that is', () => {
      const sure = fresh(50, {}, target(1.5, 1));
      expect(sure.reserve).toEqual({ least: 2, most: 2 });
      expect(sure.adjustments).toEqual([
        'Raised for the event: the least reserve whose recovery is in time with its whole interval is 2 (40 hours).',
      ]);
      expect(fresh(45, {}, target(1.5, 1)).adjustments.join()).toMatch(/expected .* is 2 \(40 hours\), though its/u);
    });

    it('needs no target of growth, but gives no number of its own where any is recovered from in time', () => {
      const none = noTarget(0.9, 'none');
      expect(fresh(50, {}, none).reserve).toEqual({ least: 2, most: 2 });
      // Not failure: nothing asks for it.
      expect(fresh(72, {}, none)).toEqual({
        reserve: null,
        adjustments: [],
        sentence: 'The event asks for no reserve. This evidence gives no number to follow at this load.',
      });
      expect(fresh(72, { exercise: bar }, none).sentence).toMatch(/Whatever the evidence, leave at least 1: nothing/u);
    });

    it('is what growth asks for where that is in time', () => {
      expect(fresh(72)).toMatchObject({ reserve: { least: 3, most: 3 }, adjustments: [] });
      expect(fresh(null).reserve).toBeNull();
      expect(fresh(null).sentence).toBe(
        'Say how many hours there are to the event: staying fresh is planned backwards from it.',
      );
    });

    it('counts the bias, since so many more are left than are said', () => {
      const exactly = (bias: number) => ({ judgement: { bias, spread: 0 } });
      expect(fresh(50, exactly(1), target(1, 0.5)).reserve?.least).toBe(1);
      expect(fresh(50, exactly(-1), target(1, 0.5)).reserve?.least).toBe(3);
      expect(fresh(72, judged(3), target(1, 0.5)).reserve?.least).toBe(0);
      // Never closer to failure than growth alone, whatever there is time for.
      expect(fresh(72, {}, target(6.3, 5.2)).reserve).toEqual(choose({}, target(6.3, 5.2)).reserve);
    });

    it('counts the spread too, by which the session is judged: it never asks for what it then calls late', () => {
      // 2 in time; 2 − 1 + 1 and 2 + 1 + 1 are said so that the fewest that may be left are 2.
      expect(fresh(50, judged(1), target(1, 0.5)).reserve?.least).toBe(2);
      const over = fresh(50, judged(-1), target(1, 0.5));
      expect(over.reserve?.least).toBe(4);
      expect(over.adjustments.join()).toMatch(/is 2 \(40 hours\)\. This lifter is to say 4, so that as many are/u);
      // Nothing is left below none, so that an event far away asks for nothing of who overrates it.
      expect(fresh(72, judged(-2), target(0.4, 0)).adjustments).toEqual([]);
      for (const bias of [-3, -1, 0, 1, 3]) {
        for (const hoursToEvent of [40, 49, 50, 71, 72]) {
          const situation = { ...at(60), ...judged(bias), hoursToEvent, purpose: 'staying fresh' as const };
          const { reserve, event } = advise(analysis, situation);
          expect(reserve).not.toBeNull();
          expect(['in time', 'expected in time']).toContain(event?.verdict);
        }
      }
    });

    it('does not reach up to a reserve after which recovery takes longer', () => {
      const turned = withRecovery([
        [0, 20, 30],
        [2, 40, 50],
      ]);
      const early = (of: Target) => choose({ purpose: 'staying fresh', hoursToEvent: 35 }, of, turned);
      expect(early(target(3.5, 0)).reserve).toEqual({ least: 0, most: 0 });
      // Where growth asks for no less, nothing is in time.
      expect(early(target(3.5, 2.2))).toMatchObject({ reserve: null });
      expect(early(target(3.5, 2.2)).sentence).toMatch(/^Growth asks for at least 3 .*: move the session/u);
      expect(choose({ purpose: 'staying fresh', hoursToEvent: 45 }, target(3.5, 2.2), turned).reserve?.most).toBe(3);
      // By whom more is asked for is said as it is: here nothing by growth.
      const late = (change: Partial<Situation>) =>
        choose({ purpose: 'staying fresh', hoursToEvent: 35, ...change }, target(0.4, 0), turned).sentence;
      expect(late({ exercise: bar, ...judged(-1) })).not.toMatch(/Growth/u);
      expect(late({ exercise: bar, judgement: { bias: 1, spread: 0 } })).toMatch(/^Safety asks for at least 1 /u);
      expect(late({ judgement: { bias: 3, spread: 0 } })).toMatch(/^As this lifter judges, .* with 0 said to be in/u);
    });

    it('is refused where none is in time, or none is known', () => {
      expect(fresh(10)).toMatchObject({ reserve: null, adjustments: [] });
      expect(fresh(10).sentence).toBe(
        'Even with 4 in reserve the expected recovery takes 20 hours and 10 hours are left: move the session, or leave it out.',
      );
      expect(fresh(10, { exercise: bar }).sentence).toMatch(/leave it out\. Whatever the evidence, leave at least 1/u);
      expect(fresh(50, { status: 'untrained' }).sentence).toMatch(
        /^This evidence has no recovery of untrained people/u,
      );
    });

    it('is refused where a set at the load cannot leave it, with the other way out', () => {
      // 2.59 possible at 95 %: a set leaves 1 at most.
      const late = fresh(50, { load: 95 });
      expect(late.reserve).toBeNull();
      expect(late.sentence).toMatch(/no set leaves 2 in reserve\. Take a lighter load, or move the session\.$/u);
      const pinned = fresh(50, { load: 95, exercise: bar, ...judged(-2) });
      expect(pinned.sentence).toMatch(/no set leaves 5 in reserve\. .*, or move the session\.$/u);
      const alone = fresh(72, { load: 95, exercise: bar, ...judged(-2) });
      expect(alone.sentence).toMatch(/no set leaves 3 in reserve\. .*, or set safety arms or have a spotter\.$/u);
    });
  });
});
