/** Curating studies: what papers print goes in, valid rows and what follows from them come out. */
import { useEffect, useMemo } from 'preact/hooks';
import { AddToTable } from './AddToTable.tsx';
import { createAdding, type SiteTable } from './addToTable.state.ts';
import { createCurating } from './curate.state.ts';
import { CurateForm } from './Form.tsx';
import { FromTable } from './FromTable.tsx';
import { createTaking } from './fromTable.state.ts';
import { CurateReading } from './Reading.tsx';
import { CurateStudies } from './Studies.tsx';

interface Props {
  readonly shipped: SiteTable & { readonly studies: number; readonly demonstration: boolean };
  /** Words that the site's table has in a column, to be offered. */
  readonly known: Readonly<Record<string, readonly string[]>>;
  /** Addresses of pages that read the own table. */
  readonly pages: { readonly table: string; readonly evidence: string };
}

export function Curate({ shipped, known, pages }: Props) {
  const state = useMemo(() => createCurating(), []);
  const adding = useMemo(() => createAdding(shipped, state.rowsFor, state.noteAdded), [shipped, state]);
  const taking = useMemo(() => createTaking(state.takeUp), [state]);
  useEffect(() => state.connect(), [state]);
  const unread = state.kept.unread.value;
  return (
    <div class="curate">
      {unread && (
        <div class="problem" role="alert">
          <p>
            What this browser kept of an earlier visit could not be read ({unread.problem}). It is replaced as soon as
            something is entered.
          </p>
          <p>
            <button type="button" onClick={state.kept.saveUnread}>
              Save it to a file first
            </button>
          </p>
        </div>
      )}
      {state.kept.takenOver.value && <p role="status">{state.kept.takenOver.value}</p>}
      {!state.kept.isKept.value && (
        <p class="problem" role="alert">
          This browser does not keep what is entered; download the rows before you leave.
        </p>
      )}
      <FromTable state={taking} tablePage={pages.table} />
      <div class="curate-row">
        <CurateForm state={state} known={known} />
        <CurateReading state={state} />
      </div>
      <CurateStudies state={state} />
      {state.rows.value.length > 0 && <AddToTable state={adding} shipped={shipped} pages={pages} />}
    </div>
  );
}
