/**
 * A figure as an item of CSL-JSON (Citation Style Language 1.0.2), from which its references are made: of the site's own
 * at the build, and of those with a reader's settings in the browser.
 */

import type { Arm } from '../../evidence/schema.ts';

/** The part of CSL-JSON that a figure has. */
export interface ReferenceItem {
  readonly id: string;
  readonly 'citation-key': string;
  readonly type: 'figure';
  readonly author: readonly { readonly literal: string }[];
  readonly issued: { readonly 'date-parts': readonly (readonly number[])[] };
  readonly title: string;
  readonly genre: string;
  readonly publisher: string;
  readonly URL: string;
  readonly note: string;
}

export interface CitedFigure {
  readonly slug: string;
  /** The finding. */
  readonly title: string;
  readonly authors: string;
  readonly site: string;
  readonly dataVersion: string;
  /** What tells its settings from others (settingsMark.ts); null for the site's own. */
  readonly mark: string | null;
  readonly year: number;
  readonly address: string;
  /** True where the studies behind it are invented. */
  readonly demonstration: boolean;
}

/** Who is cited, and since when. */
export interface Release {
  readonly authors: string;
  /** Year of the site. */
  readonly year: number;
}

export function newestYearOf(arms: readonly Pick<Arm, 'year'>[]): number {
  return arms.reduce((newest, { year }) => Math.max(newest, year), 0);
}

/** Year in a reference: never before the studies that the figure shows, nor before the site. */
export function yearOf(release: Release, newestStudy: number): number {
  return Math.max(release.year, newestStudy);
}

export function toFigureItem(cited: CitedFigure): ReferenceItem {
  const { slug, title, authors, site, dataVersion, mark, year, address, demonstration } = cited;
  // One word of letters and digits without accents, for files that need a key.
  const label = `${site} ${slug} ${dataVersion} ${mark ?? ''}`.normalize('NFKD').replace(/[^\p{L}\p{N}]/gu, '');
  const version = `data version ${dataVersion}${mark === null ? '' : `, settings ${mark}`}`;
  return {
    id: label,
    'citation-key': label,
    type: 'figure',
    author: [{ literal: authors }],
    issued: { 'date-parts': [[year]] },
    // One line: a form with a line a value has no other.
    title: title.replace(/\s+/gu, ' ').trim(),
    genre: `Figure${demonstration ? ' of invented studies' : ''}, ${version}`,
    publisher: site,
    URL: address,
    note: `Figure, ${version}${demonstration ? '; invented for demonstration, no such studies exist' : ''}`,
  };
}
