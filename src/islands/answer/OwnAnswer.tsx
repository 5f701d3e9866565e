/** The Answer page of a reader's own table, in the place of the site's. */
import { render } from 'preact';
import { useMemo } from 'preact/hooks';
import { useConnection } from '../../ownTable/useTable.ts';
import { Trouble } from '../../ui/Trouble.tsx';
import { Answer } from './Answer.tsx';
import { NextStudyLine } from './NextStudyLine.tsx';
import { createOwnAnswer, type OwnAnswerState } from './ownAnswer.state.ts';
import { Robustness } from './Robustness.tsx';

export interface Pages {
  readonly target: string;
  readonly evidence: string;
  readonly plan: string;
}

/** Shows the answer of an own table in a place of the page; with null it is emptied. */
export function showOwnAnswer(place: Element, table: string | null, pages: Pages): void {
  render(table === null ? null : <OwnAnswer key={table} table={table} pages={pages} />, place);
}

function OwnAnswer({ table, pages }: { readonly table: string; readonly pages: Pages }) {
  const state = useMemo(() => createOwnAnswer(table), [table]);
  useConnection(state, true);
  const source = state.source.value;
  const problem = state.problem.value;
  if (!source)
    return (
      <>
        <h1>The answer of your table</h1>
        <div role="status" aria-busy={problem === null}>
          {problem === null && <p>Your table is being read …</p>}
          <Trouble what="Your table could not be worked out" reason={problem} onRetry={state.retry} />
        </div>
      </>
    );
  return (
    <Answer
      analysis={source.analysis}
      targetPage={pages.target}
      needs={source.needs}
      mover=""
      nextStudy={<NextStudyOf state={state} planPage={pages.plan} />}
    >
      <div role="status" aria-busy={!source.checked && problem === null}>
        {source.checked && <Robustness analysis={source.analysis} sweep={null} />}
        {!source.checked && problem === null && <p>What each study and curve changes is being worked out …</p>}
        <Trouble what="This could not be worked out" reason={problem} onRetry={state.retry} />
      </div>
      <p>
        All choices together: <a href={pages.evidence}>Evidence</a> works out every combination of them.
      </p>
    </Answer>
  );
}

function NextStudyOf({ state, planPage }: { readonly state: OwnAnswerState; readonly planPage: string }) {
  const { nextStudy, nextProblem, problem, retryNext } = state;
  const isBusy = nextStudy.value === null && nextProblem.value === null && problem.value === null;
  return (
    <div role="status" aria-busy={isBusy}>
      {isBusy && 'What one more study would narrow is being worked out …'}
      {nextStudy.value && <NextStudyLine stated={nextStudy.value} planPage={planPage} />}
      <Trouble
        what="What one more study would narrow could not be worked out"
        reason={nextProblem.value}
        onRetry={retryNext}
      />
    </div>
  );
}
