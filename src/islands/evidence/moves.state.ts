/** State of the moves on the Evidence page: undone, made again, returned to, and kept for as long as the tab is open. */
import { type Signal, signal } from '@preact/signals';
import type { Settings } from '../../model/settings.ts';
import { readSettings, writeSettings } from '../analysis/settingsAddress.ts';
import { arriveAt, beginMoves, isSame, type Moves, moveTo, restMoves, returnTo } from './moves.ts';

/** In the tab's own store, so that two tabs do not mix their moves; a reload keeps them. */
const STORE = 'shy-of-failure evidence moves';

/** @param table address of the table that is read: moves on another are others */
export function createMoves(table: string, settings: Signal<Settings>) {
  const moves = signal<Moves>(beginMoves(settings.peek()));

  const show = (next: Moves) => {
    moves.value = next;
    settings.value = next.places[next.now];
    keep(table, next);
  };
  /** Follows the controls, which have moved already. */
  const follow = (now: Settings) => {
    moves.value = moveTo(moves.peek(), now);
  };
  const rest = () => {
    moves.value = restMoves(moves.peek());
    keep(table, moves.peek());
  };
  const goTo = (index: number) => show(returnTo(restMoves(moves.peek()), index));
  const step = (by: number) => {
    const to = moves.peek().now + by;
    if (to in moves.peek().places) goTo(to);
  };
  /** Takes settings that an address gave. @param isFirst where the page has just come up */
  const arrive = (found: Settings, isFirst: boolean) => {
    if (!isFirst) return show(arriveAt(moves.peek(), found));
    const before = recall(table);
    if (!before) return show(beginMoves(found));
    const next = arriveAt(before, found);
    // Who comes from another page has not moved from where the tab once was.
    show(next === before ? before : { ...next, left: null });
  };
  return { moves, follow, rest, goTo, undo: () => step(-1), redo: () => step(1), arrive };
}

export type MovesState = ReturnType<typeof createMoves>;

function keep(table: string, { places, now, left }: Moves): void {
  try {
    const kept = { table, places: places.map(writeSettings), now, left: left && writeSettings(left) };
    sessionStorage.setItem(STORE, JSON.stringify(kept));
  } catch {
    // A browser that keeps nothing has the moves until the page is left.
  }
}

/** What this tab kept of the same table; null where there is nothing, or nothing that can be read. */
function recall(table: string): Moves | null {
  try {
    const kept = JSON.parse(sessionStorage.getItem(STORE) ?? 'null');
    if (kept?.table !== table || !Array.isArray(kept.places) || !(kept.now in kept.places)) return null;
    const read = (query: unknown) => readSettings(String(query)).settings;
    const left = typeof kept.left === 'string' ? read(kept.left) : null;
    const places = kept.places.map(read);
    return { places, now: kept.now, left: left && isSame(left, places[kept.now]) ? null : left, isGoing: false };
  } catch {
    return null;
  }
}
