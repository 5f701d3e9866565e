/** Lifters as a browser keeps them, and read back exactly. */
import * as z from 'zod/mini';
import '../../evidence/zodConfig.ts';
import '../../evidence/zodMessages.ts';
import { cleanText, foldPerson, type Lifters, LONGEST_CELL, MOST_LIFTERS, MOST_MAXIMA } from './lifter.ts';
import { WEIGHT_UNITS } from './weight.ts';

/** Raised when what was kept before would mean something else. */
const VERSION = 1;

const cellSchema = z.string().check(
  z.maxLength(LONGEST_CELL),
  z.refine((text) => cleanText(text) === text, { error: 'expected one line of text' }),
);
const nameSchema = cellSchema.check(z.minLength(1));
const idSchema = z.int().check(z.gte(1));
const keptSchema = z
  .strictObject({
    kind: z.literal('lifters'),
    version: z.literal(VERSION),
    nextId: idSchema,
    all: z
      .array(
        z.strictObject({
          id: idSchema,
          name: nameSchema,
          unit: z.enum(WEIGHT_UNITS),
          step: cellSchema,
          maxima: z
            .array(z.strictObject({ exercise: nameSchema, weight: cellSchema, step: cellSchema }))
            .check(z.maxLength(MOST_MAXIMA)),
        }),
      )
      .check(z.maxLength(MOST_LIFTERS)),
  })
  .check(
    z.refine(
      ({ all, nextId }) => new Set(all.map(({ id }) => id)).size === all.length && all.every(({ id }) => id < nextId),
      { error: 'expected every lifter to have an id of their own, below nextId' },
    ),
    z.refine(({ all }) => new Set(all.map(({ name }) => foldPerson(name))).size === all.length, {
      error: 'expected every lifter to have a name of their own',
    }),
  );

export function writeKept({ all, nextId }: Lifters): string {
  return JSON.stringify({ kind: 'lifters', version: VERSION, nextId, all });
}

/** What was kept, or a sentence that says why it cannot be read. Never throws. */
export function readKept(
  text: string,
): { readonly lifters: Lifters; readonly problem: null } | { readonly lifters: null; readonly problem: string } {
  const refuse = (why: string) => ({
    lifters: null,
    problem: `expected lifters kept by this page (version ${VERSION}); ${why}`,
  });
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch {
    return refuse('received text that is no JSON');
  }
  const parsed = keptSchema.safeParse(content);
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    return refuse(`at ${issue.path.length > 0 ? issue.path.join('.') : 'the whole'}: ${issue.message}`);
  }
  const { all, nextId } = parsed.data;
  return { lifters: { all, nextId }, problem: null };
}
