/**
 * Weeks of a programme one beside the other: growth kept, hours until recovered after each session, and sets by what
 * they leave. Three panels, each with its own scale, stand above one axis of weeks; of a single week, of its days.
 * Two versions are drawn beside each other.
 */
import * as Plot from '@observablehq/plot';
import type { PracticeAnalysis } from '../model/full.ts';
import { WEEKDAYS, weekOfDay } from '../practice/programme/columns.ts';
import { type Calendar, HOURS_OF_DAY } from '../practice/programme/sessions.ts';
import { describedByWords, type Figure } from './figure.ts';
import { FIGURE_STYLE, HALO, LOAD_LOOKS } from './looks.ts';
import {
  bandsWithGrowth,
  type DrawnGrowth,
  type DrawnRecovery,
  type DrawnSets,
  listGrowth,
  listRecoveries,
  listSets,
  middleOf,
  type VersionWeeks,
} from './weekData.ts';
import { describeWeeks, tabulateWeeks, titleOfWeeks } from './weekFindings.ts';
import { drawKeys } from './weekKeys.ts';
import { ABOVE, FOOT, INK, MARGINS, makePanel, type Panel, PLACES, SHADES, upTo } from './weekPanels.ts';

export interface ProgrammeByWeekOptions {
  readonly calendar: Pick<Calendar, 'event'>;
  readonly width?: number;
}

/** @param versions one, or two that are held against each other */
export function programmeByWeek(
  versions: readonly VersionWeeks[],
  { settings }: Pick<PracticeAnalysis, 'settings'>,
  { calendar: { event }, width = 420 }: ProgrammeByWeekOptions,
): Figure {
  const isPair = versions.length > 1;
  const growth = listGrowth(versions);
  const recoveries = listRecoveries(versions);
  const weeks = versions.flatMap((version) => version.weeks.map(({ week }) => week));
  const last = Math.max(1, event ? weekOfDay(event.day) : 1, ...weeks);
  const sets = listSets(versions, last === 1);
  const panels = scalePanels(growth, recoveries, sets);
  return describedByWords({
    plot: {
      width,
      height: FOOT + MARGINS.marginTop + MARGINS.marginBottom,
      ...MARGINS,
      style: FIGURE_STYLE,
      x: { domain: [0, last * WEEKDAYS.length], axis: null },
      y: { domain: [FOOT, 0], axis: null },
      symbol: { domain: ['light', 'heavy', 'all'], range: ['diamond', 'circle', 'circle'] },
      // Colours are named by the marks, also where there is nothing to mark.
      color: { type: 'identity' },
      marks: [
        ...drawFrame(panels, last),
        ...(event ? drawEvent(event.day - 1 + event.hour / HOURS_OF_DAY) : []),
        ...drawGrowth(growth, panels.growth, isPair),
        ...drawRecoveries(recoveries, panels.hours),
        ...drawSets(sets, panels.sets),
        ...drawKeys(isPair ? [] : bandsWithGrowth(versions), isPair),
      ],
    },
    title: titleOfWeeks(versions),
    caption: describeWeeks(versions, settings),
    table: tabulateWeeks(versions),
  });
}

type Panels = Readonly<Record<keyof typeof PLACES, Panel>>;

/** Far ends of intervals do not press all that is expected into a corner. */
const FURTHEST = { share: 200, timesLongest: 2 } as const;

function scalePanels(
  growth: readonly DrawnGrowth[],
  recoveries: readonly DrawnRecovery[],
  sets: readonly DrawnSets[],
): Panels {
  const shares = growth.flatMap(({ share, low, high }) => [share, low ?? share, high ?? share]);
  const longest = Math.max(HOURS_OF_DAY, ...recoveries.map(({ hours }) => hours));
  const highest = Math.max(longest, ...recoveries.map(({ high }) => high ?? 0));
  return {
    growth: makePanel(
      PLACES.growth,
      {
        from: Math.max(0, upTo(Math.min(90, ...shares), 10) - 10),
        to: Math.min(FURTHEST.share, upTo(Math.max(100, ...shares), 10)),
      },
      [5, 10, 20, 50],
    ),
    hours: makePanel(
      PLACES.hours,
      { from: 0, to: upTo(Math.min(FURTHEST.timesLongest * longest, highest), HOURS_OF_DAY / 2) },
      [HOURS_OF_DAY / 2, HOURS_OF_DAY],
    ),
    sets: makePanel(PLACES.sets, { from: 0, to: upTo(Math.max(1, ...sets.map(({ to }) => to)), 5) }, [5, 10, 20, 50]),
  };
}

function drawFrame({ growth, hours, sets }: Panels, last: number): readonly Plot.Markish[] {
  const lines = [growth, hours, sets].flatMap(({ ticks, at }) => ticks.map((value) => ({ value, y: at(value) })));
  const names = [
    {
      y: growth.top - ABOVE.nameOverKey,
      name: `growth kept${last === 1 ? ' by the whole week' : ''}, % of that at reserve 0`,
    },
    { y: hours.top - ABOVE.name, name: 'hours until recovered after a session' },
    { y: sets.top - ABOVE.nameOverKey, name: `sets in a ${last === 1 ? 'session' : 'week'}, by repetitions left` },
  ];
  const weeks = Array.from({ length: last }, (_, i) => i + 1);
  const places =
    last === 1
      ? WEEKDAYS.map((name, i) => ({ x: i + 0.5, name: name.slice(0, 3) }))
      : weeks.map((week) => ({ x: middleOf(week), name: String(week) }));
  const borders = weeks.slice(1).map((week) => ({ x: (week - 1) * WEEKDAYS.length }));
  return [
    Plot.ruleY(lines, { y: 'y', stroke: 'currentColor', strokeOpacity: 0.15 }),
    Plot.text(lines, { y: 'y', text: 'value', frameAnchor: 'left', dx: -6, textAnchor: 'end', fill: INK }),
    Plot.text(names, {
      y: 'y',
      text: 'name',
      frameAnchor: 'left',
      dx: -MARGINS.marginLeft,
      textAnchor: 'start',
      fill: INK,
    }),
    Plot.text(places, { x: 'x', text: 'name', frameAnchor: 'bottom', dy: 16, fill: INK }),
    Plot.text([last === 1 ? 'day of the week →' : 'week of the programme →'], {
      frameAnchor: 'bottom',
      dy: 34,
      fill: INK,
    }),
    ...[growth, hours, sets].map(({ top, height }) =>
      Plot.ruleX(borders, { x: 'x', y1: top, y2: top + height, stroke: 'currentColor', strokeOpacity: 0.15 }),
    ),
  ];
}

function drawEvent(at: number): readonly Plot.Markish[] {
  const { growth, hours } = PLACES;
  return [
    Plot.ruleX([at], { y1: hours.top, y2: hours.top + hours.height, stroke: 'currentColor', strokeWidth: 2 }),
    Plot.ruleX([at], { y1: growth.top, y2: growth.top + growth.height, stroke: 'currentColor', strokeWidth: 2 }),
    Plot.text(['event'], { x: at, y: hours.top + 7, dx: -5, textAnchor: 'end', fill: INK, ...HALO }),
  ];
}

function drawGrowth(growth: readonly DrawnGrowth[], panel: Panel, isPair: boolean): readonly Plot.Markish[] {
  const colour = ({ loads }: DrawnGrowth) => (isPair ? INK : LOAD_LOOKS[loads].colour);
  return [
    Plot.ruleX(growth, {
      x: 'x',
      y1: ({ low }: DrawnGrowth) => panel.at(low ?? panel.from),
      y2: ({ high }: DrawnGrowth) => panel.at(high ?? panel.to),
      stroke: colour,
      strokeWidth: 1.5,
    }),
    Plot.dot(growth, {
      x: 'x',
      y: ({ share }: DrawnGrowth) => panel.at(share),
      symbol: 'loads',
      r: 4.5,
      fill: (one: DrawnGrowth) => (one.place > 0 ? 'var(--paper)' : colour(one)),
      stroke: colour,
      strokeWidth: 1.5,
    }),
  ];
}

function drawRecoveries(recoveries: readonly DrawnRecovery[], panel: Panel): readonly Plot.Markish[] {
  return [
    Plot.ruleX(recoveries, {
      x: 'x',
      y1: ({ low }: DrawnRecovery) => panel.at(low ?? panel.from),
      y2: ({ high }: DrawnRecovery) => panel.at(high ?? panel.to),
      stroke: INK,
      strokeOpacity: 0.45,
    }),
    Plot.dot(recoveries, {
      x: 'x',
      y: ({ hours }: DrawnRecovery) => panel.at(hours),
      r: 3,
      fill: ({ place }: DrawnRecovery) => (place > 0 ? 'var(--paper)' : INK),
      stroke: INK,
      strokeWidth: 1.25,
    }),
  ];
}

function drawSets(sets: readonly DrawnSets[], panel: Panel): readonly Plot.Markish[] {
  return [
    Plot.rect(sets, {
      x1: 'x',
      x2: 'end',
      y1: ({ from }: DrawnSets) => panel.at(from),
      y2: ({ to }: DrawnSets) => panel.at(to),
      fill: INK,
      fillOpacity: ({ part }: DrawnSets) => SHADES[part],
      stroke: INK,
    }),
  ];
}
