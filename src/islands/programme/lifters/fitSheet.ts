/**
 * The size of letters at which a lifter's week is one page of A4: the largest of a few, by how many lines its texts
 * take. What a browser lays out for paper cannot be measured before it prints, so the texts are reckoned.
 */
import { ALWAYS, groupCautions, tellCaution } from '../../../practice/cautions.ts';
import type { SheetDay } from '../../../practice/lifters/sheet.ts';
import { noteOf, tellLoad, tellSet } from '../../../practice/lifters/tellLine.ts';

/** Points, the largest first; styles/lifters.css has a rule for each. The least is that of small print. */
export const SIZES = [16, 14.5, 13, 12, 11, 10, 9] as const;
export type SheetSize = (typeof SIZES)[number];

/** Of A4 within margins of 12 mm, points; a fortieth is kept back for what is reckoned too short. */
const PAGE = { width: 527, height: 774 * 0.975 } as const;
/** Of the columns whose texts may be long, points: as the style sheet shares the page among them. */
const COLUMNS = { what: 129, load: 90, end: 146 } as const;
/** Mean width of a letter in ems, with what is left over at the ends of lines, in the site’s own face (measured on its sheets). */
const LETTER = 0.46;
/** Height of a line in sizes of its letters. */
const LEADING = 1.2;
const NOTE = 9;
const CAUTION = 8.5;
const NAME = 22;
/** Above and below a line of the sheet with its rule, and a day's name, points. */
const AROUND_LINE = 5.5;
const AROUND_DAY = 5.5;
const LEAST_LINE = 24;

export function fitSheet(name: string, days: readonly SheetDay[], isInvented: boolean): SheetSize {
  return SIZES.find((size) => heightOf(name, days, isInvented, size) <= PAGE.height) ?? SIZES[SIZES.length - 1];
}

/** Points. */
function heightOf(name: string, days: readonly SheetDay[], isInvented: boolean, size: number): number {
  const head =
    textHeight(name, NAME, PAGE.width) + size * LEADING + (isInvented ? 2 * size * LEADING : 0) + 2 * NOTE * LEADING;
  const lines = days.flatMap((day) => day.lines);
  const body = lines.map((line) => {
    const note = noteOf(line);
    const what =
      textHeight(line.exercise, size, COLUMNS.what) + (note === '' ? 0 : textHeight(note, NOTE, COLUMNS.what));
    const load = textHeight(tellLoad(line.load), line.load.kind === 'weight' ? 1.25 * size : size, COLUMNS.load);
    return Math.max(what, load, textHeight(tellSet(line), size, COLUMNS.end), LEAST_LINE) + AROUND_LINE;
  });
  const foot = [
    ...groupCautions(lines).map(tellCaution),
    ...ALWAYS,
    // The line that says what a 1RM is.
    '',
  ].map((text) => textHeight(text, CAUTION, PAGE.width));
  const all = [head, ...body, ...foot].reduce((sum, one) => sum + one, 0);
  return all + days.length * (size * LEADING + AROUND_DAY) + 2 * AROUND_LINE;
}

function textHeight(text: string, size: number, width: number): number {
  return Math.max(1, Math.ceil((text.length * LETTER * size) / width)) * size * LEADING;
}
