/** Why a file cannot be opened as a table: thrown inside the reading of files, a problem of the file outside. */
import type { Problem } from '../problem.ts';

/** What was seen in place of a table, what was expected, and what to do about it. */
export type RefusedFile = Pick<Problem, 'value' | 'expected' | 'remedy'>;

/** Ends the reading of a file from wherever in it. */
export class FileRefusal extends Error {
  readonly refused: RefusedFile;
  constructor(refused: RefusedFile) {
    super(refused.value);
    this.refused = refused;
  }
}

/** A refusal as the problem of a whole file. */
export function reportRefused(refused: RefusedFile, file: string): Problem {
  return { kind: 'file', file, line: null, column: null, ...refused };
}
