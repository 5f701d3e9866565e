/** Where a browser keeps lifters, for whoever only has to know whether it does. */

export const LIFTERS_STORE = 'shy-of-failure lifters';

export function hasKeptLifters(): boolean {
  try {
    return localStorage.getItem(LIFTERS_STORE) !== null;
  } catch {
    // A browser may forbid pages to keep anything.
    return false;
  }
}
