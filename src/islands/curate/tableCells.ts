/** The rows of a table as texts, each cell as it stands in the file, so that nothing is rewritten that nobody changed. */
import { openCsv, readBlocks } from '../../evidence/csv.ts';
import { readHeader } from '../../evidence/header.ts';
import { ARM_COLUMNS, type ArmColumn } from '../../evidence/schema.ts';
import { ARM_NAMES, type Cells, fill } from './cells.ts';

/** @param text of a table that was read without problems */
export function readCells(text: string, file: string): readonly Cells[] {
  const source = openCsv(text, file, new Set<string>(ARM_NAMES), (written) => written);
  const rows: Cells[] = [];
  let places: ReadonlyMap<ArmColumn, number> | null = null;
  for (const { records } of readBlocks(source, file)) {
    for (const record of records) {
      if (places) {
        const known = places;
        rows.push(fill((name) => (record.cells[known.get(name) ?? -1] ?? '').trim()));
        continue;
      }
      const { names } = readHeader(record, ARM_COLUMNS, file, source.delimiter);
      places = new Map(ARM_NAMES.map((name) => [name, names.indexOf(name)]));
    }
  }
  return rows;
}
