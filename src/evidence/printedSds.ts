/** The SDs before and after that a row prints, or that its standard errors or quartiles give. */

import type { CountedArm } from './countedArm.ts';
import { type Recovered, sdFromQuartiles, sdFromStandardError } from './recover.ts';
import { QUARTILES_TO_SD } from './recoveredSpread.ts';

/** SDs in the unit of the row, the most direct way deciding: SD, standard error, quartiles; null where none is printed. */
export interface PrintedSds {
  readonly baseline: Recovered | null;
  readonly followup: Recovered | null;
}

export function printedSds(arm: CountedArm): PrintedSds {
  return { baseline: sdAt(arm, 'baseline'), followup: sdAt(arm, 'followup') };
}

function sdAt(arm: CountedArm, time: 'baseline' | 'followup'): Recovered | null {
  const quantity = time === 'baseline' ? 'SD before' : 'SD after';
  const [sd, error, q1, q3] = [arm[`${time}_sd`], arm[`${time}_se`], arm[`${time}_q1`], arm[`${time}_q3`]];
  if (sd !== null) return { quantity, value: sd, how: 'reported' };
  if (error !== null) {
    return { quantity, value: sdFromStandardError(error, arm.n), how: 'standard error × √n', restsOn: 'recovered' };
  }
  if (q1 === null || q3 === null) return null;
  const value = sdFromQuartiles(q1, q3, arm.n);
  return value > 0 ? { quantity, value, how: QUARTILES_TO_SD, restsOn: 'recovered' } : null;
}
