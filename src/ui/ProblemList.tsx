/** Problems or warnings of a table, as text, the first of many. */
import { formatProblem, type Problem } from '../evidence/problem.ts';
import { LISTED_PROBLEMS } from './listedProblems.ts';

interface Props {
  readonly heading: string;
  /** All, or the first of them. */
  readonly problems: readonly Problem[];
  /** How many there are in all; as many as are given, unless it is said. */
  readonly count?: number;
}

export function ProblemList({ heading, problems, count = problems.length }: Props) {
  const listed = problems.slice(0, LISTED_PROBLEMS);
  const more = count - listed.length;
  return (
    <div class="problem">
      <p role="status">
        <strong>{heading}</strong>
      </p>
      <ul>
        {listed.map((problem, i) => (
          <li key={i}>{formatProblem(problem)}</li>
        ))}
      </ul>
      {more > 0 && <p>and {more.toLocaleString('en')} more.</p>}
    </div>
  );
}
