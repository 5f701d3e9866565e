/** Whether a table that the demonstration would overwrite holds somebody's work. */
import { DEMONSTRATION_NOTE } from '../../src/evidence/demonstration.ts';

/**
 * First line of a CSV text below its header that does not say of itself that it is invented; null where all do.
 * Reads lines, not rows, so that a table with problems is guarded too.
 */
export function findOwnLine(text: string): number | null {
  const lines = text.split(/\r\n?|\n/u);
  const place = lines.findIndex((line, i) => i > 0 && line.trim() !== '' && !line.includes(DEMONSTRATION_NOTE));
  return place < 0 ? null : place + 1;
}
