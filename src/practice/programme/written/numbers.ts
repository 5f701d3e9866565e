/** Numbers as people write them: with a decimal point or comma, and as a range. */
import type { Span } from './understood.ts';

/** “72,5”, “6-8”, “6 to 8”; NaN where it is neither. */
export function parseSpan(written: string): Span {
  const [first, last = first] = written.split(/\s?(?:-|–|—|to)\s?/u).map(parseNumber);
  return { least: Math.min(first, last), most: Math.max(first, last) };
}

function parseNumber(written: string): number {
  const plain = written.trim().replace(',', '.');
  return plain === '' ? Number.NaN : Number(plain);
}
