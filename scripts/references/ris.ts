/**
 * RIS (Research Information Systems, 2011), read by Citation.js. What is done here is what the library
 * does not: given a whole export it stops at a tag outside a record or at a second DO, says no line, cuts a value
 * at two spaces and a hyphen, takes the day on which an article was first online for its year and a journal's
 * abbreviation for its name, and leaves out a publisher, an issue in CP, a DOI without the form of one, and all
 * of a record whose type it does not know.
 */
import { type CslItem, plugins } from '@citation-js/core';
import '@citation-js/plugin-ris';
import type { Format, Piece, Report } from './entry.ts';

export const RIS: Format = {
  fields: {
    authors: 'a line AU',
    year: 'a line PY',
    title: 'a line TI',
    journal: 'a line T2',
    volume: 'the lines VL and IS',
    pages: 'the lines SP and EP',
    doi: 'a line DO',
  },
  smallest: 'one record that begins with a line “TY  - …”',
  split,
};

const TAG_LINE = /^\s*([A-Z][A-Z0-9]) {2}-(?: (.*))?$/u;
/** Tags that may stand several times; of any other the first counts. */
const REPEATED = /^(?:A[1-4U]|ED|TA|KW|N[12]|AB|C\d|M\d|U\d|L\d|UR)$/u;

type Tags = Readonly<Record<string, string | readonly string[]>>;

function split(text: string, report: Report): readonly Piece[] {
  const records: { line: number; lines: string[] }[] = [];
  let open: string[] | null = null;
  text.split(/\r\n?|\n/u).forEach((content, index) => {
    const [, tag, value = ''] = TAG_LINE.exec(content) ?? [];
    if (tag === 'TY') {
      open = [];
      records.push({ line: index + 1, lines: open });
    }
    // The library takes two spaces and a hyphen inside a value for another tag.
    if (open) open.push(tag === undefined ? content.trim() : `${tag}  - ${value.trim().replace(/\s+/gu, ' ')}`);
    else if (tag !== undefined && tag !== 'ER')
      report(index + 1, content.trim(), 'a line “TY  - …” before the others of a record');
    if (tag === 'ER') open = null;
  });
  return records.map(({ line, lines }, index) => ({
    line,
    label: `record ${index + 1}`,
    shown: lines[0],
    read: () => readRecord(lines.join('\n')),
  }));
}

function readRecord(text: string): CslItem {
  const [record] = plugins.input.data(text, '@ris/file') as [Tags];
  const { DO, DA, ...tags }: Tags = Object.fromEntries(
    Object.entries(record).map(([tag, value]) => [tag, REPEATED.test(tag) ? value : (first(value) ?? '')]),
  );
  const item = translate(tags);
  return {
    ...item,
    issued: { raw: first(tags.PY ?? tags.Y1 ?? DA) },
    'container-title': first(tags.JF) ?? item['container-title'],
    issue: item.issue ?? first(tags.CP),
    publisher: item.publisher ?? first(tags.PB),
    // What is no DOI stays, for the table's own check to say so.
    DOI: first(DO),
  };
}

/** A type of reference that the library does not know is read as a general one. */
function translate(tags: Tags): CslItem {
  const item = plugins.input.data(tags, '@ris/record') as CslItem;
  return item.type === undefined ? (plugins.input.data({ ...tags, TY: 'GEN' }, '@ris/record') as CslItem) : item;
}

function first(value: Tags[string] | undefined): string | undefined {
  return typeof value === 'string' ? value : value?.[0];
}
