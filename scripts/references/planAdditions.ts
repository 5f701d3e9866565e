/** Which entries of an export become lines of `studies.csv`, which are there already, and which lack something. */

import { type Problem, showValue } from '../../src/evidence/problem.ts';
import { makeRecordReader } from '../../src/evidence/records.ts';
import { STUDY_COLUMNS, type Study } from '../../src/evidence/schema.ts';
import type { Entry, Format } from './entry.ts';
import { type StudyCells, toStudyCells } from './studyCells.ts';
import { nameStudies } from './studyName.ts';

export interface Already {
  readonly entry: Entry;
  readonly title: string;
  /** The same work: a line of the table, or an earlier entry of the export. */
  readonly as: string;
  readonly because: 'the same DOI' | 'the same title and year' | 'the same title and year, though another DOI';
}

export interface Plan {
  /** In the order of the export. */
  readonly added: readonly StudyCells[];
  readonly already: readonly Already[];
  readonly problems: readonly Problem[];
}

/** What tells works from one another, and where it was seen. */
interface Work {
  readonly doi: string;
  readonly titleAndYear: string;
  readonly as: string;
}

const { study: _name, ...ENTRY_COLUMNS } = STUDY_COLUMNS;
const COLUMN_NAMES = Object.keys(ENTRY_COLUMNS) as (keyof typeof ENTRY_COLUMNS)[];

/**
 * @param studies the lines of the table
 * @param file name of the export for messages
 * @param fields what the export's format calls the fields
 */
export function planAdditions(
  entries: readonly Entry[],
  studies: readonly Study[],
  file: string,
  fields: Format['fields'],
): Plan {
  const problems: Problem[] = [];
  const already: Already[] = [];
  const accepted: StudyCells[] = [];
  const known = studies.map(
    ({ study, line, title, year, doi }): Work => ({
      ...identify(title, String(year), doi ?? ''),
      as: `${study}, line ${line}`,
    }),
  );
  for (const entry of entries) {
    const { cells, found } = checkEntry(entry, file, fields);
    if (found.length > 0) {
      problems.push(...found);
      continue;
    }
    const work = { ...identify(cells.title, cells.year, cells.doi), as: `the entry of line ${entry.line}` };
    const same = findSame(work, known);
    if (same) already.push({ entry, title: cells.title, ...same });
    else {
      known.push(work);
      accepted.push(cells);
    }
  }
  const names = nameStudies(
    accepted,
    studies.map(({ study }) => study),
  );
  return { added: accepted.map((cells, i) => ({ ...cells, study: names[i] })), already, problems };
}

/** The cells of an entry and what the schema has against them. */
function checkEntry(entry: Entry, file: string, fields: Format['fields']): { cells: StudyCells; found: Problem[] } {
  const { cells, problems } = toStudyCells(entry.item);
  const name = `entry ${showValue(entry.label)}${cells.title === '' ? '' : `, “${showValue(cells.title)}”`}`;
  const found = problems.map(
    (problem): Problem => ({
      kind: 'wrong-value',
      file,
      line: entry.line,
      ...problem,
      remedy: `${problem.remedy} It is ${name}.`,
    }),
  );
  const ofSchema: Problem[] = [];
  const read = makeRecordReader(ENTRY_COLUMNS, COLUMN_NAMES, file);
  read({ line: entry.line, cells: COLUMN_NAMES.map((column) => cells[column]) }, ofSchema);
  for (const problem of ofSchema) {
    // Names that were refused leave the cell empty; that is said already.
    if (found.some(({ column }) => column === problem.column)) continue;
    const missing = problem.kind === 'missing-value';
    const remedy = missing ? `Add ${fields[problem.column ?? ''] ?? 'it'} to the entry.` : problem.remedy;
    found.push({ ...problem, remedy: `${remedy ?? 'Correct it in the export.'} It is ${name}.` });
  }
  return { cells, found };
}

function identify(title: string, year: string, doi: string): Omit<Work, 'as'> {
  const letters = title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '');
  // DOIs are the same whatever the case of their letters (ISO 26324).
  return { doi: doi.toLowerCase(), titleAndYear: `${letters || title} ${year}` };
}

function findSame(work: Work, known: readonly Work[]): Pick<Already, 'as' | 'because'> | null {
  const byDoi = known.find(({ doi }) => doi !== '' && doi === work.doi);
  if (byDoi) return { as: byDoi.as, because: 'the same DOI' };
  const byTitle = known.find(({ titleAndYear }) => titleAndYear === work.titleAndYear);
  if (!byTitle) return null;
  const differs = byTitle.doi !== '' && work.doi !== '';
  return {
    as: byTitle.as,
    because: differs ? 'the same title and year, though another DOI' : 'the same title and year',
  };
}
