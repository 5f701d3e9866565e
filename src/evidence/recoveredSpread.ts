/**
 * How much the change varied between people, from what the paper prints in place of its SD.
 *
 * A row may print it in several ways. The most direct one that is printed decides: SD, standard error, interval, t, F,
 * an exact p, quartiles, a bound of p. What follows is no second opinion: selfContradiction.ts compares them.
 */
import { type CountedArm, levelOf } from './countedArm.ts';
import {
  type Recovered,
  sdFromQuartiles,
  sdFromStandardError,
  standardErrorFromF,
  standardErrorFromInterval,
  standardErrorFromP,
  standardErrorFromT,
  USUAL_LEVEL,
} from './recover.ts';

/** Columns of one change, in its unit or in per cent. */
interface SpreadColumns {
  readonly quantity: string;
  readonly sd: number | null;
  readonly se: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly q1: number | null;
  readonly q3: number | null;
}

/** SD of the change in the unit of the row. @param change that t, F and p are of; null where it is not known */
export function spreadOfChange(arm: CountedArm, change: number | null): Recovered | null {
  const columns = {
    quantity: 'SD of the change',
    sd: arm.change_sd,
    se: arm.change_se,
    low: arm.change_ci_low,
    high: arm.change_ci_high,
    q1: arm.change_q1,
    q3: arm.change_q3,
  };
  return firstSpread(arm, columns, change);
}

/** True where SD, standard error or interval of the change are printed, so that its spread is not that of a test. */
export function printsErrorOfChange(arm: CountedArm): boolean {
  return (
    arm.change_sd !== null || arm.change_se !== null || (arm.change_ci_low !== null && arm.change_ci_high !== null)
  );
}

/** SD of the per cent changes. @param change in per cent that t, F and p are of; null where they are of another */
export function spreadOfPercents(arm: CountedArm, change: number | null): Recovered | null {
  const columns = {
    quantity: 'SD of the change in per cent',
    sd: arm.percent_change_sd,
    se: arm.percent_change_se,
    low: arm.percent_change_ci_low,
    high: arm.percent_change_ci_high,
    q1: null,
    q3: null,
  };
  return firstSpread(arm, columns, change);
}

function firstSpread(arm: CountedArm, columns: SpreadColumns, change: number | null): Recovered | null {
  const { quantity, sd, se, low, high, q1, q3 } = columns;
  const { n, change_t: t, change_f: f, change_p: p } = arm;
  const isBound = arm.ranges?.change_p !== undefined;
  const of = (value: number, how: string, restsOn: 'recovered' | 'assumed' = 'recovered'): Recovered | null =>
    Number.isFinite(value) && value > 0 ? { quantity, value, how, restsOn } : null;
  const ofError = (error: number, how: string, restsOn?: 'recovered' | 'assumed') =>
    of(sdFromStandardError(error, n), how, restsOn);
  if (sd !== null) return { quantity, value: sd, how: 'reported' };
  if (se !== null) return ofError(se, 'standard error × √n');
  if (low !== null && high !== null) return ofInterval(arm, low, high, ofError);
  if (t !== null && change !== null) return ofError(standardErrorFromT(change, t), 't: |change / t| × √n');
  if (f !== null && change !== null) {
    return ofError(standardErrorFromF(change, f), 'F with 1 df above: |change| / √F × √n, F being t²');
  }
  const fromP = () =>
    ofError(
      standardErrorFromP(change ?? Number.NaN, p ?? Number.NaN, n, arm.change_df ?? n - 1),
      isBound
        ? `bound of p, taken as p since that gives the largest SD: |change| / t(p) × √n, t with ${writeDf(arm)} df`
        : `p: |change| / t(p) × √n, t with ${writeDf(arm)} df`,
      isBound ? 'assumed' : 'recovered',
    );
  const hasP = p !== null && change !== null;
  if (hasP && !isBound) return fromP();
  if (q1 !== null && q3 !== null) return of(sdFromQuartiles(q1, q3, n), QUARTILES_TO_SD);
  return hasP ? fromP() : null;
}

/** How an SD comes from quartiles, in the words of a step. */
export const QUARTILES_TO_SD = 'quartiles: (q₃ − q₁) / (2 z), of a normal sample of n';

function ofInterval(
  arm: CountedArm,
  low: number,
  high: number,
  ofError: (error: number, how: string, restsOn: 'recovered' | 'assumed') => Recovered | null,
): Recovered | null {
  const { n, ci_kind: kind, ci_level: level } = arm;
  const error = standardErrorFromInterval(low, high, n, levelOf(arm), arm.change_df ?? n - 1);
  const formula = `width / (2 t) × √n, t with ${writeDf(arm)} df`;
  const percent = `${level ?? 100 * USUAL_LEVEL} %`;
  if (kind !== 'credible') return ofError(error, `${percent} interval: ${formula}`, 'recovered');
  const assumed = level === null ? `assumed of ${percent} and to be as wide` : 'assumed as wide';
  return ofError(error, `credible interval, ${assumed} as a ${percent} confidence interval: ${formula}`, 'assumed');
}

function writeDf({ change_df: df }: CountedArm): string {
  return df === null ? 'n − 1' : String(df);
}
