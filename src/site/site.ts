/** The table the site is built from, read and analysed once for all pages. */
import { createHash } from 'node:crypto';
import { basename } from 'node:path';
import { isDemonstration } from '../evidence/demonstration.ts';
import { askAbout, openArms, readDraftNow } from '../evidence/opening/openTable.ts';
import { readExercises } from '../evidence/readExercises.ts';
import { countReading } from '../evidence/reading.ts';
import { sweepChoices } from '../model/checks/sweep.ts';
import { countBase } from '../model/evidenceBase.ts';
import { analyseInFull } from '../model/full.ts';
import { defaultSettings } from '../model/settings.ts';
import { nameReading, stateNeeds, stateReading } from '../practice/evidenceNeeded.ts';
import { SITE_NAME } from '../ui/siteName.ts';
import { readSource, readSourceBytes, requireNoProblems } from './sources.ts';
import { readStudyLines, SHIPPED_ARMS } from './studyLines.ts';

/** Another table than the shipped one: EVIDENCE=FILE npm run build. */
const file = process.env.EVIDENCE ?? SHIPPED_ARMS;
const draft = await openArms(readSourceBytes(file, 'table of study arms'), basename(file));
for (const said of draft.opened.said) console.warn(`${file}: ${said}`);
const { text } = draft;
const questions = askAbout(draft);
const table = requireNoProblems(file, {
  ...readDraftNow(draft),
  ...((questions.commas || questions.columns.length > 0) && {
    hint: `What may solve many at once is asked by \`npm run check -- ${file}\`, which also writes a table that was mended.`,
  }),
});
const EXERCISES_FILE = 'data/exercises.csv';
const exerciseTable = requireNoProblems(
  EXERCISES_FILE,
  readExercises(readSource(EXERCISES_FILE, 'list of exercises'), basename(EXERCISES_FILE)),
);

const demonstration = isDemonstration(table.arms);
const analysis = analyseInFull(table.arms, defaultSettings);
const reading = countReading(table.arms);

export const site = {
  name: SITE_NAME,
  arms: table.arms,
  /** References of the studies, where they have one. */
  references: readStudyLines(file, new Set(table.arms.map(({ study }) => study))),
  /** The table as it stands in the file, for download and for the calculator. */
  text,
  demonstration,
  /** What is known of the exercises that may be named. */
  exercises: exerciseTable.rows,
  /** Name under which the table is served and downloaded; says so where the data are invented. */
  downloadName: demonstration ? 'demonstration-arms.csv' : 'arms.csv',
  /** First characters of the SHA-256 of the table: two sites with the same show the same evidence. */
  dataVersion: createHash('sha256').update(text).digest('hex').slice(0, 8),
  analysis,
  /** How the papers were read, where that was not in full, and what of the table counts for the answer. */
  reading: reading && {
    name: nameReading(reading),
    sentence: stateReading(reading, countBase(table.arms, analysis)),
  },
  /** What bands without a target lack; empty where all have one. */
  needs: stateNeeds(countBase(table.arms, analysis)),
  sweep: finish(sweepChoices(table.arms, defaultSettings)),
} as const;

/** Address by which pages' workers read the table: with its version, so that a page never works with another than it shows. */
export const siteTable = `${pathTo(`data/${site.downloadName}`)}#${site.dataVersion}`;

/** Runs a computation in steps to its end. */
export function finish<Result>(steps: Generator<unknown, Result>): Result {
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

/** An address inside the site, whatever path it is served under. */
export function pathTo(page: string): string {
  return `${import.meta.env.BASE_URL.replace(/\/$/u, '')}/${page}`;
}
