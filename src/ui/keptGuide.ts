/** Where a reader stands in a guided sequence, kept for as long as the tab is open, so that a reload does not lose it. */
import * as z from 'zod/mini';
import '../evidence/zodConfig.ts';

const progressSchema = z.object({
  /** Place among the steps; as many as there are: the summary. */
  step: z.int().check(z.gte(0)),
  /** What was chosen at each step that was answered, by its place; empty where it was only to be shown. */
  guesses: z.record(z.string(), z.string()),
  /** What the page showed when the sequence was begun, as an address. */
  start: z.string(),
  /** What it showed last, as an address: one that asks for something else is no reload. */
  last: z.optional(z.string()),
  /** What the address had then: it is written a moment later. */
  search: z.optional(z.string()),
  /** What was worked out on the way, by names of the sequence's own. */
  found: z.record(z.string(), z.unknown()),
});

export type GuideProgress = z.output<typeof progressSchema>;

/** @param steps of the sequence; what was kept of a longer one is not taken */
export function readProgress(name: string, steps: number): GuideProgress | null {
  try {
    const kept = progressSchema.safeParse(JSON.parse(sessionStorage.getItem(name) ?? 'null'));
    return kept.success && kept.data.step <= steps ? kept.data : null;
  } catch {
    // A browser that keeps nothing begins anew.
    return null;
  }
}

/** @param progress null where the sequence was left */
export function keepProgress(name: string, progress: GuideProgress | null): void {
  try {
    if (progress) sessionStorage.setItem(name, JSON.stringify(progress));
    else sessionStorage.removeItem(name);
  } catch {
    // Without a store the sequence lasts until the page is left.
  }
}
