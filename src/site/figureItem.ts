/** A figure of the site as an item of CSL-JSON, from which its references are made. */
import { labelOf, type ReferenceItem } from './cslItem.ts';

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
  const label = labelOf({ study: `${site} ${slug} ${dataVersion}` });
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
