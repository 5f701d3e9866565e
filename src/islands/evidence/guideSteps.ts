/**
 * Learning by changing one thing: a sequence of steps, each of which sets the controls and asks the
 * reader to look at one thing. The sentence of each step is computed from whatever table is loaded.
 */

import { formatNumber, formatRange } from '../../figures/format.ts';
import { listBands } from '../../model/bands.ts';
import type { Analysis, Band } from '../../model/result.ts';
import type { Settings } from '../../model/settings.ts';
import { countOf } from '../../numerics/countOf.ts';
import { SPLIT } from './controlList.ts';

interface GuideStep {
  readonly title: string;
  /** What to look at. */
  readonly ask: string;
  /** Settings of the step, from those the guide started with and the analysis of them. */
  readonly apply: (start: Settings, analysis: Analysis) => Settings;
}

export const GUIDE_STEPS: readonly GuideStep[] = [
  {
    title: 'Count every row alike',
    ask: 'Equal weights: a study of eight people counts like one of eighty. Look at the sizes of the marks.',
    apply: (start) => ({ ...start, weighting: 'equal' }),
  },
  {
    title: 'Count by precision',
    ask: 'Each row counts by how exactly it was measured, and nothing else. Look at which marks grow, and where they pull the curve.',
    apply: (start) => ({ ...start, weighting: 'precision' }),
  },
  {
    title: 'Take out the study that counts most',
    ask: 'Still by precision, without the study of most weight. If the curve moves, one study had been speaking for all.',
    apply: (start, analysis) => withoutStudy({ ...start, weighting: 'precision' }, mostPrecise(analysis)),
  },
  {
    title: 'Let studies differ',
    ask: 'The mixed model knows that studies differ by more than their own error, and shares the weight out. Compare the bands with the last two steps.',
    apply: (start) => ({ ...start, weighting: 'mixed' }),
  },
  {
    title: 'Straighten or bend',
    ask: 'A straight line loses as much with the tenth repetition as with the first; the flexible curve need not. A line’s band is narrower because it takes its shape as known.',
    apply: (start) => ({ ...start, weighting: 'mixed', curve: start.curve === 'line' ? 'flexible' : 'line' }),
  },
  {
    title: 'Move the split',
    ask: 'Up to ten points higher, some studies change from heavy to light. A target that jumps was resting on the split.',
    apply: (start) => ({ ...start, split: Math.min(SPLIT.max, (start.split ?? SPLIT.usual) + 10) }),
  },
  {
    title: 'Leave out one study',
    ask: 'Under the mixed model, without the study that stands furthest from the heavy curve at failure. See the panel “Without each study” for all of them.',
    apply: (start, analysis) => withoutStudy({ ...start, weighting: 'mixed' }, mostExtreme(analysis)),
  },
  {
    title: 'Doubt the reserve',
    ask: 'Only studies that measured reserve, by asking or by the slowing of the bar. Fewer rows, wider bands; see the panel “Reserve known with error” for what not knowing does to the slope.',
    apply: (start) => ({ ...start, include: { ...start.include, reserveBasis: ['reported', 'velocity-loss'] } }),
  },
];

/** What moved between two analyses, in one sentence a band. */
export function stateChange(before: Analysis, after: Analysis): string {
  const old = new Map(listBands(before.bands));
  const sentences = listBands(after.bands).map(([name, now]) => stateBandChange(name, old.get(name), now));
  const rows = after.rows.included - before.rows.included;
  const counted =
    rows === 0
      ? ''
      : ` ${countOf(Math.abs(rows), 'row')} ${rows < 0 ? 'fewer' : 'more'} ${Math.abs(rows) === 1 ? 'is' : 'are'} fitted.`;
  return `Against where you started: ${sentences.join(' ')}${counted}`;
}

/** @param old undefined where these loads had no fit of their own before */
function stateBandChange(name: string, old: Band | undefined, now: Band): string {
  if (now.failure) return `With ${name} loads nothing can be fitted: ${now.failure.reason}.`;
  const show = ({ target: { point, low, high } }: Band) =>
    point === null ? 'none' : `${formatNumber(point, 1)} (${formatRange(low, high, 1)})`;
  if (!old) return `With ${name} loads, now fitted apart, the target is ${show(now)}.`;
  if (show(old) === show(now)) return `With ${name} loads the target stays at ${show(now)}.`;
  return `With ${name} loads the target goes from ${show(old)} to ${show(now)}.`;
}

/** Those that the reader left out stay out: a step changes one thing. */
function withoutStudy({ include, ...settings }: Settings, study: string | null): Settings {
  const more = study === null ? [] : [study];
  return { ...settings, include: { ...include, withoutStudies: [...include.withoutStudies, ...more] } };
}

/** Study with the largest sum of 1/v, which is what precision weighs by. */
function mostPrecise(analysis: Analysis): string | null {
  const sums = new Map<string, number>();
  for (const { study, standardError } of listBands(analysis.bands).flatMap(([, band]) => band.fitted))
    sums.set(study, (sums.get(study) ?? 0) + standardError ** -2);
  return [...sums].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;
}

/** Study of the row near failure that lies furthest from the growth fitted there. */
function mostExtreme(analysis: Analysis): string | null {
  const band: Band = 'all' in analysis.bands ? analysis.bands.all : analysis.bands.heavy;
  const growth = band.atFailure?.estimate ?? 0;
  const near = band.fitted.filter(({ reserve }) => reserve < 1);
  return [...near].sort((a, b) => Math.abs(b.effect - growth) - Math.abs(a.effect - growth))[0]?.study ?? null;
}
