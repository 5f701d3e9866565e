/** The pieces of one line put together: each value once, held to what its column allows, and what is missing named. */
import type { NamedExercise } from '../../../evidence/exerciseNames.ts';
import { isNamed } from '../../../evidence/findNamed.ts';
import { PROGRAMME_COLUMNS } from '../columns.ts';
import { takeFields } from './fields.ts';
import { sayMaximum } from './maximum.ts';
import { readName } from './name.ts';
import type { Refusal } from './notation.ts';
import { isNothing, type Piece, type ReadPiece, readPiece } from './piece.ts';
import {
  FACTS,
  type NotRead,
  notRead,
  type Place,
  type UnderstoodLine,
  type WrittenFacts,
  type WrittenLoad,
  writeLoad,
} from './understood.ts';

export interface Assembled {
  readonly line: UnderstoodLine;
  readonly notRead: readonly NotRead[];
}

/** A line whose day is read elsewhere. */
export interface ToAssemble {
  readonly line: number;
  readonly text: string;
  readonly pieces: readonly Piece[];
  /** What was already found to belong to it, a superset’s letter for instance. */
  readonly notes: readonly string[];
}

export function assemble({ line, text, pieces, notes }: ToAssemble, exercises: readonly NamedExercise[]): Assembled {
  const told: NotRead[] = [];
  const given = pieces.filter(({ place }) => !isNothing(place.text));
  const cells = given.filter(({ column }) => column?.kind !== 'note' && column?.kind !== 'fact');
  const read = cells.map((piece) => readCell(piece, exercises));
  const name = findName(read, given);
  const named = name && readName(name.words, name.place, exercises);
  const fields = takeFields(read, line, told);
  for (const { refused } of read) {
    for (const { refusal, text: value } of refused) {
      told.push(notRead(line, refusal.field, { value, expected: refusal.expected, remedy: refusal.remedy || null }));
    }
  }
  const { exercise = null, assumed = [] } = named ?? {};
  const noted = readNotes(given, line, told);
  const understood: UnderstoodLine = {
    line,
    text,
    day: null,
    week: null,
    exercise,
    ...fields,
    facts: gatherFacts(given),
    unread: told.map(({ column, value }) => ({ column, text: value })),
    assumed: [...assumed, ...read.flatMap(({ assumed }) => assumed)],
    notes: [...notes, ...restOf(read, name), ...noted],
  };
  told.push(...(named?.notRead ?? []), ...findMissing(understood, told));
  return { line: understood, notRead: told };
}

const NO_NAME: Refusal = {
  field: null,
  expected: 'the name of an exercise',
  remedy: 'Look whether the cells stand under their headers.',
};

/** A cell of the column of exercises is a name as it stands, unless it holds sets as well. */
function readCell(piece: Piece, exercises: readonly NamedExercise[]): ReadPiece {
  const read = readPiece(piece);
  if (piece.column?.kind !== 'exercise') return read;
  const text = piece.place.text.trim();
  if (!/\p{L}/u.test(text)) return { ...read, found: [], words: [], refused: [{ refusal: NO_NAME, text }] };
  const isName = read.found.length === 0 || isNamed(exercises, text);
  return isName ? { ...read, found: [], refused: [], words: [text], notes: [], assumed: [] } : read;
}

interface Name {
  readonly words: string;
  readonly place: Place;
}

/** The first words of the column of exercises, else the first of a piece outside all columns. */
function findName(read: readonly ReadPiece[], pieces: readonly Piece[]): Name | null {
  const columnOf = ({ place }: ReadPiece) => pieces.find((piece) => piece.place === place)?.column ?? null;
  const inColumn = read.find((piece) => columnOf(piece)?.kind === 'exercise' && piece.words.length > 0);
  const free = read.find(
    (piece) => (columnOf(piece) === null || columnOf(piece)?.kind === 'context') && piece.words.length > 0,
  );
  const found = inColumn ?? free;
  return found ? { words: found.words[0], place: found.place } : null;
}

function gatherFacts(pieces: readonly Piece[]): WrittenFacts {
  return Object.fromEntries(
    FACTS.flatMap((fact) => {
      const piece = pieces.find(({ column }) => column?.kind === 'fact' && column.fact === fact);
      return piece ? [[fact, { value: piece.place.text.trim(), readFrom: piece.place }]] : [];
    }),
  );
}

/** All words that are no name, with what is understood and not checked. */
function restOf(read: readonly ReadPiece[], name: Name | null): readonly string[] {
  return read.flatMap(({ place, words, notes }) => [
    ...(name && place === name.place ? words.slice(words.indexOf(name.words) + 1) : words),
    ...notes,
  ]);
}

/** A column of notes as it stands; where a number alone stands in it, what it is is asked. */
function readNotes(pieces: readonly Piece[], line: number, told: NotRead[]): readonly string[] {
  const written = pieces.filter(({ column }) => column?.kind === 'note').map(({ place }) => place.text.trim());
  for (const value of written.filter((one) => /^\d+(?:[.,]\d+)?\s?%?$/u.test(one))) {
    const remedy =
      'Look whether a decimal comma has split a number over two cells, or whether the number belongs elsewhere.';
    told.push(notRead(line, null, { value, expected: 'words in the column of notes', remedy }));
  }
  return written;
}

/** What a line of sets has to say and this one does not, unless something was said of it already. */
function findMissing(line: UnderstoodLine, told: readonly NotRead[]): readonly NotRead[] {
  // A number that nothing is said of is most likely what is missing.
  const isTold = (column: string) =>
    told.some((one) => one.column === column || (one.column === null && column !== 'exercise'));
  const miss = (column: string, expected: string, remedy: string, value = '') =>
    isTold(column) ? [] : [notRead(line.line, column, { value, expected, remedy })];
  const { exercise, sets, repetitions, load, possible } = line;
  return [
    ...(exercise ? [] : miss('exercise', 'the name of an exercise', 'Write it before the sets.')),
    ...(sets ? [] : miss('sets', PROGRAMME_COLUMNS.sets.expected, 'Write sets and repetitions, “4x6”.')),
    ...(repetitions
      ? []
      : miss('repetitions', PROGRAMME_COLUMNS.repetitions.expected, 'Write sets and repetitions, “4x6”.')),
    ...(load || possible
      ? []
      : miss('load', 'a load in % of 1RM, or the repetitions possible', 'Write “80%”, or “possible 14”.')),
    ...(load && load.value.unit !== '%' && !possible ? missMaximum(line, load.value, isTold('load')) : []),
  ];
}

/** Asks for the 1RM that a weight is a part of. */
function missMaximum({ line, exercise }: UnderstoodLine, load: WrittenLoad, isTold: boolean): readonly NotRead[] {
  if (isTold) return [];
  return [notRead(line, 'load', { value: writeLoad(load), ...sayMaximum(exercise?.value ?? '', load.unit) })];
}
