/**
 * An export of a reference manager as its entries. A format divides the export into pieces, so that what is wrong
 * with one can be named with its line and takes no other with it; the library reads each.
 */
import type { CslItem } from '@citation-js/core';
import type { Problem } from '../../src/evidence/problem.ts';

export interface Entry {
  /** Line of the export on which the entry begins, 1 being the first. */
  readonly line: number;
  /** What the messages call it: its key or its number. */
  readonly label: string;
  readonly item: CslItem;
}

export interface Export {
  readonly entries: readonly Entry[];
  readonly problems: readonly Problem[];
}

/** What is wrong at a line of the export; `more` where the place is a field or the library says why. */
export type Report = (line: number | null, value: string, expected: string, more?: Partial<Problem>) => void;

/** A part of an export that is to be one entry. */
export interface Piece extends Omit<Entry, 'item'> {
  /** Its beginning, for a message. */
  readonly shown: string;
  /** Null where it was reported why there is none; throws where the library cannot read it. */
  readonly read: () => CslItem | null;
}

export interface Format {
  /** What the format calls the fields of a study, by column; completes “add … to the entry”. */
  readonly fields: Readonly<Record<string, string>>;
  /** What an export has at least one of. */
  readonly smallest: string;
  readonly split: (text: string, report: Report) => readonly Piece[];
}

export function readExport({ smallest, split }: Format, text: string, file: string): Export {
  const problems: Problem[] = [];
  const report: Report = (line, value, expected, more) =>
    problems.push({ kind: 'ragged-line', file, line, column: null, value, expected, remedy: null, ...more });
  const entries = split(text, report).flatMap(({ read, shown, ...piece }): Entry[] => {
    try {
      const item = read();
      return item === null ? [] : [{ ...piece, item }];
    } catch (error) {
      report(piece.line, shown, 'an entry whose fields can be read', sayWhy(error));
      return [];
    }
  });
  if (entries.length === 0 && problems.length === 0) report(null, firstLine(text), `at least ${smallest}`);
  return { entries, problems };
}

/** The words of the library, which shows the place inside the entry on the lines below the first. */
export function sayWhy(error: unknown): Partial<Problem> {
  const why = error instanceof Error ? error.message.split(/ at line|\n/u, 1)[0] : '';
  return why === '' ? {} : { remedy: `The reader says: ${why}.` };
}

export function firstLine(text: string): string {
  return text.trim().split('\n', 1)[0];
}

/** @param index of a character of the text */
export function lineAt(text: string, index: number): number {
  return text.slice(0, index).split(/\r\n?|\n/u).length;
}
