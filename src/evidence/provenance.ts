/** Every number behind a row's effect and how it was obtained: reported, recovered, assumed, computed. */
import type { CellRange } from './column.ts';
import { FORMULAS } from './effectFormulas.ts';
import type { Effect } from './effects.ts';
import { QUARTILES_TO_MEAN } from './means.ts';
import { type Recovered, USUAL_LEVEL } from './recover.ts';
import { QUARTILES_TO_SD } from './recoveredSpread.ts';
import type { Arm } from './schema.ts';

/** Columns of reported statistics, in the words of the recovered ones. */
const REPORTED = [
  ['baseline_mean', 'mean before (m₁)'],
  ['baseline_median', 'median before'],
  ['baseline_q1', 'first quartile before'],
  ['baseline_q3', 'third quartile before'],
  ['followup_mean', 'mean after (m₂)'],
  ['followup_median', 'median after'],
  ['followup_q1', 'first quartile after'],
  ['followup_q3', 'third quartile after'],
  ['change_mean', 'mean change'],
  ['change_median', 'median change'],
  ['change_q1', 'first quartile of the change'],
  ['change_q3', 'third quartile of the change'],
  ['percent_change', 'change in per cent'],
  ['baseline_sd', 'SD before (s₁)'],
  ['baseline_se', 'standard error of the mean before'],
  ['followup_sd', 'SD after (s₂)'],
  ['followup_se', 'standard error of the mean after'],
  ['change_sd', 'SD of the change (s_c)'],
  ['change_se', 'standard error of the change'],
  ['change_ci_low', 'interval of the change, low'],
  ['change_ci_high', 'interval of the change, high'],
  ['percent_change_sd', 'SD of the change in per cent'],
  ['percent_change_se', 'standard error of the change in per cent'],
  ['percent_change_ci_low', 'interval of the change in per cent, low'],
  ['percent_change_ci_high', 'interval of the change in per cent, high'],
  ['change_t', 't of the change'],
  ['change_f', 'F of the change'],
  ['change_p', 'p of the change'],
  ['change_df', 'degrees of freedom of the change'],
  ['correlation', 'correlation of before with after (r)'],
  ['effect', 'ready-made effect'],
  ['effect_variance', 'variance of the ready-made effect'],
] as const satisfies readonly (readonly [keyof Arm, string])[];

/** Cells that may be filled from others. */
const FILLED: Readonly<Record<string, string>> = {
  n: 'people',
  load_pct_1rm: 'load, per cent of 1RM',
  reserve_reps: 'repetitions in reserve',
  reserve_sd: 'SD of the reserve',
};

/**
 * What the row reports, in the order of the table's columns, then what was filled and made of it, in the order in
 * which it was made.
 *
 * @param effect of the same row; null where none could be had, so that only what is reported is listed
 */
export function traceNumbers(arm: Arm, effect: Effect | null): readonly Recovered[] {
  const reported = REPORTED.flatMap(([column, quantity]): Recovered[] => {
    const value = arm[column];
    const bound = arm.ranges?.[column];
    if (bound) return [reportBound(quantity, bound)];
    return value === null ? [] : [{ quantity: nameInterval(arm, column, quantity), value, how: 'reported' }];
  });
  const filled = (arm.derived ?? []).map(
    ({ column, value, how, restsOn }): Recovered => ({ quantity: FILLED[column] ?? column, value, how, restsOn }),
  );
  return [...reported, ...filled, ...(effect?.steps ?? []).filter(({ how }) => how !== 'reported')];
}

/** A p of which only a bound is printed: of “below 0.001” that end, of “above 0.05” this one. */
function reportBound(quantity: string, { low, high, value }: CellRange): Recovered {
  const isBelow = value !== null;
  return { quantity: `${quantity}, ${isBelow ? 'below' : 'above'}`, value: isBelow ? high : low, how: 'reported' };
}

/** “95 % interval of the change, low”. */
function nameInterval({ ci_level: level, ci_kind: kind }: Arm, column: keyof Arm, quantity: string): string {
  if (!column.includes('_ci_')) return quantity;
  return `${level ?? 100 * USUAL_LEVEL} % ${kind === 'credible' ? 'credible ' : ''}${quantity}`;
}

const HANDBOOK = 'Cochrane Handbook for Systematic Reviews of Interventions, chapter 6';

const SOURCES_OF_FORMULAS: Readonly<Record<string, string>> = {
  [FORMULAS.logRatio]: 'Hedges, Gurevitch & Curtis 1999 (Ecology 80:1150)',
  [FORMULAS.logRatioVariance]: 'Lajeunesse 2011 (Ecology 92:2049), eq. 6',
  [FORMULAS.logRatioVarianceOfChange]: 'Lajeunesse 2011 (Ecology 92:2049), eq. 6, with s₁/m₁ = s₂/m₂',
  [FORMULAS.logRatioVarianceOfError]: 'Lajeunesse 2011 (Ecology 92:2049), eq. 6, with s₁/m₁ = s₂/m₂',
  [FORMULAS.logRatioVarianceOfErrors]: 'Lajeunesse 2011 (Ecology 92:2049), eq. 6',
  [FORMULAS.logRatioPooled]: 'Nakagawa et al. 2023 (Ecol Lett 26:232), for the same people before and after',
  [FORMULAS.logRatioVariancePooled]: 'Nakagawa et al. 2023 (Ecol Lett 26:232), for the same people before and after',
  [QUARTILES_TO_MEAN]: 'Luo, Wan, Liu & Tong 2018 (Stat Methods Med Res 27:1785)',
  [QUARTILES_TO_SD]: 'Wan, Wang, Liu & Tong 2014 (BMC Med Res Methodol 14:135)',
  [FORMULAS.standardised]: 'Becker 1988 (Br J Math Stat Psychol 41:257); J: Hedges 1981 (J Educ Stat 6:107)',
  [FORMULAS.standardisedVariance]: 'Becker 1988 (Br J Math Stat Psychol 41:257), eq. 13',
};

/** What is recovered by a formula of the Handbook; everything else that is made of a row is a sum or an assumption. */
const OF_HANDBOOK = [
  'SD of the change',
  'SD of the change in per cent',
  'SD before',
  'SD after',
  'correlation of before with after',
] as const;

/** Where the formula of a number is published; null where it is reported, assumed, or a sum. */
export function sourceOf({ quantity, how }: Recovered): string | null {
  if (how === 'reported' || how.startsWith('assumed')) return null;
  if (quantity === 'standardised change by the SD before') return 'Morris & DeShon 2002 (Psychol Methods 7:105)';
  return SOURCES_OF_FORMULAS[how] ?? (OF_HANDBOOK.some((name) => name === quantity) ? HANDBOOK : null);
}
