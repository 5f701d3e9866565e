/**
 * Targets by how many repetitions are possible: what the analysis says, with common practice beside it.
 *
 * A range whose loads lie on one side of the split takes that band's target. The middle range lies
 * across it; there the fit of all loads together is asked at the range's typical load.
 */
import { loadForRepetitions } from '../evidence/repetitions.ts';
import type { Analysis, BandName, Target } from '../model/result.ts';
import { REPETITION_RANGES, type RepetitionRange } from './commonPractice.ts';

export interface TargetRow {
  readonly range: RepetitionRange;
  /** Per cent of 1RM at which the range's typical repetitions are possible (published relation). */
  readonly load: number;
  /** Which fit answered: a band's own, or that of all loads together. */
  readonly source: BandName | 'joint';
  readonly target: Target;
}

export function listTargets(analysis: Analysis): readonly TargetRow[] {
  return REPETITION_RANGES.map((range) => {
    const load = loadForRepetitions(range.typical);
    if (load === null) throw new Error(`invalid range; no load is published for ${range.typical} repetitions`);
    return { range, load, ...targetNear(analysis, load) };
  });
}

/** Per cent of 1RM on either side of the split within which the fit of all loads together answers. */
const NEAR_SPLIT = 10;

/** The target at a load, and which fit it comes from. */
export function targetNear(analysis: Analysis, load: number): Pick<TargetRow, 'source' | 'target'> {
  const { bands, joint, settings } = analysis;
  if ('all' in bands || settings.split === null) {
    return { source: 'all', target: 'all' in bands ? bands.all.target : bands.heavy.target };
  }
  const near = Math.abs(load - settings.split) <= NEAR_SPLIT ? nearestOf(joint.targets, load) : null;
  if (near) return { source: 'joint', target: near };
  const source = load < settings.split ? 'light' : 'heavy';
  return { source, target: bands[source].target };
}

function nearestOf<Item extends { readonly load: number }>(items: readonly Item[], load: number): Item | null {
  return items.reduce<Item | null>(
    (best, item) => (best === null || Math.abs(item.load - load) < Math.abs(best.load - load) ? item : best),
    null,
  );
}
