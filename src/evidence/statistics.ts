/** The statistics of one row, each reported, recovered or assumed, with how it was obtained. */
import {
  correlationFromSds,
  followupSdFromChange,
  type Recovered,
  sdFromStandardError,
  standardErrorFromInterval,
  standardErrorFromP,
  standardErrorFromT,
} from './recover.ts';
import type { Arm } from './schema.ts';
import type { CountedArm } from './selfCheck.ts';

export interface RowStatistics {
  readonly baselineMean: number | null;
  readonly followupMean: number | null;
  readonly baselineSd: number | null;
  readonly followupSd: number | null;
  /** SD of the change; null where the paper says nothing of it. */
  readonly changeSd: number | null;
  /** Correlation of before with after; null where no SD stands beside it, so that it serves nothing. */
  readonly correlation: number | null;
  /** How each number that is not simply reported was obtained; only numbers that the others rest on. */
  readonly steps: readonly Recovered[];
}

/** How a correlation was obtained that nothing in the row gives. */
const ASSUMED = 'assumed: the setting for this outcome';

/**
 * @param arm of which at least a mean or an SD may be missing; what cannot be had is null
 * @param assumedCorrelation stands in where the row gives no correlation, −1 to 1 open
 */
export function resolveStatistics(arm: CountedArm, assumedCorrelation: number): RowStatistics {
  const steps: Recovered[] = [];
  const note = (quantity: string, value: number, how: string) => {
    steps.push({ quantity, value, how });
    return value;
  };
  const baselineMean = arm.baseline_mean;
  const followupMean =
    arm.followup_mean ??
    (baselineMean !== null && arm.change_mean !== null
      ? note('mean after', baselineMean + arm.change_mean, 'mean before + mean change')
      : null);
  const spread = spreadOfChange(arm, followupMean);
  const changeSd = spread?.value ?? null;
  const means = { baselineMean, followupMean };
  const noteSpread = () => {
    if (spread && spread.how !== 'reported') steps.push(spread);
  };
  if (arm.baseline_sd === null && arm.followup_sd === null) {
    noteSpread();
    return { ...means, baselineSd: null, followupSd: null, changeSd, correlation: null, steps };
  }
  const correlation = resolveCorrelation(arm, changeSd, assumedCorrelation);
  const solved = solveFollowupSd(arm, changeSd, correlation);
  // With both SDs and a correlation reported, what the row says of the change is not needed.
  if (solved || !(correlation.how === 'reported' || correlation.how === ASSUMED)) noteSpread();
  if (correlation.how !== 'reported') steps.push(correlation);
  const { baselineSd, followupSd } = resolveSds(arm, solved, note);
  return { ...means, baselineSd, followupSd, changeSd, correlation: correlation.value, steps };
}

/** The first way in which the row says how much the change varied. */
function spreadOfChange(arm: CountedArm, followupMean: number | null): Recovered | null {
  const quantity = 'SD of the change';
  const change =
    arm.change_mean ?? (arm.baseline_mean !== null && followupMean !== null ? followupMean - arm.baseline_mean : null);
  const fromError = (standardError: number, how: string): Recovered | null => {
    const value = sdFromStandardError(standardError, arm.n);
    return Number.isFinite(value) && value > 0 ? { quantity, value, how } : null;
  };
  if (arm.change_sd !== null) return { quantity, value: arm.change_sd, how: 'reported' };
  if (arm.change_se !== null) return fromError(arm.change_se, 'standard error × √n');
  if (arm.change_ci_low !== null && arm.change_ci_high !== null) {
    const error = standardErrorFromInterval(arm.change_ci_low, arm.change_ci_high, arm.n);
    return fromError(error, '95 % interval: width / (2 t) × √n, t with n − 1 df');
  }
  if (arm.change_t !== null && change !== null) {
    return fromError(standardErrorFromT(change, arm.change_t), 't: |change / t| × √n');
  }
  if (arm.change_p !== null && change !== null) {
    return fromError(standardErrorFromP(change, arm.change_p, arm.n), 'p: |change| / t(p) × √n, t with n − 1 df');
  }
  return null;
}

/** Reported; else from three SDs or from two with the third assumed equal, where these fit together; else assumed. */
function resolveCorrelation(arm: Arm, changeSd: number | null, assumed: number): Recovered {
  const quantity = 'correlation of before with after';
  if (arm.correlation !== null) return { quantity, value: arm.correlation, how: 'reported' };
  const inside = (value: number) => value > -1 && value < 1;
  if (changeSd !== null && arm.baseline_sd !== null && arm.followup_sd !== null) {
    const value = correlationFromSds(arm.baseline_sd, arm.followup_sd, changeSd);
    if (inside(value)) return { quantity, value, how: 'three SDs: (s₁² + s₂² − s_c²) / (2 s₁ s₂)' };
  }
  const isOneMissing = arm.baseline_sd === null || arm.followup_sd === null;
  const onlySd = arm.baseline_sd ?? arm.followup_sd;
  if (changeSd !== null && onlySd !== null && isOneMissing) {
    const value = correlationFromSds(onlySd, onlySd, changeSd);
    if (inside(value))
      return { quantity, value, how: 'one SD and that of the change, the other SD assumed equal: 1 − s_c² / (2 s²)' };
  }
  return { quantity, value: assumed, how: ASSUMED };
}

/** The SD after from that before, that of the change and a reported correlation; null where it is not needed or not to be had. */
function solveFollowupSd(arm: Arm, changeSd: number | null, correlation: Recovered): Recovered | null {
  if (arm.baseline_sd === null || arm.followup_sd !== null) return null;
  if (changeSd === null || correlation.how !== 'reported') return null;
  const value = followupSdFromChange(arm.baseline_sd, changeSd, correlation.value);
  if (!Number.isFinite(value)) return null;
  const how = 'from SD before, SD of the change and correlation: the larger root of s₂² − 2 r s₁ s₂ + s₁² = s_c²';
  return { quantity: 'SD after', value, how };
}

/** Both SDs: one that is missing is solved for where that is possible, else taken as equal to the other. */
function resolveSds(
  { baseline_sd: baselineSd, followup_sd: followupSd }: Arm,
  solved: Recovered | null,
  note: (quantity: string, value: number, how: string) => number,
): { baselineSd: number | null; followupSd: number | null } {
  if (baselineSd !== null && followupSd === null) {
    if (solved) return { baselineSd, followupSd: note(solved.quantity, solved.value, solved.how) };
    return { baselineSd, followupSd: note('SD after', baselineSd, 'assumed equal to the SD before') };
  }
  if (baselineSd === null && followupSd !== null) {
    return { baselineSd: note('SD before', followupSd, 'assumed equal to the SD after'), followupSd };
  }
  return { baselineSd, followupSd };
}
