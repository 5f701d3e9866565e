/** The targets of a sweep by choice and level: what they are while one choice is held and all others vary. */
import { quantileOfSorted } from '../../numerics/quantile.ts';
import { type BandSweep, levelsOf, type SweepChoice } from './sweep.ts';

export interface SweepLevel {
  readonly choice: SweepChoice;
  /** The level as the sweep names it: a word, or a number in the choice's unit. */
  readonly level: string | number;
  /** Combinations with the level, and those of them without a target. */
  readonly combinations: number;
  readonly withoutTarget: number;
  /** Quantiles of the targets found, repetitions: 5, 50, 95 %; null where none was found. */
  readonly low: number | null;
  readonly middle: number | null;
  readonly high: number | null;
}

/** Every level of every choice, choices in the order of their share, the largest first. */
export function listSweepLevels({ outcomes, shares }: BandSweep): readonly SweepLevel[] {
  return shares.flatMap(({ choice }) =>
    levelsOf(choice).map((level) => {
      const own = outcomes.filter(({ combination }) => combination[choice] === level);
      const points = Float64Array.from(own.flatMap(({ point }) => (point === null ? [] : [point]))).sort();
      const at = (share: number) => (points.length > 0 ? quantileOfSorted(points, share) : null);
      return {
        choice,
        level,
        combinations: own.length,
        withoutTarget: own.length - points.length,
        low: at(0.05),
        middle: at(0.5),
        high: at(0.95),
      };
    }),
  );
}
