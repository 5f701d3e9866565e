/**
 * What the build has worked out for a part of a page: a data block in the page, as text. As a property of its island it
 * would be half as long again, each quotation mark written out twice over, and read twice: by what starts islands and by
 * the island.
 */

/** Where the page has it; of what type it is. */
export interface Handed<Value> {
  readonly id: string;
  /** For the compiler alone. */
  readonly of?: Value;
}

/** As JSON, by id; of the build. */
const handed = new Map<string, string>();

/**
 * In the build: what `components/Built.astro` puts into the page, before the island that takes it.
 * @param id one of the page
 * @throws where JSON would lose something of it
 */
export function handOver<Value>(id: string, value: Value): Handed<Value> {
  handed.set(id, JSON.stringify(value, refuseLost));
  return { id };
}

function refuseLost(key: string, value: unknown): unknown {
  if (!isHeld(value)) throw new Error(`“${key}” is ${String(value)}, which a data block cannot hold.`);
  return value;
}

/** Whether JSON gives back what it was given: numbers that are some, plain objects, and lists without a gap. */
function isHeld(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (Array.isArray(value)) return !value.includes(undefined);
  if (typeof value === 'object' && value !== null) return Object.getPrototypeOf(value) === Object.prototype;
  return typeof value !== 'function' && typeof value !== 'symbol';
}

/** In the build: JSON that no tag ends. */
export function writeHanded({ id }: Handed<unknown>): string {
  return textOf(id).replaceAll('<', String.raw`\u003c`);
}

/** What was handed over; read anew at each call. @throws where the page does not have it */
export function takeOver<Value>({ id }: Handed<Value>): Value {
  return JSON.parse(
    typeof document === 'undefined' ? textOf(id) : (document.getElementById(id)?.textContent ?? textOf(id)),
  );
}

function textOf(id: string): string {
  const text = handed.get(id);
  if (text === undefined) throw new Error(`The page has no data block “${id}” before the part that reads it.`);
  return text;
}
