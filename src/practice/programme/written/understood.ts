/** What was understood of a written programme, where each value was read from, and what was not understood. */
import type { Problem } from '../../../evidence/problem.ts';
import type { Company } from '../../cautions.ts';
import type { EditorColumn } from '../editorColumns.ts';

/** Where something stood. */
export interface Place {
  /** Physical line of the text, from 1. */
  readonly line: number;
  /** Header of the column, as written; null outside a table. */
  readonly column: string | null;
  readonly text: string;
}

export interface Reading<Value> {
  readonly value: Value;
  readonly readFrom: Place;
}

/** A number, both ends the same, or a range of them. */
export interface Span {
  readonly least: number;
  readonly most: number;
}

export const LOAD_UNITS = ['%', 'kg', 'lb'] as const;
export interface WrittenLoad extends Span {
  /** % of 1RM, or a weight whose 1RM has to be known. */
  readonly unit: (typeof LOAD_UNITS)[number];
}

/** What was taken without being written, as a sentence. */
export interface Assumed {
  readonly said: string;
  /** Cells that it explains: it holds as long as they stay as they are. */
  readonly of: readonly EditorColumn[];
}

/** What a set’s fields hold. */
interface Values {
  readonly sets: Span;
  readonly repetitions: Span;
  readonly load: WrittenLoad;
  /** Repetitions possible in a set at its load. */
  readonly possible: Span;
  /** Repetitions in reserve. */
  readonly reserve: Span;
  readonly company: Company;
}

export type Field = keyof Values;
export const FIELDS = [
  'sets',
  'repetitions',
  'load',
  'possible',
  'reserve',
  'company',
] as const satisfies readonly Field[];
/** A value that a notation says by itself. */
export type Found = { readonly [F in Field]: { readonly field: F; readonly value: Values[F] } }[Field];
/** null where nothing was written, or what was written was not understood. */
export type SetFields = { readonly [F in Field]: Reading<Values[F]> | null };

/** Columns of the site's own form that are taken as they are written. */
export const FACTS = ['muscles', 'can_pin', 'stoppable', 'partials'] as const;

export type WrittenFacts = Readonly<Partial<Record<(typeof FACTS)[number], Reading<string>>>>;

export interface UnderstoodLine extends SetFields {
  /** Physical line of the text, from 1. */
  readonly line: number;
  /** As it stood. */
  readonly text: string;
  /** 1 is the first Monday. */
  readonly day: Reading<number> | null;
  /** Week that it stands under where no day is named, from 1; null else. */
  readonly week: number | null;
  /** Name of the list, or as written. */
  readonly exercise: Reading<string> | null;
  readonly facts: WrittenFacts;
  /** What stands for a column of a programme and was not understood, as written; null where it is not known which. */
  readonly unread: readonly { readonly column: string | null; readonly text: string }[];
  /** What was taken without being written. */
  readonly assumed: readonly Assumed[];
  /** What belongs to it and has no place in a programme's columns. */
  readonly notes: readonly string[];
}

/** What was not understood; its column is the one of the programme that it is needed for. */
export interface NotRead extends Problem {
  /** What may be meant, to be asked. */
  readonly suggestions: readonly string[];
}

/** What belongs to no line: titles, headings, remarks, columns that are not read. */
export interface Note {
  readonly line: number;
  readonly text: string;
}

export interface WrittenProgramme {
  readonly lines: readonly UnderstoodLine[];
  readonly notRead: readonly NotRead[];
  readonly notes: readonly Note[];
  /** What was taken for the whole text without being written, a sentence each. */
  readonly assumed: readonly string[];
}

/** Name by which messages of the text carry its file. */
export const WRITTEN = 'written programme';

export function notRead(
  line: number,
  column: string | null,
  said: Pick<Problem, 'value' | 'expected' | 'remedy'>,
  suggestions: readonly string[] = [],
): NotRead {
  const kind = said.value === '' ? 'missing-value' : 'wrong-value';
  return { kind, file: WRITTEN, line, column, ...said, suggestions };
}

/** “6”, “6-8” */
export function writeSpan({ least, most }: Span): string {
  return least === most ? String(least) : `${least}-${most}`;
}

/** “80%”, “70-75%”, “100 kg” */
export function writeLoad(load: WrittenLoad): string {
  return load.unit === '%' ? `${writeSpan(load)}%` : `${writeSpan(load)} ${load.unit}`;
}
