/** What a paper would print of one measurement, in one of the ways papers report a change. */

import { changeSd, standardErrorFromInterval } from '../../src/evidence/recover.ts';
import { smallSampleFactor } from '../../src/evidence/smallSampleFactor.ts';
import { studentTwoSidedP } from '../../src/numerics/distributions.ts';
import type { Reporting } from './plan.ts';

export interface Measured {
  readonly n: number;
  readonly baselineMean: number;
  readonly baselineSd: number;
  readonly followupMean: number;
  readonly followupSd: number;
  readonly correlation: number;
}

type Cells = Readonly<Record<string, number | string>>;

/**
 * The cells of a row, rounded as papers round: two decimals for means and SDs, three for the spread of
 * a change, three significant digits for p and for variances.
 *
 * Formulas: spread of a change as in the Cochrane Handbook, chapter 6; variance of a log ratio of paired
 * means, Lajeunesse 2011, eq. 6; variance of a standardised mean change, Becker 1988, eq. 13.
 *
 * @param measured means and SDs in the measure's own unit, n people (at least 2), correlation in (−1, 1)
 */
export function report(measured: Measured, reporting: Reporting): Cells {
  const { n, correlation: r } = measured;
  const [m1, m2, s1, s2] = [measured.baselineMean, measured.followupMean, measured.baselineSd, measured.followupSd].map(
    round2,
  );
  const change = round2(m2 - m1);
  const sd = changeSd(measured.baselineSd, measured.followupSd, r);
  const se = sd / Math.sqrt(n);
  const before = { baseline_mean: m1, baseline_sd: s1 };
  const after = { followup_mean: m2, followup_sd: s2 };
  switch (reporting) {
    case 'means, SDs and correlation':
      return { ...before, ...after, correlation: round2(r) };
    case 'means and SDs':
      return { ...before, ...after };
    case 'change SD':
      return { ...before, change_mean: change, change_sd: round3(sd) };
    case 'change SE':
      return { ...before, change_mean: change, change_se: round3(se) };
    case 'change interval': {
      // Width of an interval per standard error: what the recovery divides by.
      const half = se / (2 * standardErrorFromInterval(0, 1, n));
      return {
        ...before,
        change_mean: change,
        change_ci_low: round3(change - half),
        change_ci_high: round3(change + half),
      };
    }
    case 'change t':
      return { ...before, change_mean: change, change_t: round2(change / se) };
    case 'change p':
      return { ...before, change_mean: change, change_p: Number(studentTwoSidedP(change / se, n - 1).toPrecision(3)) };
    case 'three SDs':
      return { ...before, ...after, change_sd: round3(sd) };
    case 'log ratio': {
      const variance = (s1 / m1) ** 2 / n + (s2 / m2) ** 2 / n - (2 * r * s1 * s2) / (n * m1 * m2);
      return {
        effect: round4(Math.log(m2 / m1)),
        effect_variance: Number(variance.toPrecision(3)),
        effect_metric: 'log-ratio',
      };
    }
    case 'standardised': {
      const d = (smallSampleFactor(n - 1) * (m2 - m1)) / s1;
      const variance = (2 * (1 - r)) / n + d ** 2 / (2 * n);
      return { effect: round3(d), effect_variance: Number(variance.toPrecision(3)), effect_metric: 'standardised' };
    }
  }
}

const rounded = (digits: number) => (value: number) => Number(value.toFixed(digits));
const round2 = rounded(2);
const round3 = rounded(3);
const round4 = rounded(4);
