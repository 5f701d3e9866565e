/**
 * The filters that keep rows by a word of one of their columns, or by what their effect rests on: one line each, which the settings schema,
 * the selection of rows, the address, the controls and the words of a figure all read.
 */
import * as z from 'zod/mini';
import type { Effect } from '../evidence/effects.ts';
import type { Arm } from '../evidence/schema.ts';
import {
  CONCERNS,
  DESIGNS,
  FAILURE_DEFINITIONS,
  JOINTS,
  READINGS,
  RESERVE_BASES,
  RESTS_ON,
  SEXES,
  TRAINING_STATUSES,
} from '../evidence/vocabulary.ts';
import '../evidence/zodConfig.ts';

interface Filter<Words extends z.ZodMiniType = z.ZodMiniType> {
  /** Column of the table whose word decides; null where it is what the effect rests on, known once that is computed. */
  readonly column: keyof Arm | null;
  /** Words that the settings may name. */
  readonly words: Words;
  /** Name in an address. */
  readonly address: string;
  /** As a reader meets it, inside a sentence. */
  readonly name: string;
  /** What usually happens when rows are left out by it. */
  readonly effect: string;
}

/** By the setting's name. An empty list, the default, keeps every row. */
export const FILTERS = {
  trainingStatus: {
    column: 'training_status',
    words: z.enum(TRAINING_STATUSES),
    address: 'status',
    name: 'training status',
    effect: 'Trained people grow less, whatever the reserve; the slope may differ too.',
  },
  sex: {
    column: 'sex',
    words: z.enum(SEXES),
    address: 'sex',
    name: 'sex',
    effect: 'Fewer studies, wider bands; differences are rarely larger than that.',
  },
  joints: {
    column: 'joints',
    words: z.enum(JOINTS),
    address: 'joints',
    name: 'joints moved',
    effect: 'Single-joint exercise is easier to take to failure.',
  },
  muscle: {
    column: 'muscle',
    words: z.string(),
    address: 'muscle',
    name: 'muscle',
    effect: 'One muscle is often left with too few studies to fit.',
  },
  measure: {
    column: 'measure',
    words: z.string(),
    address: 'measure',
    name: 'measure',
    effect: 'Thickness and area need not change by the same share.',
  },
  concerns: {
    column: 'concerns',
    words: z.enum(CONCERNS),
    address: 'concerns',
    name: 'concerns about bias',
    effect: "The curator's judgement. Leaving out high concerns should not turn the slope round.",
  },
  design: {
    column: 'design',
    words: z.enum(DESIGNS),
    address: 'design',
    name: 'design',
    effect: 'Within-person designs compare limbs of one person and are more precise.',
  },
  failureDefinition: {
    column: 'failure_definition',
    words: z.enum(FAILURE_DEFINITIONS),
    address: 'failure',
    name: 'failure meant',
    effect: 'A stricter definition calls the same set closer to failure.',
  },
  reserveBasis: {
    column: 'reserve_basis',
    words: z.enum(RESERVE_BASES),
    address: 'basis',
    name: 'reserve known from',
    effect: 'Prescriptions are not always followed; measured reserve usually steepens the slope.',
  },
  howRead: {
    column: 'how_read',
    words: z.enum(READINGS),
    address: 'read',
    name: 'what was read',
    effect: 'An abstract prints fewer numbers, and rather those that stand out.',
  },
  restsOn: {
    column: null,
    words: z.enum(RESTS_ON),
    address: 'rests',
    name: 'effect rests on',
    effect:
      'Rows that rest on assumptions are less sure than their intervals say; without them fewer studies are left.',
  },
} as const satisfies Readonly<Record<string, Filter>>;

export type FilterKey = keyof typeof FILTERS;

/** In the order in which they are shown and applied. */
export const FILTER_KEYS = Object.keys(FILTERS) as readonly FilterKey[];

/** A record with an entry for each filter. */
export function mapFilters<Value>(make: (key: FilterKey) => Value): Readonly<Record<FilterKey, Value>> {
  return Object.fromEntries(FILTER_KEYS.map((key) => [key, make(key)])) as Record<FilterKey, Value>;
}

/** Filters that read the table, and those that read the effect. */
export const FILTERS_OF_ROWS = FILTER_KEYS.filter((key) => FILTERS[key].column !== null);
export const FILTERS_OF_EFFECTS = FILTER_KEYS.filter((key) => FILTERS[key].column === null);

/** Word by which a filter keeps a row or not; null where the row does not report it. */
export function wordOf(row: Arm | Effect, key: FilterKey): string | null {
  const { column } = FILTERS[key];
  if (column === null) return 'restsOn' in row ? row.restsOn : null;
  const word = ('arm' in row && typeof row.arm === 'object' ? row.arm : (row as Arm))[column];
  return word === null || word === undefined ? null : String(word);
}
