/** Your table: opened and kept in this browser, checked line by line, and compared with the site's. */
import { useMemo, useState } from 'preact/hooks';
import { countOf, countStudies } from '../../numerics/countOf.ts';
import { useConnection } from '../../ownTable/useTable.ts';
import { FoldList } from '../../ui/ProblemList.tsx';
import { Trouble } from '../../ui/Trouble.tsx';
import { TableChanges } from './Changes.tsx';
import { KeptTables } from './KeptTables.tsx';
import { PublishedTrials, type Trials } from './PublishedTrials.tsx';
import { countQuestions, FINDINGS_ID, Questions } from './Questions.tsx';
import type { OpenedTable } from './tableWorker.ts';
import { createYourTable, type YourTableState } from './yourTable.state.ts';

const FILE_ID = 'own-file';
const PHASES = { reading: 'Reading', unpacking: 'Unpacking', checking: 'Checking' } as const;

/** Where the focus goes when what had it is gone. */
function focusFile(): void {
  document.getElementById(FILE_ID)?.focus();
}

interface Props {
  /** Address of the site's own table. */
  readonly shipped: string;
  /** Published trials that can be opened; null where the site is built from them. */
  readonly trials: Trials | null;
}

export function YourTable({ shipped, trials }: Props) {
  const state = useMemo(() => createYourTable(shipped), [shipped]);
  useConnection(state, true);
  return (
    <div class="your-table">
      <Opening state={state} />
      <Findings state={state} />
      {trials && <PublishedTrials trials={trials} state={state} />}
      <KeptTables state={state} />
      <Compared state={state} />
    </div>
  );
}

function Opening({ state }: { readonly state: YourTableState }) {
  const [isOver, setIsOver] = useState(false);
  const { opening } = state;
  const { value: progress } = opening.progress;
  return (
    <section
      class="drop"
      aria-label="Open a table"
      data-over={isOver}
      onDragOver={(event) => {
        event.preventDefault();
        setIsOver(true);
      }}
      onDragLeave={() => setIsOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setIsOver(false);
        const [file] = event.dataTransfer?.files ?? [];
        if (file) opening.open(file);
      }}
    >
      <div class="control">
        <label for={FILE_ID}>Open a table of study arms (.csv, .xlsx or .ods), or drop it here</label>
        <input
          id={FILE_ID}
          type="file"
          accept=".csv,.tsv,.txt,.xlsx,.ods,text/csv"
          aria-describedby="own-help"
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? [];
            if (file) opening.open(file);
            event.currentTarget.value = '';
          }}
        />
        <span class="help" id="own-help">
          The file is read in this browser and nowhere else; it is never sent. Of CSV, with commas, semicolons or tabs;
          of a spreadsheet, the sheet whose header fits.
        </span>
      </div>
      {progress && (
        <p class="buttons">
          <label for="own-progress">
            {PHASES[progress.phase]} {progress.name}
          </label>
          <progress id="own-progress" value={progress.share} max={1} />
          <button
            type="button"
            onClick={() => {
              opening.cancel();
              focusFile();
            }}
          >
            Stop
          </button>
        </p>
      )}
      <div role="status">
        <Trouble what="That could not be done" reason={opening.failure.value ?? state.failure.value} />
      </div>
    </section>
  );
}

/** What is wrong with the file opened last, or that it was taken. */
function Findings({ state }: { readonly state: YourTableState }) {
  const { value: opened } = state.opening.opened;
  return (
    <section id={FINDINGS_ID} tabIndex={-1} aria-label={opened ? 'What was found' : undefined}>
      <div role="status">{opened && <Outcome opened={opened} stays={state.inUse.value.kind === 'own'} />}</div>
      {opened && <Questions opened={opened} reply={state.opening.reply} />}
      {opened && <Problems opened={opened} state={state} />}
    </section>
  );
}

/** @param stays true where an own table was there before and stays */
function Outcome({ opened, stays }: { readonly opened: OpenedTable; readonly stays: boolean }) {
  const { facts, kept, said } = opened;
  return (
    <>
      {kept ? (
        <p>
          <strong>
            {facts.name} was taken: {countOf(facts.rows, 'row')} of {countStudies(facts.studies)}.
          </strong>{' '}
          Evidence, Target, Programme, Studies, Answer and the figures with your settings read it until you go back,
          also after a reload.
        </p>
      ) : (
        <p>
          <strong>
            {facts.name} {stateRefusal(opened)}.
          </strong>{' '}
          {stays ? 'The table that the site reads stays as it was.' : 'The site goes on reading its own table.'}
        </p>
      )}
      {said.length > 0 && (
        <ul class="small">
          {said.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      )}
    </>
  );
}

function stateRefusal({ questions, problemCount }: OpenedTable): string {
  const open = countQuestions(questions);
  return open > 0 ? `waits for ${countOf(open, 'answer')}` : `was not taken: ${countOf(problemCount, 'problem')}`;
}

function Problems({ opened, state }: { readonly opened: OpenedTable; readonly state: YourTableState }) {
  const { questions, problems, problemCount, warnings, warningCount } = opened;
  if (problemCount + warningCount === 0) return null;
  const list = (
    <FoldList heading="Problems, by line; several of one kind as one" folds={problems} count={problemCount} />
  );
  return (
    <>
      {problemCount > 0 &&
        (countQuestions(questions) > 0 ? (
          <details>
            <summary>{countOf(problemCount, 'problem')} as it stands</summary>
            {list}
          </details>
        ) : (
          list
        ))}
      {warningCount > 0 && (
        <details open={problemCount === 0 && countQuestions(questions) === 0}>
          <summary>{countOf(warningCount, 'warning')}: unusual, but possible; they stop nothing</summary>
          <FoldList heading="By line; several of one kind as one" folds={warnings} count={warningCount} />
        </details>
      )}
      <p class="buttons">
        <button type="button" onClick={state.opening.downloadProblems}>
          All of them as CSV
        </button>
      </p>
    </>
  );
}

/** What the own table that the site reads changes. */
function Compared({ state }: { readonly state: YourTableState }) {
  const inUse = state.inUse.value;
  const comparing = state.comparing.value;
  if (inUse.kind !== 'own') return null;
  return (
    <section aria-label="Your table against the site’s">
      <p class="buttons">
        {/* One button for both, so that it keeps the focus. */}
        <button type="button" onClick={comparing ? state.stopComparing : state.compare}>
          {comparing ? 'Stop comparing' : `What ${inUse.about.name} changes against the site’s table`}
        </button>
        <span role="status">{comparing && 'Fitting both tables, and each change on its own …'}</span>
      </p>
      {state.comparison.value && <TableChanges comparison={state.comparison.value} />}
    </section>
  );
}
