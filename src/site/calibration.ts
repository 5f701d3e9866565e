/**
 * The calibration of the engine, as `npm run calibrate` wrote it, and in the words, numbers and figures of the
 * Methods page.
 */
import { readFileSync } from 'node:fs';
import * as z from 'zod';
import { coverageByTruth } from '../figures/coverageByTruth.ts';
import { formatNumber } from '../figures/format.ts';
import { LAYOUTS, type Layout } from '../model/simulation.ts';
import { ALL_TRUTHS, type TruthName } from '../model/truths.ts';
import { writePercent } from '../numerics/percent.ts';

const share = z.number().min(0).max(1);

const shapeSchema = z.object({
  given: z.int(),
  held: z.nullable(share),
  heldError: z.nullable(share),
  refused: z.object({ fit: z.int(), growth: z.int(), noDifference: z.int() }),
  withoutUpperEnd: z.nullable(share),
  medianWidth: z.nullable(z.number()),
  medianBias: z.nullable(z.number()),
});

const cellsSchema = z.array(
  z.object({
    truth: z.enum(Object.keys(ALL_TRUTHS) as TruthName[]),
    studies: z.int(),
    layout: z.enum(Object.keys(LAYOUTS) as Layout[]),
    trueTarget: z.nullable(z.number()),
    tables: z.int(),
    shapes: z.object({ line: shapeSchema, flexible: shapeSchema }),
  }),
);

const calibrationSchema = z.object({
  truth: z.object({
    intercept: z.number(),
    slope: z.number(),
    tau: z.number(),
    omega: z.number(),
    rho: z.number(),
    target: z.number(),
  }),
  keptShare: share,
  confidence: share,
  seed: z.int(),
  results: z.array(
    z.object({
      studies: z.int(),
      repetitions: z.int(),
      slopeCoverage: share,
      slopeCoverageError: share,
      failures: z.int(),
      withoutTarget: z.int(),
      targetCoverage: z.nullable(share),
      targetCoverageError: z.nullable(share),
      slopeBias: z.number(),
      slopeBiasError: z.number(),
      targetMedianBias: z.nullable(z.number()),
      medianDf: z.number(),
    }),
  ),
  shapes: z.object({ tables: z.int(), cells: cellsSchema, fewest: cellsSchema, further: cellsSchema }),
});

/** What was measured, as it stands in the file. */
export const measured = calibrationSchema.parse(JSON.parse(readFileSync('data/calibration.json', 'utf8')));
const { truth, confidence, results, shapes } = measured;

/** The calibration in words and numbers as the Methods page shows them. */
export const calibration = {
  truth: `slope ${formatNumber(100 * truth.slope, 2)} hundredths of the log ratio a repetition, target ${formatNumber(truth.target, 2)} repetitions`,
  confidence: writePercent(confidence),
  /** Truths of many shapes, with the fewest studies that give a target and more; and truths that ask too much. */
  byTruth: coverageByTruth([...shapes.cells, ...shapes.fewest], confidence),
  byFurtherTruth: coverageByTruth(shapes.further, confidence),
  results: results.map((result) => ({
    studies: result.studies,
    tables: result.repetitions,
    slopeHeld: withError(result.slopeCoverage, result.slopeCoverageError, 1),
    targetHeld:
      result.targetCoverage === null || result.targetCoverageError === null
        ? 'refused'
        : withError(result.targetCoverage, result.targetCoverageError, 1),
    refused: `${result.failures}; ${result.withoutTarget}`,
    slopeBias: withError(result.slopeBias / truth.slope, Math.abs(result.slopeBiasError / truth.slope), 2),
    targetBias:
      result.targetMedianBias === null ? 'refused' : `${formatNumber(result.targetMedianBias, 3)} repetitions`,
  })),
} as const;

/** A share in per cent with its standard error: “94.6 % (± 0.4 %)”. */
function withError(value: number, error: number, digits: number): string {
  return `${formatNumber(100 * value, digits)}\u00a0% (± ${formatNumber(100 * error, digits)}\u00a0%)`;
}
