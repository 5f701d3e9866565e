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

export interface RowStatistics {
  readonly baselineMean: number | null;
  readonly followupMean: number | null;
  readonly baselineSd: number | null;
  readonly followupSd: number | null;
  /** SD of the change; null where the paper says nothing of it. */
  readonly changeSd: number | null;
  readonly correlation: number | null;
  /** How each number that is not simply reported was obtained. */
  readonly steps: readonly Recovered[];
}

/** @param assumedCorrelation stands in where the row gives no correlation, −1 to 1 open */
export function resolveStatistics(arm: Arm, assumedCorrelation: number): RowStatistics {
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
  if (spread && spread.how !== 'reported') steps.push(spread);
  const changeSd = spread?.value ?? null;
  const correlation = resolveCorrelation(arm, changeSd, assumedCorrelation);
  if (correlation.how !== 'reported') steps.push(correlation);
  const { baselineSd, followupSd } = resolveSds(arm, changeSd, correlation, note);
  return { baselineMean, followupMean, baselineSd, followupSd, changeSd, correlation: correlation.value, steps };
}

/** The first way in which the row says how much the change varied. */
function spreadOfChange(arm: Arm, followupMean: number | null): Recovered | null {
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

function resolveCorrelation(arm: Arm, changeSd: number | null, assumed: number): Recovered {
  const quantity = 'correlation of before with after';
  if (arm.correlation !== null) return { quantity, value: arm.correlation, how: 'reported' };
  const inside = (value: number) => value > -1 && value < 1;
  if (changeSd !== null && arm.baseline_sd !== null && arm.followup_sd !== null) {
    const value = correlationFromSds(arm.baseline_sd, arm.followup_sd, changeSd);
    if (inside(value)) return { quantity, value, how: 'three SDs: (s₁² + s₂² − s_c²) / (2 s₁ s₂)' };
  }
  const onlySd = arm.followup_sd === null ? arm.baseline_sd : arm.baseline_sd === null ? arm.followup_sd : null;
  if (changeSd !== null && onlySd !== null) {
    const value = correlationFromSds(onlySd, onlySd, changeSd);
    if (inside(value))
      return { quantity, value, how: 'one SD and that of the change, the other SD assumed equal: 1 − s_c² / (2 s²)' };
  }
  return { quantity, value: assumed, how: 'assumed: the setting for this outcome' };
}

function resolveSds(
  arm: Arm,
  changeSd: number | null,
  correlation: Recovered,
  note: (quantity: string, value: number, how: string) => number,
): { baselineSd: number | null; followupSd: number | null } {
  const { baseline_sd: baselineSd, followup_sd: followupSd } = arm;
  if (baselineSd !== null && followupSd === null) {
    if (changeSd !== null && correlation.how === 'reported') {
      const solved = followupSdFromChange(baselineSd, changeSd, correlation.value);
      if (Number.isFinite(solved)) {
        return {
          baselineSd,
          followupSd: note(
            'SD after',
            solved,
            'from SD before, SD of the change and correlation: the larger root of s₂² − 2 r s₁ s₂ + s₁² = s_c²',
          ),
        };
      }
    }
    return { baselineSd, followupSd: note('SD after', baselineSd, 'assumed equal to the SD before') };
  }
  if (baselineSd === null && followupSd !== null) {
    return { baselineSd: note('SD before', followupSd, 'assumed equal to the SD after'), followupSd };
  }
  return { baselineSd, followupSd };
}
