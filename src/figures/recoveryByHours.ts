/** Expected drop of performance along the hours after a session, by reserve, for one training status. */
import * as Plot from '@observablehq/plot';
import type { FatigueByStatus } from '../model/fatigue.ts';
import type { PracticeAnalysis } from '../model/full.ts';
import { isUnreliable } from '../model/result.ts';
import type { Figure } from './figure.ts';
import { describeRecovery } from './findings.ts';
import { formatNumber } from './format.ts';

export interface RecoveryOptions {
  readonly status: FatigueByStatus['status'];
  /** Hours from the session to an event, marked where given. */
  readonly eventAfter?: number;
  readonly width?: number;
  readonly height?: number;
}

/** Reserves drawn, where they were studied: at failure, and well short of it. */
const DRAWN = [0, 3] as const;
/** Hours after the session at which the picture ends. */
const LAST_HOUR = 96;

export function recoveryByHours(
  analysis: Pick<PracticeAnalysis, 'fatigue' | 'settings'>,
  { status, eventAfter, width = 480, height = 260 }: RecoveryOptions,
): Figure {
  const { fatigue, settings } = analysis;
  const found = fatigue.byStatus.find((one) => one.status === status);
  if (!found)
    throw new Error(
      `invalid status; the analysis has ${fatigue.byStatus.map((one) => one.status).join(', ')}: ${status}`,
    );
  const lines = found.recovery.filter(({ reserve }) => DRAWN.some((one) => one === reserve));
  const points = lines.flatMap(({ reserve, curve }) =>
    curve.map(({ hours, drop }) => ({ reserve, hours, drop: lossInPercent(drop) })),
  );
  const starts = lines.map(({ reserve, curve }) => ({
    reserve,
    hours: curve[0].hours,
    drop: lossInPercent(curve[0].drop),
  }));
  const allStarts = fatigue.byStatus.flatMap(({ recovery }) =>
    recovery.map(({ curve }) => lossInPercent(curve[0].drop)),
  );
  const top = Math.max(settings.fatigueMargin * 2, ...allStarts) * 1.15;
  const who = status === 'trained' ? 'Trained' : 'Untrained';
  const sentence = describeRecovery(found, settings);
  return {
    plot: {
      width,
      height,
      marginLeft: 44,
      marginBottom: 44,
      marginTop: 24,
      marginRight: 84,
      style: { fontSize: '14px', fontFamily: 'var(--sans)', background: 'none', color: 'var(--ink)' },
      x: {
        label: 'hours after the session →',
        labelAnchor: 'center',
        domain: [0, LAST_HOUR],
        ticks: [0, 24, 48, 72, 96],
        tickSize: 0,
        labelOffset: 38,
      },
      y: { label: 'drop of performance, %', domain: [0, top], ticks: 5, grid: true, tickSize: 0 },
      marks: [
        Plot.ruleY([0], { stroke: 'currentColor', strokeOpacity: 0.5 }),
        Plot.ruleY([settings.fatigueMargin], { stroke: 'currentColor', strokeDasharray: '2,4' }),
        Plot.text([`within ${settings.fatigueMargin} %`], {
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
                dy: 4,
                textAnchor: 'start',
                fill: 'var(--ink)',
                stroke: 'var(--paper)',
                strokeWidth: 4,
              }),
            ]
          : []),
        Plot.lineY(points, {
          x: 'hours',
          y: 'drop',
          z: 'reserve',
          stroke: 'var(--ink)',
          strokeWidth: 2.5,
          strokeOpacity: (point: { reserve: number }) => (point.reserve === 0 ? 1 : 0.55),
        }),
        Plot.text(starts, {
          x: 'hours',
          y: 'drop',
          text: ({ reserve }: (typeof starts)[number]) => `${reserve} in reserve`,
          dx: 8,
          dy: -9,
          textAnchor: 'start',
          fill: 'var(--ink)',
          stroke: 'var(--paper)',
          strokeWidth: 4,
        }),
      ],
    },
    title: `${who}: ${stateFinding(found)}`,
    caption: sentence,
    alternative: `Expected drop of performance against hours after a session. ${sentence}`,
    table: {
      columns: ['reserve (repetitions)', 'hours until recovered', 'interval, low', 'high'],
      rows: found.recovery.map(({ reserve, hours, low, high }) => [
        reserve,
        formatNumber(hours, 0),
        low === null ? 'not limited' : formatNumber(low, 0),
        high === null ? 'not limited' : formatNumber(high, 0),
      ]),
    },
  };
}

/** What is found of reserve, no stronger than its interval and its degrees of freedom allow. */
function stateFinding({ failure, perReserve }: FatigueByStatus): string {
  if (failure) return 'no recovery curve';
  if (perReserve === null || perReserve.ciHigh >= 0) return 'no effect of reserve on fatigue distinguishable from none';
  return isUnreliable([perReserve])
    ? 'back sooner with more in reserve, if so few studies can be relied on'
    : 'back sooner with more in reserve';
}

/** A drop on the log scale as a loss in per cent. */
function lossInPercent(drop: number): number {
  return -100 * Math.expm1(-drop);
}
