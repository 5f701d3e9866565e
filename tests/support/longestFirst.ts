/**
 * Order of the test files: the longest first, so that two workers end together. On a clean clone Vitest knows no
 * durations and goes by the size of files, which has pages.test.ts and everyPage.test.ts, short texts over many pages, last.
 */
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files that take longest where two run at once, by how long (2026-11-26); the others follow by their size. */
const LONGEST: readonly string[] = [
  'browser/offline',
  'browser/early',
  'browser/curate',
  'browser/pages',
  'browser/ownTables',
  'browser/hostile',
  'browser/firefox',
  'browser/ownNumbers',
  'browser/evidence',
  'browser/coach',
  'browser/everyPage',
  'built/builds',
  'built/publishedBuild',
  'evidence/mutatedTables',
  'figures/takeHome',
  'scripts/commands',
  'figures/plan/planFiles',
  'islands/target/oneExercise',
  'scripts/references',
  'evidence/selfContradiction',
];

/** Place of a file in the order; past the list's end where it does not stand in it. */
function placeOf({ moduleId }: TestSpecification): number {
  const place = LONGEST.findIndex((name) => moduleId.endsWith(`/tests/${name}.test.ts`));
  return place < 0 ? LONGEST.length : place;
}

export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).sort((a, b) => placeOf(a) - placeOf(b));
  }
}
