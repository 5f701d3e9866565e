/** Expected drop of performance along the hours after a session, by reserve, for one training status. */

import * as Plot from '@observablehq/plot';
import type { FatigueByStatus } from '../model/fatigue.ts';
import type { PracticeAnalysis } from '../model/full.ts';
import { chooseTold, wholeHours } from '../practice/recovery.ts';
import { describedByWords, type Figure } from './figure.ts';
import { upperFirst } from './firstLetter.ts';
import { lossInPercent } from './format.ts';
import { hedge } from './hedge.ts';
import { FIGURE_STYLE, HALO } from './looks.ts';
import { stateRecovery } from './outcomeFindings.ts';

export interface RecoveryOptions {
  readonly status: FatigueByStatus['status'];
  /** Hours from the session to an event, marked where given. */
  readonly eventAfter?: number;
  readonly width?: number;
  readonly height?: number;
}

/** Hours after the session at which the picture ends. */
const LAST_HOUR = 96;
/** Where the key to the curves has its lines, hours; its words follow them. */
const KEY_LINE = { x1: 50, x2: 58 };

/** @throws where the analysis knows no people of that training status */
export function recoveryByHours(
  analysis: Pick<PracticeAnalysis, 'fatigue' | 'settings'>,
  { status, eventAfter, width = 420, height = 250 }: RecoveryOptions,
): Figure {
  const { fatigue, settings } = analysis;
  const found = fatigue.byStatus.find((one) => one.status === status);
  if (!found)
    throw new Error(
      `invalid status; the analysis has ${fatigue.byStatus.map((one) => one.status).join(', ')}: ${status}`,
    );
  const lines = chooseTold(found.recovery);
  const points = lines.flatMap(({ reserve, curve }) =>
    curve.map(({ hours, drop }) => ({ reserve, hours, drop: lossInPercent(drop) })),
  );
  const allStarts = fatigue.byStatus.flatMap(({ recovery }) =>
    recovery.map(({ curve }) => lossInPercent(curve[0].drop)),
  );
  const top = Math.max(settings.fatigueMargin * 2, ...allStarts) * 1.15;
  // A fit may expect a gain after sets far from failure.
  const bottom = Math.min(0, ...points.map(({ drop }) => drop));
  /** The curve nearest to failure stands out. */
  const strengthOf = ({ reserve }: { readonly reserve: number }) => (reserve === lines[0].reserve ? 1 : 0.55);
  // The curves fall, so that the upper right is free.
  const key = lines.map(({ reserve }, i) => ({ reserve, at: top - (top - bottom) * (0.04 + 0.1 * i) }));
  const who = upperFirst(status);
  const sentence = stateRecovery(found, settings);
  return describedByWords({
    plot: {
      width,
      height,
      marginLeft: 44,
      marginBottom: 44,
      marginTop: 24,
      marginRight: 84,
      style: FIGURE_STYLE,
      x: {
        label: 'hours after the session →',
        labelAnchor: 'center',
        domain: [0, LAST_HOUR],
        ticks: [0, 24, 48, 72, 96],
        tickSize: 0,
        labelOffset: 38,
      },
      y: { label: 'drop of performance, %', domain: [bottom, top], ticks: 5, grid: true, tickSize: 0 },
      marks: [
        Plot.ruleY([0], { stroke: 'currentColor', strokeOpacity: 0.5 }),
        Plot.ruleY([settings.fatigueMargin], { stroke: 'currentColor', strokeDasharray: '2,4' }),
        Plot.text([`within ${settings.fatigueMargin}\u00a0%`], {
          x: LAST_HOUR,
          y: settings.fatigueMargin,
          dx: 6,
          textAnchor: 'start',
          fill: 'var(--quiet)',
        }),
        ...(eventAfter !== undefined && eventAfter <= LAST_HOUR
          ? [
              Plot.ruleX([eventAfter], { stroke: 'currentColor', strokeWidth: 1.5 }),
              Plot.text(['event'], {
                x: eventAfter,
                y: top,
                dx: 6,
                // Above the key, and otherwise below the name of the axis.
                dy: eventAfter > KEY_LINE.x1 / 2 ? -14 : 4,
                textAnchor: 'start',
                fill: 'var(--ink)',
                ...HALO,
              }),
            ]
          : []),
        Plot.lineY(points, {
          x: 'hours',
          y: 'drop',
          z: 'reserve',
          stroke: 'var(--ink)',
          strokeWidth: 2.5,
          strokeOpacity: strengthOf,
        }),
        Plot.link(key, {
          ...KEY_LINE,
          y1: 'at',
          y2: 'at',
          stroke: 'var(--ink)',
          strokeWidth: 2.5,
          strokeOpacity: strengthOf,
        }),
        Plot.text(key, {
          x: KEY_LINE.x2,
          y: 'at',
          text: ({ reserve }: (typeof key)[number]) => `${reserve} in reserve`,
          dx: 6,
          textAnchor: 'start',
          fill: 'var(--ink)',
          ...HALO,
        }),
      ],
    },
    title: `${who}: ${stateFinding(found)}`,
    caption: `Expected drop of performance against hours after a session. ${sentence}`,
    table: {
      columns: ['reserve (repetitions)', 'hours until recovered', 'interval, low', 'high'],
      rows: found.recovery.map(({ reserve, hours, low, high }) => [
        reserve,
        wholeHours(hours),
        low === null ? 'not limited' : wholeHours(low),
        high === null ? 'not limited' : wholeHours(high),
      ]),
    },
  });
}

/** What is found of reserve, no stronger than its interval and its degrees of freedom allow. */
function stateFinding({ failure, perReserve }: FatigueByStatus): string {
  if (failure) return 'no recovery curve';
  if (perReserve && perReserve.ciHigh < 0) return hedge('back sooner with more in reserve', perReserve);
  if (perReserve && perReserve.ciLow > 0) return hedge('back later with more in reserve', perReserve);
  return 'no effect of reserve on fatigue distinguishable from none';
}
