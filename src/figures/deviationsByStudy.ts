/** How far each study lies above or below the curve. */

import type { StudyDeviation } from '../model/checks/studies.ts';
import type { BandName } from '../model/result.ts';
import type { Settings } from '../model/settings.ts';
import { countStudies } from '../numerics/countOf.ts';
import { writePercent } from '../numerics/percent.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';
import { describedByWords, type Figure } from './figure.ts';
import { formatSlope, slopeUnit, toShownSlope } from './format.ts';
import { listIntervals } from './intervalList.ts';
import { LOAD_LOOKS } from './looks.ts';

export function deviationsByStudy(
  deviations: readonly StudyDeviation[],
  band: BandName,
  { metric, confidence, weighting }: Pick<Settings, 'metric' | 'confidence' | 'weighting'>,
): Figure {
  const sorted = [...deviations].sort((a, b) => b.deviation - a.deviation);
  const lines = sorted.map(({ study, deviation, low, high }) => {
    const [point, from, to] = [deviation, low, high].map((value) => toShownSlope(value, metric));
    return { study, point, low: from, high: to };
  });
  const outside = lines.filter(({ low, high }) => low > 0 || high < 0).length;
  const one = outside === 1 || lines.length === 1;
  const behind =
    weighting === 'mixed'
      ? 'sampling error and the variance between rows'
      : 'sampling error; this weighting estimates no variance between rows';
  return describedByWords({
    plot: listIntervals(lines, {
      by: 'study',
      reference: 0,
      label: `distance, ${slopeUnit(metric)} →`,
      ...LOAD_LOOKS[band],
    }),
    title: `${outside} of ${countStudies(lines.length)} ${one ? 'lies' : 'lie'} off the curve by more than ${one ? 'its' : 'their'} own error`,
    caption: `Mean distance of each study's rows from the fitted curve, ${LOAD_NAMES[band]}, with its ${writePercent(confidence)} interval from ${behind}.`,
    table: {
      columns: ['study', `distance (${slopeUnit(metric)})`, 'low', 'high'],
      rows: sorted.map(({ study, deviation, low, high }) => [
        study,
        ...[deviation, low, high].map((value) => formatSlope(value, metric)),
      ]),
    },
  });
}
