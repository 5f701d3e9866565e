/** Problems or warnings of a table, as text, the first of many. */
import { formatProblem, type Problem } from '../evidence/problem.ts';

/** Problems that are shown; the rest is counted. */
const SHOWN = 100;

export function ProblemList({
  heading,
  problems,
}: {
  readonly heading: string;
  readonly problems: readonly Problem[];
}) {
  return (
    <div class="problem">
      <p role="status">
        <strong>{heading}</strong>
      </p>
      <ul>
        {problems.slice(0, SHOWN).map((problem, i) => (
          <li key={i}>{formatProblem(problem)}</li>
        ))}
      </ul>
      {problems.length > SHOWN && <p>and {problems.length - SHOWN} more.</p>}
    </div>
  );
}
