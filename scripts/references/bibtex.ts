/**
 * BibTeX or BibLaTeX, read by Citation.js. What is done here is what the library does not: it reads a file whole or
 * not at all, says no line of an entry, leaves a field empty whose abbreviation nobody defined, drops what follows
 * a name's third part, cuts “al-Hassan” at its hyphen, keeps TeX's escapes in a DOI, and lets a command of TeX stand
 * that it does not know.
 */
import { type CslItem, plugins } from '@citation-js/core';
import '@citation-js/plugin-bibtex';
import { type Format, firstLine, lineAt, type Piece, type Report, sayWhy } from './entry.ts';

export const BIBTEX: Format = {
  fields: {
    authors: 'a field author',
    year: 'a field year',
    title: 'a field title',
    journal: 'a field journal',
    volume: 'the fields volume and number',
    pages: 'a field pages',
    doi: 'a field doi',
  },
  smallest: 'one entry such as “@article{key, …}”',
  split,
};

interface RawEntry {
  readonly type: string;
  readonly label: string;
  readonly properties: Readonly<Record<string, string | number>>;
}

interface PlacedEntry {
  readonly raw: RawEntry;
  readonly line: number;
  /** As it is written. */
  readonly source: string;
}

/** Where an entry begins: on a line of its own, or behind another. */
const ENTRY = /(?:^|(?<=[})]))[ \t]*@\s*\w+\s*[{(]/gmu;
/** Fields that a study is made of; only of these does an abbreviation matter. */
const READ_FIELDS = ['author', 'title', 'journal', 'journaltitle', 'year', 'date', 'volume', 'number', 'pages', 'doi'];
/** Commands of TeX that names and titles have and the library lacks. */
const { constants } = plugins.config.get('@bibtex');
Object.assign(constants.commands, {
  AA: 'Å',
  aa: 'å',
  dots: '…',
  ldots: '…',
  times: '×',
  pm: '±',
  le: '≤',
  leq: '≤',
  ge: '≥',
  geq: '≥',
  sim: '∼',
  approx: '≈',
  // Spaces of several widths, and where a word may be broken.
  ' ': ' ',
  ',': ' ',
  ';': ' ',
  '-': '',
});
const COMMANDS = ['formattingEnvs', 'formattingCommands', 'commands', 'mathCommands', 'diacritics', 'argumentCommands'];

/** “al-Hassan”: the library would cut it into what stands before a family name and the name. */
const HYPHENATED_PARTICLE = /(?<![\p{L}{-])\p{Ll}+-\p{Lu}[\p{L}\p{M}'’-]*/gu;

/** An accent on a letter without its dot, “Garc{\\'\\i}a”: the library would keep the letter of Turkish. */
const DOTLESS = /(\\[`'^"~=])(?:\{\\([ij])\}|\\([ij])(?![a-z]))/giu;

function split(text: string, report: Report): readonly Piece[] {
  const placed = place(text.replace(DOTLESS, '$1$2$3'), report);
  const registry = placed.map(({ raw }) => raw);
  return placed.map(({ raw, line, source }) => ({
    line,
    label: raw.label,
    shown: `@${raw.type}{${raw.label}`,
    read: () => {
      const authors = String(raw.properties.author ?? '');
      if (hasNameOfManyParts(authors)) {
        report(line, authors, 'names separated by “and”, each with two commas at most', { column: 'authors' });
        return null;
      }
      const abbreviation = findUndefined(raw, source);
      if (abbreviation !== null) report(line, abbreviation, 'an abbreviation that the export defines with @string');
      const command = findUnknownCommand(raw);
      if (command !== null) {
        report(line, command, 'a command of TeX that can be read', { remedy: 'Write the character itself.' });
      }
      return abbreviation === null && command === null ? toItem(raw, registry) : null;
    },
  }));
}

/** The entries one by one, since one that cannot be read would take every other with it. */
function place(text: string, report: Report): readonly PlacedEntry[] {
  const starts = [...text.matchAll(ENTRY)].map(({ index }) => index);
  const placed: PlacedEntry[] = [];
  let abbreviations = '';
  let end = 0;
  starts.forEach((start, i) => {
    if (start < end) return;
    const line = lineAt(text, start);
    // What looks like the beginning of an entry may stand in a value of the one before.
    const sources = [text.slice(start, starts[i + 1]), text.slice(start, starts[i + 2])];
    const source = sources.find((one) => !(parse(abbreviations + one) instanceof Error)) ?? sources[0];
    end = start + source.length;
    const raws = parse(abbreviations + source);
    if (raws instanceof Error) {
      report(line, firstLine(source), 'an entry with its braces closed and a comma after each field', sayWhy(raws));
      return;
    }
    placed.push(...raws.map((raw) => ({ raw, line, source })));
    if (/^\s*@\s*string/iu.test(source)) abbreviations += `${source}\n`;
  });
  return placed;
}

/** The entries of a text, or why it cannot be read. */
function parse(text: string): readonly RawEntry[] | Error {
  try {
    return plugins.input.data(text, '@biblatex/text') as RawEntry[];
  } catch (error) {
    return error instanceof Error ? error : new Error(String(error));
  }
}

/** A field that is an abbreviation which nobody defined, as it is written. */
function findUndefined({ properties }: RawEntry, source: string): string | null {
  for (const field of READ_FIELDS) {
    const value: unknown = properties[field];
    // Undefined ones are empty; names that every object has (“constructor”) are what those are.
    if (value === undefined || typeof value === 'number' || (typeof value === 'string' && value !== '')) continue;
    const written = new RegExp(`(?<=[,\\s])${field}\\s*=\\s*[a-z_][\\w:+-]*(?=\\s*[,})])`, 'iu').exec(source);
    if (written) return written[0];
  }
  return null;
}

/** A command of TeX with its field that would stand in the table as it is written. */
function findUnknownCommand({ properties }: RawEntry): string | null {
  for (const field of READ_FIELDS.filter((one) => one !== 'doi')) {
    for (const [text, command] of String(properties[field] ?? '').matchAll(/\\(?:([a-z]+)|.)/giu)) {
      const isKnown = COMMANDS.some((kind) => Object.hasOwn(constants[kind], command));
      if (command !== undefined && !isKnown && command !== 'begin' && command !== 'end')
        return `${field} = … ${text} …`;
    }
  }
  return null;
}

/** @param registry all entries, for what this one takes from them (crossref) */
function toItem({ type, label, properties }: RawEntry, registry: readonly RawEntry[]): CslItem {
  const parent = registry.filter((other) => 'crossref' in properties && other.label === properties.crossref);
  const { author, ...others } = properties;
  const names = author === undefined ? {} : { author: String(author).replace(HYPHENATED_PARTICLE, '{$&}') };
  const entry = { type, label, properties: { ...others, ...names } };
  const [item] = plugins.input.data([entry, ...parent], '@biblatex/entries+list') as [CslItem];
  // Between the braces of `doi` TeX's escapes are no part of the DOI, though managers write them.
  return { ...item, DOI: item.DOI?.replace(/\\([&%$#_{}])/gu, '$1') };
}

/** A name may be “von Last, Jr, First” at most; the library would drop what follows. */
function hasNameOfManyParts(authors: string): boolean {
  let plain = authors;
  // From the inside out, so that what stands in braces inside braces goes too.
  while (/\{[^{}]*\}/u.test(plain)) plain = plain.replace(/\{[^{}]*\}/gu, '');
  return plain.split(/\sand\s/iu).some((name) => name.split(',').length > 3);
}
