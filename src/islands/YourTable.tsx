/** Your table: opened and kept in this browser, checked line by line, and compared with the site's. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import { ProblemList } from './ProblemList.tsx';
import { TableChanges } from './TableChanges.tsx';
import { createYourTable, type YourTableState } from './yourTable.state.ts';

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
        <label for="own-file">Open a table of study arms (CSV), or drop it here</label>
        <input
          id="own-file"
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
          <button type="button" onClick={state.cancel}>
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
  if (!opened) return null;
  const { mark, problems, problemCount, warnings, warningCount } = opened;
  const count = (n: number, word: string) => `${n.toLocaleString('en')} ${word}${n === 1 ? '' : 's'}`;
  return (
    <section aria-label="What was found" role="status">
      {problemCount > 0 ? (
        <p>
          <strong>
            {mark.name} was not taken: {count(problemCount, 'problem')}.
          </strong>{' '}
          {state.own.value
            ? 'The table that the site reads stays as it was.'
            : 'The site goes on reading its own table.'}
        </p>
      ) : (
        <p>
          <strong>
            {mark.name} was taken: {count(mark.rows, 'row')} of {mark.studies.toLocaleString('en')}{' '}
            {mark.studies === 1 ? 'study' : 'studies'}.
          </strong>
        </p>
      )}
      {problemCount > 0 && (
        <ProblemList
          heading={`Problems, by line${problemCount > problems.length ? `; the first ${problems.length}` : ''}`}
          problems={problems}
        />
      )}
      {warningCount > 0 && (
        <details open={problemCount === 0}>
          <summary>{count(warningCount, 'warning')}: unusual, but possible; they stop nothing</summary>
          <ProblemList
            heading={`By line${warningCount > warnings.length ? `; the first ${warnings.length}` : ''}`}
            problems={warnings}
          />
        </details>
      )}
      {problemCount + warningCount > 0 && (
        <p class="buttons">
          <button type="button" onClick={state.downloadProblems}>
            All of them as CSV
          </button>
        </p>
      )}
    </section>
  );
}

/** The own table that the site reads now. */
function Kept({ state }: { readonly state: YourTableState }) {
  const { value: own } = state.own;
  if (!own)
    return (
      <p>The site reads its own table. Open one of yours, and Evidence, Target, Programme and Studies read that.</p>
    );
  return (
    <section aria-label="The table that the site reads">
      <h2>The site now reads your table</h2>
      <p>
        {own.name}: {own.rows.toLocaleString('en')} rows of {own.studies.toLocaleString('en')} studies. Evidence,
        Target, Programme and Studies read it until you go back, also after a reload. Answer, Figures and Methods go on
        showing the site's own.
      </p>
      <p class="buttons">
        <button type="button" onClick={() => void state.goBack()}>
          Remove it and go back to the site's table
        </button>
        <button type="button" onClick={state.downloadTable}>
          Export it as CSV
        </button>
        <button type="button" onClick={state.compare} disabled={state.comparing.value}>
          What changed against the site's table
        </button>
        {state.comparing.value && (
          <>
            <span role="status">Fitting both tables, and each change on its own …</span>
            <button type="button" onClick={state.cancel}>
              Stop
            </button>
          </>
        )}
      </p>
      {state.comparison.value && <TableChanges comparison={state.comparison.value} />}
    </section>
  );
}
