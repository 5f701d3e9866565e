/**
 * Reserve known with error: simulation extrapolation (SIMEX; Cook & Stefanski 1994, J Am Stat Assoc
 * 89:1314; variance: Stefanski & Cook 1995, J Am Stat Assoc 90:1247).
 *
 * Not knowing reserve exactly flattens its slope. More error is added on purpose, λ times the variance
 * that `reserve_sd` says is there already, the slope of the straight line is refitted, and its course
 * over λ is continued to λ = −1, where there would be no error. Rows of one arm share their error; a
 * row without `reserve_sd` is taken as exact, and counted.
 */
import { mean, sampleVariance } from 'simple-statistics';
import type { Effect } from '../../evidence/effects.ts';
import { leastSquares } from '../../numerics/leastSquares.ts';
import { makeRandom } from '../../numerics/random.ts';
import type { BandFit } from '../bandFit.ts';
import { fitCarriedArranged } from '../carriedFit.ts';
import type { Observations } from '../observations.ts';
import { measureContrast } from '../robust.ts';
import type { Settings } from '../settings.ts';

export interface ReserveErrorCheck {
  /** Slope of the straight line as fitted, per repetition. */
  readonly naive: number | null;
  /** Slope continued to no error in reserve, with its standard error. */
  readonly corrected: number | null;
  readonly standardError: number | null;
  /** Corrected slope over the fitted one: above 1 where error had flattened it. */
  readonly ratio: number | null;
  /** Mean slope at each multiple of the error variance that was added. */
  readonly course: readonly { readonly lambda: number; readonly slope: number }[];
  readonly rowsWithError: number;
  readonly rowsTakenAsExact: number;
  readonly reason: string | null;
}

const LAMBDAS = [0.5, 1, 1.5, 2] as const;
/** Simulated tables for each λ: the mean slope then moves by a tenth of its spread between tables. */
const TABLES = 100;

/** Of the straight line, whatever the band's curve; `settings.seed` seeds the errors. */
export function correctForReserveError(band: BandFit, settings: Settings): ReserveErrorCheck {
  const { effects, reserves } = band;
  const sds = effects.map(({ arm }) => arm.reserve_sd ?? 0);
  const rowsWithError = sds.filter((sd) => sd > 0).length;
  const counts = { rowsWithError, rowsTakenAsExact: effects.length - rowsWithError };
  const naive = fitLine(band.data, reserves, settings);
  if (!naive || rowsWithError === 0) {
    const reason = naive
      ? 'no row says how well its reserve is known (`reserve_sd`)'
      : 'the straight line could not be fitted';
    return without(naive?.slope ?? null, counts, reason);
  }
  const arms = numberArms(effects);
  const { normal } = makeRandom(settings.seed);
  const points = [{ lambda: 0, slope: naive.slope, variance: naive.variance }];
  for (const lambda of LAMBDAS) {
    const fits = Array.from({ length: TABLES }, () => {
      const errors = Array.from({ length: arms.count }, normal);
      const noisy = reserves.map((reserve, i) => reserve + Math.sqrt(lambda) * sds[i] * errors[arms.ofRow[i]]);
      return fitLine(band.data, noisy, settings);
    }).filter((fit) => fit !== null);
    const slopes = fits.map((fit) => fit.slope);
    if (slopes.length < 2) return without(naive.slope, counts, 'the line could not be fitted with error added');
    const slope = mean(slopes);
    const between = sampleVariance(slopes);
    points.push({ lambda, slope, variance: mean(fits.map((fit) => fit.variance)) - between });
  }
  const corrected = extrapolate(points.map(({ lambda, slope }) => [lambda, slope]));
  const variance = extrapolate(points.map(({ lambda, variance: value }) => [lambda, value]));
  return {
    naive: naive.slope,
    corrected,
    standardError: variance > 0 ? Math.sqrt(variance) : null,
    ratio: naive.slope === 0 ? null : corrected / naive.slope,
    course: points.map(({ lambda, slope }) => ({ lambda, slope })),
    ...counts,
    reason: variance > 0 ? null : 'the continued variance is not above 0, so there is no standard error',
  };
}

/** The check where nothing could be corrected, with the reason. */
function without(
  naive: number | null,
  counts: Pick<ReserveErrorCheck, 'rowsWithError' | 'rowsTakenAsExact'>,
  reason: string,
): ReserveErrorCheck {
  return { naive, corrected: null, standardError: null, ratio: null, course: [], ...counts, reason };
}

/** Arms numbered as they come: those of each row, which share one error of reserve. */
function numberArms(effects: readonly Effect[]): { readonly ofRow: readonly number[]; readonly count: number } {
  const numbers = new Map<string, number>();
  const ofRow = effects.map(({ arm }) => {
    const key = JSON.stringify([arm.study, arm.arm, arm.exercise]);
    const number = numbers.get(key) ?? numbers.size;
    numbers.set(key, number);
    return number;
  });
  return { ofRow, count: numbers.size };
}

function fitLine(data: Observations, reserves: readonly number[], settings: Settings) {
  const columns = [reserves.map(() => 1), reserves];
  const { fit } = fitCarriedArranged(data, columns, { ...settings, answerOnly: true });
  if (!fit) return null;
  const { estimate, standardError } = measureContrast(fit.inference, [0, 1]);
  return { slope: estimate, variance: standardError ** 2 };
}

/** Value at λ = −1 of the parabola through the points by least squares. */
function extrapolate(points: readonly (readonly [number, number])[]): number {
  const lambdas = points.map(([lambda]) => lambda);
  const columns = [0, 1, 2].map((power) => Float64Array.from(lambdas, (lambda) => lambda ** power));
  const [a, b, c] = leastSquares(
    columns,
    Float64Array.from(points, ([, value]) => value),
  ).coefficients;
  return a - b + c;
}
