/**
 * Targets by how many repetitions are possible: what the analysis says, with common practice beside it.
 *
 * A range whose loads lie on one side of the split takes that band's target. The middle range lies
 * across it; there the fit of all loads together is asked at the range's typical load.
 */
import { loadForRepetitions } from '../evidence/repetitions.ts';
import {
  type Analysis,
  type Band,
  type BandName,
  type Joint,
  type JointTarget,
  LEAST_RELIABLE_DF,
  type Target,
} from '../model/result.ts';
import { REPETITION_RANGES, type RepetitionRange } from './commonPractice.ts';

/** The part of an analysis that targets are read from; a page hands only this to the browser. */
export interface TargetAnalysis {
  readonly settings: Analysis['settings'];
  readonly bands: { readonly light: BandTarget; readonly heavy: BandTarget } | { readonly all: BandTarget };
  readonly joint: Pick<Joint, 'targets' | 'coefficients'>;
}

type BandTarget = Pick<Band, 'target' | 'unreliable'>;

/** A target, which fit it comes from, and whether that fit has too few degrees of freedom for its intervals. */
export interface SourcedTarget {
  /** Which fit answered: a band's own, or that of all loads together. */
  readonly source: BandName | 'joint';
  readonly target: Target;
  /** Load that the fit of all loads was asked at, per cent of 1RM: the nearest listed; null for a band's own. */
  readonly askedAt: number | null;
  readonly unreliable: boolean;
}

export interface TargetRow extends SourcedTarget {
  readonly range: RepetitionRange;
  /** Per cent of 1RM at which the range's typical repetitions are possible (published relation). */
  readonly load: number;
}

/** Cuts an analysis to what targets are read from. */
export function keepTargets({ settings, bands, joint }: Analysis): TargetAnalysis {
  const only = ({ target, unreliable }: BandTarget) => ({ target, unreliable });
  return {
    settings,
    bands: 'all' in bands ? { all: only(bands.all) } : { light: only(bands.light), heavy: only(bands.heavy) },
    joint: { targets: joint.targets, coefficients: joint.coefficients },
  };
}

export function listTargets(analysis: TargetAnalysis): readonly TargetRow[] {
  return REPETITION_RANGES.map((range) => {
    const load = loadForRepetitions(range.typical);
    if (load === null) throw new Error(`invalid range; no load is published for ${range.typical} repetitions`);
    return { range, load, ...targetNear(analysis, load) };
  });
}

/** Per cent of 1RM on either side of the split within which the fit of all loads together answers. */
const NEAR_SPLIT = 10;

/** The target at a load, and which fit it comes from. */
export function targetNear(analysis: TargetAnalysis, load: number): SourcedTarget {
  const { bands, joint, settings } = analysis;
  if ('all' in bands)
    return { source: 'all', target: bands.all.target, askedAt: null, unreliable: bands.all.unreliable };
  if (settings.split === null) throw new Error('invalid analysis; two bands without a split');
  const near = Math.abs(load - settings.split) <= NEAR_SPLIT ? nearestOf(joint.targets, load) : null;
  if (near) {
    return {
      source: 'joint',
      target: near,
      askedAt: near.load,
      unreliable: joint.coefficients.some(({ df }) => df < LEAST_RELIABLE_DF),
    };
  }
  const source = load < settings.split ? 'light' : 'heavy';
  const { target, unreliable } = bands[source];
  return { source, target, askedAt: null, unreliable };
}

function nearestOf(targets: readonly JointTarget[], load: number): JointTarget | null {
  return targets.reduce<JointTarget | null>(
    (best, one) => (best === null || Math.abs(one.load - load) < Math.abs(best.load - load) ? one : best),
    null,
  );
}
