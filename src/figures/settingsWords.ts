/** The settings of an analysis in words, for a reader who has only the figure. */
import { FILTER_KEYS, FILTERS } from '../model/filters.ts';
import type { Band } from '../model/result.ts';
import type { Adjustment, Settings } from '../model/settings.ts';
import { writePercent } from '../numerics/percent.ts';
import { shownUnit } from './format.ts';

const METRIC_WORDS = { 'log-ratio': 'log ratio, shown as per cent change', standardised: 'baseline SDs' } as const;
/** Shapes of the curve by name. */
export const CURVE_WORDS = {
  flexible: 'flexible curve',
  line: 'straight line',
  log: 'logarithm',
  quadratic: 'parabola',
  spline: 'spline',
} as const satisfies Readonly<Record<Settings['curve'], string>>;
/** What the shapes are to one another. */
export const SHAPES_NOTE =
  'The flexible curve (1, r, r², ln(1 + r)) assumes no shape; straight line, logarithm and parabola are special cases of it.';

/** Which curve stands for the one that was asked for; empty where that was fitted. */
export function stateSimplerCurve(
  { curve, failure }: Pick<Band, 'curve' | 'failure'>,
  settings: Pick<Settings, 'curve'>,
): string {
  if (failure || curve === settings.curve) return '';
  return `A ${CURVE_WORDS[curve]} was fitted: a ${CURVE_WORDS[settings.curve]} needs four different reserves.`;
}

const WEIGHTING_WORDS = {
  mixed: 'mixed model (REML), robust intervals (CR2)',
  precision: 'by precision only',
  equal: 'all rows equal',
} as const;

/** What stands in for SDs that rows do not print. */
export const MISSING_SDS_WORDS = {
  missing: 'the pooled spread of the measure, where a row prints none',
  all: 'the pooled spread of the measure, for all rows with means',
} as const;

/** “training status”: a covariate as the menu of Evidence calls it. */
export function nameAdjustment(name: Adjustment): string {
  return name.replaceAll('-', ' ');
}

/** Pairs of what and how, in the order of the calculation. */
export function stateSettings(settings: Settings): readonly (readonly [name: string, value: string])[] {
  const {
    outcome,
    metric,
    split,
    curve,
    weighting,
    rho,
    assumedCorrelation,
    adjust,
    keptShare,
    confidence,
    missingSds,
  } = settings;
  return [
    ['Fitted against reserve', outcome],
    ['Effect of a row', METRIC_WORDS[metric]],
    ['Rows kept', stateFilters(settings)],
    ['Loads', split === null ? 'fitted together' : `light below ${split}\u00a0% of 1RM, heavy from there`],
    ['Curve', CURVE_WORDS[curve]],
    ['Weights', WEIGHTING_WORDS[weighting]],
    ['Adjusted for', adjust.map(nameAdjustment).join(', ') || 'nothing'],
    ['Errors of the same people correlate', String(rho)],
    [
      'Before and after correlate, where not reported',
      Object.entries(assumedCorrelation)
        .map(([of, value]) => `${of} ${value}`)
        .join(', '),
    ],
    ...(missingSds === 'off' ? [] : [['Missing SDs', MISSING_SDS_WORDS[missingSds]] as const]),
    ['Growth to keep', writePercent(keptShare)],
    ['Intervals', writePercent(confidence)],
    ['Smallest strength difference worth having', stateWorth(settings)],
    ['Recovered within', `${settings.fatigueMargin}\u00a0%`],
  ];
}

function stateWorth({ metric, smallestWorthwhile }: Settings): string {
  return `${smallestWorthwhile[metric]}\u00a0${shownUnit(metric)}`;
}

function stateFilters({ include }: Settings): string {
  const lists: readonly (readonly [name: string, values: readonly string[]])[] = [
    ...FILTER_KEYS.map((key) => [FILTERS[key].name, include[key]] as const),
    ['without', include.withoutStudies],
  ];
  const kept = lists.flatMap(([name, values]) => (values.length > 0 ? [`${name} ${values.join(', ')}`] : []));
  const { yearFrom, yearTo } = include;
  const years = [yearFrom === null ? '' : `from ${yearFrom}`, yearTo === null ? '' : `up to ${yearTo}`].filter(Boolean);
  return [...kept, ...years].join('; ') || 'all';
}
