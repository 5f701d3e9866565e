/**
 * How the engine was checked, in the words and numbers of the Methods page: against values from elsewhere, as the
 * tests wrote it (tests/reference/checks.test.ts), and its calibration, as `npm run calibrate` wrote it.
 */
import { readFileSync } from 'node:fs';
import * as z from 'zod';
import { formatNumber } from '../figures/format.ts';
import { writePercent } from '../numerics/percent.ts';

const difference = z.number().positive();

const checksSchema = z.object({
  referenceFits: z.object({
    fits: z.int(),
    dataSets: z.int(),
    digits: z.int(),
    largestDifference: z.object({ coefficient: difference, covariance: difference, df: difference }),
  }),
  leastSquares: z.object({ sets: z.array(z.object({ name: z.string(), digits: z.int() })) }),
  threeLevels: z.object({ source: z.string(), decimals: z.int() }),
});

const { referenceFits, leastSquares, threeLevels } = checksSchema.parse(readData('checks'));
const { coefficient, covariance, df } = referenceFits.largestDifference;

export const checks = {
  ...referenceFits,
  coefficient: writePower(coefficient),
  covariance: writePower(covariance),
  df: writePower(df),
  /** “Norris, Pontius to 9 digits; Wampler1 to 8 digits”. */
  leastSquares: [...new Set(leastSquares.sets.map(({ digits }) => digits))]
    .map((digits) => {
      const names = leastSquares.sets.filter((set) => set.digits === digits).map(({ name }) => name);
      return `${names.join(', ')} to ${digits} digits`;
    })
    .join('; '),
  threeLevels,
} as const;

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

const measured = calibrationSchema.parse(readData('calibration'));
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

/** “3·10⁻¹²” of a number with one digit that counts. */
function writePower(value: number): string {
  const [digit, power] = value.toExponential(0).split('e');
  return `${digit}·10${[...power].map((sign) => (sign === '-' ? '⁻' : '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(sign)])).join('')}`;
}

function readData(name: string): unknown {
  return JSON.parse(readFileSync(`data/${name}.json`, 'utf8'));
}
