/** What outlives a reload of the tab: the draft, and what was taken for pasted lines. Never leaves the browser. */
import * as z from 'zod/mini';
import { type Draft, readDraft, writeDraft } from '../../practice/programme/draft.ts';
import { EDITOR_COLUMNS } from '../../practice/programme/editorColumns.ts';
import type { Taken } from './taken.ts';

const STORE = 'shy-of-failure programme';
const TAKEN_STORE = 'shy-of-failure programme taken';

const takenSchema = z.array(
  z.tuple([
    z.int(),
    z.array(z.array(z.object({ said: z.string(), of: z.array(z.tuple([z.enum(EDITOR_COLUMNS), z.string()])) }))),
  ]),
);

/** What this tab kept; null where it kept nothing that can be read. */
export function readKept(): Draft | null {
  const text = readStore(STORE);
  return text === null ? null : readDraft(text).draft;
}

export function keep(draft: Draft): void {
  write(STORE, writeDraft(draft));
}

export function readTaken(): Taken {
  try {
    const { data } = takenSchema.safeParse(JSON.parse(readStore(TAKEN_STORE) ?? ''));
    return new Map(data);
  } catch {
    return new Map();
  }
}

export function keepTaken(taken: Taken): void {
  write(TAKEN_STORE, JSON.stringify([...taken]));
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
