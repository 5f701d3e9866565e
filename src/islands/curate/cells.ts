/** A row of study arms as a curator types it: the text of every cell, and what a paper may report. */
import { ARM_COLUMNS, type Arm, type ArmColumn } from '../../evidence/schema.ts';
import { writeArmCell } from '../../evidence/writeTable.ts';

/** Text of each cell, empty where nothing stands. */
export type Cells = Readonly<Record<ArmColumn, string>>;

export const ARM_NAMES = Object.keys(ARM_COLUMNS) as readonly ArmColumn[];

export const EMPTY_CELLS: Cells = fill(() => '');

/** Kinds of number that a paper may report for a measure, with the columns that they fill. */
export const REPORTS = [
  { name: 'before', label: 'Mean and SD before', columns: ['baseline_mean', 'baseline_sd'] },
  { name: 'after', label: 'Mean and SD after', columns: ['followup_mean', 'followup_sd'] },
  { name: 'SEs', label: 'Standard errors before and after', columns: ['baseline_se', 'followup_se'] },
  {
    name: 'medians',
    label: 'Medians and quartiles',
    columns: [
      ...(['baseline_median', 'baseline_q1', 'baseline_q3'] as const),
      ...(['followup_median', 'followup_q1', 'followup_q3'] as const),
    ],
  },
  { name: 'change', label: 'Mean change', columns: ['change_mean'] },
  { name: 'change SD', label: 'SD of the change', columns: ['change_sd'] },
  { name: 'change SE', label: 'Standard error of the change', columns: ['change_se'] },
  { name: 'interval', label: 'Interval of the change', columns: ['change_ci_low', 'change_ci_high'] },
  {
    name: 'median change',
    label: 'Median change and quartiles',
    columns: ['change_median', 'change_q1', 'change_q3'],
  },
  {
    name: 'per cent',
    label: 'Change in per cent',
    columns: ['percent_change', 'percent_change_sd', 'percent_change_se'],
  },
  {
    name: 'per cent interval',
    label: 'Interval of the change in per cent',
    columns: ['percent_change_ci_low', 'percent_change_ci_high'],
  },
  {
    name: 'level',
    label: 'Level and kind of the intervals, if not 95\u00a0% confidence',
    columns: ['ci_level', 'ci_kind'],
  },
  { name: 't', label: 't or F of the change', columns: ['change_t', 'change_f', 'change_df'] },
  { name: 'p', label: 'p of the change', columns: ['change_p'] },
  { name: 'correlation', label: 'Correlation of before with after', columns: ['correlation'] },
  {
    name: 'effect',
    label: 'Ready-made effect',
    columns: ['effect', 'effect_variance', 'effect_metric', 'effect_standardiser', 'effect_corrected'],
  },
] as const satisfies readonly { name: string; label: string; columns: readonly ArmColumn[] }[];

export type ReportName = (typeof REPORTS)[number]['name'];

/** What most papers report. */
export const USUAL_REPORTS: readonly ReportName[] = ['before', 'after'];

/** Columns of statistics and of their place: they belong to one measurement only. */
const OF_MEASUREMENT = ARM_NAMES.filter((name) => ['statistics', 'provenance'].includes(ARM_COLUMNS[name].group));
const OF_PROXIMITY = ARM_NAMES.filter((name) => ARM_COLUMNS[name].group === 'proximity to failure');

/** The cells of a validated row as a file has them. */
export function toCells(arm: Arm): Cells {
  return fill((name) => writeArmCell(arm, name));
}

/**
 * What the next arm of a study shares with the one before: study, training, what was measured and how
 * failure was defined. Limbs of the same people, and the same people later, are as many and one cohort.
 */
export function startNextArm(cells: Cells): Cells {
  const sharesPeople = cells.design === 'within-person' || cells.design === 'crossover';
  return without(cells, [
    'arm',
    ...(sharesPeople ? [] : (['cohort', 'n'] as const)),
    ...OF_PROXIMITY.filter((name) => name !== 'failure_definition'),
    ...OF_MEASUREMENT.filter((name) => name !== 'source_place'),
  ]);
}

/** What the next measurement of an arm shares with the one before: all but the measurement. */
export function startNextMeasure(cells: Cells): Cells {
  return without(cells, ['outcome', 'measure', 'unit', 'hours_after', ...OF_MEASUREMENT]);
}

export function isEmptyRow(cells: Cells): boolean {
  return ARM_NAMES.every((name) => cells[name].trim() === '');
}

/** Kinds of number that have a cell filled. */
export function reportsIn(cells: Cells): readonly ReportName[] {
  return REPORTS.filter(({ columns }) => columns.some((name) => cells[name] !== '')).map(({ name }) => name);
}

export function fill(textOf: (name: ArmColumn) => string): Cells {
  return Object.fromEntries(ARM_NAMES.map((name) => [name, textOf(name)])) as Record<ArmColumn, string>;
}

function without(cells: Cells, cleared: readonly ArmColumn[]): Cells {
  return fill((name) => (cleared.includes(name) ? '' : cells[name]));
}
