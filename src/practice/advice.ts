/** From a target to what a lifter is told: a range of whole repetitions, guarded by safety. */
import { cautionsFor, isUnguarded, LEAST_RESERVE_WHEN_PINNED, type Situation } from './cautions.ts';
import { type SourcedTarget, type TargetAnalysis, targetNear } from './targetTable.ts';

export interface Advice extends SourcedTarget {
  /** Fewest and most repetitions to leave, whole numbers; null where there is no target. */
  readonly reserve: { readonly least: number; readonly most: number } | null;
  /** True where safety, not the evidence, set the least reserve. */
  readonly raisedForSafety: boolean;
  /** What to tell the lifter. */
  readonly sentence: string;
  readonly cautions: readonly string[];
}

/**
 * @param load per cent of 1RM
 * @param situation exercise and company
 */
export function advise(analysis: TargetAnalysis, load: number, situation: Situation): Advice {
  const sourced = targetNear(analysis, load);
  const { target } = sourced;
  const floor = isUnguarded(situation) ? LEAST_RESERVE_WHEN_PINNED : 0;
  const cautions = cautionsFor(situation);
  if (target.practical === null || target.cautious === null) {
    const guard =
      floor > 0 ? ` Whatever the evidence, leave at least ${floor}: nothing would take the load off you.` : '';
    return {
      ...sourced,
      reserve: null,
      raisedForSafety: floor > 0,
      sentence: `This evidence gives no number to follow at this load.${guard}`,
      cautions,
    };
  }
  const least = Math.max(floor, Math.floor(target.cautious));
  const most = Math.max(least, target.practical);
  return {
    ...sourced,
    reserve: { least, most },
    raisedForSafety: floor > Math.floor(target.cautious),
    sentence: tellLifter(least, most),
    cautions,
  };
}

function tellLifter(least: number, most: number): string {
  const count = (n: number) => `${n} more good repetition${n === 1 ? '' : 's'}`;
  if (most === 0) return 'Go on until no further repetition is possible.';
  if (least === most) return `End the set when you could do ${count(most)}.`;
  if (least === 0) return `End the set when you could do at most ${count(most)}.`;
  return `End the set when you could do ${least} to ${count(most)}.`;
}
