/**
 * The means before and after of a row, and their change, each printed or from what is printed in its place. The most
 * direct way decides: a mean, else median and quartiles, else the other mean and the change, else the other mean and
 * the change in per cent. Where only a change in per cent is printed, the mean before is 100 per cent of itself.
 */
import { meanFromQuartiles, type Recovered } from './recover.ts';
import type { Arm } from './schema.ts';

export interface Means {
  readonly baselineMean: number | null;
  readonly followupMean: number | null;
  /** Change that a test of the row is of, in the unit of the means; null where none is printed. */
  readonly change: number | null;
  /** Unit of the three: that of the row, or per cent of a mean before that is not printed. */
  readonly unit: 'row' | 'per cent';
  readonly steps: readonly Recovered[];
}

/** How a mean comes from quartiles, in the words of a step. */
export const QUARTILES_TO_MEAN = 'median and quartiles: w (q₁ + q₃)/2 + (1 − w) median, w = 0.7 + 0.39/n';
/** In per cent of itself. */
const WHOLE = 100;

/** What cannot be had is null. */
export function resolveMeans(arm: Arm): Means {
  const steps: Recovered[] = [];
  const note = (step: Recovered | null) => {
    if (step && step.how !== 'reported') steps.push(step);
    return step?.value ?? null;
  };
  const before = note(printedMean(arm, 'baseline'));
  const printedAfter = note(printedMean(arm, 'followup'));
  const isChangeNeeded = before === null || printedAfter === null;
  const printedChange = isChangeNeeded ? note(printedMean(arm, 'change')) : arm.change_mean;
  const after = printedAfter ?? note(meanAfter(arm, before, printedChange));
  if (before !== null) {
    const change = printedChange ?? (after === null ? null : after - before);
    return { baselineMean: before, followupMean: after, change, unit: 'row', steps };
  }
  const found = note(meanBefore(arm, after, printedChange));
  if (found !== null) {
    const followupMean = after ?? note(meanAfter(arm, found, printedChange));
    const change = printedChange ?? (followupMean === null ? null : followupMean - found);
    return { baselineMean: found, followupMean, change, unit: 'row', steps };
  }
  const { percent_change: percent } = arm;
  if (percent === null) {
    return { baselineMean: null, followupMean: after, change: printedChange, unit: 'row', steps };
  }
  const how = '100 + change in per cent, the mean before being 100 per cent of itself';
  steps.push({ quantity: 'mean after, in per cent of that before', value: WHOLE + percent, how, restsOn: 'recovered' });
  return { baselineMean: WHOLE, followupMean: WHOLE + percent, change: percent, unit: 'per cent', steps };
}

const NAMES = { baseline: 'mean before', followup: 'mean after', change: 'mean change' } as const;

/** Printed, or from median and quartiles; a median alone stands for the mean. */
function printedMean(arm: Arm, time: 'baseline' | 'followup' | 'change'): Recovered | null {
  const quantity = NAMES[time];
  const printed = arm[`${time}_mean`];
  if (printed !== null) return { quantity, value: printed, how: 'reported' };
  const [q1, median, q3] = [arm[`${time}_q1`], arm[`${time}_median`], arm[`${time}_q3`]];
  if (median === null) return null;
  if (q1 === null || q3 === null || arm.n === null) {
    return { quantity, value: median, how: 'assumed equal to the median', restsOn: 'assumed' };
  }
  const value = meanFromQuartiles(q1, median, q3, arm.n);
  return { quantity, value, how: QUARTILES_TO_MEAN, restsOn: 'recovered' };
}

function meanAfter(arm: Arm, before: number | null, change: number | null): Recovered | null {
  const quantity = 'mean after';
  if (before === null) return null;
  if (change !== null) {
    return { quantity, value: before + change, how: 'mean before + mean change', restsOn: 'recovered' };
  }
  const { percent_change: percent } = arm;
  if (percent === null) return null;
  const value = before * (1 + percent / WHOLE);
  return { quantity, value, how: 'mean before × (1 + change in per cent / 100)', restsOn: 'recovered' };
}

/** null where it would not be above 0. */
function meanBefore(arm: Arm, after: number | null, change: number | null): Recovered | null {
  const of = (value: number, how: string): Recovered | null =>
    value > 0 && Number.isFinite(value) ? { quantity: 'mean before', value, how, restsOn: 'recovered' } : null;
  const { percent_change: percent } = arm;
  if (after !== null && change !== null) return of(after - change, 'mean after − mean change');
  if (percent === null) return null;
  if (after !== null) return of(after / (1 + percent / WHOLE), 'mean after / (1 + change in per cent / 100)');
  if (change === null) return null;
  return of((WHOLE * change) / percent, '100 × mean change / change in per cent');
}
