/**
 * Rows back to the text of a CSV file, so that reading it gives the same rows (RFC 4180, line feeds).
 *
 * Columns stand in the order of the schema, numbers in the fewest digits that read back to the same
 * number, quotation marks only where a cell needs them. No cell is altered: the schema refuses texts
 * at which a spreadsheet would start to calculate, so that a validated row is safe as it stands.
 */
import Papa from 'papaparse';
import { ARM_COLUMNS, type Arm, type ArmColumn } from './schema.ts';

/** What a cell of a validated row holds; null where it is empty. */
export type CellValue = string | number | boolean | null;

/** Cells of a row by column, validated or still as somebody typed them. */
export type ArmCells = Readonly<Record<ArmColumn, CellValue>>;

/** Text of `arms.csv`; of no rows, the header alone. @param arms rows; what is not validated is written as it is */
export function writeArms(arms: readonly (ArmCells & Partial<Pick<Arm, 'ranges' | 'derived'>>)[]): string {
  const names = Object.keys(ARM_COLUMNS) as ArmColumn[];
  return `${Papa.unparse([names, ...arms.map((arm) => names.map((name) => writeArmCell(arm, name)))], { newline: '\n' })}\n`;
}

/** A cell of a row as a file has it: its range where it holds one, empty where it was filled from others. */
export function writeArmCell(arm: ArmCells & Partial<Pick<Arm, 'ranges' | 'derived'>>, column: ArmColumn): string {
  if (arm.derived?.some((cell) => cell.column === column)) return '';
  const range = arm.ranges?.[column];
  if (!range) return writeCell(arm[column]);
  if (column !== 'change_p') return `${range.low}-${range.high}`;
  return range.value === null ? `>${range.low}` : `<${range.high}`;
}

/** A cell as it stands in a file: `yes` and `no`, nothing for null. */
export function writeCell(value: CellValue): string {
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  // A mean change of −0 is possible, and String(-0) is "0".
  return Object.is(value, -0) ? '-0' : String(value);
}
