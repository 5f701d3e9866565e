/** Your table: opened and kept in this browser, checked line by line, and compared with the site's. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import { countOf, countStudies } from '../../numerics/countOf.ts';
import type { OpenedTable } from '../../ownTable/tableWorker.ts';
import { ProblemList } from '../../ui/ProblemList.tsx';
import { TableChanges } from './Changes.tsx';
import { createYourTable, type YourTableState } from './yourTable.state.ts';

const FILE_ID = 'own-file';

/** Where the focus goes when what had it is gone. */
function focusFile(): void {
  document.getElementById(FILE_ID)?.focus();
}

interface Props {
  /** Address of the site's own table. */
  readonly shipped: string;
}

export function YourTable({ shipped }: Props) {
  const state = useMemo(() => createYourTable(shipped), [shipped]);
  useEffect(() => state.connect(), [state]);
  return (
    <div class="your-table">
      <Opening state={state} />
      <Findings state={state} />
      <Kept state={state} />
    </div>
  );
}

function Opening({ state }: { readonly state: YourTableState }) {
  const [isOver, setIsOver] = useState(false);
  const { value: progress } = state.progress;
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
        if (file) state.open(file);
      }}
    >
      <div class="control">
        <label for={FILE_ID}>Open a table of study arms (CSV), or drop it here</label>
        <input
          id={FILE_ID}
          type="file"
          accept=".csv,.tsv,.txt,text/csv"
          aria-describedby="own-help"
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? [];
            if (file) state.open(file);
            event.currentTarget.value = '';
          }}
        />
        <span class="help" id="own-help">
          The file is read in this browser and nowhere else; it is never sent. Commas, semicolons or tabs.
        </span>
      </div>
      {progress && (
        <p class="buttons">
          <label for="own-progress">
            {progress.phase === 'reading' ? 'Reading' : 'Checking'} {progress.name}
          </label>
          <progress id="own-progress" value={progress.share} max={1} />
          <button
            type="button"
            onClick={() => {
              state.cancel();
              focusFile();
            }}
          >
            Stop
          </button>
        </p>
      )}
      <div role="status">
        {state.failure.value !== null && <p class="problem">That could not be done: {state.failure.value}</p>}
      </div>
    </section>
  );
}

/** What is wrong with the file opened last, or that it was taken. */
function Findings({ state }: { readonly state: YourTableState }) {
  const { value: opened } = state.opened;
  return (
    <section aria-label={opened ? 'What was found' : undefined}>
      <div role="status">{opened && <Outcome opened={opened} stays={state.own.value !== null} />}</div>
      {opened && <Problems opened={opened} state={state} />}
    </section>
  );
}

/** @param stays true where an own table was there before and stays */
function Outcome({ opened, stays }: { readonly opened: OpenedTable; readonly stays: boolean }) {
  const { mark, problemCount } = opened;
  if (problemCount === 0) {
    return (
      <p>
        <strong>
          {mark.name} was taken: {countOf(mark.rows, 'row')} of {countStudies(mark.studies)}.
        </strong>
      </p>
    );
  }
  return (
    <p>
      <strong>
        {mark.name} was not taken: {countOf(problemCount, 'problem')}.
      </strong>{' '}
      {stays ? 'The table that the site reads stays as it was.' : 'The site goes on reading its own table.'}
    </p>
  );
}

function Problems({ opened, state }: { readonly opened: OpenedTable; readonly state: YourTableState }) {
  const { problems, problemCount, warnings, warningCount } = opened;
  if (problemCount + warningCount === 0) return null;
  return (
    <>
      {problemCount > 0 && (
        <ProblemList
          heading={`Problems, by line${problemCount > problems.length ? `; the first ${problems.length}` : ''}`}
          problems={problems}
        />
      )}
      {warningCount > 0 && (
        <details open={problemCount === 0}>
          <summary>{countOf(warningCount, 'warning')}: unusual, but possible; they stop nothing</summary>
          <ProblemList
            heading={`By line${warningCount > warnings.length ? `; the first ${warnings.length}` : ''}`}
            problems={warnings}
          />
        </details>
      )}
      <p class="buttons">
        <button type="button" onClick={state.downloadProblems}>
          All of them as CSV
        </button>
      </p>
    </>
  );
}

/** The own table that the site reads now. */
function Kept({ state }: { readonly state: YourTableState }) {
  const { value: own } = state.own;
  const comparing = state.comparing.value;
  if (!own)
    return (
      <p>The site reads its own table. Open one of yours, and Evidence, Target, Programme and Studies read that.</p>
    );
  return (
    <section aria-label="The table that the site reads">
      <h2>The site now reads your table</h2>
      <p>
        {own.name}: {countOf(own.rows, 'row')} of {countStudies(own.studies)}. Evidence, Target, Programme and Studies
        read it until you go back, also after a reload. Answer, Figures and Methods go on showing the site's own.
      </p>
      <p class="buttons">
        <button
          type="button"
          onClick={() => {
            focusFile();
            void state.goBack();
          }}
        >
          Remove it and go back to the site's table
        </button>
        <button type="button" onClick={state.downloadTable}>
          Export it as CSV
        </button>
        {/* One button for both, so that it keeps the focus. */}
        <button type="button" onClick={comparing ? state.cancel : state.compare}>
          {comparing ? 'Stop comparing' : "What changed against the site's table"}
        </button>
        <span role="status">{comparing && 'Fitting both tables, and each change on its own …'}</span>
      </p>
      {state.comparison.value && <TableChanges comparison={state.comparison.value} />}
    </section>
  );
}
