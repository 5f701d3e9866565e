/**
 * The part of a plan's gain that does not hang on the table's luck: the standard error that the working model alone
 * gives.
 */

import { bilinear } from '../../numerics/smallMatrices.ts';
import type { RobustInference } from '../cr2.ts';
import type { CurveBasis } from '../curve.ts';
import type { Settings } from '../settings.ts';
import type { AddedStudy } from './addedStudy.ts';
import type { BandExpectation } from './planExpectation.ts';
import type { PlanningBand } from './planningBase.ts';

/**
 * √(c'M c), M = (X'Φ⁻¹X)⁻¹ without and with the new rows, c = x(r) − s x(0) at the target r of today and the share s
 * that it keeps. M is the inverse of an information that a study only adds to (Fedorov 1972), so that it never rises
 * with people.
 */
export function measureModelError(
  { fit: today, target }: PlanningBand,
  added: AddedStudy | null,
  { keptShare, weighting }: Pick<Settings, 'keptShare' | 'weighting'>,
): BandExpectation['modelError'] {
  const { point } = target;
  const { fit } = today.outcome;
  if (!fit || point === null || weighting !== 'mixed') return null;
  const errorOf = ({ modelCovariance }: RobustInference, at: CurveBasis['at']) => {
    const atFailure = at(0);
    const contrast = Float64Array.from(at(point), (value, j) => value - keptShare * atFailure[j]);
    return Math.sqrt(Math.max(0, bilinear(contrast, modelCovariance, contrast)));
  };
  const before = errorOf(fit.inference, today.at);
  return { before, after: added ? errorOf(added.centre, added.band.at) : before };
}
