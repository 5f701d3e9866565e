/** Problems or warnings of a table, as text: those of one kind as one that unfolds, the first of many. */
import { foldProblems, formatFold, listByValue, type ProblemFold } from '../evidence/foldProblems.ts';
import { formatProblem, type Problem } from '../evidence/problem.ts';
import { LISTED_PROBLEMS } from './listedProblems.ts';

interface Props {
  readonly heading: string;
  readonly problems: readonly Problem[];
}

export function ProblemList({ heading, problems }: Props) {
  return <FoldList heading={heading} folds={foldProblems(problems)} count={problems.length} />;
}

interface FoldProps {
  readonly heading: string;
  /** All, or the first of them. */
  readonly folds: readonly ProblemFold[];
  /** How many problems there are in all. */
  readonly count: number;
}

export function FoldList({ heading, folds, count }: FoldProps) {
  const listed = folds.slice(0, LISTED_PROBLEMS);
  return (
    <div class="problem">
      <p role="status">
        <strong>{heading}</strong>
      </p>
      <ul>
        {listed.map((fold, i) => (
          <li key={i}>{fold.count === 1 ? formatFold(fold) : <Fold fold={fold} />}</li>
        ))}
      </ul>
      <More number={count - countProblems(listed)} />
    </div>
  );
}

function Fold({ fold }: { readonly fold: ProblemFold }) {
  const listed = fold.problems.slice(0, LISTED_PROBLEMS);
  return (
    <details>
      <summary>{formatFold(fold)}</summary>
      <ul>
        {(fold.isSame ? listByValue(listed) : listed.map(formatProblem)).map((one, i) => (
          <li key={i}>{one}</li>
        ))}
      </ul>
      <More number={fold.count - listed.length} />
    </details>
  );
}

function More({ number }: { readonly number: number }) {
  return number > 0 ? <p>and {number.toLocaleString('en')} more.</p> : null;
}

function countProblems(folds: readonly ProblemFold[]): number {
  return folds.reduce((sum, { count }) => sum + count, 0);
}
