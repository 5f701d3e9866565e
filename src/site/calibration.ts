/** The measured calibration of the engine, as `npm run calibrate` wrote it. */
import { readFileSync } from 'node:fs';
import * as z from 'zod';
import { formatNumber } from '../figures/format.ts';
import { writePercent } from '../numerics/percent.ts';

const share = z.number().min(0).max(1);

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
});

const measured = calibrationSchema.parse(JSON.parse(readFileSync('data/calibration.json', 'utf8')));
const { truth, confidence, results } = measured;

/** The calibration in words and numbers as the Methods page shows them. */
export const calibration = {
  truth: `slope ${formatNumber(100 * truth.slope, 2)} hundredths of the log ratio a repetition, target ${formatNumber(truth.target, 2)} repetitions`,
  confidence: writePercent(confidence),
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
