/** Strength: what more reserve and what more load change it by, against the smallest difference worth having. */
import * as Plot from '@observablehq/plot';
import type { Estimate } from '../model/result.ts';
import { JUDGED_REPETITIONS, type Settings } from '../model/settings.ts';
import type { Strength } from '../model/strength.ts';
import { writePercent } from '../numerics/percent.ts';
import { describedByWords, type Figure } from './figure.ts';
import { formatNumber, shownDigits, shownUnit, toShown } from './format.ts';
import { hedge } from './hedge.ts';
import { listIntervals } from './intervalList.ts';
import { SHOWN_POINTS, stateStrength } from './outcomeFindings.ts';

/** @throws where strength could not be fitted */
export function strengthContrasts(strength: Omit<Strength, 'excluded'>, settings: Settings): Figure {
  const { equivalence, load } = strength;
  if (!equivalence || !load) throw new Error(`invalid strength; not fitted: ${strength.failure?.reason}`);
  const { metric, confidence } = settings;
  const lines = [
    toLine(`${JUDGED_REPETITIONS} more in reserve`, equivalence.difference, 1, settings),
    toLine(`${SHOWN_POINTS} points more load`, load, SHOWN_POINTS, settings),
  ];
  const worth = [{ from: toShown(-equivalence.margin, metric), to: toShown(equivalence.margin, metric) }];
  const title = titleOf(equivalence);
  const caption = `${stateStrength(strength, settings)} Shaded: too small to be worth having. Lines are ${writePercent(confidence)} intervals; load is held for reserve, reserve for load.`;
  return describedByWords({
    plot: listIntervals(lines, {
      by: 'name',
      label: `change of strength, ${shownUnit(metric)} →`,
      colour: 'var(--ink)',
      reference: 0,
      rowHeight: 44,
      below: [
        Plot.rectX(worth, { x1: 'from', x2: 'to', fill: 'currentColor', fillOpacity: 0.1 }),
        Plot.text(worth, {
          x: ({ from, to }: (typeof worth)[number]) => (from + to) / 2,
          text: () => 'not worth having',
          frameAnchor: 'top',
          dy: -14,
          fill: 'var(--quiet)',
        }),
      ],
    }),
    title,
    caption,
    table: {
      columns: ['difference', `change of strength (${shownUnit(metric)})`, 'low', 'high'],
      rows: lines.map(({ name, point, low, high }) => [
        name,
        ...[point, low, high].map((value) => formatNumber(value, shownDigits(metric))),
      ]),
    },
  });
}

/** Some of many repetitions or points at once, on the shown scale. */
function toLine(name: string, { estimate, ciLow, ciHigh }: Estimate, times: number, { metric }: Settings) {
  const [point, low, high] = [estimate, ciLow, ciHigh].map((value) => toShown(times * value, metric));
  return { name, point, low, high };
}

function titleOf({ verdict, difference }: NonNullable<Strength['equivalence']>): string {
  const less = difference.estimate < 0;
  switch (verdict) {
    case 'inside':
    case 'inside and apart from 0':
      return `Strength: ${hedge(`${JUDGED_REPETITIONS} more in reserve change it by less than is worth having`, difference)}`;
    case 'apart from 0':
      return `Strength: ${hedge(`${less ? 'less' : 'more'} of it with more in reserve`, difference)}`;
    case 'open':
      return 'Strength: an effect of reserve is neither shown nor ruled out';
  }
}
