/** The measured calibration of the engine, as `npm run calibrate` wrote it. */
import { readFileSync } from 'node:fs';
import * as z from 'zod';

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
      targetCoverage: share,
      targetCoverageError: share,
      slopeBias: z.number(),
      slopeBiasError: z.number(),
      targetMedianBias: z.number(),
      medianDf: z.number(),
    }),
  ),
});

export const calibration = calibrationSchema.parse(JSON.parse(readFileSync('data/calibration.json', 'utf8')));
