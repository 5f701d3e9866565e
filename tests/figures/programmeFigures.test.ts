/** The calendar of a programme and what is said of two versions: never stronger than the intervals. */
import { describe, expect, it } from 'vitest';
import { drawPlot } from '../../src/components/drawPlot.ts';
import { describeVersions } from '../../src/figures/programmeFindings.ts';
import { recoveryCalendar } from '../../src/figures/recoveryCalendar.ts';
import { reportProgramme } from '../../src/practice/programme/report.ts';
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

  it('without an event, and without known recovery, still draws and claims nothing', () => {
    const none = { ...regatta, event: null };
    const unknown = sessions.map((session) => ({
      ...session,
      recovery: { time: null, reason: 'nothing was studied' },
      verdict: null,
      drop: null,
    }));
    expect(recoveryCalendar(sessions, analysis, { calendar: none }).title).toBe('No event is planned for');
    const figure = recoveryCalendar(unknown, analysis, { calendar: regatta });
    expect(figure.title).toBe('Recovery is not known for every session');
    expect(drawPlot(figure)).toMatch(/^<svg/u);
  });
});

describe('two versions in a sentence', () => {
  it('give the numbers of the comparison', () => {
    const { overall, drop } = comparison ?? {};
    if (!comparison || !overall?.difference || !drop) throw new Error('expected differences');
    const said = describeVersions(comparison, regatta, analysis);
    expect(said).toContain(`${(100 * Math.expm1(overall.difference.estimate)).toFixed(1)} % (`);
    expect(said).toContain(`${(100 * Math.expm1(-drop.estimate)).toFixed(1)} % less fatigue`);
    expect(said).toMatch(/unreliable/u);
  });

  it('say “not distinguishable from nothing” where an interval holds 0', () => {
    if (!comparison?.overall.difference || !comparison.drop) throw new Error('expected differences');
    const open = { ciLow: -0.1, ciHigh: 0.1 };
    const said = describeVersions(
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
