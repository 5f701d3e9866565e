/** The calendar of a programme and what is said of two versions: never stronger than the intervals. */
import { describe, expect, it } from 'vitest';
import { formatShare } from '../../src/figures/format.ts';
import { listPlotted } from '../../src/figures/plotted.ts';
import { programmeByWeek } from '../../src/figures/programmeByWeek.ts';
import { stateAgainst, stateVersions } from '../../src/figures/programmeFindings.ts';
import { recoveryCalendar } from '../../src/figures/recoveryCalendar.ts';
import { reportProgramme } from '../../src/practice/programme/report.ts';
import { drawPlot } from '../../src/site/drawFigure.ts';
import { blockOf } from '../practice/programme/blockOf.ts';
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

describe('the weeks', () => {
  const block = reportProgramme(analysis, {
    first: blockOf(exampleWeek, 6, 4),
    second: blockOf(exampleToTargets, 6),
    exercises,
    calendar: { ...regatta, event: { day: 41, hour: 10 } },
  });
  const weeksOf = (version: typeof first | null) => version?.check?.weeks ?? [];
  const one = [{ name: 'version one', weeks: weeksOf(first) }];
  const two = [
    { name: 'version one', weeks: weeksOf(block.first) },
    { name: 'version two', weeks: weeksOf(block.second) },
  ];
  const event = { event: { day: 41, hour: 10 } };

  it('of the worked example are drawn as they were', async () => {
    const figure = programmeByWeek(one, analysis, { calendar: regatta });
    await expect(settleSvg(drawPlot(figure))).toMatchFileSnapshot('programme-week.svg');
  });

  it('of two versions of a block are drawn as they were, on a phone', async () => {
    const figure = programmeByWeek(two, analysis, { calendar: event, width: 328 });
    await expect(settleSvg(drawPlot(figure))).toMatchFileSnapshot('programme-by-week.svg');
  });

  it('say the shares and hours of the report, and what they do not know', () => {
    const shares = weeksOf(block.second).map(({ all }) => Math.round(100 * (all.kept?.estimate ?? Number.NaN)));
    const { title, caption, table } = programmeByWeek(two, analysis, { calendar: event });
    expect(title).toContain(
      `Version two: ${Math.min(...shares)} to ${Math.max(...shares)}\u00a0% of growth expected in a week`,
    );
    expect(caption).toMatch(/In version one week 4 has no sets\..*Not in this evidence.*that loads go up from week/u);
    expect(table.rows.length).toBe(11);
    for (const row of table.rows) expect(row.length).toBe(table.columns.length);
    const [{ all }] = weeksOf(block.first);
    expect(table.rows[0]).toContain(all.kept && formatShare(all.kept));
  });

  it('of which nothing is known claim nothing', () => {
    const nothing = weeksOf(first).map((week) => ({
      ...week,
      all: { ...week.all, kept: null },
      byLoads: week.byLoads.map((loads) => ({ ...loads, kept: null })),
      sessions: [],
      longest: null,
    }));
    const figure = programmeByWeek([{ name: 'version one', weeks: nothing }], analysis, { calendar: { event: null } });
    expect(figure.title).toBe('Neither growth kept nor recovery is known for these sets');
    expect(drawPlot(figure)).toMatch(/^<svg/u);
  });

  it('plot the very numbers of the report, each beside its place', () => {
    const layers = listPlotted(programmeByWeek(two, analysis, { calendar: event }).plot);
    const growth = layers.find(({ rows }) => 'share' in (rows[0] ?? {}));
    expect(growth?.rows.length).toBe(11);
    const shares = weeksOf(block.first).map(({ all }) => 100 * (all.kept?.estimate ?? Number.NaN));
    expect(growth?.rows.slice(0, 5).map(({ share }) => Number(share))).toEqual(
      shares.map((share) => expect.closeTo(share, 6)),
    );
    const hours = layers.find(({ rows }) => 'hours' in (rows[0] ?? {}));
    const sessions = [block.first, block.second].flatMap((version) => version?.check?.sessions ?? []);
    expect(hours?.rows.length).toBe(sessions.length);
  });

  it('are drawn one at a time in the calendar of a block, which speaks of all sessions', () => {
    const sessions = block.first.check?.sessions ?? [];
    const whole = { ...regatta, ...event };
    const drawn = recoveryCalendar(sessions, analysis, { calendar: whole, week: 6 });
    expect(drawn.table.rows.length).toBe(25);
    expect(drawn.title).toBe(recoveryCalendar(sessions, analysis, { calendar: whole }).title);
    expect(drawn.caption).toMatch(/^Drawn are the sessions of week 6\./u);
    const bars = listPlotted(drawn.plot).find(({ rows }) => 'from' in (rows[0] ?? {}));
    expect(bars?.rows.map(({ name }) => name)).toEqual(
      ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday'].map((day) => `${day} of week 6`),
    );
    expect(drawPlot(drawn)).toMatch(/event/u);
    expect(drawPlot(recoveryCalendar(sessions, analysis, { calendar: whole, week: 1 }))).not.toMatch(/>event</u);
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
