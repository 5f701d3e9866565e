/**
 * The calculator's choices as an address: only what differs from the defaults.
 *
 *     ?exercise=leg+press&load=75&company=spotter&hours=39
 *
 * A part that does not hold stands at its default and is named.
 */
import * as z from 'zod/mini';
import '../../evidence/zodConfig.ts';
import { TRAINING_STATUSES } from '../../evidence/vocabulary.ts';
import { defaultSettings } from '../../model/settings.ts';
import { COMPANIES } from '../../practice/cautions.ts';
import { JUDGEMENTS, PUBLISHED_JUDGEMENT } from '../../practice/judgement.ts';
import { LOAD_RANGE } from '../../practice/possible.ts';
import { PURPOSES } from '../../practice/situation.ts';

const numberInText = (schema: z.ZodMiniNumber<number>) =>
  z.pipe(z.pipe(z.string().check(z.regex(/^-?\d+(?:\.\d+)?$/u)), z.transform(Number)), schema);
const yesOrNo = z.pipe(
  z.enum(['yes', 'no']),
  z.transform((word) => word === 'yes'),
);

/** Name of the exercise that the reader describes instead of choosing one of the list. */
export const OTHER_EXERCISE = 'another';
/** Hours before an event that are asked about: a fortnight; beyond it recovery is no question. */
export const MOST_HOURS = 336;
/** Repetitions of a set of a main lift. */
export const PLANNED = { from: 1, to: 30 } as const;
/** Limits of a lifter's own judgement error, repetitions. */
export const BIAS = { from: -5, to: 5 } as const;
export const SPREAD = { from: 0, to: 5 } as const;

const within = ({ from, to }: { readonly from: number; readonly to: number }) =>
  numberInText(z.number().check(z.gte(from), z.lte(to)));
const percent = within({ from: 50, to: 99 });

const fields = {
  purpose: z.enum(PURPOSES),
  exercise: z.string().check(z.minLength(1), z.maxLength(100)),
  load: within(LOAD_RANGE),
  planned: within(PLANNED).check(z.refine(Number.isInteger)),
  pins: yesOrNo,
  stops: yesOrNo,
  partials: yesOrNo,
  company: z.enum(COMPANIES),
  status: z.enum(TRAINING_STATUSES),
  /** Hours to the event; null where none is near. */
  hours: z.union([
    z.pipe(
      z.literal('none'),
      z.transform(() => null),
    ),
    within({ from: 0, to: MOST_HOURS }),
  ]),
  judgement: z.enum(JUDGEMENTS),
  bias: within(BIAS),
  spread: within(SPREAD),
  keep: percent,
  confidence: percent,
} as const;

export type Choices = { readonly [Name in keyof typeof fields]: z.output<(typeof fields)[Name]> };

export const DEFAULT_CHOICES: Choices = {
  purpose: 'growth',
  exercise: 'bench press',
  load: 75,
  planned: 5,
  pins: true,
  stops: false,
  partials: false,
  company: 'alone',
  status: 'trained',
  hours: null,
  judgement: 'taken as said',
  ...PUBLISHED_JUDGEMENT,
  keep: Math.round(100 * defaultSettings.keptShare),
  confidence: Math.round(100 * defaultSettings.confidence),
};

/** A choice that is entered as a number. */
export type NumberChoice = 'planned' | 'hours' | 'bias' | 'spread';

/** A number as a reader wrote it, within the limits of its choice; null where it is not. No event is near where nothing is written. */
export function readNumber(name: NumberChoice, written: string): Partial<Choices> | null {
  const text = written.trim();
  const parsed = fields[name].safeParse(name === 'hours' && text === '' ? 'none' : text);
  return parsed.success ? { [name]: parsed.data } : null;
}

/**
 * @param exercises names that may be chosen besides “another”
 * @returns what was read, and the names of the parts that were not taken
 */
export function readChoices(
  query: string,
  exercises: readonly string[],
): { readonly values: Partial<Choices>; readonly unread: readonly string[] } {
  const parameters = new URLSearchParams(query);
  const values: Record<string, unknown> = {};
  const unread: string[] = [];
  for (const name of new Set(parameters.keys())) {
    if (!Object.hasOwn(fields, name)) unread.push(name);
  }
  for (const [name, schema] of Object.entries(fields)) {
    const written = parameters.get(name);
    if (written === null) continue;
    const parsed = schema.safeParse(written);
    const known = name !== 'exercise' || written === OTHER_EXERCISE || exercises.includes(written);
    if (parsed.success && known) values[name] = parsed.data;
    else unread.push(name);
  }
  return { values, unread };
}

/** Query of an address, with its question mark; empty for the defaults. */
export function writeChoices(choices: Choices): string {
  const parameters = new URLSearchParams();
  for (const name of Object.keys(fields) as (keyof Choices)[]) {
    const value = choices[name];
    if (value === DEFAULT_CHOICES[name]) continue;
    parameters.set(name, typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value ?? 'none'));
  }
  const query = parameters.toString();
  return query ? `?${query}` : '';
}
