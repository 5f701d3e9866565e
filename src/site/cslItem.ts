/** A study of `studies.csv` as an item of CSL-JSON (Citation Style Language 1.0.2), from which all references are made. */
import type { CslItem, CslName } from '@citation-js/core';
import { type Author, readAuthors } from '../evidence/authors.ts';
import { isDoi, plainDoi } from '../evidence/doi.ts';
import type { Study } from '../evidence/schema.ts';

/** Words in small letters before a family name: “von”, “van der”. */
const PARTICLE = /^((?:\p{Ll}[\p{Ll}'’.]*\s+)+)(?=\S)/u;
/** “12(3)”: volume and issue; either may be missing. */
const VOLUME_AND_ISSUE = /^([^()]*)\(([^()]+)\)$/u;

/** What everything that is referred to has. */
export type ReferenceItem = CslItem &
  Required<Pick<CslItem, 'id' | 'citation-key' | 'type' | 'author' | 'issued' | 'title'>>;

/** Empty cells give no property; a DOI that has not the form of one is left out (the table's check warns of it). */
export function toCslItem(study: Study): ReferenceItem {
  const [, volume, issue] = VOLUME_AND_ISSUE.exec(study.volume ?? '') ?? [null, study.volume ?? '', ''];
  const doi = plainDoi(study.doi ?? '');
  return {
    id: labelOf(study),
    'citation-key': labelOf(study),
    type: 'article-journal',
    author: readAuthors(study.authors).map(toName),
    issued: { 'date-parts': [[study.year]] },
    title: oneSpace(study.title),
    ...given('container-title', oneSpace(study.journal ?? '')),
    ...given('volume', oneSpace(volume)),
    ...given('issue', oneSpace(issue)),
    // CSL-JSON has a hyphen in ranges; the styles turn it into the dash that they want.
    ...given('page', oneSpace(study.pages ?? '').replace(/[–—]/gu, '-')),
    ...given('DOI', isDoi(doi) ? doi : ''),
    ...given('note', oneSpace(study.note ?? '')),
  };
}

/** The study's name as one word of letters and digits without accents, for files that need a key: “Muller2012b”. */
export function labelOf({ study }: Pick<Study, 'study'>): string {
  return study.normalize('NFKD').replace(/[^\p{L}\p{N}]/gu, '') || 'study';
}

function toName({ family, initials, suffix }: Author): CslName {
  if (initials === '') return { literal: family };
  const particle = PARTICLE.exec(family)?.[0] ?? '';
  return {
    ...given('non-dropping-particle', particle.trim()),
    family: family.slice(particle.length),
    // Apart, so that a style can put its points: “C. D.”.
    given: (initials.match(/\P{M}\p{M}*/gu) ?? []).join(' '),
    ...given('suffix', suffix),
  };
}

function given<Name extends string>(name: Name, value: string): { [key in Name]?: string } {
  return value === '' ? {} : ({ [name]: value } as { [key in Name]?: string });
}

function oneSpace(text: string): string {
  return text.replace(/\s+/gu, ' ').trim();
}
