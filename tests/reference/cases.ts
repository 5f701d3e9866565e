/**
 * Reference cases for the multilevel dose-response: data and values computed with a dense engine in
 * base R 4.2.2 (engine.R beside this file: full n×n matrices, no shortcuts), each likelihood,
 * coefficient, covariance and set endpoint recomputed there with 50 digits from the data.
 *
 * bcg: the 13 BCG vaccine trials (Colditz et al. 1994, JAMA 271:698; Berkey et al. 1995, Stat Med
 * 14:395). sim1, sim4, sim7: simulated, with ρ = 0, 0.5 and 0.8.
 */
import { readFileSync } from 'node:fs';
import { makeCurve } from '../../src/model/curve.ts';
import type { Observation } from '../../src/model/observations.ts';
import { splineTerm, threeKnots } from '../../src/numerics/spline.ts';

export interface ReferenceInverse {
  readonly p: number;
  readonly roots: readonly number[];
  readonly r_star: number | null;
  readonly set: readonly (readonly [number, number])[];
}

export interface ReferenceFit {
  readonly form: string;
  readonly n: number;
  readonly p: number;
  readonly knots: readonly number[] | null;
  readonly reml: {
    readonly tau2: number;
    readonly omega2: number;
    readonly beta: readonly number[];
    readonly se: readonly number[];
    readonly loglik: number;
    readonly score: readonly number[];
    readonly observed_hessian: readonly (readonly number[])[];
    readonly expected_information: readonly (readonly number[])[];
    readonly ml_loglik_at_reml: number;
  };
  readonly ml: {
    readonly tau2: number;
    readonly omega2: number;
    readonly loglik: number;
    readonly AICc: number | null;
  };
  readonly cr2: {
    readonly cov: readonly (readonly number[])[];
    readonly se: readonly number[];
    readonly df: readonly number[];
    readonly p: readonly number[];
    readonly ci_lo: readonly number[];
    readonly ci_hi: readonly number[];
    readonly dropped_eigenvalues: number;
  };
  readonly wls: {
    readonly beta: readonly number[];
    readonly se_fixed: readonly number[];
    readonly loglik_ml_theta0: number;
    readonly cr2_se: readonly number[];
    readonly cr2_df: readonly number[];
  };
  /** Absent for the intercept alone. */
  readonly contrasts?: readonly {
    readonly name: string;
    readonly c: readonly number[];
    readonly est: number;
    readonly se: number;
    readonly df: number;
    readonly p: number;
    readonly ci_lo: number;
    readonly ci_hi: number;
  }[];
  readonly inverse?: readonly ReferenceInverse[];
}

export interface ReferenceCase {
  readonly name: string;
  readonly rho: number;
  readonly observations: readonly Observation[];
  readonly reserve: readonly number[];
  readonly fits: readonly ReferenceFit[];
  /** Design columns of a form, rows as in `observations`. */
  readonly columns: (form: string) => readonly (readonly number[])[];
  /** Design row at a reserve, load 60 % where the form has it. */
  readonly row: (form: string) => (reserve: number) => readonly number[];
}

const LOAD_FOR_PREDICTION = 60;

export function readCase(name: 'bcg' | 'sim1' | 'sim4' | 'sim7'): ReferenceCase {
  const read = (ending: string) => readFileSync(new URL(`./${name}.${ending}`, import.meta.url), 'utf8');
  const { rho, fits } = JSON.parse(read('json'));
  const [header, ...lines] = read('csv').trim().split('\n');
  const names = header.split(',');
  const cells = lines.map((line) => line.split(','));
  const text = (column: string) => cells.map((row) => row[names.indexOf(column)]);
  const numbers = (column: string) => text(column).map(Number);
  const studies = text('study');
  const cohorts = names.includes('cohort') ? text('cohort') : studies.map(() => '');
  const y = numbers('y');
  const v = numbers('v');
  const observations = studies.map((study, i) => ({ study, cohort: cohorts[i] || null, y: y[i], v: v[i] }));
  if (name === 'bcg') {
    const latitude = numbers('ablat');
    const ones = latitude.map(() => 1);
    return {
      name,
      rho: rho ?? 0,
      observations,
      reserve: [],
      fits,
      columns: (form) => (form === 'intercept' ? [ones] : [ones, latitude]),
      row: () => () => [],
    };
  }
  const reserve = numbers('reserve');
  // The flexible curve was fitted later, by the same engine (flexible.R).
  const flexible = JSON.parse(readFileSync(new URL('./flexible.json', import.meta.url), 'utf8'))[name];
  return {
    name,
    rho,
    observations,
    reserve,
    fits: [...fits, flexible],
    ...simulatedDesign(studies, reserve, numbers('load')),
  };
}

function simulatedDesign(studies: readonly string[], reserve: readonly number[], load: readonly number[]) {
  const knots = threeKnots(reserve);
  const mean = (study: string) => {
    const own = reserve.filter((_, i) => studies[i] === study);
    return own.reduce((sum, r) => sum + r, 0) / own.length;
  };
  const firstStudy = [...studies].sort()[0];
  const design =
    (form: string) =>
    (r: number, l: number, study: string): readonly number[] => {
      switch (form) {
        case 'linear':
          return [1, r];
        case 'log':
          return [1, Math.log1p(r)];
        case 'quadratic':
          return [1, r, r * r];
        case 'flexible':
          return makeCurve('flexible', reserve).at(r);
        case 'rcs3':
          return [1, r, splineTerm(r, knots)];
        case 'linear_load':
          return [1, r, l];
        case 'interaction':
          return [1, r, l, r * l];
        case 'within_between':
          return [1, r - mean(study), mean(study)];
        case 'flag':
          return [1, r, study === firstStudy ? 1 : 0];
        default:
          throw new Error(`unknown form ${form}`);
      }
    };
  return {
    columns: (form: string) => {
      const rows = reserve.map((r, i) => design(form)(r, load[i], studies[i]));
      return rows[0].map((_, j) => rows.map((row) => row[j]));
    },
    row: (form: string) => (r: number) => design(form)(r, LOAD_FOR_PREDICTION, ''),
  };
}
