/** Every number behind a row's effect and how it was obtained: reported, recovered, assumed, computed. */
import { FORMULAS } from './effectFormulas.ts';
import type { Effect } from './effects.ts';
import type { Recovered } from './recover.ts';
import type { Arm } from './schema.ts';

/** Columns of reported statistics, in the words of the recovered ones. */
const REPORTED = [
  ['baseline_mean', 'mean before (m₁)'],
  ['followup_mean', 'mean after (m₂)'],
  ['change_mean', 'mean change'],
  ['baseline_sd', 'SD before (s₁)'],
  ['followup_sd', 'SD after (s₂)'],
  ['change_sd', 'SD of the change (s_c)'],
  ['change_se', 'standard error of the change'],
  ['change_ci_low', '95 % interval of the change, low'],
  ['change_ci_high', '95 % interval of the change, high'],
  ['change_t', 't of the change'],
  ['change_p', 'p of the change'],
  ['correlation', 'correlation of before with after (r)'],
  ['effect', 'ready-made effect'],
  ['effect_variance', 'variance of the ready-made effect'],
] as const satisfies readonly (readonly [keyof Arm, string])[];

/**
 * What the row reports, in the order of the table's columns, then what was made of it, in the order in
 * which it was made.
 *
 * @param effect of the same row; null where none could be had, so that only what is reported is listed
 */
export function traceNumbers(arm: Arm, effect: Effect | null): readonly Recovered[] {
  const reported = REPORTED.flatMap(([column, quantity]): Recovered[] => {
    const value = arm[column];
    return value === null ? [] : [{ quantity, value, how: 'reported' }];
  });
  return [...reported, ...(effect?.steps ?? []).filter(({ how }) => how !== 'reported')];
}

const HANDBOOK = 'Cochrane Handbook for Systematic Reviews of Interventions, chapter 6';

const SOURCES_OF_FORMULAS: Readonly<Record<string, string>> = {
  [FORMULAS.logRatio]: 'Hedges, Gurevitch & Curtis 1999 (Ecology 80:1150)',
  [FORMULAS.logRatioVariance]: 'Lajeunesse 2011 (Ecology 92:2049), eq. 6',
  [FORMULAS.logRatioVarianceOfChange]: 'Lajeunesse 2011 (Ecology 92:2049), eq. 6, with s₁/m₁ = s₂/m₂',
  [FORMULAS.standardised]: 'Becker 1988 (Br J Math Stat Psychol 41:257); J: Hedges 1981 (J Educ Stat 6:107)',
  [FORMULAS.standardisedVariance]: 'Becker 1988 (Br J Math Stat Psychol 41:257), eq. 13',
};

/** What is recovered by a formula of the Handbook; everything else that is made of a row is a sum or an assumption. */
const OF_HANDBOOK = ['SD of the change', 'SD after', 'correlation of before with after'] as const;

/** Where the formula of a number is published; null where it is reported, assumed, or a sum. */
export function sourceOf({ quantity, how }: Recovered): string | null {
  if (how === 'reported' || how.startsWith('assumed')) return null;
  return SOURCES_OF_FORMULAS[how] ?? (OF_HANDBOOK.some((name) => name === quantity) ? HANDBOOK : null);
}
