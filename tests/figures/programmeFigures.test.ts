/** The calendar of a programme and what is said of two versions: never stronger than the intervals. */
import { describe, expect, it } from 'vitest';
import { stateAgainst, stateVersions } from '../../src/figures/programmeFindings.ts';
import { recoveryCalendar } from '../../src/figures/recoveryCalendar.ts';
import { reportProgramme } from '../../src/practice/programme/report.ts';
import { drawPlot } from '../../src/site/drawFigure.ts';
import { analysis, exampleToTargets, exampleWeek, exercises, regatta } from '../practice/programme/shipped.ts';
import { failOnWarnings } from '../support/failOnWarnings.ts';
import { settleSvg } from '../support/settleSvg.ts';

const { first, second, comparison } = reportProgramme(analysis, {
  first: exampleWeek,
  second: exampleToTargets,
  exercises,
  calendar: regatta,
});
const sessions = first.check?.sessions ?? [];

failOnWarnings();

describe('the calendar', () => {
  it('of the worked example is drawn as it was', async () => {
    const figure = recoveryCalendar(sessions, analysis, { calendar: regatta });
    await expect(settleSvg(drawPlot(figure))).toMatchFileSnapshot('programme-calendar.svg');
  });

  it('says which session is not recovered, and of version two that all are', () => {
    expect(recoveryCalendar(sessions, analysis, { calendar: regatta }).title).toBe(
      'Not recovered before the event: Friday',
    );
    expect(recoveryCalendar(second?.check?.sessions ?? [], analysis, { calendar: regatta }).title).toBe(
      'Every session is recovered before the event',
    );
  });

  it('speaks of sessions before the event only, and names those near failure just before it', () => {
    const [monday] = sessions;
    const sunday = { ...monday, day: 7, hoursToEvent: null, verdict: null, drop: null };
    expect(recoveryCalendar([monday, sunday], analysis, { calendar: regatta }).title).toBe(
      'Every session before the event is recovered by then',
    );
    expect(recoveryCalendar(sessions, analysis, { calendar: regatta }).caption).toMatch(
      /in the 24 hours before an event \(common practice, no source\); Friday comes within less than 1 repetition/u,
    );
    expect(recoveryCalendar([monday], analysis, { calendar: regatta }).caption).not.toMatch(/common practice/u);
  });

  it('without an event, and without known recovery, still draws and claims nothing', () => {
    const none = { ...regatta, event: null };
    const unknown = sessions.map((session) => ({
      ...session,
      recovery: { time: null, reason: 'nothing was studied' },
      verdict: null,
      drop: null,
    }));
    expect(recoveryCalendar(sessions, analysis, { calendar: none }).title).toBe(
      'Recovery after each session; no event is set',
    );
    const figure = recoveryCalendar(unknown, analysis, { calendar: regatta });
    expect(figure.title).toBe('Recovery is not known for every session');
    expect(drawPlot(figure)).toMatch(/^<svg/u);
  });
});

describe('two versions in a sentence', () => {
  it('give the numbers of the comparison', () => {
    const { overall, drop } = comparison ?? {};
    if (!comparison || !overall?.difference || !drop) throw new Error('expected differences');
    const said = stateVersions(comparison, regatta, analysis);
    expect(said).toContain(`${(100 * Math.expm1(overall.difference.estimate)).toFixed(1)}\u00a0% (`);
    expect(said).toContain(
      `less fatigue than version one’s, by ${(100 * Math.expm1(-drop.estimate)).toFixed(1)}\u00a0% of performance (`,
    );
  });

  it('claim no sameness where a difference cannot be given', () => {
    if (!comparison) throw new Error('expected a comparison');
    const reason = 'a version has no line that the evidence speaks of';
    const unknown = { ...comparison, overall: { ...comparison.overall, difference: null, reason } };
    const said = stateVersions(
      { ...unknown, drop: null, dropReason: 'both versions leave the same' },
      regatta,
      analysis,
    );
    expect(said).toBe(
      `Over all sets no difference in growth can be stated: ${reason}. At the event on Saturday no difference in fatigue can be stated: both versions leave the same.`,
    );
  });

  it('call no difference more or less that is shown as 0', () => {
    if (!comparison?.drop) throw new Error('expected a drop');
    const drop = { ...comparison.drop, estimate: 2e-4, ciLow: 1e-4, ciHigh: 3e-4 };
    expect(stateVersions({ ...comparison, drop }, regatta, analysis)).toMatch(
      /leaves a fatigue that differs from version one’s by less than 0\.1\u00a0% of performance/u,
    );
  });

  it('call a line unsafe by what it leaves', () => {
    const unsafe = first.check?.lines.find((line) => line.unsafe);
    if (!unsafe) throw new Error('expected an unsafe line');
    expect(stateAgainst(unsafe)).toBe('unsafe: alone under a load that can pin, with less than 1 in reserve');
  });

  it('say “not distinguishable from nothing” where an interval holds 0', () => {
    if (!comparison?.overall.difference || !comparison.drop) throw new Error('expected differences');
    const open = { ciLow: -0.1, ciHigh: 0.1 };
    const said = stateVersions(
      {
        ...comparison,
        overall: { ...comparison.overall, difference: { ...comparison.overall.difference, ...open } },
        drop: { ...comparison.drop, ...open },
      },
      regatta,
      analysis,
    );
    expect(said).toMatch(/growth by .*, which is not distinguishable from nothing/u);
    expect(said).toMatch(/fatigue that is not distinguishable from version one’s/u);
    expect(said).not.toMatch(/less fatigue/u);
  });
});
