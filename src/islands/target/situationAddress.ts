/**
 * The calculator's choices as an address: only what differs from the defaults.
 *
 *     ?exercise=leg+press&load=75&company=spotter&hours=39&judgement=own+test+sets&sets=2-4+3-3
 *
 * A part that does not hold stands at its default and is named.
 */
import * as z from 'zod/mini';
import '../../evidence/zodConfig.ts';
import { TRAINING_STATUSES } from '../../evidence/vocabulary.ts';
import { defaultSettings } from '../../model/settings.ts';
import { COMPANIES } from '../../practice/cautions.ts';
import { JUDGEMENTS } from '../../practice/judgement.ts';
import { MOST_TEST_SETS, TEST_SET, type TestSet } from '../../practice/ownJudgement.ts';
import { LOAD_RANGE } from '../../practice/possible.ts';
import { PURPOSES } from '../../practice/situation.ts';

const numberInText = (schema: z.ZodMiniNumber<number>, read: (text: string) => number = Number) =>
  z.pipe(z.pipe(z.string().check(z.regex(/^-?\d+(?:\.\d+)?$/u)), z.transform(read)), schema);
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

/** Of a share, in which products of decimals are what was written. */
const DIGITS = 12;

const within = ({ from, to }: { readonly from: number; readonly to: number }) =>
  numberInText(z.number().check(z.gte(from), z.lte(to)));
/** In per cent, and read as a share of 1 too, as Evidence writes it: neither can be taken for the other. */
const percent = numberInText(z.number().check(z.gte(50), z.lte(99)), (text) => {
  const value = Number(text);
  return value < 1 ? Number((100 * value).toPrecision(DIGITS)) : value;
});
const count = z.int().check(z.gte(TEST_SET.from), z.lte(TEST_SET.to));
/** Test sets as said-done, “2-4 3-3”. */
const testSets = z.readonly(
  z.pipe(
    z.pipe(z.string().check(z.regex(/^\d{1,2}-\d{1,2}(?: \d{1,2}-\d{1,2})*$/u)), z.transform(splitSets)),
    z.array(z.object({ said: count, done: count })).check(z.maxLength(MOST_TEST_SETS)),
  ),
);

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
  sets: testSets,
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
  sets: [],
  keep: Math.round(100 * defaultSettings.keptShare),
  confidence: Math.round(100 * defaultSettings.confidence),
};

/** A choice that is entered as a number. */
export type NumberChoice = 'planned' | 'hours';

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
    const written = writeChoice(value);
    if (written !== writeChoice(DEFAULT_CHOICES[name])) parameters.set(name, written);
  }
  const query = parameters.toString();
  return query ? `?${query}` : '';
}

function writeChoice(value: Choices[keyof Choices]): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'object' && value !== null) return value.map(({ said, done }) => `${said}-${done}`).join(' ');
  return String(value ?? 'none');
}

function splitSets(text: string): TestSet[] {
  return text.split(' ').map((pair) => {
    const [said, done] = pair.split('-').map(Number);
    return { said, done };
  });
}
