/** What a whole run came to, in the few numbers that a lesson keeps and sums up. */
import * as z from 'zod/mini';
import '../../evidence/zodConfig.ts';
import { countHeld, writeShare } from '../../figures/simulation/words.ts';
import { COVERAGE_QUESTION, summariseCoverage } from '../../model/coverage.ts';
import type { Curve } from '../../model/settings.ts';
import { ALL_TRUTHS, trueTargetOf } from '../../model/truths.ts';
import { curvesOf, type Experiment } from './experiment.ts';
import type { Run } from './running.state.ts';

const curveResult = z.object({
  /** Intervals given, those of them that hold the truth, and tables without one. */
  given: z.int(),
  held: z.int(),
  refused: z.int(),
  /** Repetitions; null where none was given. */
  medianWidth: z.nullable(z.number()),
  /** What the first table gave; null where only counts are known. */
  first: z.nullable(
    z.object({
      point: z.nullable(z.number()),
      low: z.nullable(z.number()),
      high: z.nullable(z.number()),
      holds: z.nullable(z.boolean()),
    }),
  ),
});

export type CurveResult = z.output<typeof curveResult>;
/** By curve. */
export const resultSchema = z.record(z.string(), curveResult);
export type Result = Readonly<Partial<Record<Curve, CurveResult>>>;

export function trueTargetIn({ truth }: Pick<Experiment, 'truth'>): number {
  return trueTargetOf(ALL_TRUTHS[truth], COVERAGE_QUESTION.keptShare);
}

/** @param run all of its tables drawn */
export function resultOf({ experiment, answers }: Run): Result {
  const entries = curvesOf(experiment).map((curve, place) => {
    const own = answers.map((table) => table[place]);
    const coverage = summariseCoverage(own, trueTargetIn(experiment));
    const [{ point, low, high, holds }] = own;
    const result: CurveResult = {
      given: coverage.given,
      held: countHeld(coverage),
      refused: own.length - coverage.given,
      medianWidth: coverage.medianWidth,
      first: { point, low, high, holds },
    };
    return [curve, result] as const;
  });
  return Object.fromEntries(entries);
}

/** Share of the intervals given that hold the truth; NaN where none was given. */
export function shareOf({ given, held }: CurveResult): number {
  return given > 0 ? held / given : Number.NaN;
}

/** “45 of 200, 23 % (17 to 29 %)”; with how many were refused, where some were. */
export function writeResult({ given, held, refused }: CurveResult): string {
  const without = refused > 0 ? `, ${refused} refused` : '';
  return given > 0 ? `${held} of ${given}${without}, ${writeShare(held, given)}` : `none given${without}`;
}
