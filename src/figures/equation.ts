/** A band's fitted curve written out with its numbers. */
import type { Analysis, Band } from '../model/result.ts';
import { formatNumber } from './format.ts';

/** “ln(after / before) = 0.0750 − 0.0054 · reserve”; null where nothing was fitted. */
export function writeEquation({ coefficients }: Band, { settings }: Pick<Analysis, 'settings'>): string | null {
  const [intercept, ...slopes] = coefficients;
  if (!intercept) return null;
  const left = settings.metric === 'log-ratio' ? 'ln(after / before)' : 'change in baseline SDs';
  const terms = slopes.map(
    ({ term, estimate }) => `${estimate < 0 ? '−' : '+'} ${formatNumber(Math.abs(estimate), 5)} · ${term}`,
  );
  return [`${left} = ${formatNumber(intercept.estimate, 4)}`, ...terms].join(' ');
}
