/**
 * Growth expected of a muscle from the lines that train it: the mean over their sets of the growth
 * that the curve gives at each set's load and reserve,
 *
 *     ȳ = Σ sᵢ g(loadᵢ, reserveᵢ) / Σ sᵢ        sᵢ sets of line i,
 *
 * on the analysis scale. The evidence is about reserve, not about the number of sets: every set counts
 * alike, and a programme with more sets is not held to bring more. ȳ and every difference of two such
 * means is linear in the coefficients of the fits, so its interval is inference on one contrast of all
 * fits stacked (model/response.ts), which both versions of a programme share.
 */
import type { PracticeAnalysis } from '../../model/full.ts';
import { inferKeptShare, type KeptShare } from '../../model/keptShare.ts';
import { openResponse } from '../../model/response.ts';
import type { Estimate } from '../../model/result.ts';
import { inferContrast } from '../../model/robust.ts';
import { rememberBy } from '../remember.ts';
import { fitNear } from '../targetTable.ts';
import type { CheckedLine } from './line.ts';

export interface MuscleCheck {
  /** null for all sets together. */
  readonly muscle: string | null;
  readonly sets: number;
  /** Lines that train it but for which the evidence has no growth. */
  readonly leftOut: readonly number[];
  /** Share of the growth at reserve 0 that its sets keep. */
  readonly kept: KeptShare | null;
  /** Growth with the same sets at their targets minus growth as written; null where nothing would change or be known. */
  readonly atTargets: Estimate | null;
}

/** Names of the muscles of checked lines, in the order of their first line. */
export function listMuscles(lines: readonly CheckedLine[]): readonly string[] {
  return [...new Set(lines.flatMap(({ line }) => line.exercise.muscles))];
}

/** @param muscle null for all sets together */
export function checkMuscle(
  analysis: PracticeAnalysis,
  lines: readonly CheckedLine[],
  muscle: string | null,
): MuscleCheck {
  const { stacked } = openResponse(analysis.response);
  const { confidence } = analysis.settings;
  const own = linesOf(lines, muscle);
  const written = meanContrast(analysis, own, asWritten);
  const targets = meanContrast(analysis, own, targetOf);
  return {
    muscle,
    sets: own.reduce((sum, { line }) => sum + line.sets, 0),
    leftOut: own.filter((line) => !isKnown(line)).map(({ line }) => line.line),
    kept: keptOfLines(analysis, own),
    atTargets: stacked && written && targets ? inferDifference(stacked, targets, written, confidence) : null,
  };
}

/** Share of the growth at reserve 0 that the sets of lines keep; null where the evidence says nothing of any. */
export function keptOfLines(analysis: PracticeAnalysis, lines: readonly CheckedLine[]): KeptShare | null {
  const { stacked } = openResponse(analysis.response);
  const written = meanContrast(analysis, lines, asWritten);
  const atFailure = meanContrast(analysis, lines, () => 0);
  if (!stacked || !written || !atFailure) return null;
  // With a key that is typed most muscles and weeks are as they were.
  return shareOf(analysis, `${written.join()} ${atFailure.join()}`, () =>
    inferKeptShare(stacked, written, atFailure, analysis.settings.confidence),
  );
}

const shareOf = rememberBy<PracticeAnalysis, KeptShare | null>();

/** Growth of the second version minus that of the first, analysis scale, or why there is no number. */
export type GrowthDifference =
  | { readonly difference: Estimate; readonly reason: null }
  | { readonly difference: null; readonly reason: string };

/** @param muscle null for all sets together */
export function compareGrowth(
  analysis: PracticeAnalysis,
  first: readonly CheckedLine[],
  second: readonly CheckedLine[],
  muscle: string | null,
): GrowthDifference {
  const none = (reason: string) => ({ difference: null, reason });
  const [before, after] = [linesOf(first, muscle), linesOf(second, muscle)];
  if (before.length === 0 || after.length === 0)
    return none(`only version ${after.length === 0 ? 'one' : 'two'} trains it`);
  const [old, now] = [meanContrast(analysis, before, asWritten), meanContrast(analysis, after, asWritten)];
  const { stacked } = openResponse(analysis.response);
  if (!stacked || !old || !now) return none('a version has no line that the evidence speaks of');
  const difference = inferDifference(stacked, now, old, analysis.settings.confidence);
  return difference ? { difference, reason: null } : none('both versions train it alike');
}

function linesOf(lines: readonly CheckedLine[], muscle: string | null): readonly CheckedLine[] {
  return muscle === null ? lines : lines.filter(({ line }) => line.exercise.muscles.includes(muscle));
}

function asWritten({ line }: CheckedLine): number {
  return line.reserve;
}

/** A line whose reserve lies in the studied range of a fit. */
function isKnown({ kept }: CheckedLine): boolean {
  return kept.share !== null;
}

/** The most that is advised; as written where nothing is. */
function targetOf({ line, advised }: CheckedLine): number {
  return advised.reserve?.most ?? line.reserve;
}

/** Contrast of ȳ among the stacked coefficients, over the lines that are known; null where none is. */
function meanContrast(
  analysis: PracticeAnalysis,
  lines: readonly CheckedLine[],
  reserveOf: (line: CheckedLine) => number,
): Float64Array | null {
  const known = lines.filter(isKnown);
  const sets = known.reduce((sum, { line }) => sum + line.sets, 0);
  if (sets === 0) return null;
  const total = new Float64Array(openResponse(analysis.response).stacked?.p ?? 0);
  for (const checked of known) {
    const { load } = checked.line;
    const fit = fitNear(analysis, load);
    if (!fit) return null;
    const row = fit.inStack(fit.at(load, reserveOf(checked)));
    for (let j = 0; j < total.length; j++) total[j] += (checked.line.sets / sets) * row[j];
  }
  return total;
}

/** a minus b; null where they are the same. */
function inferDifference(
  inference: Parameters<typeof inferContrast>[0],
  a: Float64Array,
  b: Float64Array,
  confidence: number,
): Estimate | null {
  const difference = a.map((value, j) => value - b[j]);
  return difference.every((value) => Math.abs(value) < SAME) ? null : inferContrast(inference, difference, confidence);
}

/** Rounding of weights that sum to the same: below it two programmes train a muscle alike. */
const SAME = 1e-12;
