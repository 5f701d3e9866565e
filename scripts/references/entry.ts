/** An entry of a reference manager's export, as it was read. */
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

/** What the two formats call the fields of a study; completes “add … to the entry”. */
export type FieldNames = Readonly<Record<string, string>>;

/** What an export begins with, for a message; empty where it has nothing. */
export function firstLine(text: string): string {
  return text.trim().split('\n', 1)[0];
}

/** A place of an export that could not be read. */
export function unreadable(
  file: string,
  line: number | null,
  value: string,
  expected: string,
  error: unknown,
): Problem {
  // The reading library shows the place inside the entry on the lines below the first.
  const why = error instanceof Error ? error.message.split(/ at line|\n/u, 1)[0] : '';
  return {
    kind: 'ragged-line',
    file,
    line,
    column: null,
    value,
    expected,
    remedy: why === '' ? null : `The reader says: ${why}.`,
  };
}
