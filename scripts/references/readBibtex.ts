/**
 * BibTeX or BibLaTeX into entries, through Citation.js. Where the file as a whole cannot be read, its
 * entries are read one by one, so that all that are wrong can be named.
 */
import { type CslItem, plugins } from '@citation-js/core';
import '@citation-js/plugin-bibtex';
import type { Problem } from '../../src/evidence/problem.ts';
import { type Entry, type Export, type FieldNames, firstLine, unreadable } from './entry.ts';

export const BIBTEX_FIELDS: FieldNames = {
  authors: 'a field author',
  year: 'a field year',
  title: 'a field title',
  journal: 'a field journal',
  volume: 'the fields volume and number',
  pages: 'a field pages',
  doi: 'a field doi',
};

interface RawEntry {
  readonly type: string;
  readonly label: string;
  readonly properties: Readonly<Record<string, string | number>>;
}

interface PlacedEntry {
  readonly raw: RawEntry;
  readonly line: number;
  /** The export from this entry on. */
  readonly rest: string;
}

/** Fields that a study is made of; only of these does an abbreviation matter. */
const READ_FIELDS = ['author', 'title', 'journal', 'journaltitle', 'year', 'date', 'volume', 'number', 'pages', 'doi'];

/** “al-Hassan”: the library would cut it at the hyphen, into what stands before a family name and the name. */
const HYPHENATED_PARTICLE = /(?<![\p{L}{-])\p{Ll}+-\p{Lu}[\p{L}\p{M}'’-]*/gu;

export function readBibtex(text: string, file: string): Export {
  const problems: Problem[] = [];
  const placed = readWhole(text) ?? readApart(text, file, problems);
  if (placed.length === 0 && problems.length === 0) {
    problems.push(unreadable(file, null, firstLine(text), 'at least one entry such as “@article{key, …}”', null));
  }
  const registry = placed.map(({ raw }) => raw);
  const entries = placed.flatMap(({ raw, line, rest }, index): Entry[] => {
    const shown = `@${raw.type}{${raw.label}`;
    if (hasNameOfManyParts(String(raw.properties.author ?? ''))) {
      const names = 'names separated by “and”, each with two commas at most';
      problems.push({ ...unreadable(file, line, String(raw.properties.author), names, null), column: 'authors' });
      return [];
    }
    const abbreviation = findUndefined(raw, rest);
    if (abbreviation !== null) {
      problems.push(unreadable(file, line, abbreviation, 'an abbreviation that the export defines with @string', null));
      return [];
    }
    try {
      return [{ line, label: raw.label, item: toItem(registry, index) }];
    } catch (error) {
      problems.push(unreadable(file, line, shown, 'an entry whose fields can be read', error));
      return [];
    }
  });
  return { entries, problems };
}

/** Null where something in the file cannot be read. */
function readWhole(text: string): PlacedEntry[] | null {
  let raws: RawEntry[];
  try {
    raws = parse(text);
  } catch {
    return null;
  }
  let from = 0;
  return raws.map((raw) => {
    const at = findEntry(text, raw, from);
    from = at + 1;
    return { raw, line: lineAt(text, at), rest: text.slice(at) };
  });
}

/** The entries one by one; those that cannot be read are added to the problems. */
function readApart(text: string, file: string, problems: Problem[]): PlacedEntry[] {
  const starts = [...text.matchAll(/^[ \t]*@\s*\w+\s*[{(]/gmu)].map(({ index }) => index);
  const pieces = starts.map((start, i) => ({ start, piece: text.slice(start, starts[i + 1]) }));
  const isAbbreviation = (piece: string) => /^\s*@\s*string/iu.test(piece);
  // Those that can be read; one that cannot would otherwise take every entry with it.
  let abbreviations = '';
  return pieces.flatMap(({ start, piece }): PlacedEntry[] => {
    const line = lineAt(text, start);
    try {
      const raws = parse(`${abbreviations}\n${piece}`);
      if (isAbbreviation(piece)) abbreviations += `\n${piece}`;
      return raws.map((raw) => ({ raw, line, rest: piece }));
    } catch (error) {
      problems.push(
        unreadable(file, line, firstLine(piece), 'an entry with its braces closed and a comma after each field', error),
      );
      return [];
    }
  });
}

/** A field that is an abbreviation which nobody defined, as it is written; the library would leave the field empty. */
function findUndefined({ properties }: RawEntry, rest: string): string | null {
  for (const field of READ_FIELDS) {
    const value: unknown = properties[field];
    // Undefined ones are empty; names that every object has (“constructor”) are what those are.
    if (value === undefined || typeof value === 'number' || (typeof value === 'string' && value !== '')) continue;
    const written = new RegExp(`(?<=[,\\s])${field}\\s*=\\s*[a-z_][\\w:+-]*(?=\\s*[,})])`, 'iu').exec(rest);
    // Only of this entry: what stands after the next one begins is another's.
    const end = rest.slice(1).search(/^[ \t]*@\s*\w+\s*[{(]/mu);
    if (written && (end < 0 || written.index <= end)) return written[0];
  }
  return null;
}

function parse(text: string): RawEntry[] {
  return plugins.input.data(text, '@biblatex/text') as RawEntry[];
}

/** The entry at the index; the others are there for what it takes from them (crossref). */
function toItem(registry: readonly RawEntry[], index: number): CslItem {
  const { type, label, properties } = registry[index];
  const parent = registry.filter((other) => 'crossref' in properties && other.label === properties.crossref);
  const { author, ...others } = properties;
  const names = author === undefined ? {} : { author: String(author).replace(HYPHENATED_PARTICLE, '{$&}') };
  const entry = { type, label, properties: { ...others, ...names } };
  const [item] = plugins.input.data([entry, ...parent], '@biblatex/entries+list') as [CslItem];
  // Between the braces of `doi` TeX's escapes are no part of the DOI, though managers write them.
  return item.DOI === undefined ? item : { ...item, DOI: item.DOI.replace(/\\([&%$#_{}])/gu, '$1') };
}

/** A name may be “von Last, Jr, First” at most; the library would drop what follows. */
function hasNameOfManyParts(authors: string): boolean {
  let plain = authors;
  // From the inside out, so that what stands in braces inside braces goes too.
  while (/\{[^{}]*\}/u.test(plain)) plain = plain.replace(/\{[^{}]*\}/gu, '');
  return plain.split(/\sand\s/iu).some((name) => name.split(',').length > 3);
}

function findEntry(text: string, { type, label }: RawEntry, from: number): number {
  const escaped = (word: string) => word.replace(/[.*+?^${}()|[\]\\/-]/gu, '\\$&');
  const pattern = new RegExp(`@\\s*${escaped(type)}\\s*[{(]\\s*${escaped(label)}\\s*,`, 'giu');
  pattern.lastIndex = from;
  return pattern.exec(text)?.index ?? from;
}

function lineAt(text: string, index: number): number {
  return text.slice(0, index).split(/\r\n?|\n/u).length;
}
