/** The row that names the columns of a table, and what it says that is not read. */
import { nearestHeader, type WrittenColumn } from './headings.ts';
import type { WrittenRow } from './layout.ts';
import { parseSpan } from './numbers.ts';
import { scan, type Token } from './scan.ts';
import type { TableColumns } from './tableRow.ts';
import { type Note, type NotRead, notRead } from './understood.ts';

interface TableHeader {
  readonly table: TableColumns;
  readonly notRead: readonly NotRead[];
  readonly notes: readonly Note[];
}

/** Columns of numbers that have no place in a programme’s check. */
const ASIDE = /^(?:#|no|nr|number|order|rest|tempo|time|duration|date)\b|^#$/iu;
/** Per cent of 1RM above which a number is none. */
const MOST_PERCENT = 100;

/** @param rows of the whole text, to look at what stands in a column */
export function readTableHeader(
  { line, cells }: WrittenRow,
  columns: readonly (WrittenColumn | null)[],
  rows: readonly WrittenRow[],
): TableHeader {
  const told: NotRead[] = [];
  const notes: Note[] = [];
  const seen = new Set<string>();
  // A unit beside the loads is no part of them: each has to say its own.
  const hasUnits = cells.some((cell) => /^units?$/iu.test(cell.trim()));
  const read = columns.map((column, i): WrittenColumn | null => {
    const header = cells[i].trim();
    if (column === null) {
      if (header === '') return null;
      if (!ASIDE.test(header) && (nearestHeader(header) !== null || holdsNumbers(rows, line, i))) {
        told.push(refuseHeader(line, header));
      } else notes.push({ line, text: `The column “${header}” is not read; its cells stand with their lines.` });
      return null;
    }
    // Several columns may hold notes, days or weeks; of all others two would contradict each other.
    const key = column.kind === 'fact' ? column.fact : column.kind;
    if (column.kind !== 'note' && column.kind !== 'context' && seen.has(key)) {
      told.push(refuseDoubled(line, header));
      return null;
    }
    seen.add(key);
    if (column.kind !== 'load' || column.unit !== 'form') return column;
    return { ...column, unit: hasUnits || holdsWeights(rows, line, i) ? null : 'form' };
  });
  return { table: { line, columns: read, headers: cells }, notRead: told, notes };
}

/** A column “Load” of which a bare number is above 100 is one of weights, in a unit that is not said. */
function holdsWeights(rows: readonly WrittenRow[], header: number, place: number): boolean {
  return rows.some(({ line, cells }) => line > header && parseSpan(cells[place] ?? '').most > MOST_PERCENT);
}

/** A column in which sets, loads or repetitions may stand under a name that is not known. */
function holdsNumbers(rows: readonly WrittenRow[], header: number, place: number): boolean {
  return rows.some(
    ({ line, cells }) =>
      line > header && scan(cells[place] ?? '').some((token) => token.kind === 'number' || isSaying(token)),
  );
}

function isSaying(token: Token): boolean {
  return token.kind === 'notation' && !token.said.isNote;
}

function refuseHeader(line: number, value: string): NotRead {
  const near = nearestHeader(value);
  const remedy =
    near === null
      ? 'Name it Sets, Reps, %1RM, kg, RIR or Notes if it is one of them; its cells stand with the notes.'
      : `Is it “${near}”? Rename the column; its cells stand with the notes.`;
  return {
    ...notRead(line, null, { value, expected: 'a column that is known', remedy }, near === null ? [] : [near]),
    kind: 'unknown-column',
  };
}

function refuseDoubled(line: number, value: string): NotRead {
  const remedy = 'Its cells stand with the notes; remove one of the two columns.';
  return { ...notRead(line, null, { value, expected: 'every column once', remedy }), kind: 'header' };
}
