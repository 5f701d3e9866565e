/** Moving in a grid of entries by keyboard, and pasting into it. */

/** Enter goes down, and from the last row to the top of the next place; Shift+Enter the other way. */
export function moveByEnter(event: KeyboardEvent): void {
  const at = placeIn(event.target);
  if (
    event.key !== 'Enter' ||
    !at ||
    !(event.currentTarget instanceof Element) ||
    !(event.target instanceof HTMLInputElement)
  )
    return;
  event.preventDefault();
  const entries = [...event.currentTarget.querySelectorAll<HTMLElement>('[data-row]')];
  const step = event.shiftKey ? -1 : 1;
  const next = findNext(
    entries.map((entry) => placeIn(entry) ?? [0, 0]),
    at,
    step,
  );
  if (next === null) return;
  const entry = entries[next];
  entry.focus();
  if (entry instanceof HTMLInputElement) entry.select();
}

type At = readonly [row: number, cell: number];

/**
 * The entry above or below one, or null where there is none. A row with fewer entries has its last one for all further
 * places, as an entry that spans them.
 *
 * @param all places of entries, row by row
 */
export function findNext(all: readonly At[], [row, cell]: At, step: 1 | -1): number | null {
  const last = Math.max(...all.map(([one]) => one));
  const widest = Math.max(...all.map(([, one]) => one));
  const inside = row + step >= 0 && row + step <= last;
  const nextRow = inside ? row + step : step > 0 ? 0 : last;
  const nextCell = inside ? cell : cell + step;
  if (nextCell < 0 || nextCell > widest) return null;
  const inRow = all.flatMap(([one, place], i) => (one === nextRow && place <= nextCell ? [i] : []));
  return inRow[inRow.length - 1] ?? null;
}

/** Row and place in it of an entry of a grid. */
export function placeIn(entry: EventTarget | null): At | null {
  if (!(entry instanceof HTMLElement) || entry.dataset.row === undefined) return null;
  return [Number(entry.dataset.row), Number(entry.dataset.cell)];
}
