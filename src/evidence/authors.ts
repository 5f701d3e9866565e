/**
 * The cell `authors` of `studies.csv`: “von Essen CD, Smith JA Jr, World Health Organization”. Names
 * are separated by commas; a person is family name, initials and perhaps a suffix, as in the
 * Vancouver style (International Committee of Medical Journal Editors, Recommendations); a name
 * without initials is taken as it stands.
 */

export interface Author {
  /** Family name with what belongs before it (“von Essen”), or the whole name of an organisation. */
  readonly family: string;
  /** Initials of the given names without points, such as “CD”; empty for an organisation. */
  readonly initials: string;
  /** “Jr”, “III”; empty for most. */
  readonly suffix: string;
}

/** A suffix of a name. “V” is left out: it is far more often an initial. */
const SUFFIX = /^(?:jr|sr|ii|iii|iv|2nd|3rd|4th)\.?$/iu;
/** Capitals, or letters of a script without capitals: more than six in a row are a word. */
const INITIALS = /^(?:[\p{Lu}\p{Lo}]\p{M}*){1,6}$/u;

/** @param cell the authors as they stand in the table */
export function readAuthors(cell: string): readonly Author[] {
  return cell
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '')
    .map(readAuthor);
}

/** The cell again: names separated by commas, parts of a name by spaces. */
export function writeAuthors(authors: readonly Author[]): string {
  return authors
    .map(({ family, initials, suffix }) => [family, initials, suffix].filter((part) => part !== '').join(' '))
    .join(', ');
}

/** Whether a word is a suffix of a name: “Jr”, “III”. */
export function isSuffix(text: string): boolean {
  return SUFFIX.test(text);
}

/**
 * Initials of given names as a reference manager writes them: “Anna-Maria B.” is AMB, “JP” is JP.
 * Words in small letters (“de”) are no given names and have no initial.
 */
export function initialsOf(given: string): string {
  return given
    .normalize('NFC')
    .split(/[\s.\-‐–]+/u)
    .map((word) => {
      // Up to three capitals in a row are initials already; a longer word in capitals is a name.
      if (/^\p{Lu}{1,3}$/u.test(word)) return word;
      return /^[\p{Lu}\p{Lt}\p{Lo}]\p{M}*/u.exec(word)?.[0] ?? '';
    })
    .join('');
}

function readAuthor(name: string): Author {
  const words = name.normalize('NFC').split(/\s+/u);
  const last = words.at(-1) ?? '';
  const suffix = words.length > 2 && isSuffix(last) && isInitials(words.at(-2) ?? '') ? last.replace('.', '') : '';
  if (suffix !== '') words.pop();
  const given: string[] = [];
  while (words.length > 1 && isInitials(words.at(-1) ?? '')) given.unshift(plainInitials(words.pop() ?? ''));
  return { family: words.join(' '), initials: given.join(''), suffix };
}

function isInitials(word: string): boolean {
  return INITIALS.test(plainInitials(word));
}

function plainInitials(word: string): string {
  return word.replace(/[.\-‐–]/gu, '');
}
