/**
 * Texts and numbers as R and Python read them alike: in ASCII, since a script may be read in any encoding, and in short
 * lines, since R takes no line of more than 4,095 bytes from a pipe or a terminal.
 */

/** Characters of a text in one literal; each is written with at most 10 bytes. */
const PIECE = 100;
/** Characters of a line of comment. */
const COMMENT = 110;

/** What both languages know by one letter; JSON's `\b` and `\f` are theirs too. */
const LETTERS: Readonly<Record<string, string>> = { '\n': '\\n', '\r': '\\r', '\t': '\\t', '"': '\\"', '\\': '\\\\' };

/**
 * A text as literals that stand for it one after the other.
 * What no string can hold in R, a NUL or half of a pair of UTF-16, becomes U+FFFD.
 */
export function writeLiterals(text: string): readonly string[] {
  const characters = [...text].map(escapeCharacter);
  const pieces = Array.from({ length: Math.max(1, Math.ceil(characters.length / PIECE)) }, (_, i) =>
    characters.slice(i * PIECE, (i + 1) * PIECE).join(''),
  );
  return pieces.map((piece) => `"${piece}"`);
}

function escapeCharacter(character: string): string {
  const code = character.codePointAt(0) ?? 0;
  if (character in LETTERS) return LETTERS[character];
  if (code >= 0x20 && code < 0x7f) return character;
  if (code === 0 || (code >= 0xd800 && code <= 0xdfff)) return '\\ufffd';
  const digits = code.toString(16);
  return code > 0xffff ? `\\U${digits.padStart(8, '0')}` : `\\u${digits.padStart(4, '0')}`;
}

/** A sentence as lines of comment: nothing in it can end the comment. */
export function writeComment(sentence: string): string {
  const lines: string[] = [];
  for (const word of sentence.split(/[\s\p{C}\p{Z}]+/u).flatMap(breakWord)) {
    const last = lines.at(-1);
    if (last === undefined || last.length + 1 + word.length > COMMENT) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines.map((line, i) => `# ${i > 0 ? '  ' : ''}${line}`).join('\n');
}

function breakWord(word: string): readonly string[] {
  return [...word].length > COMMENT ? ([...word].join('').match(/.{1,100}/gsu) ?? []) : [word];
}
