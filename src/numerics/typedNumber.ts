/** Numbers as people type them: “72.5”, and “72,5” where a comma is their decimal mark. */

/** Digits with one comma; what ends in three digits may be thousands as well, and is not taken for either. */
const WITH_COMMA = /^[-−+]?\d*,\d+$/u;
const THOUSANDS = /,\d{3}$/u;

/**
 * A typed number as a number is written for a machine: “72,5” becomes “72.5”. Everything else stays as it was typed, so
 * that who reads it can refuse it by its own letters, “1,000” and “7 or 8” too.
 */
export function plainNumber(typed: string): string {
  const text = typed.trim();
  const isDecimal = WITH_COMMA.test(text) && !THOUSANDS.test(text);
  return (isDecimal ? text.replace(',', '.') : text).replace(/^−/u, '-');
}
