/**
 * The moves of a reader on the Evidence page, as data: every resting place of the controls in order, which of them is
 * shown, and the one that the last move left. A drag of a slider is one move however many places it passes.
 */
import type { Settings } from '../../model/settings.ts';

export interface Moves {
  /** Settings of each place; the first is where the reader came in. Never empty. */
  readonly places: readonly Settings[];
  /** Index of the place that is shown. */
  readonly now: number;
  /** What the last move left, whichever way it went; null before the first. */
  readonly left: Settings | null;
  /** True while the last move may go on: its control has not rested. */
  readonly isGoing: boolean;
}

/** Places that are kept; the oldest are forgotten. */
const MOST_PLACES = 60;

export function beginMoves(settings: Settings): Moves {
  return { places: [settings], now: 0, left: null, isGoing: false };
}

/** The moves after the controls have come to other settings: a new move, or the last one going on. */
export function moveTo(moves: Moves, settings: Settings): Moves {
  const { places, now, isGoing } = moves;
  if (isSame(settings, places[now])) return moves;
  const start = isGoing ? places[now - 1] : undefined;
  if (start && namesOf(start, settings) === namesOf(start, places[now])) {
    return { ...moves, places: places.with(now, settings) };
  }
  // Back at its start, a drag was no move.
  if (start && isSame(start, settings))
    return { places: places.slice(0, now), now: now - 1, left: null, isGoing: false };
  const kept = [...places.slice(0, now + 1), settings].slice(-MOST_PLACES);
  return { places: kept, now: kept.length - 1, left: places[now], isGoing: true };
}

/** The controls have rested: whatever moves next is another move. */
export function restMoves(moves: Moves): Moves {
  return moves.isGoing ? { ...moves, isGoing: false } : moves;
}

/** The moves with another of their places shown; those after it stay, to be made again. */
export function returnTo(moves: Moves, index: number): Moves {
  const { places, now } = moves;
  if (!(index in places)) throw new Error(`invalid place of ${places.length}: ${index}`);
  return index === now ? moves : { places, now: index, left: places[now], isGoing: false };
}

/** The moves once an address was gone to, by “back” or a link: the nearest place of these settings, or a new one. */
export function arriveAt(moves: Moves, settings: Settings): Moves {
  const { places, now } = moves;
  const nearest = places
    .flatMap((place, index) => (isSame(place, settings) ? index : []))
    .sort((a, b) => Math.abs(a - now) - Math.abs(b - now))[0];
  return nearest === undefined ? restMoves(moveTo(restMoves(moves), settings)) : returnTo(moves, nearest);
}

export function isSame(a: Settings, b: Settings): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b);
}

/** Which parts of two settings differ. */
function namesOf(a: Settings, b: Settings): string {
  const flat = ({ include, assumedCorrelation, ...rest }: Settings): Readonly<Record<string, unknown>> => ({
    ...rest,
    ...include,
    ...Object.fromEntries(Object.entries(assumedCorrelation).map(([of, value]) => [`r ${of}`, value])),
  });
  const [one, other] = [flat(a), flat(b)];
  return Object.keys(one)
    .filter((key) => JSON.stringify(one[key]) !== JSON.stringify(other[key]))
    .join();
}
