/** What figures are made from, of the shipped table or of other rows, for tests. */
import { readFileSync } from 'node:fs';
import type { Arm } from '../../src/evidence/schema.ts';
import { readArms } from '../../src/evidence/table.ts';
import type { FigureEvidence } from '../../src/figures/catalogue.ts';
import { sweepChoices } from '../../src/model/checks/sweep.ts';
import { mapEvidence } from '../../src/model/evidenceMap.ts';
import { analyseInFull } from '../../src/model/full.ts';
import { type Settings, settingsSchema } from '../../src/model/settings.ts';

export const shippedArms = readArms(
  readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'),
  'arms.csv',
).arms;

/** @param swept also under all other choices, which takes a second */
export function makeEvidence(
  arms: readonly Arm[],
  {
    settings = settingsSchema.parse({}),
    swept = false,
  }: { readonly settings?: Settings; readonly swept?: boolean } = {},
): FigureEvidence {
  const analysis = analyseInFull(arms, settings);
  const steps = sweepChoices(arms, settings);
  let step = swept ? steps.next() : null;
  while (step && !step.done) step = steps.next();
  return { analysis, map: mapEvidence(arms, analysis), sweep: step?.done ? step.value : null };
}
