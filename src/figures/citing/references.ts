/**
 * A figure as a reference: APA and Vancouver as plain text, BibTeX, RIS and CSL-JSON. One rule for the site's figures and
 * for those that a browser draws. Written here, since what writes references in styles must not reach a browser
 * (its licence; DEVELOPERS.md); tests hold each form to what Citation.js makes of the same item.
 */
import type { ReferenceItem } from './figureItem.ts';

export interface Reference {
  /** One paragraph in the style of the American Psychological Association (7th edition, 10.14, a work with its kind in brackets). */
  readonly apa: string;
  /** One paragraph in the Vancouver style (NLM, Citing Medicine, chapter 25), without a number before it. */
  readonly vancouver: string;
  /** One entry in UTF-8, lines ending in LF. */
  readonly bibtex: string;
  /** One record in UTF-8, lines ending in CRLF. */
  readonly ris: string;
  /** A list of one item. */
  readonly cslJson: string;
}

/** What TeX, or a reader of BibTeX, would take for something else. */
const TEX: Readonly<Record<string, string>> = {
  '&': '\\&',
  '%': '\\%',
  $: '\\$',
  '#': '\\#',
  _: '\\_',
  '{': '\\textbraceleft{}',
  '}': '\\textbraceright{}',
  '\\': '\\textbackslash{}',
  '~': '\\textasciitilde{}',
  '^': '\\textasciicircum{}',
  '<': '\\textless{}',
  '>': '\\textgreater{}',
};

/** Text from a table is untrusted: what is returned is to be shown as text, never as markup. */
export function referTo(item: ReferenceItem): Reference {
  const { title, genre, publisher, URL: address } = item;
  const author = item.author.map(({ literal }) => literal).join(', ');
  const [[year]] = item.issued['date-parts'];
  return {
    apa: `${author}. (${year}). ${title} [${genre}]. ${publisher}. ${address}`,
    vancouver: `${author}. ${title} [${genre}] [Internet]. ${publisher}; ${year}. Available from: ${address}`,
    bibtex: writeBibtex(item, author, year),
    ris: writeRis(item, author, year),
    cslJson: `${JSON.stringify([item], null, 2)}\n`,
  };
}

function writeBibtex({ id, note, publisher, title, genre, URL: address }: ReferenceItem, author: string, year: number) {
  const fields = {
    // In braces of its own: a body is no first and family name.
    author: `{${escapeTex(author)}}`,
    year,
    note: escapeTex(note),
    publisher: escapeTex(publisher),
    title: keepCapitals(escapeTex(title)),
    type: escapeTex(genre),
    // An address stands as it is between the braces of its field, so it must have none of its own.
    url: address.replace(/[{}\\]/gu, encodeURIComponent),
  };
  const lines = Object.entries(fields).map(([name, value]) => `\t${name} = {${value}},`);
  return [`@misc{${id},`, ...lines, '}', ''].join('\n');
}

function escapeTex(text: string): string {
  return (
    text
      .replace(/[&%$#_{}\\~^<>]/gu, (character) => TEX[character])
      // Pairs that TeX joins into a dash or a quotation mark are kept apart.
      .replace(/-(?=-)|`(?=`)|'(?=')/gu, '$&{}')
  );
}

/** Words with a capital inside a sentence are put in braces: styles would write them small. */
function keepCapitals(escaped: string): string {
  return escaped
    .split(/(:\s*)/u)
    .map((part, i) => (i % 2 === 1 ? part : part.replace(/(?<!^|\\)\b[a-z]*[A-Z]\w*\b/gu, '{$&}')))
    .join('');
}

/** RIS has one line a value, in the order TY … ER. */
function writeRis({ id, genre, note, publisher, title, URL: address }: ReferenceItem, author: string, year: number) {
  const tags = {
    TY: 'FIGURE',
    AU: author,
    PY: year,
    M3: genre,
    N1: note,
    PB: publisher,
    TI: title,
    UR: address,
    ID: id,
  };
  return [...Object.entries(tags).map(([tag, value]) => `${tag}  - ${value}`), 'ER  - ', ''].join('\r\n');
}
