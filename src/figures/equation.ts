/** A band's fitted curve written out with its numbers. */
import type { Analysis, Band } from '../model/result.ts';
import { formatNumber, formatSlope, toShownSlope } from './format.ts';

/** Of a term: one more than in the table, since those of r² are small. */
const DIGITS = { 'log-ratio': 3, standardised: 4 } as const;

/** “100 ln(after / before) = 7.50 − 0.54 · reserve”, in the unit of all coefficients; null where nothing was fitted. */
export function writeEquation({ coefficients }: Band, { settings }: Pick<Analysis, 'settings'>): string | null {
  const [intercept, ...slopes] = coefficients;
  if (!intercept) return null;
  const { metric } = settings;
  const left = metric === 'log-ratio' ? '100 ln(after / before)' : 'change in baseline SDs';
  const terms = slopes.map(
    ({ term, estimate }) =>
      `${estimate < 0 ? '−' : '+'} ${formatNumber(Math.abs(toShownSlope(estimate, metric)), DIGITS[metric])} · ${nameFactor(term)}`,
  );
  return [`${left} = ${formatSlope(intercept.estimate, metric)}`, ...terms].join(' ');
}

/** Terms of the curve are made of reserve; all others are covariates, which are centred. */
function nameFactor(term: string): string {
  return term.includes('reserve') ? term : `(${term} − mean)`;
}
