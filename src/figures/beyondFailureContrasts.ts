/** Growth with work after failure minus growth at failure alone, from studies that had both. */
import type { BeyondFailureContrast } from '../model/beyondFailure.ts';
import type { Settings } from '../model/settings.ts';
import { writePercent } from '../numerics/percent.ts';
import type { Figure } from './figure.ts';
import { describeBeyondFailure } from './findings.ts';
import { formatNumber, shownDigits, shownUnit, toShown } from './format.ts';
import { listIntervals } from './intervalList.ts';

const NAMES = { partials: 'shortened range', 'load-drops': 'load drops' } as const;

/** @throws where no contrast could be made */
export function beyondFailureContrasts(contrasts: readonly BeyondFailureContrast[], settings: Settings): Figure {
  const { metric, confidence } = settings;
  const made = contrasts.flatMap(({ kind, difference, studies, rows }) => {
    if (!difference) return [];
    const { estimate, ciLow, ciHigh } = difference;
    const [point, low, high] = [estimate, ciLow, ciHigh].map((value) => toShown(value, metric));
    return [{ name: NAMES[kind], point, low, high, studies, rows }];
  });
  if (made.length === 0) throw new Error(`invalid contrasts; none could be made of ${contrasts.length}`);
  const more = made.filter(({ low }) => low > 0).map(({ name }) => name);
  const less = made.filter(({ high }) => high < 0).map(({ name }) => name);
  const found = [
    more.length > 0 ? `more growth with ${more.join(' and ')}` : '',
    less.length > 0 ? `less growth with ${less.join(' and ')}` : '',
  ].filter(Boolean);
  const title = `Beyond failure: ${found.length > 0 ? `${found.join(', ')} than at failure` : 'no difference in growth from stopping at failure distinguishable from none'}`;
  const sentences = contrasts.map((contrast) => describeBeyondFailure(contrast, settings)).join(' ');
  const caption = `${sentences} Differences inside studies that had both, with ${writePercent(confidence)} intervals.`;
  return {
    plot: listIntervals(made, {
      by: 'name',
      label: `difference in growth, ${shownUnit(metric)} →`,
      colour: 'var(--ink)',
      reference: 0,
      rowHeight: 44,
    }),
    title,
    caption,
    alternative: `${title}. ${caption}`,
    table: {
      columns: ['after failure', `difference in growth (${shownUnit(metric)})`, 'low', 'high', 'studies', 'rows'],
      rows: made.map(({ name, point, low, high, studies, rows }) => [
        name,
        ...[point, low, high].map((value) => formatNumber(value, shownDigits(metric))),
        studies,
        rows,
      ]),
    },
  };
}
