/**
 * Bytes of a text file into characters, and back. Spreadsheet programs write UTF-8, UTF-16 (“Unicode text”) and, as
 * plain “CSV” in the west of Europe and in America, Windows-1252; files say seldom which.
 */

/** Encodings that are read, by the names of the Encoding Standard (WHATWG). */
export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

export const ENCODING_NAMES: Readonly<Record<Encoding, string>> = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16 (little-endian)',
  'utf-16be': 'UTF-16 (big-endian)',
  'windows-1252': 'Windows-1252',
};

export interface DecodedText {
  /** With the byte-order mark, where there is one; bytes that belong to no character are U+FFFD. */
  readonly text: string;
  readonly encoding: Encoding;
}

/** Bytes that are looked at for zeros: a header of 200 characters as UTF-16. */
const SAMPLE = 400;
/** Share of zeros in the high bytes of UTF-16 text that is mostly ASCII, as names of columns are. */
const MOSTLY = 0.6;
/** Controls that no text holds: they stand in files of other kinds, and in Windows-1252 at the bytes it leaves free. */
const NO_TEXT = /(?![\t\n\v\f\r])\p{Cc}/u;

export function decodeText(bytes: Uint8Array): DecodedText {
  const wide = recogniseWide(bytes);
  if (wide) return { text: decode(bytes, wide), encoding: wide };
  const text = decode(bytes, 'utf-8');
  // The sign for a lost character may also have been written as such.
  if (!text.includes('\ufffd') || isUtf8(bytes)) return { text, encoding: 'utf-8' };
  // With a character of several bytes that is whole it is UTF-8 that was damaged: in Windows-1252 these are unlikely.
  const isDamaged = /[^\p{ASCII}\ufffd\ufeff]/u.test(text);
  const single = decode(bytes, 'windows-1252');
  return isDamaged || NO_TEXT.test(single) ? { text, encoding: 'utf-8' } : { text: single, encoding: 'windows-1252' };
}

/**
 * The bytes of a text; null where the encoding has no place for one of its characters. What `decodeText` read comes
 * back byte for byte, unless characters were lost.
 */
export function encodeText(text: string, encoding: Encoding): Uint8Array<ArrayBuffer> | null {
  if (encoding === 'utf-8') return new TextEncoder().encode(text);
  if (encoding === 'windows-1252') return encodeSingle(text);
  const bytes = new Uint8Array(2 * text.length);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < text.length; i++) view.setUint16(2 * i, text.charCodeAt(i), encoding === 'utf-16le');
  return bytes;
}

/** Characters beyond ASCII that a text holds, the first of them: by these a reader sees whether the encoding is right. */
export function findLetters(text: string, most: number): readonly string[] {
  const found = new Set<string>();
  for (const [letter] of text.matchAll(/[^\p{ASCII}\ufeff]/gu)) {
    found.add(letter);
    if (found.size === most) break;
  }
  return [...found];
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

function decode(bytes: Uint8Array, encoding: Encoding): string {
  return new TextDecoder(encoding, { ignoreBOM: true }).decode(bytes);
}

/** UTF-16 by its mark, or by the zeros that ASCII has in it; null where it is none. */
function recogniseWide(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  const sample = bytes.subarray(0, SAMPLE);
  const pairs = Math.floor(sample.length / 2);
  if (pairs === 0 || bytes.length % 2 !== 0) return null;
  const zeros = [0, 0];
  sample.forEach((byte, i) => {
    if (byte === 0) zeros[i % 2]++;
  });
  if (zeros[1] >= MOSTLY * pairs && zeros[0] === 0) return 'utf-16le';
  if (zeros[0] >= MOSTLY * pairs && zeros[1] === 0) return 'utf-16be';
  return null;
}

let places: ReadonlyMap<string, number> | null = null;

function encodeSingle(text: string): Uint8Array<ArrayBuffer> | null {
  const all = Uint8Array.from({ length: 256 }, (_, byte) => byte);
  places ??= new Map([...decode(all, 'windows-1252')].map((character, byte) => [character, byte]));
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) {
    const byte = places.get(text[i]);
    if (byte === undefined) return null;
    bytes[i] = byte;
  }
  return bytes;
}
