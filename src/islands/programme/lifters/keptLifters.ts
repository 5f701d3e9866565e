/** The lifters in this browser's own store, for all its tabs. Nothing of them is sent anywhere, or put into a programme's file. */
import { readKept, writeKept } from '../../../practice/lifters/keptForm.ts';
import type { Lifters } from '../../../practice/lifters/lifter.ts';
import { reasonOf } from '../../../ui/reasonOf.ts';
import { LIFTERS_STORE } from './keptMark.ts';

export type Kept =
  | { readonly kind: 'none' }
  | { readonly kind: 'read'; readonly lifters: Lifters }
  /** Something stands there that this version cannot read. */
  | { readonly kind: 'unread'; readonly text: string; readonly problem: string }
  | { readonly kind: 'denied' };

export function takeKept(text: string | null): Kept {
  if (text === null) return { kind: 'none' };
  const { lifters, problem } = readKept(text);
  return lifters ? { kind: 'read', lifters } : { kind: 'unread', text, problem };
}

export function readStore(): Kept {
  try {
    return takeKept(localStorage.getItem(LIFTERS_STORE));
  } catch {
    return { kind: 'denied' };
  }
}

/** Of no lifters nothing is left there. @returns why they are not kept; null where they are */
export function keepLifters(lifters: Lifters): string | null {
  try {
    if (lifters.all.length === 0) localStorage.removeItem(LIFTERS_STORE);
    else localStorage.setItem(LIFTERS_STORE, writeKept(lifters));
    return null;
  } catch (error) {
    return reasonOf(error);
  }
}
