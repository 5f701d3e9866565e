/**
 * CSL-JSON (Citation Style Language 1.0.2): a list of items, or one. Citation.js puts right what other producers
 * write; it leaves out a property that it cannot make sense of, which is said here. jsonc-parser tells where items stand.
 */
import { type CslItem, type CslName, plugins } from '@citation-js/core';
import { getNodeValue, type ParseError, parseTree, printParseErrorCode } from 'jsonc-parser';
import { type Format, firstLine, lineAt, type Piece, type Report } from './entry.ts';

export const CSL_JSON: Format = {
  fields: {
    authors: 'a property author',
    year: 'a property issued',
    title: 'a property title',
    journal: 'a property container-title',
    volume: 'the properties volume and issue',
    pages: 'a property page',
    doi: 'a property DOI',
  },
  smallest: 'one item such as [{"id": "key", …}]',
  split,
};

/** Properties that a study is made of, with the column they go to and what the format has there. */
const READ = {
  author: { column: 'authors', expected: 'a list of names, each with "family" and "given" or with "literal"' },
  issued: { column: 'year', expected: 'a date such as {"date-parts": [[2012]]}' },
  title: { column: 'title', expected: 'text' },
  'container-title': { column: 'journal', expected: 'text' },
  volume: { column: 'volume', expected: 'text or a number' },
  issue: { column: 'volume', expected: 'text or a number' },
  page: { column: 'pages', expected: 'text' },
  DOI: { column: 'doi', expected: 'text' },
} as const;

function split(text: string, report: Report): readonly Piece[] {
  const errors: ParseError[] = [];
  const root = parseTree(text, errors, { disallowComments: true });
  for (const { offset, error } of errors.slice(0, 1)) {
    const remedy = `The reader says: ${printParseErrorCode(error)}.`;
    report(lineAt(text, offset), firstLine(text.slice(offset)), 'JSON without an error', { remedy });
  }
  if (!root || errors.length > 0) return [];
  const nodes = root.type === 'array' ? (root.children ?? []) : [root];
  return nodes.map((node, index) => {
    const line = lineAt(text, node.offset);
    const value: unknown = getNodeValue(node);
    const shown = text.slice(node.offset, node.offset + node.length);
    const isItem = node.type === 'object';
    const id = isItem ? (value as { id?: unknown }).id : undefined;
    const label = typeof id === 'string' || typeof id === 'number' ? String(id) : `item ${index + 1}`;
    const read = () => {
      if (isItem) return readItem(value as Readonly<Record<string, unknown>>, line, report);
      report(line, shown, 'an item in braces');
      return null;
    };
    return { line, label, shown, read };
  });
}

function readItem(raw: Readonly<Record<string, unknown>>, line: number, report: Report): CslItem | null {
  const [item] = plugins.input.util.clean([raw]);
  const lost = (Object.keys(READ) as (keyof typeof READ)[]).filter(
    (name) => isGiven(raw[name]) && (item[name] === undefined || (name === 'author' && !areNames(raw.author, item))),
  );
  for (const name of lost) report(line, JSON.stringify(raw[name]), READ[name].expected, { column: READ[name].column });
  return lost.length > 0 ? null : item;
}

/** Whether a property says anything: some producers write empty ones. */
function isGiven(value: unknown): boolean {
  return value !== undefined && value !== null && value !== '' && !(Array.isArray(value) && value.length === 0);
}

/** Whether every name was kept, and has text in the parts that are read. */
function areNames(raw: unknown, { author = [] }: CslItem): boolean {
  const hasText = ({ family, given, suffix, literal }: CslName) =>
    [family, given, suffix, literal].every((part: unknown) => part === undefined || typeof part === 'string');
  return Array.isArray(raw) && raw.length === author.length && author.every(hasText);
}
