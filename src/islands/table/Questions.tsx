/** What the reader of a table must be asked before it can be read as it was meant: once each, and nothing is taken for granted. */
import { useEffect, useRef } from 'preact/hooks';
import type { ColumnQuestion } from '../../evidence/opening/columnQuestions.ts';
import type { DecimalCommas } from '../../evidence/opening/decimalComma.ts';
import type { Answer, TableQuestions } from '../../evidence/opening/openTable.ts';
import { showValue } from '../../evidence/problem.ts';
import { countOf } from '../../numerics/countOf.ts';
import type { OpenedTable } from './tableWorker.ts';

/** What was found in the file. */
export const FINDINGS_ID = 'own-findings';

interface Props {
  readonly opened: OpenedTable;
  readonly reply: (given: Answer) => void;
}

/** Columns come first: which cells are numbers is known only once every column is. */
export function countQuestions({ columns, commas }: TableQuestions): number {
  return columns.length > 0 ? columns.length : commas ? 1 : 0;
}

export function Questions({ opened, reply }: Props) {
  const { questions } = opened;
  const count = countQuestions(questions);
  const heading = useRef<HTMLHeadingElement>(null);
  const asked = useRef(count);
  // The button that was pressed goes with its question: the focus goes to those that are left, or to what came of them.
  useEffect(() => {
    if (count !== asked.current) (heading.current ?? document.getElementById(FINDINGS_ID))?.focus();
    asked.current = count;
  }, [count]);
  if (count === 0) return null;
  return (
    <section class="questions" aria-labelledby="questions">
      <h2 id="questions" ref={heading} tabIndex={-1}>
        Asked once
      </h2>
      {questions.columns.map((question) => (
        <Column key={question.written} question={question} reply={reply} />
      ))}
      {questions.columns.length === 0 && questions.commas && <Commas commas={questions.commas} reply={reply} />}
    </section>
  );
}

function Column({ question, reply }: { readonly question: ColumnQuestion } & Pick<Props, 'reply'>) {
  const { written, values, candidates, rivals } = question;
  const name = showValue(written);
  const only = candidates.length === 1 ? candidates[0] : null;
  return (
    <fieldset>
      <legend>
        <code>{name}</code>
        {only ? (
          <>
            : is this <code>{only.name}</code>?
          </>
        ) : (
          ': which of these is this?'
        )}
      </legend>
      {values.length > 0 && <p>It holds {values.map((value) => `“${showValue(value)}”`).join(', ')} and so on.</p>}
      {only ? (
        <p>
          {only.name} holds: {stateColumn(only)}
        </p>
      ) : (
        <dl>
          {candidates.map((candidate) => (
            <div key={candidate.name}>
              <dt>
                <code>{candidate.name}</code>
              </dt>
              <dd>{stateColumn(candidate)}</dd>
            </div>
          ))}
        </dl>
      )}
      {rivals.length > 0 && (
        <p class="small">
          The table also has {rivals.map((rival) => `“${showValue(rival)}”`).join(', ')}, which may be it.
        </p>
      )}
      <p class="buttons">
        {candidates.map((candidate) => (
          <button
            key={candidate.name}
            type="button"
            onClick={() => reply({ of: 'column', question, name: candidate.name })}
          >
            {only ? `Yes, it is ${candidate.name}` : candidate.name}
          </button>
        ))}
        <button type="button" onClick={() => reply({ of: 'column', question, name: null })}>
          {only ? 'No, leave it out' : 'None of them'}
        </button>
      </p>
    </fieldset>
  );
}

function stateColumn({ description, unit }: ColumnQuestion['candidates'][number]): string {
  return unit ? `${description} Unit: ${unit}.` : description;
}

function Commas({ commas, reply }: { readonly commas: DecimalCommas } & Pick<Props, 'reply'>) {
  const { cells, columns, example, couldBeThousands } = commas;
  return (
    <fieldset>
      <legend>
        {countOf(cells, 'cell')} {cells === 1 ? 'has' : 'have'} a decimal comma, such as “{showValue(example)}”: read{' '}
        {cells === 1 ? 'it as a decimal point' : 'them as decimal points'}?
      </legend>
      <p>In {columns.map(({ name }) => name).join(', ')}. Nothing else is changed.</p>
      {couldBeThousands.map(({ name, cell }) => (
        <p key={name}>
          Look at {name}: “{cell}” could mean {cell.replace(',', '')}; it would be read as {cell.replace(',', '.')}.
        </p>
      ))}
      <p class="buttons">
        <button type="button" onClick={() => reply({ of: 'commas', isYes: true })}>
          Yes, as decimal points
        </button>
        <button type="button" onClick={() => reply({ of: 'commas', isYes: false })}>
          No, leave them
        </button>
      </p>
    </fieldset>
  );
}
