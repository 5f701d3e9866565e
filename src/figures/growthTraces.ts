/**
 * What can stand beside the curve of growth against reserve: the curve, band and target that a move left, and where the
 * truth of a new study would lie.
 */
import * as Plot from '@observablehq/plot';
import type { Analysis, Band, BandName } from '../model/result.ts';
import { drawnLow } from '../model/wholeRepetitions.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';
import { formatTarget, toShown } from './format.ts';
import { bandsAgainst, isComparable } from './moved.ts';
import { endMarks } from './targetMarks.ts';

/** A curve with its band, as it is drawn. */
export interface DrawnPoint {
  readonly reserve: number;
  readonly growth: number;
  readonly low: number;
  readonly high: number;
}

export interface FormerCurve {
  readonly name: BandName;
  readonly band: Band;
  readonly points: readonly DrawnPoint[];
}

/** The interval for the average of all studies, or that for the truth of a new one. */
export function drawPoints(
  { curvePoints }: Band,
  settings: Analysis['settings'],
  of: 'average' | 'new study',
): DrawnPoint[] {
  return curvePoints.flatMap(({ reserve, estimate, ciLow, ciHigh, predictionLow, predictionHigh }) => {
    const [low, high] = of === 'average' ? [ciLow, ciHigh] : [predictionLow, predictionHigh];
    if (low === null || high === null) return [];
    const [growth, from, to] = [estimate, low, high].map((effect) => toShown(effect, settings.metric));
    return { reserve, growth, low: from, high: to };
  });
}

/** Curves of another analysis to be drawn beside a band's; none where they are of another outcome or unit. */
export function formerCurves(former: Analysis | undefined, analysis: Analysis, name: BandName): readonly FormerCurve[] {
  if (!former || !isComparable(former, analysis)) return [];
  return bandsAgainst(former, name)
    .filter(([, { curvePoints }]) => curvePoints.length > 0)
    .map(([one, band]) => ({ name: one, band, points: drawPoints(band, former.settings, 'average') }));
}

const TRACE = 'var(--ink)';
/** Radius of the former target's mark, and half the height of the ends of its interval, short of the bar below. Pixels. */
const FORMER_RADIUS = 4;
const FORMER_END = 6;

/** Pale and dashed, so that it is told from the curve on grey paper too. @param height of the first target's bar, and between bars, in the unit of growth */
export function formerMarks(
  curves: readonly FormerCurve[],
  height: { readonly first: number; readonly step: number },
): Plot.Markish[] {
  return curves.flatMap(({ band, points }, i) => {
    const { point, high } = band.target;
    const low = drawnLow(band.target);
    const bar =
      point === null || low === null
        ? []
        : [
            {
              before: point,
              low,
              high: high ?? band.studiedReserve?.high ?? point,
              height: height.first + i * height.step,
            },
          ];
    return [
      Plot.areaY(points, { x: 'reserve', y1: 'low', y2: 'high', fill: TRACE, fillOpacity: 0.08 }),
      Plot.lineY(points, {
        x: 'reserve',
        y: 'growth',
        stroke: TRACE,
        strokeOpacity: 0.55,
        strokeWidth: 2,
        strokeDasharray: '6,4',
      }),
      Plot.ruleY(bar, { y: 'height', x1: 'low', x2: 'high', stroke: TRACE, strokeWidth: 3, strokeOpacity: 0.35 }),
      Plot.dot(bar, {
        x: 'before',
        y: 'height',
        r: FORMER_RADIUS,
        fill: 'var(--paper)',
        stroke: TRACE,
        strokeOpacity: 0.6,
        strokeWidth: 1.5,
      }),
      ...endMarks(bar, high, { r: FORMER_END, stroke: TRACE, strokeOpacity: 0.6, strokeWidth: 1.5 }),
    ];
  });
}

/** Where the truth of a new study would lie, around the band of the average. */
export function newStudyMarks(points: readonly DrawnPoint[], colour: string): Plot.Markish[] {
  const edge = { x: 'reserve', stroke: colour, strokeWidth: 1.25, strokeDasharray: '1,3' } as const;
  return [Plot.lineY(points, { ...edge, y: 'low' }), Plot.lineY(points, { ...edge, y: 'high' })];
}

/** What the trace is, for the caption; empty where there is none. */
export function stateFormer(curves: readonly FormerCurve[], former: Analysis | undefined, analysis: Analysis): string {
  if (!former) return '';
  if (!isComparable(former, analysis)) return 'What stood before is of another outcome or unit, and is not drawn.';
  if (curves.length === 0) return 'Before, there was no curve.';
  const [{ band, name }] = curves;
  const which =
    curves.length === 1 && !(name === 'all' && !('all' in analysis.bands))
      ? ''
      : ` (${curves.map((one) => LOAD_NAMES[one.name]).join(' and ')})`;
  const target = curves.length === 1 && band.target.shown ? `, target ${formatTarget(band.target)}` : '';
  return `Pale and dashed: before the move${which}${target}.`;
}

/** Which interval says what; why only one is there where a weighting estimates no spread between studies. */
export function stateIntervals(points: readonly DrawnPoint[]): string {
  return points.length === 0
    ? 'This weighting estimates no spread between studies, so that nothing can be said of a new one.'
    : 'The shaded band is for the average of all such studies: use it to choose a reserve for many people. The dotted lines are for the true effect of one new study: use them for what a single study or squad may find. Neither is for one person, who differs more.';
}
