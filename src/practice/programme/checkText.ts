/** The text that the check reads: the site's own form, every column of it. */
import Papa from 'papaparse';
import { PROGRAMME_COLUMNS } from './columns.ts';
import type { ProgrammeColumn } from './editorColumns.ts';

/** A line of the text for each row, the header above them. */
export function writeCsv(rows: readonly Readonly<Record<ProgrammeColumn, string>>[]): string {
  const columns = Object.keys(PROGRAMME_COLUMNS) as readonly ProgrammeColumn[];
  return `${Papa.unparse([columns, ...rows.map((row) => columns.map((column) => row[column]))], { newline: '\n' })}\n`;
}
