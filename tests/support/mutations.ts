/**
 * Seeded mutations of a table's text: what people, spreadsheets, editors and ill-meaning files do to it. Each says
 * which lines of the new text it hit, and whether it must leave the meaning as it was.
 */
import Papa from 'papaparse';
import { ARM_COLUMNS } from '../../src/evidence/schema.ts';
import type { Random } from '../../src/numerics/random.ts';
import { CELLS, CHARACTERS } from './awkwardTexts.ts';

export interface Mutation {
  readonly kind: string;
  readonly text: string;
  /** Lines of the new text that were hit, 1 being the header; empty where a line went without a trace. */
  readonly lines: readonly number[];
  /** same: other dress, same rows; note: other notes, all else the same; number: another valid number; any: who knows. */
  readonly meaning: 'same' | 'note' | 'number' | 'any';
}

type Cells = readonly (readonly string[])[];
type Mutate = (table: Cells, dice: Dice) => Mutation;

interface Dice {
  readonly below: (count: number) => number;
  readonly pick: <Item>(items: readonly Item[]) => Item;
}

const HEADERS = Object.keys(ARM_COLUMNS);

/** @param table cells of the header and the rows */
export function mutate(table: Cells, random: Random): Mutation {
  const below = (count: number) => Math.floor(random.uniform() * count);
  const dice: Dice = { below, pick: (items) => items[below(items.length)] };
  return dice.pick(MUTATIONS)(table, dice);
}

const MUTATIONS: readonly Mutate[] = [
  // Other dress, same rows.
  (table, dice) => dress('a byte-order mark', `\ufeff${write(table)}`, dice),
  (table, dice) => dress('another delimiter', write(table, dice.pick([';', '\t'])), dice),
  (table, dice) => dress('other line ends', write(table), dice),
  (table, dice) => {
    const space = () => dice.pick(['', '', '', ' ', '  ', '\u00a0']);
    return dress('spaces around cells', write(table.map((row) => row.map((cell) => space() + cell + space()))), dice);
  },
  (table, dice) =>
    dress(
      'marks round cells',
      write(table, ',', () => dice.below(3) === 0),
      dice,
    ),
  (table, dice) => {
    const order = table[0].map((_, i) => i).sort(() => dice.below(3) - 1);
    return dress('columns in another order', write(table.map((row) => order.map((i) => row[i]))), dice);
  },
  (table, dice) => {
    const respelt = (cell: string) =>
      /^\d+\.\d+$/u.test(cell) && dice.below(2) ? dice.pick([`${cell}00`, `+${cell}`, `${cell}e0`, `00${cell}`]) : cell;
    return dress('numbers in other digits', write(table.map((row, i) => (i === 0 ? row : row.map(respelt)))), dice);
  },
  // Cells.
  (table, dice) => {
    const note = dice.pick(['', 'read anew', 'a, "b"; c', 'éß漢字 😀', '<0.05', '5 > 3', "it's", '1e5', '__proto__']);
    return changeCell(table, dice, 'note', () => note, 'note');
  },
  (table, dice) =>
    changeCell(
      table,
      dice,
      'baseline_mean',
      (cell) => (cell === '' ? '' : String(Number(cell) * (0.9 + dice.below(20) / 100))),
      'number',
    ),
  (table, dice) => changeCell(table, dice, dice.pick(HEADERS), () => dice.pick(CELLS), 'any'),
  (table, dice) => changeCell(table, dice, dice.pick(HEADERS), () => dice.pick(CELLS), 'any'),
  (table, dice) =>
    changeCell(
      table,
      dice,
      dice.pick(HEADERS),
      (cell) => (/\d/u.test(cell) ? cell + dice.pick(['0', 'e9', 'e300', 'e-300', '%', ',5']) : `${cell}0`),
      'any',
    ),
  (table, dice) => {
    const row = 1 + dice.below(table.length - 1);
    const [one, other] = [dice.below(HEADERS.length), dice.below(HEADERS.length)];
    const cells = table[row].with(one, table[row][other]).with(other, table[row][one]);
    return lineMutation('two cells of a row exchanged', table.with(row, cells), [row]);
  },
  (table, dice) => {
    const [one, other] = [1 + dice.below(table.length - 1), 1 + dice.below(table.length - 1)];
    const column = dice.below(HEADERS.length);
    const text = table
      .with(one, table[one].with(column, table[other][column]))
      .with(other, table[other].with(column, table[one][column]));
    return lineMutation('two cells of a column exchanged', text, [one, other]);
  },
  // The header.
  (table, dice) =>
    lineMutation(
      'a header cell replaced',
      table.with(0, table[0].with(dice.below(HEADERS.length), dice.pick([...CELLS, ...HEADERS]))),
      [0],
    ),
  (table, dice) => {
    const [one, other] = [dice.below(HEADERS.length), dice.below(HEADERS.length)];
    return lineMutation(
      'two header cells exchanged',
      table.with(0, table[0].with(one, table[0][other]).with(other, table[0][one])),
      [0],
    );
  },
  (table, dice) => {
    const gone = dice.below(HEADERS.length);
    return lineMutation(
      'a column removed',
      table.map((row) => row.toSpliced(gone, 1)),
      [0],
    );
  },
  // Lines.
  (table, dice) => {
    const row = dice.below(table.length);
    return lineMutation('a line doubled', table.toSpliced(row, 0, table[row]), [row, row + 1]);
  },
  (table, dice) => {
    const row = dice.below(table.length);
    return lineMutation('a line removed', table.toSpliced(row, 1), row === 0 ? [0] : []);
  },
  (table, dice) => {
    const row = dice.below(table.length);
    const lines = write(table).split('\n');
    return {
      kind: 'a line cut',
      text: lines.with(row, lines[row].slice(0, dice.below(lines[row].length))).join('\n'),
      lines: [row + 1],
      meaning: 'any',
    };
  },
  (table, dice) => {
    const text = write(table);
    const cut = text.slice(0, dice.below(text.length));
    return { kind: 'the file cut', text: cut, lines: [lineAt(cut, cut.length)], meaning: 'any' };
  },
  (table, dice) => {
    const text = write(table);
    const places = [...text.matchAll(/,/gu)].map(({ index }) => index);
    return edit('a delimiter changed', text, [
      { at: dice.pick(places), remove: 1, insert: dice.pick([';', '\t', '|', ', ', ',,', '']) },
    ]);
  },
  // Characters, one to three at a time.
  ...Array.from({ length: 9 }, () => changeCharacters),
];

function changeCharacters(table: Cells, dice: Dice): Mutation {
  const text = write(table);
  const edits = Array.from({ length: 1 + dice.below(3) }, () => {
    const insert = dice.below(3) === 0 ? '' : dice.pick(CHARACTERS);
    return { at: dice.below(text.length), remove: dice.below(2), insert };
  });
  return edit('characters changed', text, edits);
}

interface Edit {
  readonly at: number;
  readonly remove: number;
  readonly insert: string;
}

/** Edits from the end to the start, so that places stay right; lines behind an edit move with it. */
function edit(kind: string, original: string, edits: readonly Edit[]): Mutation {
  let text = original;
  let lines: number[] = [];
  for (const { at, remove, insert } of [...edits].sort((a, b) => b.at - a.at)) {
    const changed = text.slice(0, at) + insert + text.slice(at + remove);
    const moved = lineAt(changed, changed.length) - lineAt(text, text.length);
    const [from, to] = [lineAt(changed, at), lineAt(changed, at + insert.length)];
    lines = [...lines.map((line) => line + moved), ...Array.from({ length: to - from + 1 }, (_, i) => from + i)];
    text = changed;
  }
  return { kind, text, lines, meaning: 'any' };
}

/** Line on which a place of the text is; every kind of line end counts once. */
function lineAt(text: string, place: number): number {
  return text.slice(0, place).split(/\r\n|\r|\n/u).length;
}

function changeCell(
  table: Cells,
  dice: Dice,
  name: string,
  change: (cell: string) => string,
  meaning: Mutation['meaning'],
): Mutation {
  const column = HEADERS.indexOf(name);
  const row = 1 + dice.below(table.length - 1);
  return {
    ...lineMutation(`${name} changed`, table.with(row, table[row].with(column, change(table[row][column]))), [row]),
    meaning,
  };
}

/** @param rows places of the rows that were hit, the header being 0 */
function lineMutation(kind: string, table: Cells, rows: readonly number[]): Mutation {
  return { kind, text: write(table), lines: rows.map((row) => row + 1), meaning: 'any' };
}

/** Line ends of any kind, and blank lines at the end. */
function dress(kind: string, text: string, dice: Dice): Mutation {
  const ends = dice.pick([['\n'], ['\r\n'], ['\r'], ['\n', '\r\n', '\r']]);
  // A bare carriage return before a line feed would be one line end, which lines that are never empty do not have.
  return {
    kind,
    text: text.replace(/\n/gu, () => dice.pick(ends)) + dice.pick(['', '\n', '\r\n\r\n']),
    lines: [],
    meaning: 'same',
  };
}

function write(table: Cells, delimiter = ',', quotes?: () => boolean): string {
  return table.map((row) => (delimiter === ',' && !quotes ? plainLine(row) : line(row, delimiter, quotes))).join('');
}

/** Lines in plain dress by their cells, which tables that differ in a few lines share. */
const plainLines = new WeakMap<readonly string[], string>();

function plainLine(row: readonly string[]): string {
  const known = plainLines.get(row) ?? line(row, ',');
  plainLines.set(row, known);
  return known;
}

function line(row: readonly string[], delimiter: string, quotes: boolean | (() => boolean) = false): string {
  return `${Papa.unparse([row as string[]], { delimiter, newline: '\n', quotes })}\n`;
}
