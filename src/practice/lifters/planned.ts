/**
 * What a line of a programme asks for, as it is told to a lifter: ranges stay ranges, where the check takes the end
 * that leaves least in reserve.
 */
import { PROGRAMME_COLUMNS } from '../programme/columns.ts';
import type { Cells } from '../programme/editorColumns.ts';
import type { WrittenColumn } from '../programme/written/headings.ts';
import { readPiece } from '../programme/written/piece.ts';
import { type Found, type Span, type WrittenLoad, writeSpan } from '../programme/written/understood.ts';

/** null where the cell is empty or cannot be read as this and nothing else. */
export function plannedLoad(cells: Cells): WrittenLoad | null {
  const plain = readPlain(cells.load, 'load');
  if (plain) return { ...plain, unit: '%' };
  const found = readCell(cells.load, { kind: 'load', unit: 'form' });
  return found?.field === 'load' ? found.value : null;
}

export function plannedSpan(cells: Cells, field: 'sets' | 'repetitions' | 'possible' | 'reserve'): Span | null {
  const plain = readPlain(cells[field], field);
  if (plain) return plain;
  const found = readCell(cells[field], { kind: field });
  return found?.field === field ? found.value : null;
}

/** “6 to 8”; what cannot be read as it was typed. */
export function tellPlanned(cells: Cells, field: 'sets' | 'repetitions' | 'possible'): string {
  const span = plannedSpan(cells, field);
  return span === null ? cells[field].trim() : tellSpan(span);
}

/** “70 to 75 % of 1RM”, “95 kg” */
export function tellPlannedLoad(load: WrittenLoad): string {
  return `${tellSpan(load)}\u00a0${load.unit === '%' ? '% of 1RM' : load.unit}`;
}

/** As it is said to somebody who trains. */
function tellSpan(span: Span): string {
  return writeSpan(span).replace('-', ' to ');
}

/** A number that the check reads as it stands. */
function readPlain(text: string, field: 'sets' | 'repetitions' | 'possible' | 'reserve' | 'load'): Span | null {
  const read = PROGRAMME_COLUMNS[field].cell.safeParse(text.trim());
  return read.success ? { least: read.data, most: read.data } : null;
}

function readCell(text: string, column: WrittenColumn): Found | null {
  const { found, refused, words } = readPiece({ place: { line: 0, column: null, text }, column });
  return found.length === 1 && refused.length === 0 && words.length === 0 ? found[0].found : null;
}
