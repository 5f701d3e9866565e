/** The reference of each study: the lines of `studies.csv` that belong to the table the site is built from. */
import { existsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import type { Study } from '../evidence/schema.ts';
import { readStudies } from '../evidence/table.ts';
import { readSource, requireNoProblems } from './sources.ts';

/** The table that comes with the project, and the lines of its studies. */
export const SHIPPED_ARMS = 'data/arms.csv';
const SHIPPED_LINES = 'data/studies.csv';

export interface StudyLines {
  /** By the study's name; a study without a line has none. */
  readonly lines: ReadonlyMap<string, Study>;
  /** Names of lines that no row of the table has; none are counted where the shipped lines stand in. */
  readonly unused: readonly string[];
}

/**
 * Lines from the `studies.csv` beside the table, else from the shipped one, as far as names match.
 *
 * @param table path of the table of study arms
 * @param names of the studies in it
 * @throws where the file has problems, with all of them
 */
export function readStudyLines(table: string, names: ReadonlySet<string>): StudyLines {
  const beside = join(dirname(table), 'studies.csv');
  const file = existsSync(beside) ? beside : SHIPPED_LINES;
  if (!existsSync(file)) return { lines: new Map(), unused: [] };
  const { studies } = requireNoProblems(file, readStudies(readSource(file, 'list of studies'), file));
  const isOwn = resolve(file) !== resolve(SHIPPED_LINES) || resolve(table) === resolve(SHIPPED_ARMS);
  return {
    lines: new Map(studies.filter(({ study }) => names.has(study)).map((line) => [line.study, line])),
    unused: isOwn ? studies.map(({ study }) => study).filter((name) => !names.has(name)) : [],
  };
}
