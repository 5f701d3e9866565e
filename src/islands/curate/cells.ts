/** A row of study arms as a curator types it: the text of every cell. */
import { ARM_COLUMNS, type Arm, type ArmColumn } from '../../evidence/schema.ts';
import { writeArmCell } from '../../evidence/writeTable.ts';

/** Text of each cell, empty where nothing stands. */
export type Cells = Readonly<Record<ArmColumn, string>>;

/** Text of some cells; the others are empty. */
export type Texts = Readonly<Partial<Record<ArmColumn, string>>>;

export const ARM_NAMES = Object.keys(ARM_COLUMNS) as readonly ArmColumn[];

/** The cells of a validated row as a file has them. */
export function toCells(arm: Arm): Cells {
  return fill((name) => writeArmCell(arm, name));
}

export function fill(textOf: (name: ArmColumn) => string): Cells {
  return Object.fromEntries(ARM_NAMES.map((name) => [name, textOf(name)])) as Record<ArmColumn, string>;
}

export function isBlank(texts: Texts | undefined): boolean {
  return !texts || Object.values(texts).every((text) => text.trim() === '');
}
