/**
 * Says on every page whether it reads the reader's own table or the site's, and goes back on a click.
 * Loaded on all pages, so it stays small: it knows how the table is removed, not how it is read.
 */
import { countOf, countStudies } from '../numerics/countOf.ts';
import { MARK_CHANGED, MARK_NAME } from './ownTableMark.ts';
import { removeOwnTable } from './ownTableRemoval.ts';

const notice = document.querySelector<HTMLElement>('[data-own-table]');
const demonstration = document.querySelector<HTMLElement>('[data-demonstration]');

function show(): void {
  if (!notice) return;
  const reads = notice.dataset.ownTable === 'read';
  const mark = readLoosely();
  notice.hidden = mark === null;
  // On pages that read an own table, whether the data are invented is that table's to say.
  if (demonstration) demonstration.hidden = reads && mark !== null && mark.demonstration !== true;
  const text = notice.querySelector('[data-text]');
  if (!mark || !text) return;
  text.textContent = reads
    ? `This page reads your own table, ${mark.name}: ${countOf(mark.rows, 'row')} of ${countStudies(mark.studies)}.`
    : `This page shows the site's own table. Evidence, Target, Programme and Studies read yours, ${mark.name}.`;
}

interface Mark {
  readonly name: string;
  readonly rows: number;
  readonly studies: number;
  readonly demonstration: unknown;
}

/** As far as the words of the notice need it; ownTable.ts, which is larger, validates all of it. */
function readLoosely(): Mark | null {
  try {
    const mark = JSON.parse(localStorage.getItem(MARK_NAME) ?? 'null');
    const holds = typeof mark?.name === 'string' && typeof mark.rows === 'number' && typeof mark.studies === 'number';
    return holds ? mark : null;
  } catch {
    return null;
  }
}

notice?.querySelector('button')?.addEventListener('click', async () => {
  // The mark goes first, so that the page reads the site's table even where the store cannot be opened.
  await removeOwnTable().catch(() => undefined);
  location.reload();
});
addEventListener(MARK_CHANGED, show);
show();
