/** What a paper may print: kinds of number for a measure, and facts of arms that few papers print. */
import type { ArmColumn } from '../../evidence/schema.ts';
import { levelOf } from './levels.ts';

interface Kind {
  readonly name: string;
  readonly label: string;
  /** Columns that appear with it. */
  readonly columns: readonly ArmColumn[];
}

const BEFORE_AND_AFTER = 'Before and after';
const CHANGE = 'The change';
const PER_CENT = 'The change in per cent';
const OTHER = 'Tests and ready-made effects';

/** Kinds of number, chosen once for a measure; a column of the grid for each column that is no choice of the measure. */
export const REPORTS = [
  { group: BEFORE_AND_AFTER, name: 'means', label: 'Means', columns: ['baseline_mean', 'followup_mean'] },
  { group: BEFORE_AND_AFTER, name: 'SDs', label: 'SDs', columns: ['baseline_sd', 'followup_sd'] },
  { group: BEFORE_AND_AFTER, name: 'SEs', label: 'Standard errors', columns: ['baseline_se', 'followup_se'] },
  {
    group: BEFORE_AND_AFTER,
    name: 'medians',
    label: 'Medians with quartiles',
    columns: ['baseline_median', 'baseline_q1', 'baseline_q3', 'followup_median', 'followup_q1', 'followup_q3'],
  },
  { group: BEFORE_AND_AFTER, name: 'correlation', label: 'Their correlation', columns: ['correlation'] },
  { group: CHANGE, name: 'change', label: 'Mean', columns: ['change_mean'] },
  { group: CHANGE, name: 'change SD', label: 'SD', columns: ['change_sd'] },
  { group: CHANGE, name: 'change SE', label: 'Standard error', columns: ['change_se'] },
  {
    group: CHANGE,
    name: 'interval',
    label: 'Interval',
    columns: ['change_ci_low', 'change_ci_high', 'ci_level', 'ci_kind'],
  },
  {
    group: CHANGE,
    name: 'change median',
    label: 'Median with quartiles',
    columns: ['change_median', 'change_q1', 'change_q3'],
  },
  { group: PER_CENT, name: 'percent', label: 'Mean', columns: ['percent_change'] },
  { group: PER_CENT, name: 'percent SD', label: 'SD', columns: ['percent_change_sd'] },
  { group: PER_CENT, name: 'percent SE', label: 'Standard error', columns: ['percent_change_se'] },
  {
    group: PER_CENT,
    name: 'percent interval',
    label: 'Interval',
    columns: ['percent_change_ci_low', 'percent_change_ci_high', 'ci_level', 'ci_kind'],
  },
  { group: OTHER, name: 't', label: 't of the change', columns: ['change_t'] },
  { group: OTHER, name: 'F', label: 'F of the change', columns: ['change_f'] },
  { group: OTHER, name: 'p', label: 'p of the change', columns: ['change_p'] },
  { group: OTHER, name: 'df', label: 'Degrees of freedom', columns: ['change_df'] },
  {
    group: OTHER,
    name: 'effect',
    label: 'Standardised or log effect',
    columns: ['effect', 'effect_variance', 'effect_metric', 'effect_standardiser', 'effect_corrected'],
  },
] as const satisfies readonly (Kind & { readonly group: string })[];

export type ReportName = (typeof REPORTS)[number]['name'];
export const REPORT_GROUPS: readonly string[] = [BEFORE_AND_AFTER, CHANGE, PER_CENT, OTHER];

/** What most papers print. */
export const USUAL_REPORTS: readonly ReportName[] = ['means', 'SDs'];

/** Facts of arms that are asked for where the paper prints them. */
export const EXTRAS = [
  { name: 'total', label: 'Only a total of people', columns: ['n_total', 'n_total_arms'] },
  { name: 'RM', label: 'Load as a repetition maximum', columns: ['load_rm'] },
  { name: 'possible', label: 'Repetitions possible', columns: ['reps_possible'] },
  { name: 'share', label: 'A share of the repetitions possible', columns: ['share_of_maximum_pct'] },
  { name: 'velocity', label: 'A loss of velocity', columns: ['velocity_loss_pct'] },
] as const satisfies readonly Kind[];

export type ExtraName = (typeof EXTRAS)[number]['name'];

/** The columns of a kind that hold its numbers; the others are choices for the whole measure. */
export function numbersOf({ columns }: { readonly columns: readonly ArmColumn[] }): readonly ArmColumn[] {
  return columns.filter((column) => levelOf(column) !== 'measure');
}

/** Kinds of a list that a column appears with. */
export function kindsWith<Name extends string>(
  kinds: readonly { readonly name: Name; readonly columns: readonly ArmColumn[] }[],
  column: ArmColumn,
): readonly Name[] {
  return kinds.filter(({ columns }) => columns.includes(column)).map(({ name }) => name);
}

/** True where a column appears with one of the chosen kinds, or with none at all and so always. */
export function isShown<Name extends string>(
  kinds: readonly { readonly name: Name; readonly columns: readonly ArmColumn[] }[],
  chosen: readonly Name[],
  column: ArmColumn,
): boolean {
  const names = kindsWith(kinds, column);
  return names.length === 0 || names.some((name) => chosen.includes(name));
}
