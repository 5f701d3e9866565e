/** An own table as a file again: as it was opened, but for what was changed since, which is said. */
import { ENCODING_NAMES, encodeText } from '../evidence/opening/encoding.ts';
import { upperFirst } from '../figures/firstLetter.ts';
import type { KeptTable } from './keptTables.ts';
import { loadTableText } from './loadTable.ts';
import { addressOf } from './tableInUse.ts';

export interface ExportedTable {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Whether it is what was opened, a sentence. */
  readonly said: string;
}

/** @throws where the table is no longer kept, with the reason */
export async function exportTable(table: KeptTable): Promise<ExportedTable> {
  return writeExport(table, await loadTableText(addressOf(table)));
}

/** @param text of the table as it is kept */
export function writeExport(table: KeptTable, text: string): ExportedTable {
  const { name, sheet, encoding = 'utf-8', changes = [] } = table;
  const file = nameExport(table);
  const encoded = encodeText(text, encoding);
  const told = [
    ...changes.map(stateChange),
    // Rows from the form may hold letters that the encoding of the file has no place for.
    ...(encoded ? [] : [`${ENCODING_NAMES[encoding]} has no place for some of its letters, so that it is UTF-8 now.`]),
  ];
  const bytes = encoded ?? encodeText(text, 'utf-8') ?? new Uint8Array();
  if (sheet !== undefined) {
    const rest = told.length > 0 ? `, and changed: ${told.join(' ')}` : '.';
    return { name: file, bytes, said: `${file} was made from the sheet “${sheet}” of ${name}${rest}` };
  }
  const said = told.length > 0 ? `but for this: ${told.join(' ')}` : 'byte for byte.';
  return { name: file, bytes, said: `${file} is as it was opened, ${said}` };
}

/** The file's own name; of a sheet, with the sheet's, as CSV. */
export function nameExport({ name, sheet }: Pick<KeptTable, 'name' | 'sheet'>): string {
  if (sheet === undefined) return name;
  const plain = (text: string) => text.replace(/[^\p{L}\p{N}._-]+/gu, '-').replace(/^-|-$/gu, '');
  return `${plain(name.replace(/\.\w+$/u, ''))}-${plain(sheet) || 'sheet'}.csv`;
}

/** A change as a sentence of its own. */
export function stateChange(change: string): string {
  return `${upperFirst(change)}.`;
}
