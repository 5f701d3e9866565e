/**
 * RIS (Research Information Systems, 2011) into entries. Each record is given to Citation.js by itself,
 * so that one that cannot be read does not take the others with it.
 */
import { type CslItem, plugins } from '@citation-js/core';
import '@citation-js/plugin-ris';
import type { Problem } from '../../src/evidence/problem.ts';
import { type Entry, type Export, type FieldNames, firstLine, unreadable } from './entry.ts';

export const RIS_FIELDS: FieldNames = {
  authors: 'a line AU',
  year: 'a line PY',
  title: 'a line TI',
  journal: 'a line T2',
  volume: 'the lines VL and IS',
  pages: 'the lines SP and EP',
  doi: 'a line DO',
};

const TAG_LINE = /^\s*([A-Z][A-Z0-9]) {2}-(?: (.*))?$/u;
/** Tags that may stand several times; of any other the first counts. */
const REPEATED = /^(?:A[1-4U]|ED|TA|KW|N[12]|AB|C\d|M\d|U\d|L\d|UR)$/u;

type Tags = Readonly<Record<string, string | readonly string[]>>;

export function readRis(text: string, file: string): Export {
  const records: { line: number; lines: string[] }[] = [];
  const problems: Problem[] = [];
  let open: string[] | null = null;
  text.split(/\r\n?|\n/u).forEach((content, index) => {
    const line = index + 1;
    const [, tag, value = ''] = TAG_LINE.exec(content) ?? [];
    if (tag === 'TY') {
      open = [];
      records.push({ line, lines: open });
    }
    // The library takes two spaces and a hyphen inside a value for another tag.
    if (open) open.push(tag === undefined ? content.trim() : `${tag}  - ${value.trim().replace(/\s+/gu, ' ')}`);
    else if (tag !== undefined && tag !== 'ER') {
      problems.push(unreadable(file, line, content.trim(), 'a line “TY  - …” before the others of a record', null));
    }
    if (tag === 'ER') open = null;
  });
  if (records.length === 0) {
    problems.push(
      unreadable(file, null, firstLine(text), 'at least one record that begins with a line “TY  - …”', null),
    );
  }
  const entries = records.flatMap(({ line, lines }, index): Entry[] => {
    try {
      return [{ line, label: `record ${index + 1}`, item: readRecord(lines.join('\n')) }];
    } catch (error) {
      problems.push(unreadable(file, line, lines[0], 'a record that can be read', error));
      return [];
    }
  });
  return { entries, problems };
}

function readRecord(text: string): CslItem {
  const [record] = plugins.input.data(text, '@ris/file') as [Tags];
  const tags: Record<string, string | readonly string[]> = {};
  for (const [tag, value] of Object.entries(record)) {
    tags[tag] = typeof value === 'string' || REPEATED.test(tag) ? value : value[0];
  }
  const { DO, DA: _published, ...others } = tags;
  const item = translate(others);
  const year = first(tags.PY ?? tags.Y1 ?? tags.DA);
  const journal = first(tags.JF);
  const publisher = item.publisher ?? first(tags.PB);
  const doi = first(DO);
  return {
    ...item,
    // The library prefers the day on which an article was first online, and a journal's abbreviation.
    ...(year === undefined ? {} : { issued: { raw: year } }),
    ...(journal === undefined ? {} : { 'container-title': journal }),
    ...(publisher === undefined ? {} : { publisher }),
    // It leaves out what is no DOI; the table's own check is to say so.
    ...(doi === undefined ? {} : { DOI: doi }),
  };
}

/** A type of reference that the library does not know is read as a general one; it would give nothing. */
function translate(tags: Tags): CslItem {
  const item = plugins.input.data(tags, '@ris/record') as CslItem;
  if (item.type !== undefined) return item;
  return plugins.input.data({ ...tags, TY: 'GEN' }, '@ris/record') as CslItem;
}

function first(value: string | readonly string[] | undefined): string | undefined {
  return typeof value === 'string' ? value : value?.[0];
}
