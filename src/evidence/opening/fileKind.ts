/** What a file is, by its first bytes: people rename files, and a name is no promise. */
import type { RefusedFile } from './refusal.ts';

export type FileKind =
  | { readonly kind: 'text' }
  /** A zip archive, which both formats of spreadsheets are. */
  | { readonly kind: 'zip' }
  | { readonly kind: 'other'; readonly refused: RefusedFile };

export const EXPECTED_FILE = 'a table as CSV text or as a spreadsheet file (.xlsx or .ods)';
export const SAVE_WITHOUT_PASSWORD = 'Save a copy without a password, and open that.';

const INTO_SPREADSHEET = 'Copy its table into a spreadsheet, check it, and save that as .xlsx, .ods or CSV.';
const UNPACK = 'Unpack it, and open the table that is in it.';

/** First bytes, hexadecimal, with what such a file is and what to do with it. */
const SIGNATURES: readonly (readonly [starts: readonly string[], value: string, remedy: string])[] = [
  [['25504446'], 'a PDF', INTO_SPREADSHEET],
  // PNG, JPEG, GIF, TIFF in both orders of bytes, and the container of WebP.
  [
    ['89504e47', 'ffd8ff', '47494638', '49492a00', '4d4d002a', '52494646'],
    'a picture',
    'Type its numbers into a spreadsheet, and save that as .xlsx, .ods or CSV.',
  ],
  // gzip, 7z, rar, bzip2 and xz.
  [['1f8b', '377abcaf', '52617221', '425a68', 'fd377a58'], 'a packed file', UNPACK],
  [['7b5c727466'], 'a text document', INTO_SPREADSHEET],
  [['53514c69746520666f726d6174'], 'a database', 'Export its table as CSV, and open that.'],
];
const MARKUP = /^(?:\u00ef\u00bb\u00bf)?\s*<(?:\?xml|!doctype|html)/iu;
const ZIP = ['504b0304', '504b0506', '504b0708'];
/** Container of the old binary formats, and of new ones with a password. */
const COMPOUND = ['d0cf11e0a1b11ae1'];
/** Bytes at the start that are looked at; space may stand before a tag. */
const START = 64;

/** @param bytes of the whole file */
export function recogniseFile(bytes: Uint8Array): FileKind {
  const start = bytes.subarray(0, START);
  const hex = [...start].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  const isOne = (starts: readonly string[]) => starts.some((one) => hex.startsWith(one));
  if (isOne(ZIP)) return { kind: 'zip' };
  if (isOne(COMPOUND)) return { kind: 'other', refused: refuseCompound(bytes) };
  const found = SIGNATURES.find(([starts]) => isOne(starts));
  if (found) return { kind: 'other', refused: { value: found[1], expected: EXPECTED_FILE, remedy: found[2] } };
  if (!MARKUP.test(String.fromCharCode(...start))) return { kind: 'text' };
  const remedy = 'Open it in a spreadsheet program, and save it as .xlsx, .ods or CSV.';
  return { kind: 'other', refused: { value: 'a web page or an XML document', expected: EXPECTED_FILE, remedy } };
}

/** The names of what stands in the container are UTF-16 in it. */
function refuseCompound(bytes: Uint8Array): RefusedFile {
  const isProtected = holds(bytes, [...'EncryptedPackage'].join('\0'));
  return isProtected
    ? { value: 'a file with a password', expected: EXPECTED_FILE, remedy: SAVE_WITHOUT_PASSWORD }
    : {
        value: 'an old binary file (.xls or .doc)',
        expected: EXPECTED_FILE,
        remedy: 'Open it in a spreadsheet program, and save it as .xlsx, .ods or CSV.',
      };
}

/** Whether Latin-1 text stands anywhere in the bytes. */
function holds(bytes: Uint8Array, text: string): boolean {
  const first = text.charCodeAt(0);
  for (let at = bytes.indexOf(first); at >= 0; at = bytes.indexOf(first, at + 1)) {
    let length = 1;
    while (length < text.length && bytes[at + length] === text.charCodeAt(length)) length++;
    if (length === text.length) return true;
  }
  return false;
}
