/** A step of the guide gone through without a page: what it tells and rings, with the analyses on both sides of its change. */
import { expect } from 'vitest';
import type { Arm } from '../../../src/evidence/schema.ts';
import { listVocabulary } from '../../../src/islands/analysis/filterOptions.ts';
import { findChange } from '../../../src/islands/evidence/guideFindings.ts';
import { followedBand, type Ringed } from '../../../src/islands/evidence/guideRings.ts';
import { GUIDE_STEPS, refuseGuide, stateQuestion } from '../../../src/islands/evidence/guideSteps.ts';
import { analyse } from '../../../src/model/analyse.ts';
import { listBands } from '../../../src/model/bands.ts';
import type { Analysis, Band, BandName } from '../../../src/model/result.ts';
import { type SettingsInput, settingsSchema } from '../../../src/model/settings.ts';
import { LOAD_NAMES } from '../../../src/practice/loadNames.ts';

export interface Told {
  readonly question: string;
  readonly lesson: string;
  readonly rings: Ringed;
  readonly before: Analysis;
  readonly after: Analysis;
  readonly name: BandName;
  /** The followed band; after the change null where it has no fit. */
  readonly was: Band;
  readonly is: Band | null;
  readonly arms: readonly Arm[];
}

/** A step gone through: what it told, or why it told nothing. */
export type Gone =
  | { readonly told: Told; readonly whyNot: null }
  | { readonly told: null; readonly whyNot: string; readonly before: Analysis };

/** By table and settings: many starts share their changes. */
const fits = new Map<readonly Arm[], Map<string, Analysis>>();
function fit(arms: readonly Arm[], settings: Analysis['settings']): Analysis {
  const own = fits.get(arms) ?? new Map<string, Analysis>();
  fits.set(arms, own);
  const key = JSON.stringify(settings);
  const analysis = own.get(key) ?? analyse(arms, settings);
  own.set(key, analysis);
  return analysis;
}

/** @param title of the step @param input settings that the guide is begun with */
export function goThrough(title: string, input: SettingsInput, arms: readonly Arm[]): Gone {
  const step = GUIDE_STEPS.find((one) => one.title === title);
  if (!step) throw new Error(`no step ${title}`);
  const before = fit(arms, step.base(settingsSchema.parse(input)));
  const context = { analysis: before, options: listVocabulary(arms).options };
  const whyNot = refuseGuide(before) ?? step.whyNot(context);
  if (whyNot !== null) return { told: null, whyNot, before };
  const after = fit(arms, step.change(context));
  const followed = followedBand(before);
  if (!followed) throw new Error('asked without a target to follow');
  const { question, lesson } = findChange(step, context, after);
  expect(question).toBe(stateQuestion(step, context));
  expect(question).toContain(`the target with ${LOAD_NAMES[followed.name]}`);
  const is = listBands(after.bands).find(([name]) => name === followed.name)?.[1] ?? null;
  const kept = is?.failure ? null : is;
  // Nothing is taught of a curve that is gone.
  expect(lesson === '').toBe(kept === null);
  const rings = step.rings(context);
  return {
    told: { question, lesson, rings, before, after, name: followed.name, was: followed.band, is: kept, arms },
    whyNot: null,
  };
}
