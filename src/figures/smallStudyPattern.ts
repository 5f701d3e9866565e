/** Distance from the curve against standard error: whether less precise rows show larger effects. */

import * as Plot from '@observablehq/plot';
import type { SmallStudyPattern } from '../model/checks/smallStudies.ts';
import { type BandName, type Estimate, isUnreliable, LEAST_RELIABLE_DF } from '../model/result.ts';
import type { Metric } from '../model/settings.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';
import { describedByWords, type Figure } from './figure.ts';
import { formatNumber, formatP, formatSlope, slopeUnit, toShownSlope } from './format.ts';
import { LIST_STYLE, LOAD_LOOKS } from './looks.ts';

const WIDTH = 420;
const HEIGHT = 300;

export function smallStudyPattern({ rows, slope, reason }: SmallStudyPattern, band: BandName, metric: Metric): Figure {
  const drawn = rows.flatMap(({ deviation, ...row }) => (deviation === null ? [] : [{ ...row, deviation }]));
  const points = drawn.map(({ line, study, standardError, deviation }) => ({
    line,
    study,
    error: toShownSlope(standardError, metric),
    deviation: toShownSlope(deviation, metric),
  }));
  // Not spread into arguments: a table may hold more rows than a call can take.
  const widest = points.reduce((most, { error }) => Math.max(most, error), 1e-9);
  const unit = slopeUnit(metric);
  const error = metric === 'log-ratio' ? 'standard error' : 'standard error without the effect’s own part';
  const { colour, symbol } = LOAD_LOOKS[band];
  return describedByWords({
    plot: {
      width: WIDTH,
      height: HEIGHT,
      marginLeft: 48,
      marginTop: 28,
      marginRight: 12,
      marginBottom: 44,
      style: LIST_STYLE,
      x: {
        label: `${error}, ${unit} →`,
        labelAnchor: 'center',
        tickSize: 0,
        labelOffset: 38,
        grid: true,
        domain: [0, widest * 1.05],
      },
      y: { label: `distance from the curve, ${unit}`, tickSize: 0, grid: true, inset: 8 },
      marks: [
        Plot.ruleY([0], { stroke: 'currentColor' }),
        Plot.dot(points, { x: 'error', y: 'deviation', symbol, fill: colour, fillOpacity: 0.35, stroke: colour }),
      ],
    },
    title: titleOf(slope),
    caption: `${stateSlope(slope, error, reason)} Rows of ${LOAD_NAMES[band]}; a pattern may come from unpublished small studies, or from small studies that differ in something else.`,
    table: {
      columns: ['line', 'study', `${error} (${unit})`, 'distance from the curve'],
      rows: drawn.map(({ line, study, standardError, deviation }) => [
        line,
        study,
        formatSlope(standardError, metric),
        formatSlope(deviation, metric),
      ]),
    },
  });
}

function titleOf(slope: Estimate | null): string {
  if (slope === null) return 'No pattern could be tested';
  if (slope.ciLow > 0) return 'Less precise rows show larger effects';
  if (slope.ciHigh < 0) return 'Less precise rows show smaller effects';
  return 'No pattern by precision distinguishable from none';
}

/** The slope has no unit: effect on standard error, both on the analysis scale. */
function stateSlope(slope: Estimate | null, error: string, reason: string | null): string {
  if (slope === null) return `Not tested: ${reason}.`;
  const [point, low, high] = [slope.estimate, slope.ciLow, slope.ciHigh].map((value) => formatNumber(value, 2));
  const few = isUnreliable([slope]) ? ` Fewer than ${LEAST_RELIABLE_DF} degrees of freedom: this is unreliable.` : '';
  return `Slope on the ${error} ${point} (${low} to ${high}, p ${formatP(slope.p)}).${few}`;
}
