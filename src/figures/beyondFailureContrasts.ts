/** Growth with work after failure minus growth at failure alone, from studies that had both. */
import type { BeyondFailureContrast } from '../model/beyondFailure.ts';
import type { Settings } from '../model/settings.ts';
import { writePercent } from '../numerics/percent.ts';
import { describedByWords, type Figure } from './figure.ts';
import { formatNumber, shownDigits, shownUnit, toShown } from './format.ts';
import { hedge } from './hedge.ts';
import { listIntervals } from './intervalList.ts';
import { stateBeyondFailure } from './outcomeFindings.ts';

const NAMES = {
  partials: 'shortened range',
  'load-drops': 'load drops',
  'rest-pause': 'rest and more',
  assisted: 'with help',
} as const;

/** @throws where no contrast could be made */
export function beyondFailureContrasts(contrasts: readonly BeyondFailureContrast[], settings: Settings): Figure {
  const { metric, confidence } = settings;
  const made = contrasts.flatMap(({ kind, difference, studies, rows }) => {
    if (!difference) return [];
    const { estimate, ciLow, ciHigh } = difference;
    const [point, low, high] = [estimate, ciLow, ciHigh].map((value) => toShown(value, metric));
    return [{ name: NAMES[kind], point, low, high, df: difference.df, studies, rows }];
  });
  if (made.length === 0) throw new Error(`invalid contrasts; none could be made of ${contrasts.length}`);
  const title = `Beyond failure: ${stateFinding(made)}`;
  const sentences = contrasts.map((contrast) => stateBeyondFailure(contrast, settings)).join(' ');
  const caption = `${sentences} Differences inside studies that had both, with ${writePercent(confidence)} intervals.`;
  return describedByWords({
    // What is not drawn is no part of the numbers that go with the picture.
    plot: listIntervals(
      made.map(({ df: _df, ...line }) => line),
      {
        by: 'name',
        label: `difference in growth, ${shownUnit(metric)} →`,
        colour: 'var(--ink)',
        reference: 0,
        rowHeight: 44,
      },
    ),
    title,
    caption,
    table: {
      columns: ['after failure', `difference in growth (${shownUnit(metric)})`, 'low', 'high', 'studies', 'rows'],
      rows: made.map(({ name, point, low, high, studies, rows }) => [
        name,
        ...[point, low, high].map((value) => formatNumber(value, shownDigits(metric))),
        studies,
        rows,
      ]),
    },
  });
}

/** What is apart from stopping at failure, no stronger than intervals and degrees of freedom allow. */
function stateFinding(
  made: readonly { readonly name: string; readonly low: number; readonly high: number; readonly df: number }[],
): string {
  const more = made.filter(({ low }) => low > 0);
  const less = made.filter(({ high }) => high < 0);
  const [first, ...others] = [...more, ...less];
  if (!first) return 'no difference in growth from stopping at failure distinguishable from none';
  const say = (what: string, found: typeof more) =>
    found.length > 0 ? [`${what} growth with ${found.map(({ name }) => name).join(' and ')}`] : [];
  const finding = `${[...say('more', more), ...say('less', less)].join(', ')} than at failure`;
  return hedge(finding, { df: others.reduce((least, { df }) => Math.min(least, df), first.df) });
}
