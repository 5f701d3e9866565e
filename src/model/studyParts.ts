/** What every study adds to the robust inference: small, well-conditioned ones by their blocks, others without them. */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { dot } from '../numerics/dot.ts';
import type { LeastSquares } from '../numerics/leastSquares.ts';
import { largeStudyPart, makeFitRows } from './largeStudyPart.ts';
import type { Observations } from './observations.ts';
import { makeRoom, type StudyPart, smallStudyPart } from './studyPart.ts';
import { spreadOfStudy } from './studySpread.ts';
import type { Whitening } from './whitening.ts';

/**
 * Rows above which a study is worked out without its m×m blocks (largeStudyPart.ts): where both ways take
 * about the same time.
 */
export const LARGE_STUDY = 24;

/**
 * Condition of B (studyPart.ts) above which its eigenvalues, whose errors are relative to the largest, would carry fewer than ten
 * digits: such a study is worked out without them, too. Variances of rows that differ by a thousand, or a study that
 * nearly alone decides a direction, make one.
 */
const WORST_CONDITION = 1e6;

/** Sum of a study's shares of information up to which its largest share need not be looked at. */
const MOST_SHARE_UNSEEN = 0.9;

/** Parts of all studies, and the directions that their B lost as fitted perfectly. */
export function studyParts(
  data: Observations,
  whitening: Whitening,
  fit: LeastSquares,
): { readonly parts: readonly StudyPart[]; readonly dropped: number } {
  const p = fit.q.length;
  const byBlocks = data.studies.map(
    (_, k) =>
      data.studyStart[k + 1] - data.studyStart[k] <= LARGE_STUDY &&
      conditionOf(data, whitening, fit, k) <= WORST_CONDITION,
  );
  const room = makeRoom(
    byBlocks.reduce(
      (most, small, k) => (small ? Math.max(most, data.studyStart[k + 1] - data.studyStart[k]) : most),
      0,
    ),
    p,
  );
  const rows = byBlocks.every(Boolean) ? null : makeFitRows(data, whitening, fit);
  let dropped = 0;
  const parts = data.studies.map((study, k) => {
    const { part, lost } =
      rows && !byBlocks[k]
        ? largeStudyPart(data, whitening, rows, p, k)
        : smallStudyPart(data, whitening, fit, k, study, room);
    dropped += lost;
    return part;
  });
  return { parts, dropped };
}

/** A bound of the condition of B: that of Φ squared, over the least 1 − s² of Q's singular values s. */
function conditionOf(data: Observations, whitening: Whitening, fit: LeastSquares, k: number): number {
  const [from, to] = [data.studyStart[k], data.studyStart[k + 1]];
  const spread = spreadOfStudy(data, whitening, k) ** 2;
  let trace = 0;
  for (const column of fit.q) for (let i = from; i < to; i++) trace += column[i] ** 2;
  // No eigenvalue of Q'Q is above their sum, which is small in all but a few studies.
  if (trace <= MOST_SHARE_UNSEEN) return spread / (1 - trace);
  const columns = fit.q.map((column) => column.subarray(from, to));
  const { realEigenvalues } = new EigenvalueDecomposition(
    new Matrix(columns.map((a) => columns.map((b) => dot(a, b)))),
    { assumeSymmetric: true },
  );
  return spread / Math.max(Number.EPSILON, 1 - Math.max(...realEigenvalues));
}
