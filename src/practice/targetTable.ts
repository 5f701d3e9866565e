/**
 * Targets by load: which fit answers, and the list by how many repetitions are possible with common
 * practice beside it.
 *
 * A load takes the target of its band. Near the split, where light and heavy both have something to
 * say, the fit of all loads together is asked at the very load.
 */
import { loadForRepetitions } from '../evidence/repetitions.ts';
import type { PracticeAnalysis } from '../model/full.ts';
import { bandOfLoad } from '../model/loads.ts';
import { type FitSource, type OpenFit, openResponse } from '../model/response.ts';
import type { Target } from '../model/result.ts';
import { findTarget } from '../model/target.ts';
import type { WholeRange } from '../model/wholeRepetitions.ts';
import { REPETITION_RANGES, type RepetitionRange } from './commonPractice.ts';
import { rememberBy } from './remember.ts';

/** A target, which fit it comes from, and whether that fit has too few degrees of freedom for its intervals. */
export interface SourcedTarget {
  readonly source: FitSource;
  readonly target: Target;
  readonly unreliable: boolean;
  /** Studies behind the fit. */
  readonly studies: number;
}

export interface TargetRow extends SourcedTarget {
  readonly range: RepetitionRange;
  /** Per cent of 1RM at which the range's typical repetitions are possible (published relation). */
  readonly load: number;
  /** The target in whole repetitions, as far as a set of the typical repetitions can leave them; null without one. */
  readonly inPractice: WholeRange | null;
}

export function listTargets(analysis: PracticeAnalysis): readonly TargetRow[] {
  return REPETITION_RANGES.map((range) => {
    const load = loadForRepetitions(range.typical);
    if (load === null) throw new Error(`invalid range; no load is published for ${range.typical} repetitions`);
    const sourced = targetNear(analysis, load);
    const { whole } = sourced.target;
    const most = range.typical - 1;
    // One repetition has to be done.
    return {
      range,
      load,
      inPractice: whole && { least: Math.min(whole.least, most), most: Math.min(whole.most, most) },
      ...sourced,
    };
  });
}

/** Per cent of 1RM on either side of the split within which the fit of all loads together answers. */
const NEAR_SPLIT = 10;

/** The fit that answers for a load; undefined where it could not be made. */
export function fitNear(analysis: PracticeAnalysis, load: number): OpenFit | undefined {
  const { fits } = openResponse(analysis.response);
  const { split } = analysis.settings;
  const find = (source: FitSource) => fits.find(({ fit }) => fit.source === source);
  const joint = split !== null && Math.abs(load - split) <= NEAR_SPLIT ? find('joint') : undefined;
  const studied = joint?.fit.studiedLoad;
  if (joint && studied && load >= studied.low && load <= studied.high) return joint;
  return find(bandOfLoad(load, split));
}

const jointTarget = rememberBy<PracticeAnalysis, Target>();

/** The target at a load in per cent of 1RM, and which fit it comes from. */
export function targetNear(analysis: PracticeAnalysis, load: number): SourcedTarget {
  const near = fitNear(analysis, load);
  if (near?.fit.source === 'joint') {
    return {
      source: 'joint',
      target: askJoint(analysis, near, load),
      unreliable: near.fit.unreliable,
      studies: near.fit.studies,
    };
  }
  const source = bandOfLoad(load, analysis.settings.split);
  const { bands } = analysis;
  const band = 'all' in bands ? bands.all : bands[source === 'light' ? 'light' : 'heavy'];
  return { source, target: band.target, unreliable: band.unreliable, studies: band.studies };
}

function askJoint(analysis: PracticeAnalysis, { fit, inference, at }: OpenFit, load: number): Target {
  return jointTarget(analysis, String(load), () =>
    findTarget(inference, (reserve) => at(load, reserve), {
      keptShare: analysis.settings.keptShare,
      confidence: analysis.settings.confidence,
      furthest: fit.studiedReserve.high,
      nearest: fit.studiedReserve.low,
      studies: fit.studies,
    }),
  );
}
