/**
 * Says on every page whether it reads the reader's own table or the site's, and goes back on a click.
 * Loaded on all pages, so it stays small: what removes the table is fetched when it is asked for.
 */
import { MARK_CHANGED, MARK_NAME } from './ownTableMark.ts';

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
    ? `This page reads your own table, ${mark.name}: ${mark.rows} rows of ${mark.studies} studies.`
    : `This page shows the site's own table. Evidence, Target, Programme and Studies read yours, ${mark.name}.`;
}

/** For the words of the notice; whoever reads the table itself validates it. */
function readLoosely(): Readonly<Record<'name' | 'rows' | 'studies' | 'demonstration', unknown>> | null {
  try {
    const mark = JSON.parse(localStorage.getItem(MARK_NAME) ?? 'null');
    return typeof mark === 'object' ? mark : null;
  } catch {
    return null;
  }
}

notice?.querySelector('button')?.addEventListener('click', async () => {
  const { removeOwnTable } = await import('./ownTable.ts');
  await removeOwnTable();
  location.reload();
});
addEventListener(MARK_CHANGED, show);
show();
