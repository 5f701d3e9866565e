/**
 * Says on every page whether it reads the reader's own table or the site's, and goes back on a click; says
 * where the site's numbers stand that they are the site's. Loaded on all pages, so it stays small.
 */
import { readCitedTable } from './citedTable.ts';
import { followTable, putInUse, tableNow, versionInUse } from './tableInUse.ts';

/** What is done after a paint, when whatever was to be begun after it before has been. */
const painted = () => new Promise<void>((resolve) => requestAnimationFrame(() => setTimeout(resolve)));

/** Once all that shows numbers has heard of the table: what still wakes hears of it after a paint, and is at work after another. */
async function whenHeard(): Promise<void> {
  const asleep = [...document.querySelectorAll('main astro-island[ssr]')];
  await Promise.all(
    asleep.map((island) => new Promise((resolve) => island.addEventListener('astro:hydrate', resolve, { once: true }))),
  );
  await painted();
  await painted();
}

export function keepNotice(): void {
  const notice = document.querySelector<HTMLElement>('[data-own-table]');
  const text = notice?.querySelector('[data-text]');
  const button = notice?.querySelector('button');
  const demonstration = document.querySelector<HTMLElement>('[data-demonstration]');
  const reading = document.querySelector<HTMLElement>('[data-reading]');
  const siteNumbers = document.querySelectorAll<HTMLElement>('[data-site-numbers]');
  const ownTable = notice?.dataset.ownTable;
  /** The table that the address names, on a page that is then of no other; a page writes it there for an own table. */
  const readCited = () => (ownTable === 'unless cited' ? readCitedTable(new URLSearchParams(location.search)) : null);
  const reads = ownTable === 'read' || (ownTable === 'unless cited' && readCited()?.own !== false);

  // What the build has drawn is the site's: it is not to be told as the answer while an own table is looked for.
  const main = document.querySelector('main');
  if (reads && versionInUse() !== null && tableNow() === null) main?.setAttribute('aria-busy', 'true');

  /** Kept once they are there, so that the notice changes in one go with all that shows numbers. */
  let words: typeof import('./noticeWords.ts') | null = null;

  followTable(async (table, before) => {
    // From then on each part says itself whether it is at work.
    if (main?.hasAttribute('aria-busy')) void whenHeard().then(() => main.removeAttribute('aria-busy'));
    for (const element of siteNumbers) element.hidden = table.kind !== 'own';
    // On pages that read an own table, whether the data are invented is that table's to say.
    if (demonstration) demonstration.hidden = reads && table.kind === 'own' && !table.about.demonstration;
    if (reading) reading.hidden = reads && table.kind === 'own';
    const cited = readCited();
    if (!notice || !text || !button || (table.kind === 'site' && before === null)) return;
    words ??= await import('./noticeWords.ts');
    notice.hidden = false;
    button.hidden = table.kind === 'site';
    text.textContent = words.stateInUse(table, reads, cited, before !== null);
  });
  button?.addEventListener('click', () => {
    void putInUse(null);
  });
}
