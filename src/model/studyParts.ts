/** What every study adds to the robust inference: small ones by their blocks, large ones without them. */
import type { LeastSquares } from '../numerics/leastSquares.ts';
import { largeStudyPart, makeFitRows } from './largeStudyPart.ts';
import type { Observations } from './observations.ts';
import { makeRoom, type StudyPart, smallStudyPart } from './studyPart.ts';
import type { Whitening } from './whitening.ts';

/**
 * Rows above which a study is worked out without its m×m blocks (largeStudyPart.ts): where both ways take
 * about the same time.
 */
export const LARGE_STUDY = 24;

/** Parts of all studies, and the directions that their B lost as fitted perfectly. */
export function studyParts(
  data: Observations,
  whitening: Whitening,
  fit: LeastSquares,
): { readonly parts: readonly StudyPart[]; readonly dropped: number } {
  const p = fit.q.length;
  const sizes = data.studies.map((_, k) => data.studyStart[k + 1] - data.studyStart[k]);
  const room = makeRoom(
    sizes.reduce((largest, size) => (size > LARGE_STUDY ? largest : Math.max(largest, size)), 0),
    p,
  );
  const rows = sizes.some((size) => size > LARGE_STUDY) ? makeFitRows(data, whitening, fit) : null;
  let dropped = 0;
  const parts = data.studies.map((study, k) => {
    const { part, lost } =
      rows && sizes[k] > LARGE_STUDY
        ? largeStudyPart(data, whitening, rows, p, k)
        : smallStudyPart(data, whitening, fit, k, study, room);
    dropped += lost;
    return part;
  });
  return { parts, dropped };
}
