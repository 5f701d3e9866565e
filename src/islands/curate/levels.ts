/**
 * Where a column of the table is entered: once for the study, once for an arm, once for a measure, or for every
 * result, which is one arm in one measure. A column that the schema gets later has its place by its group.
 */
import { ARM_COLUMNS, type ArmColumn } from '../../evidence/schema.ts';
import { ARM_NAMES } from './cells.ts';

export type Level = 'study' | 'arm' | 'measure' | 'result';

/** Columns that are not entered where the rest of their group is. */
const EXCEPTIONS: Readonly<Partial<Record<ArmColumn, Level>>> = {
  how_read: 'study',
  muscle: 'measure',
  ci_level: 'measure',
  ci_kind: 'measure',
  effect_metric: 'measure',
  effect_standardiser: 'measure',
  effect_corrected: 'measure',
};

const BY_GROUP: Readonly<Record<string, Level>> = {
  study: 'study',
  arm: 'arm',
  training: 'arm',
  'proximity to failure': 'arm',
  outcome: 'measure',
  statistics: 'result',
  provenance: 'measure',
};

/** @throws where the schema has a group that the form has no place for */
export function levelOf(column: ArmColumn): Level {
  const level = EXCEPTIONS[column] ?? BY_GROUP[ARM_COLUMNS[column].group];
  if (!level) throw new Error(`no place on the form for column: ${column}`);
  return level;
}

export function columnsOf(level: Level): readonly ArmColumn[] {
  return ARM_NAMES.filter((name) => levelOf(name) === level);
}

/** Facts of a study that the table's rules hold to be the same in all its rows. */
export const ALWAYS_SHARED: readonly ArmColumn[] = [
  'study',
  'year',
  'design',
  'concerns',
  'training_status',
  'how_read',
];

/** Facts that mostly differ between the arms of a study: what it varies, and who took part. */
export const MOSTLY_APART: readonly ArmColumn[] = [
  'n',
  'reps_per_set',
  'attempted_failure',
  'reserve_reps',
  'reserve_sd',
  'reserve_basis',
];
