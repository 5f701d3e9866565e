/** Growth against reserve at the load of one set, as the fit that answers for it gives it, with what is advised marked. */
import * as Plot from '@observablehq/plot';
import type { PracticeAnalysis } from '../model/full.ts';
import type { OpenFit } from '../model/response.ts';
import type { Target } from '../model/result.ts';
import { inferContrast } from '../model/robust.ts';
import type { WholeRange } from '../model/wholeRepetitions.ts';
import { writePercent } from '../numerics/percent.ts';
import { LOAD_NAMES, SOURCE_NAMES } from '../practice/loadNames.ts';
import { describedByWords, type Figure } from './figure.ts';
import { formatNumber, formatPlain, formatTarget, formatWhole, shownDigits, shownUnit, toShown } from './format.ts';
import { LOAD_LOOKS, RESERVE_AXIS, RESERVE_FRAME, TOP_LABEL } from './looks.ts';
import { OUTCOME_WORDS } from './outcomeWords.ts';

export interface GrowthAtLoadOptions {
  /** Per cent of 1RM. */
  readonly load: number;
  readonly target: Target;
  /** Whole repetitions that are advised; null where none are. */
  readonly advised: WholeRange | null;
  /** Repetitions that are really left beyond those said: what is advised is said, and the axis is what is left. Default 0. */
  readonly bias?: number;
  readonly width?: number;
  readonly height?: number;
}

/** Distance of the drawn reserves, repetitions. */
const STEP = 0.25;
/** Repetitions by which a mark of one whole number reaches to either side, so that it can be seen. */
const REACH = 0.12;

/** @param near the fit that answers at the load */
export function growthAtLoad(
  { settings }: Pick<PracticeAnalysis, 'settings'>,
  near: OpenFit,
  { load, target, advised, bias = 0, width = 420, height = 260 }: GrowthAtLoadOptions,
): Figure {
  const { metric, confidence, outcome } = settings;
  const { source, studiedReserve } = near.fit;
  const { colour } = LOAD_LOOKS[source === 'joint' ? 'all' : source];
  const last = Math.floor(studiedReserve.high / STEP + 1e-9);
  const points = Array.from({ length: last + 1 }, (_, i) => {
    const reserve = i * STEP;
    const { estimate, ciLow, ciHigh } = inferContrast(near.inference, near.at(load, reserve), confidence);
    return {
      reserve,
      growth: toShown(estimate, metric),
      low: toShown(ciLow, metric),
      high: toShown(ciHigh, metric),
    };
  });
  const top = points.reduce((most, { high }) => Math.max(most, high), 0);
  const bottom = points.reduce((least, { low }) => Math.min(least, low), 0);
  const floor = bottom - (top - bottom) / 10;
  const place = (said: number) => Math.min(Math.max(0, said + bias), Math.max(studiedReserve.high, said));
  const range = advised && [
    { from: place(advised.least) - REACH, to: place(advised.most) + REACH, words: formatWhole(advised) },
  ];
  const bar = target.shown && [
    {
      at: target.shown.point,
      low: target.shown.low,
      high: target.shown.high ?? studiedReserve.high,
      foot: floor * 0.6 + bottom * 0.4,
    },
  ];
  const where = `${formatPlain(load)}\u00a0% of 1RM`;
  return describedByWords({
    plot: {
      width,
      height,
      ...RESERVE_FRAME,
      x: { ...RESERVE_AXIS, domain: [-REACH * 2, studiedReserve.high + REACH] },
      y: {
        label: `${OUTCOME_WORDS[outcome].effect}, ${shownUnit(metric)}`,
        domain: [floor, top * 1.02],
        ticks: 5,
        grid: true,
        tickSize: 0,
      },
      marks: [
        ...(range
          ? [
              Plot.rectY(range, { x1: 'from', x2: 'to', y1: floor, y2: top, fill: 'var(--ink)', fillOpacity: 0.12 }),
              Plot.text(range, {
                x: 'to',
                text: ({ words }: (typeof range)[number]) => `advised ${words}`,
                ...TOP_LABEL,
                dx: 6,
                textAnchor: 'start',
                fill: 'var(--ink)',
              }),
            ]
          : []),
        Plot.ruleY([0], { stroke: 'currentColor', strokeOpacity: 0.5 }),
        Plot.areaY(points, { x: 'reserve', y1: 'low', y2: 'high', fill: colour, fillOpacity: 0.18 }),
        Plot.lineY(points, { x: 'reserve', y: 'growth', stroke: colour, strokeWidth: 3 }),
        ...(bar
          ? [
              Plot.ruleY(bar, {
                y: 'foot',
                x1: 'low',
                x2: 'high',
                stroke: colour,
                strokeWidth: 5,
                strokeOpacity: 0.55,
              }),
              Plot.dot(bar, { x: 'at', y: 'foot', r: 5.5, fill: colour, stroke: 'var(--paper)', strokeWidth: 1.5 }),
            ]
          : []),
      ],
    },
    title: `${outcome === 'growth' ? 'Growth' : 'Strength'} by reserve at ${where}`,
    caption: [
      `Fitted curve with its ${writePercent(confidence)} band, read from the ${source === 'joint' ? SOURCE_NAMES.joint : `fit of ${LOAD_NAMES[source]}`}.`,
      advised
        ? `Advised: ${formatWhole(advised)} in reserve, shaded${Number(bias.toFixed(1)) === 0 ? '' : ' where so many said are really left'}.`
        : 'No number is advised.',
      target.shown ? `Target ${formatTarget(target)}, the bar at the foot.` : '',
    ]
      .filter(Boolean)
      .join(' '),
    table: {
      columns: [
        'reserve (repetitions)',
        `${OUTCOME_WORDS[outcome].effect} (${shownUnit(metric)})`,
        `${writePercent(confidence)} interval, low`,
        'high',
      ],
      rows: points
        .filter(({ reserve }) => Number.isInteger(reserve))
        .map(({ reserve, growth, low, high }) => [
          reserve,
          ...[growth, low, high].map((value) => formatNumber(value, shownDigits(metric))),
        ]),
    },
  });
}
