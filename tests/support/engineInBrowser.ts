/** The engine for a page of its own: what tests compute in browsers to compare with Node. */
import { readArms } from '../../src/evidence/table.ts';
import { analyseThenCheck } from '../../src/model/full.ts';
import type { Settings } from '../../src/model/settings.ts';

/** Everything but the checks, of each table of study arms under its settings. */
export function analyseTables(cases: readonly { readonly text: string; readonly settings: Settings }[]): string {
  return JSON.stringify(
    cases.map(({ text, settings }) => analyseThenCheck(readArms(text, 'table.csv').arms, settings).unchecked),
  );
}
