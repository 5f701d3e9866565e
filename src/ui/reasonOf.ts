/** What browsers refuse by name only, or in words that say nothing to a reader, with the remedy. */
const REFUSALS: Readonly<Record<string, string>> = {
  QuotaExceededError:
    'this browser has no room left for this site; delete a table that you no longer need, or free room on the device',
  SecurityError: 'this browser lets this site keep nothing; allow it to store data, then reload the page',
};

/** Why something failed, as it is shown to a reader; never empty. */
export function reasonOf(error: unknown): string {
  if (!(error instanceof Error)) return error ? String(error) : 'this browser gave no reason';
  return REFUSALS[error.name] ?? (error.message || `this browser gave no reason but ${error.name}`);
}
