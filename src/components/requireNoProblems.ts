/** Holds the build to tables without problems. */
import { formatProblem, type Problem } from '../evidence/problem.ts';

/** What was read of a file. @throws where it has problems, with all of them */
export function requireNoProblems<Read extends { readonly problems: readonly Problem[] }>(
  file: string,
  read: Read,
): Read {
  const { problems } = read;
  if (problems.length === 0) return read;
  const count = `${problems.length} ${problems.length === 1 ? 'problem' : 'problems'}`;
  throw new Error(`${file} has ${count}; the site is not built:\n${problems.map(formatProblem).join('\n')}`);
}
