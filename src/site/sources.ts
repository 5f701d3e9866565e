/** The files that the site is built from: read whole, or the build ends and says what is wrong with them. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { foldProblems, formatFold } from '../evidence/foldProblems.ts';
import { decodeText } from '../evidence/opening/encoding.ts';
import { stateEncoding } from '../evidence/opening/openFile.ts';
import type { Problem } from '../evidence/problem.ts';
import { countOf } from '../numerics/countOf.ts';

interface Read {
  readonly problems: readonly Problem[];
  readonly warnings?: readonly Problem[];
  /** What may solve many of the problems at once, a sentence. */
  readonly hint?: string;
}

/**
 * @param what the file's part in the build, for the message
 * @throws where the file cannot be read, with where it was looked for
 */
export function readSource(file: string, what: string): string {
  const { text, encoding } = decodeText(readSourceBytes(file, what));
  for (const said of stateEncoding(text, encoding)) console.warn(`${file}: ${said}`);
  return text;
}

/** As `readSource`, without taking it for text. */
export function readSourceBytes(file: string, what: string): Uint8Array {
  try {
    return new Uint8Array(readFileSync(file));
  } catch (error) {
    throw new Error(
      `the site is not built: cannot read the ${what}, expected a file at ${resolve(file)}: ${String(error)}`,
    );
  }
}

/**
 * What was read, where it has no problem; prints its warnings.
 *
 * @throws where it has problems, with all of them
 */
export function requireNoProblems<T extends Read>(file: string, read: T): T {
  const list = (some: readonly Problem[]) =>
    foldProblems(some)
      .map((fold) => `${file}: ${formatFold(fold)}`)
      .join('\n');
  if (read.problems.length > 0) {
    throw new Error(
      `the site is not built: ${countOf(read.problems.length, 'problem')}\n${list(read.problems)}${read.hint ? `\n${read.hint}` : ''}`,
    );
  }
  if (read.warnings && read.warnings.length > 0) console.warn(list(read.warnings));
  return read;
}
