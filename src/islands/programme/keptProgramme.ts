/** What outlives a reload of the tab: the draft, what was taken for pasted lines, and what applying the advice did. Never leaves the browser. */
import * as z from 'zod/mini';
import { type Draft, readDraft, writeDraft } from '../../practice/programme/draft.ts';
import { EDITOR_COLUMNS } from '../../practice/programme/editorColumns.ts';
import type { AppliedWords } from './appliedWords.ts';
import type { Taken } from './taken.ts';

const STORE = 'shy-of-failure programme';
const TAKEN_STORE = 'shy-of-failure programme taken';
const APPLIED_STORE = 'shy-of-failure programme applied';

const takenSchema = z.array(
  z.tuple([
    z.int(),
    z.array(z.array(z.object({ said: z.string(), of: z.array(z.tuple([z.enum(EDITOR_COLUMNS), z.string()])) }))),
  ]),
);

const appliedLineSchema = z.object({ id: z.int(), name: z.string(), said: z.string() });
const appliedSchema = z.object({
  moves: z.array(appliedLineSchema),
  left: z.array(appliedLineSchema),
  unchecked: z.array(z.int()),
  asAdvised: z.int(),
});

/** What this tab kept; null where it kept nothing that can be read. */
export function readKept(): Draft | null {
  const text = readStore(STORE);
  return text === null ? null : readDraft(text).draft;
}

export function keep(draft: Draft): void {
  write(STORE, writeDraft(draft));
}

export function readTaken(): Taken {
  return new Map(takenSchema.safeParse(readJson(TAKEN_STORE)).data);
}

export function keepTaken(taken: Taken): void {
  write(TAKEN_STORE, JSON.stringify([...taken]));
}

/** What applying the advice did to the draft that is kept; null where that was undone, closed, or never done. */
export function readApplied(): AppliedWords | null {
  return appliedSchema.safeParse(readJson(APPLIED_STORE)).data ?? null;
}

export function keepApplied(applied: AppliedWords | null): void {
  if (!applied) {
    write(APPLIED_STORE, '');
    return;
  }
  const { moves, left, unchecked, asAdvised } = applied;
  write(APPLIED_STORE, JSON.stringify({ moves, left, unchecked, asAdvised }));
}

/** undefined where nothing is kept, or no JSON. */
function readJson(name: string): unknown {
  try {
    return JSON.parse(readStore(name) ?? '');
  } catch {
    return undefined;
  }
}

function readStore(name: string): string | null {
  try {
    return sessionStorage.getItem(name);
  } catch {
    // A browser may forbid pages to keep anything.
    return null;
  }
}

function write(name: string, text: string): void {
  try {
    sessionStorage.setItem(name, text);
  } catch {
    // Forbidden or full: the programme is checked all the same, and can be saved to a file.
  }
}
