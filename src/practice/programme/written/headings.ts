/** Columns of a table as coaches head them. */
import { distance } from 'fastest-levenshtein';
import { columnNamed } from '../columns.ts';
import { type Context, readContext } from './context.ts';
import { FACTS } from './understood.ts';

export type WrittenColumn =
  | { readonly kind: 'day' | 'week' | 'exercise' | 'note' }
  | { readonly kind: 'sets' | 'repetitions' | 'possible' | 'reserve' | 'rating' | 'company' | 'spotter' }
  /** What a bare number is: said by the header, by the site’s own form, or not at all. */
  | { readonly kind: 'load'; readonly unit: '%' | 'kg' | 'lb' | 'form' | null }
  /** Sets and repetitions in one cell. */
  | { readonly kind: 'scheme'; readonly isReversed: boolean }
  | { readonly kind: 'fact'; readonly fact: (typeof FACTS)[number] }
  /** The header itself is a day or a week, and a cell below a set of it. */
  | { readonly kind: 'context'; readonly context: Context };

const COLUMNS: readonly (readonly [column: WrittenColumn, names: string])[] = [
  [{ kind: 'day' }, 'day, days, weekday, training day, session, session day'],
  [{ kind: 'week' }, 'week, wk, week number'],
  [{ kind: 'exercise' }, 'exercise, exercises, exercise name, lift, lifts, movement, movements, name'],
  [{ kind: 'sets' }, 'sets, number of sets, no of sets, working sets'],
  [
    { kind: 'repetitions' },
    'reps, rep, repetitions, repetition, reps per set, repetitions per set, reps set, rep range, target reps, planned reps',
  ],
  [
    { kind: 'scheme', isReversed: false },
    'sets x reps, sets x repetitions, sets reps, sets and reps, set x rep, scheme, sets by reps',
  ],
  [{ kind: 'scheme', isReversed: true }, 'reps x sets, repetitions x sets, reps sets, reps and sets, reps by sets'],
  [{ kind: 'load', unit: 'form' }, 'load'],
  [
    { kind: 'load', unit: '%' },
    '%, %1rm, % 1rm, % of 1rm, 1rm %, %rm, percent, per cent, percentage, pct, load %, load % 1rm, load % of 1rm, load %1rm, percent 1rm, percent of 1rm, intensity %, % max, % load',
  ],
  [{ kind: 'load', unit: 'kg' }, 'kg, load kg, weight kg, kilograms, kilos, weight in kg, load in kg'],
  [{ kind: 'load', unit: 'lb' }, 'lb, lbs, load lb, load lbs, weight lb, weight lbs, pounds, weight in lb, load in lb'],
  [{ kind: 'load', unit: null }, 'weight, weights, intensity, wt'],
  [
    { kind: 'reserve' },
    'rir, reserve, in reserve, reps in reserve, repetitions in reserve, rep in reserve, target rir, reps left, repetitions left, left',
  ],
  [{ kind: 'rating' }, 'rpe, target rpe, effort, effort rating'],
  [{ kind: 'possible' }, 'possible, possible reps, reps possible, repetitions possible'],
  [{ kind: 'company' }, 'company'],
  [{ kind: 'spotter' }, 'spotter, spotted, spot'],
  [{ kind: 'note' }, 'note, notes, comment, comments, remark, remarks, cue, cues'],
];

const BY_NAME = new Map(COLUMNS.flatMap(([column, names]) => names.split(', ').map((name) => [plain(name), column])));

/** Letters that may differ for a header to be asked about, of a name with more than so many. */
const MISSPELLED = { letters: 1, above: 2 } as const;

/** null where the header names no column that is read. */
export function columnOf(header: string): WrittenColumn | null {
  const found = BY_NAME.get(plain(header));
  if (found) return found;
  const own = columnNamed(header);
  const fact = FACTS.find((name) => name === own);
  if (fact) return { kind: 'fact', fact };
  const context = readContext(header);
  return context && context.rest === '' ? { kind: 'context', context } : null;
}

/** A name that a header may be misspelt from; null where none is near. */
export function nearestHeader(header: string): string | null {
  const given = plain(header);
  if (given.length <= MISSPELLED.above || given.length > 40) return null;
  for (const name of BY_NAME.keys()) {
    if (name.length <= MISSPELLED.above || Math.abs(name.length - given.length) > MISSPELLED.letters) continue;
    if (distance(given, name) <= MISSPELLED.letters + (name.length > 6 ? 1 : 0)) return name;
  }
  return null;
}

/** “Sets × Reps”, “sets/reps” and “SETS X REPS” alike. */
function plain(header: string): string {
  return header
    .toLowerCase()
    .replace(/[×✕*]/gu, ' x ')
    .replace(/&/gu, ' and ')
    .replace(/[^\p{L}\p{N}%]+/gu, ' ')
    .trim();
}
