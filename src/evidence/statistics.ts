/**
 * The statistics of one row, each reported, recovered or assumed, with how it was obtained.
 *
 * An SD of the change is looked for in what the row prints of the change, then in the spread of its per cents, last in
 * a standardised effect. That an SD after is taken as equal to that before, and that a correlation is assumed, are steps
 * too; they say how before and after go together, and do not make a row one that rests on assumptions (restsOn.ts).
 */

import type { CountedArm } from './countedArm.ts';
import { type Means, resolveMeans } from './means.ts';
import { type PrintedSds, printedSds } from './printedSds.ts';
import { correlationFromSds, followupSdFromChange, type Recovered } from './recover.ts';
import { spreadOfChange, spreadOfPercents } from './recoveredSpread.ts';
import type { Arm } from './schema.ts';
import { type SdOfEffect, sdOfStandardisedEffect } from './standardisedEffect.ts';

export interface RowStatistics {
  readonly baselineMean: number | null;
  readonly followupMean: number | null;
  readonly baselineSd: number | null;
  readonly followupSd: number | null;
  /** SD of the change; null where the paper says nothing of it. */
  readonly changeSd: number | null;
  /** Correlation of before with after; null where no SD stands beside it, so that it serves nothing. */
  readonly correlation: number | null;
  /** Unit of means and SDs (means.ts). */
  readonly unit: Means['unit'];
  /** How each number that is not simply reported was obtained; only numbers that the others rest on. */
  readonly steps: readonly Recovered[];
}

const CORRELATION = 'correlation of before with after';
/** How a correlation was obtained that nothing in the row gives. */
const ASSUMED = 'assumed: the setting for this outcome';

/** The step of a correlation that nothing in the row gives. @param value of the setting, −1 to 1 open */
export function assumeCorrelation(value: number): Recovered {
  return { quantity: CORRELATION, value, how: ASSUMED };
}

/**
 * @param arm of which at least a mean or an SD may be missing; what cannot be had is null
 * @param assumedCorrelation stands in where the row gives no correlation, −1 to 1 open
 */
export function resolveStatistics(arm: CountedArm, assumedCorrelation: number): RowStatistics {
  const means = resolveMeans(arm);
  const steps: Recovered[] = [...means.steps];
  const note = (step: Recovered) => {
    if (step.how !== 'reported') steps.push(step);
    return step.value;
  };
  const { spread, sds, effect } = findSpread(arm, means);
  const changeSd = spread?.value ?? null;
  const common = {
    baselineMean: means.baselineMean,
    followupMean: means.followupMean,
    unit: means.unit,
    changeSd,
  };
  if (sds.baseline === null && sds.followup === null) {
    if (spread) note(spread);
    return { ...common, baselineSd: null, followupSd: null, correlation: null, steps };
  }
  const correlation = resolveCorrelation(arm, sds, changeSd, assumedCorrelation);
  const solved = solveFollowupSd(sds, changeSd, correlation);
  if (effect) note(effect.sd);
  else for (const sd of [sds.baseline, sds.followup]) if (sd) note(sd);
  // With both SDs and a correlation reported, what the row says of the change is not needed.
  if (spread && (solved || !(correlation.how === 'reported' || correlation.how === ASSUMED))) note(spread);
  note(correlation);
  const { baselineSd, followupSd } = resolveSds(sds, solved, note);
  return { ...common, baselineSd, followupSd, correlation: correlation.value, steps };
}

/** What the row prints of spread; what its standardised effect gives only where it prints none. */
function findSpread(
  arm: CountedArm,
  means: Means,
): { readonly spread: Recovered | null; readonly sds: PrintedSds; readonly effect: SdOfEffect | null } {
  const sds = means.unit === 'row' ? printedSds(arm) : { baseline: null, followup: null };
  const spread = means.unit === 'row' ? spreadOfChange(arm, means.change) : spreadOfPercents(arm, means.change);
  const found = spread ?? spreadFromPercents(arm, means);
  if (found || sds.baseline || sds.followup) return { spread: found, sds, effect: null };
  const effect = sdOfStandardisedEffect(arm, means.change);
  if (!effect) return { spread: null, sds, effect: null };
  if (effect.of === 'change-sd') return { spread: effect.sd, sds, effect: null };
  const both = effect.of === 'pooled-sd';
  return { spread: null, sds: { baseline: effect.sd, followup: both ? effect.sd : null }, effect };
}

/** SD of the change from that of per cents, as if all had begun at the mean before. */
function spreadFromPercents(arm: CountedArm, { baselineMean, unit }: Means): Recovered | null {
  if (unit !== 'row' || baselineMean === null) return null;
  const percents = spreadOfPercents(arm, null);
  if (!percents) return null;
  const how = `${percents.how === 'reported' ? '' : `${percents.how}; `}SD of the change in per cent × mean before / 100`;
  const value = (percents.value * baselineMean) / 100;
  return { quantity: 'SD of the change', value, how, restsOn: percents.restsOn ?? 'recovered' };
}

/** Reported; else from three SDs or from two with the third assumed equal, where these fit together; else assumed. */
function resolveCorrelation(arm: Arm, sds: PrintedSds, changeSd: number | null, assumed: number): Recovered {
  const quantity = CORRELATION;
  if (arm.correlation !== null) return { quantity, value: arm.correlation, how: 'reported' };
  const inside = (value: number) => value > -1 && value < 1;
  const [before, after] = [sds.baseline?.value ?? null, sds.followup?.value ?? null];
  if (changeSd !== null && before !== null && after !== null) {
    const value = correlationFromSds(before, after, changeSd);
    const how = 'three SDs: (s₁² + s₂² − s_c²) / (2 s₁ s₂)';
    if (inside(value)) return { quantity, value, how, restsOn: 'recovered' };
  }
  const isOneMissing = before === null || after === null;
  const onlySd = before ?? after;
  if (changeSd !== null && onlySd !== null && isOneMissing) {
    const value = correlationFromSds(onlySd, onlySd, changeSd);
    const how = 'one SD and that of the change, the other SD assumed equal: 1 − s_c² / (2 s²)';
    if (inside(value)) return { quantity, value, how, restsOn: 'recovered' };
  }
  return assumeCorrelation(assumed);
}

/** The SD after from that before, that of the change and a reported correlation; null where it is not needed or not to be had. */
function solveFollowupSd(sds: PrintedSds, changeSd: number | null, correlation: Recovered): Recovered | null {
  if (sds.baseline === null || sds.followup !== null) return null;
  if (changeSd === null || correlation.how !== 'reported') return null;
  const value = followupSdFromChange(sds.baseline.value, changeSd, correlation.value);
  if (!Number.isFinite(value)) return null;
  const how = 'from SD before, SD of the change and correlation: the larger root of s₂² − 2 r s₁ s₂ + s₁² = s_c²';
  return { quantity: 'SD after', value, how, restsOn: 'recovered' };
}

/** Both SDs: one that is missing is solved for where that is possible, else taken as equal to the other. */
function resolveSds(
  { baseline, followup }: PrintedSds,
  solved: Recovered | null,
  note: (step: Recovered) => number,
): { baselineSd: number | null; followupSd: number | null } {
  const equalTo = (other: Recovered, quantity: string, time: string): number =>
    note({ quantity, value: other.value, how: `assumed equal to the SD ${time}`, restsOn: 'recovered' });
  if (baseline && !followup) {
    if (solved) return { baselineSd: baseline.value, followupSd: note(solved) };
    return { baselineSd: baseline.value, followupSd: equalTo(baseline, 'SD after', 'before') };
  }
  if (!baseline && followup) {
    return { baselineSd: equalTo(followup, 'SD before', 'after'), followupSd: followup.value };
  }
  return { baselineSd: baseline?.value ?? null, followupSd: followup?.value ?? null };
}
