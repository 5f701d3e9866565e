/**
 * A day that stands in a cell of another column: before the exercise, “Mon squat”, behind it, or with its sets,
 * “4x6 80% Sat”. It is looked for as in a line outside a table.
 */
import { type Context, readContext, type WrittenDay } from './context.ts';
import { takeMisspeltDay, writeDays } from './days.ts';
import { type DayRefusal, isSameDays, takeDayBeside } from './daysWithin.ts';
import { takeMarks } from './marks.ts';
import type { Piece } from './piece.ts';
import type { Place } from './understood.ts';

export interface NamedDays {
  readonly context: Context;
  readonly place: Place;
}

export interface DatedCells {
  /** The cells without those days. */
  readonly cells: readonly Piece[];
  /** Before an exercise, where nothing else names a day: it holds for what follows as well. */
  readonly begins: NamedDays | null;
  /** Of this line only. */
  readonly within: NamedDays | null;
  /** A word before an exercise that is nearly a weekday; null where none is. */
  readonly misspelt: string | null;
  /** What cannot stand beside the others. */
  readonly refused: readonly DayRefusal[];
}

/**
 * @param under days that the row names in a cell of their own, or the header of its column; none where neither does
 * @param isName true of a cell that is an exercise as it stands
 */
export function dateCells(
  given: readonly Piece[],
  under: readonly WrittenDay[],
  isName: (text: string) => boolean,
): DatedCells {
  let known = under;
  let begins: NamedDays | null = null;
  let within: NamedDays | null = null;
  let misspelt: string | null = null;
  const refused: DayRefusal[] = [];
  const cells = given.map((cell) => {
    if (!mayHoldDay(cell) || isName(takeMarks(cell.place.text).text)) return cell;
    const { text: before, context, nearly, rest } = partBefore(cell);
    const withText = (text: string) => ({ ...cell, place: { ...cell.place, text: `${before}${text}` } });
    if (nearly !== null && known.length > 0) {
      refused.push({ text: `${writeDays(known)} and ${nearly}`, isClear: true });
      return withText(rest);
    }
    misspelt ??= nearly;
    if (context && context.days.length > 0 && known.length > 0 && !isSameDays(known, context.days)) {
      refused.push({ text: `${writeDays(known)} and ${context.text}`, isClear: true });
      return withText(rest);
    }
    if (context && (known.length === 0 || context.week !== null)) {
      begins = { context, place: { ...cell.place, text: context.text } };
      known = context.days;
    }
    const beside = takeDayBeside(rest, known);
    if (beside.refused) {
      const { text, isClear } = beside.refused;
      refused.push(isClear ? { text: `${writeDays(known)} and ${text}`, isClear } : beside.refused);
    } else if (beside.within) {
      within = { context: beside.within, place: { ...cell.place, text: beside.within.text } };
      known = beside.within.days;
    }
    return withText(beside.rest);
  });
  return { cells, begins, within, misspelt, refused };
}

/** Of notes a day is part; numbers and companies have none. */
function mayHoldDay({ column }: Piece): boolean {
  return column === null || column.kind === 'exercise' || column.kind === 'scheme' || column.kind === 'context';
}

/** What a cell begins with: its marks, and the day before what else it says. */
function partBefore({ place: { text }, column }: Piece) {
  const marked = takeMarks(text);
  const marks = text.slice(0, text.length - marked.text.length);
  const whole = { text: '', context: null, nearly: null, rest: text };
  if (column?.kind === 'scheme') return whole;
  const context = readContext(marked.text);
  if (!context) {
    const found = takeMisspeltDay(marked.text);
    return found && found.rest !== '' ? { text: marks, context, nearly: found.day, rest: found.rest } : whole;
  }
  // A day alone heads the row, unless a column of days or weeks has its cell.
  if (context.rest === '' && column?.kind !== 'exercise') return whole;
  return { text: marks, context, nearly: null, rest: context.rest };
}
