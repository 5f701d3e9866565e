/** An entry of an export as the cells of a line of `studies.csv`, without the study's name. */
import type { CslItem, CslName } from '@citation-js/core';
import { type Author, initialsOf, isSuffix, writeAuthors } from '../../src/evidence/authors.ts';
import { plainDoi } from '../../src/evidence/doi.ts';
import type { Problem } from '../../src/evidence/problem.ts';
import type { STUDY_COLUMNS } from '../../src/evidence/schema.ts';

export type StudyCells = Readonly<Record<keyof typeof STUDY_COLUMNS, string>>;

/** Why a name cannot stand in the table. */
type NameProblem = Pick<Problem, 'column' | 'value' | 'expected' | 'remedy'>;

/** Tags by which CSL and some managers mark italics and the like in a title. */
const RICH_TEXT = /<\/?(?:i|b|em|sc|sup|sub|span)(?:\s[^<>]*)?>/giu;
const DOI_ADDRESS = /^https?:\/\/(?:dx\.|www\.)?doi\.org\//iu;

/** Cells that have nothing to say are empty; `study` and `note` always are. */
export function toStudyCells(item: CslItem): { readonly cells: StudyCells; readonly problems: readonly NameProblem[] } {
  const problems: NameProblem[] = [];
  const authors = (item.author ?? []).flatMap((name) => toAuthor(name, problems));
  const cells = {
    study: '',
    authors: writeAuthors(authors),
    year: yearOf(item),
    title: plain(item.title),
    journal: plain(item['container-title'] ?? item['container-title-short'] ?? item.publisher),
    volume: `${plain(item.volume)}${item.issue === undefined ? '' : `(${plain(item.issue)})`}`,
    pages: plain(item.page ?? item.number).replace(/^([\p{L}\p{N}.]+)[-–—]+([\p{L}\p{N}.]+)$/u, '$1–$2'),
    doi: plainDoi(item.DOI ?? (DOI_ADDRESS.test(item.URL ?? '') ? (item.URL ?? '') : '')),
    note: '',
  };
  return { cells, problems };
}

function toAuthor(name: CslName, problems: NameProblem[]): Author[] {
  const refuse = (value: string, expected: string, remedy: string): Author[] => {
    problems.push({ column: 'authors', value, expected, remedy });
    return [];
  };
  const particle = [name['dropping-particle'], name['non-dropping-particle']].map(plain).filter(Boolean).join(' ');
  const family = plain(name.family ?? name.literal);
  const given = plain(name.given);
  const suffix = plain(name.suffix);
  if (family === '' && given === '') return [];
  const whole = [particle, family, suffix, given].filter(Boolean).join(', ');
  if (family === 'others' && given === '')
    return refuse('and others', 'every author by name', 'Write the names that are missing into the export.');
  if (family.includes(','))
    return refuse(
      whole,
      'names without commas inside',
      'Take the comma out; commas separate the authors of the table.',
    );
  if (suffix !== '' && !isSuffix(suffix))
    return refuse(whole, 'Jr, Sr, II or the like after the family name', 'Write each author apart.');
  if (family === '' || given === '') {
    return [{ family: [particle, family || given].filter(Boolean).join(' '), initials: '', suffix: '' }];
  }
  // “Souza, Ana de” is “de Souza A”.
  const [, firsts = given, behind = ''] = /^(.*?)\s+((?:\p{Ll}+\s*)+)$/u.exec(given) ?? [];
  const initials = initialsOf(firsts) || initialsOf(firsts.toLocaleUpperCase('en').slice(0, 1));
  if (initials === '')
    return refuse(whole, 'a given name that begins with a letter', 'Correct the name in the export.');
  return [{ family: [behind, particle, family].filter(Boolean).join(' '), initials, suffix: suffix.replace('.', '') }];
}

/** Year of the first date; else what stands in its place (“in press”), for the schema to refuse. */
function yearOf({ issued }: CslItem): string {
  const year = issued?.['date-parts']?.[0]?.[0];
  if (year !== undefined) return String(year);
  const text = String(issued?.raw ?? issued?.literal ?? '').trim();
  return /^(\d{4})(?!\d)/u.exec(text)?.[1] ?? text;
}

function plain(text: string | number | undefined): string {
  return String(text ?? '')
    .replace(RICH_TEXT, '')
    .replace(/\s+/gu, ' ')
    .trim()
    .normalize('NFC');
}
