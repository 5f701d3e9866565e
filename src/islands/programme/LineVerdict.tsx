/** What the evidence says of a line as it is typed: what is advised, how it stands to that, what it keeps, and what is asked. */
import { findNamed } from '../../evidence/findNamed.ts';
import { formatExpectation, type Problem } from '../../evidence/problem.ts';
import { upperFirst } from '../../figures/firstLetter.ts';
import { formatShare } from '../../figures/format.ts';
import { stateAgainst } from '../../figures/programmeFindings.ts';
import { askAbout } from '../../practice/plausible.ts';
import type { EditorLine } from '../../practice/programme/edit.ts';
import { isBegun } from '../../practice/programme/editorColumns.ts';
import type { CheckedLine } from '../../practice/programme/line.ts';
import type { LineReport } from '../../practice/programme/lineReports.ts';
import { showReserve } from '../../ui/reserveWords.ts';
import { idOfPart, type VersionName } from './editing.state.ts';
import type { ProgrammeState } from './programme.state.ts';

export interface LineProps {
  readonly state: ProgrammeState;
  readonly which: VersionName;
  readonly line: EditorLine;
  /** Its place, from 1. */
  readonly number: number;
  /** null where it was not checked yet. */
  readonly report: LineReport | null;
  /** What was taken without being written when the line came in, of the cells that are as they were then. */
  readonly taken: readonly string[];
}

export function LineVerdict({ state, which, line, number, report, taken }: LineProps) {
  if (!isBegun(line.cells)) return <p class="small">Nothing is written on this line yet; it is not counted.</p>;
  if (!report) return null;
  const { checked, problems, warnings, assumed, waits } = report;
  const wrong = problems.filter(({ kind }) => kind !== 'missing-value');
  const missing = problems.filter(({ kind }) => kind === 'missing-value');
  return (
    <>
      {checked && problems.length === 0 && <Verdict checked={checked} />}
      {checked && problems.length === 0 && which === 'first' && isToMove(checked) && (
        <p>
          <button type="button" class="inline" onClick={() => state.apply(line.id)}>
            Apply the advice<span class="unseen"> to line {number}, in version two</span>
          </button>
        </p>
      )}
      {wrong.length > 0 && (
        <ul class="problem">
          {wrong.map((problem, i) => (
            <li key={i}>
              {problem.column ? `${problem.column}: ` : ''}
              {formatExpectation(problem)}
            </li>
          ))}
        </ul>
      )}
      {missing.length > 0 && <p class="small">Still missing: {missing.map(sayMissing).join('; ')}.</p>}
      {waits && problems.length === 0 && (
        <p class="small">This exercise is asked about below; the line waits for it.</p>
      )}
      {waits && <Suggestions state={state} which={which} line={line} />}
      {warnings.length > 0 && <Questions checked={checked} warnings={warnings} />}
      {[
        checked?.line.how ? `Worked out: ${checked.line.how}.` : null,
        ...assumed,
        ...taken.filter((one) => !assumed.includes(one)),
      ].map(
        (one, i) =>
          one && (
            <p class="small" key={i}>
              {one}
            </p>
          ),
      )}
    </>
  );
}

function Verdict({ checked }: { readonly checked: CheckedLine }) {
  const { kept, advised, near, unsafe } = checked;
  return (
    <>
      <p class={unsafe ? 'problem verdict' : 'verdict'}>
        <strong>{upperFirst(stateAgainst(checked))}</strong>
      </p>
      <p>
        {advised.reserve && <>Advised: {showReserve(advised.reserve)} in reserve. </>}
        {kept.share ? `Keeps ${formatShare(kept.share)} of growth.` : `Growth kept is not known: ${kept.reason}.`}
        {near.loadOutside > 0 && ' The load lies outside all that was studied.'}
      </p>
      {advised.adjustments.map((one) => (
        <p class="small" key={one}>
          {one}
        </p>
      ))}
    </>
  );
}

/** True where the advice would change the line, or say why it cannot. */
function isToMove({ against, unsafe }: CheckedLine): boolean {
  return unsafe || against !== 'inside';
}

function Suggestions({ state, which, line }: Pick<LineProps, 'state' | 'which' | 'line'>) {
  const found = findNamed(state.exercises.value, line.cells.exercise);
  if (found.kind !== 'near') return null;
  const take = (name: string) => {
    state.setCell(which, line.id, 'exercise', name);
    state.focusOn(idOfPart(which, line.id, 'exercise'));
  };
  return (
    <p class="buttons">
      Is it one of these?
      {found.suggestions.map(({ name }) => (
        <button type="button" class="inline" key={name} onClick={() => take(name)}>
          {name}
        </button>
      ))}
    </p>
  );
}

/** Not asked a second time where the verdict has asked already. */
function Questions({
  checked,
  warnings,
}: {
  readonly checked: CheckedLine | null;
  readonly warnings: readonly Problem[];
}) {
  const question =
    checked && askAbout({ ...checked.line, relation: checked.line.exercise.relation }, checked.plausibility);
  if (question) return checked.against === 'questioned' ? null : <p class="question">{question}</p>;
  return (
    <>
      {warnings.map((warning, i) => (
        <p class="question" key={i}>
          {warning.column}: {formatExpectation(warning)}
        </p>
      ))}
    </>
  );
}

function sayMissing({ column, expected }: Problem): string {
  return column === 'load' || column === null ? expected : column;
}
