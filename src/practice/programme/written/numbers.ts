/** Numbers as people write them: with a decimal point or comma, in words, and as a range. */
import type { Span } from './understood.ts';

/** From one on. */
export const COUNTED = 'one two three four five six seven eight nine ten eleven twelve'.split(' ');
const BETWEEN_ENDS = /\s?(?:-|–|—|(?<!\p{L})to(?!\p{L}))\s?|\sor\s/u;

/** “72,5”, “6-8”, “6 to 8”, “two or three”; NaN where it is neither. */
export function parseSpan(written: string): Span {
  const [first, last = first] = written.split(BETWEEN_ENDS).map(parseNumber);
  return { least: Math.min(first, last), most: Math.max(first, last) };
}

function parseNumber(written: string): number {
  const plain = written.trim().toLowerCase().replace(',', '.');
  if (plain === 'zero') return 0;
  const counted = COUNTED.indexOf(plain);
  if (counted >= 0) return counted + 1;
  return plain === '' ? Number.NaN : Number(plain);
}
