/** The files that the site is built from: read whole, or the build ends and says what is wrong with them. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { formatProblem, type Problem } from '../evidence/problem.ts';
import { countOf } from '../numerics/countOf.ts';

interface Read {
  readonly problems: readonly Problem[];
  readonly warnings?: readonly Problem[];
}

/**
 * @param what the file's part in the build, for the message
 * @throws where the file cannot be read, with where it was looked for
 */
export function readSource(file: string, what: string): string {
  try {
    return readFileSync(file, 'utf8');
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
  const list = (some: readonly Problem[]) => some.map((one) => `${file}: ${formatProblem(one)}`).join('\n');
  if (read.problems.length > 0) {
    throw new Error(`the site is not built: ${countOf(read.problems.length, 'problem')}\n${list(read.problems)}`);
  }
  if (read.warnings && read.warnings.length > 0) console.warn(list(read.warnings));
  return read;
}
