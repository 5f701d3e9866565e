/**
 * A figure of the site as an item of CSL-JSON (Citation Style Language 1.0.2), from which its references are made, and
 * who is cited, and since when, as CITATION.cff says.
 */
import { readFileSync } from 'node:fs';
import type { CslItem } from '@citation-js/core';

export type ReferenceItem = CslItem &
  Required<Pick<CslItem, 'id' | 'citation-key' | 'type' | 'author' | 'issued' | 'title' | 'URL'>>;

const citation = readFileSync('CITATION.cff', 'utf8');

export const release = {
  /** The authors as one name. */
  authors: read(/^ {2}- name: (.+)$/mu, 'an author’s name'),
  version: read(/^version: (\S+)$/mu, 'a version'),
  /** Year of the release. */
  year: Number(read(/^date-released: (\d{4})-\d\d-\d\d$/mu, 'a date of release')),
} as const;

export interface CitedFigure {
  readonly slug: string;
  /** The finding. */
  readonly title: string;
  readonly authors: string;
  readonly site: string;
  readonly dataVersion: string;
  readonly year: number;
  readonly address: string;
  /** True where the studies behind it are invented. */
  readonly demonstration: boolean;
}

export function toFigureItem(cited: CitedFigure): ReferenceItem {
  const { slug, title, authors, site, dataVersion, year, address, demonstration } = cited;
  // One word of letters and digits without accents, for files that need a key.
  const label = `${site} ${slug} ${dataVersion}`.normalize('NFKD').replace(/[^\p{L}\p{N}]/gu, '');
  return {
    id: label,
    'citation-key': label,
    type: 'figure',
    author: [{ literal: authors }],
    issued: { 'date-parts': [[year]] },
    title,
    genre: `Figure${demonstration ? ' of invented studies' : ''}, data version ${dataVersion}`,
    publisher: site,
    URL: address,
    note: `Figure, data version ${dataVersion}${demonstration ? '; invented for demonstration, no such studies exist' : ''}`,
  };
}

function read(line: RegExp, what: string): string {
  const found = line.exec(citation)?.[1];
  if (found === undefined) throw new Error(`CITATION.cff: expected ${what}, a line like ${line.source}`);
  return found.trim();
}
