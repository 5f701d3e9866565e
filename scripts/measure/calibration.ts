/** How often the engine's 95 % intervals hold a known truth, and how far its estimates stray from it. */
import { fitCarried } from '../../src/model/carriedFit.ts';
import { COVERAGE_QUESTION, SCATTER } from '../../src/model/coverage.ts';
import { makeCurve } from '../../src/model/curve.ts';
import { inferContrast } from '../../src/model/robust.ts';
import { type SimulationTruth, simulateTable } from '../../src/model/simulation.ts';
import { findTarget, SCAN_STEPS } from '../../src/model/target.ts';
import { quantileOfSorted } from '../../src/numerics/quantile.ts';
import { makeRandom } from '../../src/numerics/random.ts';

/** Growth and spreads like those of the demonstration's light loads. */
export const TRUTH: SimulationTruth = { intercept: 0.0725, slope: -0.005, ...SCATTER };
export const { keptShare: KEPT_SHARE, confidence: CONFIDENCE } = COVERAGE_QUESTION;
/** Few studies, where intervals are least to be trusted, and as many as a review has. */
export const STUDY_COUNTS = [3, 4, 5, 6, 12, 30] as const;
export const REPETITIONS = 4000;
export const SEED = 20_261_125;

/** Reserve that truly keeps the share. */
export const TRUE_TARGET = ((KEPT_SHARE - 1) * TRUTH.intercept) / TRUTH.slope;

export interface Calibration {
  readonly studies: number;
  readonly repetitions: number;
  /** Tables whose fit failed or was refused; 0 is expected but for the fewest studies. */
  readonly failures: number;
  /** Share of tables whose interval of the slope holds the truth, with its simulation error. */
  readonly slopeCoverage: number;
  readonly slopeCoverageError: number;
  /** Mean estimated slope minus the true one, per repetition on the log-ratio scale, with its error. */
  readonly slopeBias: number;
  readonly slopeBiasError: number;
  /** Share of the tables with a target whose interval of it, as shown, holds the true one; null where none has. */
  readonly targetCoverage: number | null;
  readonly targetCoverageError: number | null;
  /** Tables without a target: too few studies, growth at 0 not distinguishable from nothing, or no difference of reserve seen. */
  readonly withoutTarget: number;
  /** Median target minus the true one, repetitions; null where there is none. */
  readonly targetMedianBias: number | null;
  /** Median df of the slope. */
  readonly medianDf: number;
}

export function calibrate(studies: number, repetitions: number, seed: number): Calibration {
  const random = makeRandom(seed + studies);
  const slopes: number[] = [];
  const targets: number[] = [];
  const dfs: number[] = [];
  let failures = 0;
  let slopeHeld = 0;
  let targetHeld = 0;
  for (let i = 0; i < repetitions; i++) {
    const { observations, reserves } = simulateTable(TRUTH, studies, random);
    const basis = makeCurve('line', reserves);
    const columns = [reserves.map(() => 1), [...reserves]];
    const { fit } = fitCarried(observations, columns, { rho: TRUTH.rho, weighting: 'mixed', answerOnly: true });
    if (!fit) {
      failures++;
      continue;
    }
    const slope = inferContrast(fit.inference, [0, 1], CONFIDENCE);
    slopes.push(slope.estimate);
    dfs.push(slope.df);
    if (slope.ciLow <= TRUTH.slope && TRUTH.slope <= slope.ciHigh) slopeHeld++;
    const { point, low, high } = findTarget(fit.inference, basis.at, {
      keptShare: KEPT_SHARE,
      confidence: CONFIDENCE,
      furthest: Math.max(...reserves),
      nearest: Math.min(...reserves),
      studies,
      step: SCAN_STEPS.coarse,
    });
    if (point === null || low === null) continue;
    targets.push(point);
    if (low <= TRUE_TARGET && TRUE_TARGET <= (high ?? Number.POSITIVE_INFINITY)) targetHeld++;
  }
  const done = slopes.length;
  const shareError = (share: number, of: number) => Math.sqrt((share * (1 - share)) / of);
  const slopeCoverage = slopeHeld / done;
  const targetCoverage = targets.length > 0 ? targetHeld / targets.length : null;
  const meanSlope = slopes.reduce((sum, slope) => sum + slope, 0) / done;
  const spread = Math.sqrt(slopes.reduce((sum, slope) => sum + (slope - meanSlope) ** 2, 0) / (done - 1));
  const median = (values: readonly number[]) => quantileOfSorted(Float64Array.from(values).sort(), 0.5);
  return {
    studies,
    repetitions,
    failures,
    slopeCoverage,
    slopeCoverageError: shareError(slopeCoverage, done),
    slopeBias: meanSlope - TRUTH.slope,
    slopeBiasError: spread / Math.sqrt(done),
    targetCoverage,
    targetCoverageError: targetCoverage === null ? null : shareError(targetCoverage, targets.length),
    withoutTarget: done - targets.length,
    targetMedianBias: targets.length > 0 ? median(targets) - TRUE_TARGET : null,
    medianDf: median(dfs),
  };
}
