/** Cells copied from a spreadsheet, put into a grid of entries from the one in hand on. */
import { nameChoice } from '../../evidence/choiceWords.ts';
import type { Column } from '../../evidence/column.ts';
import { ARM_COLUMNS, type ArmColumn } from '../../evidence/schema.ts';
import { putBack } from './changeDraft.ts';
import { type Place, readPlace, type StudyDraft, writePlace } from './studyDraft.ts';
import { wordsOf } from './wordsOf.ts';

/** Entries of a grid, row by row; a row may have fewer than others. */
export type Grid = readonly (readonly Place[])[];

export interface Pasted {
  readonly draft: StudyDraft;
  readonly restore: (now: StudyDraft) => StudyDraft;
  readonly filled: number;
  /** Cells for which the grid had no entry, or a choice that does not know the word. */
  readonly left: number;
  /** Decimal commas that were written as points. */
  readonly commas: number;
}

/** Rows of cells, as spreadsheets copy them: tabs between cells, line breaks between rows. */
export function readBlock(text: string): readonly (readonly string[])[] {
  return text
    .replace(/\r\n?/gu, '\n')
    .replace(/\n$/u, '')
    .split('\n')
    .map((line) => line.split('\t').map((cell) => cell.replace(/\u00a0/gu, ' ').trim()));
}

/** True where a paste is more than one text that can stand as it is. @param column of the entry in hand */
export function needsHelp(block: readonly (readonly string[])[], column: ArmColumn): boolean {
  return block.length > 1 || block[0].length > 1 || asNumber(column, block[0][0]).text !== block[0][0];
}

/** @param row @param cell of the entry in hand, from 0 */
export function fillGrid(
  draft: StudyDraft,
  grid: Grid,
  row: number,
  cell: number,
  block: readonly (readonly string[])[],
): Pasted {
  let now = draft;
  let [filled, left, commas] = [0, 0, 0];
  const before: (readonly [Place, string])[] = [];
  for (const [i, texts] of block.entries()) {
    for (const [j, written] of texts.entries()) {
      const place = grid[row + i]?.[cell + j];
      const fitting = place && fit(place.column, written);
      if (!place || !fitting) {
        if (written !== '') left++;
        continue;
      }
      before.push([place, readPlace(now, place)]);
      now = writePlace(now, place, fitting.text);
      filled++;
      commas += fitting.commas;
    }
  }
  const restore = (later: StudyDraft) =>
    putBack(
      before.reduce((one, [place]) => writePlace(one, place, ''), later),
      before,
    );
  return { draft: now, restore, filled, left, commas };
}

interface Fitting {
  readonly text: string;
  readonly commas: number;
}

/** A text as the column takes it; null where it is none of the column's words. */
function fit(column: ArmColumn, written: string): Fitting | null {
  const words = wordsOf(ARM_COLUMNS[column]);
  if (!words || written === '') return asNumber(column, written);
  const alike = (word: string) => word.toLowerCase() === written.toLowerCase();
  const word = words.find((one) => alike(one) || alike(nameChoice(column, one)));
  return word === undefined ? null : { text: word, commas: 0 };
}

/** A number with a decimal comma, or a typographic minus, as the table has it; other texts as they are. */
function asNumber(column: ArmColumn, written: string): Fitting {
  const { field, rangeOf }: Column<unknown> = ARM_COLUMNS[column];
  const isNumeric = field.type === 'number' || field.type === 'integer' || rangeOf !== undefined;
  if (!isNumeric) return { text: written, commas: 0 };
  const text = written.replace(/^\u2212/u, '-');
  // Two commas in one number separate thousands, which the table's reader then refuses by name.
  if (!/\d,\d/u.test(text) || /\d,\d+[,.]\d/u.test(text) || /\d\.\d+,\d/u.test(text)) return { text, commas: 0 };
  const commas = text.match(/\d,(?=\d)/gu)?.length ?? 0;
  return { text: text.replace(/(\d),(?=\d)/gu, '$1.'), commas };
}
