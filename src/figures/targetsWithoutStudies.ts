/** The target without each study, one by one. */

import type { Influence } from '../model/checks/influence.ts';
import type { BandName, Target } from '../model/result.ts';
import { countStudies } from '../numerics/countOf.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';
import { describedByWords, type Figure } from './figure.ts';
import { statePlace } from './findings.ts';
import { formatNumber, formatRange } from './format.ts';
import { listIntervals, OPEN_INTERVALS } from './intervalList.ts';
import { LOAD_LOOKS } from './looks.ts';

/** @param furthest largest reserve studied, repetitions, to which intervals without an upper end are drawn */
export function targetsWithoutStudies(
  { studies }: Influence,
  target: Target,
  furthest: number,
  band: BandName,
): Figure {
  const found = studies
    .flatMap(({ study, targetWithout: { point, low, high } }) =>
      point === null || low === null ? [] : [{ study, point, low, high }],
    )
    .sort((a, b) => b.point - a.point);
  const lost = studies.length - found.length;
  const caption = [
    `Target and interval for ${LOAD_NAMES[band]} with each study left out;`,
    target.point === null
      ? 'with all studies there is none.'
      : `the line is the target of all studies, ${formatNumber(target.point, 1)}.`,
    lost > 0 ? `Without ${countStudies(lost)}, one at a time, there is no target.` : '',
    found.some(({ high }) => high === null) ? OPEN_INTERVALS : '',
  ];
  return describedByWords({
    plot: listIntervals(
      found.map((line) => ({ ...line, high: line.high ?? furthest })),
      { by: 'study', reference: target.point, label: 'target without the study →', ...LOAD_LOOKS[band] },
    ),
    title: titleOf(
      found.map(({ point }) => point),
      lost,
    ),
    caption: caption.filter(Boolean).join(' '),
    table: {
      columns: ['study left out', 'target', 'interval', 'distance (Cook)'],
      rows: studies.map(({ study, targetWithout, cooksDistance }) => [
        study,
        targetWithout.point === null ? 'none' : formatNumber(targetWithout.point, 2),
        formatRange(targetWithout.low, targetWithout.high, 2),
        cooksDistance === null ? 'none' : formatNumber(cooksDistance, 2),
      ]),
    },
  });
}

/** “Without any one study the target lies from 1.3 to 1.5”, and where it is lost. */
function titleOf(points: readonly number[], lost: number): string {
  if (points.length === 0) return 'Without any one study there is no target';
  const range = statePlace(Math.min(...points), Math.max(...points));
  return lost === 0
    ? `Without any one study the target lies ${range}`
    : `Without one study the target lies ${range}, or is lost (${lost} of ${points.length + lost})`;
}
