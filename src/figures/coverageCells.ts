/** What calibration over truths measured, as its figure, its words and its tests read it. */
import type { Cell, CurveCoverage } from '../model/coverage.ts';
import type { Layout } from '../model/simulation.ts';
import type { TruthName } from '../model/truths.ts';

/**
 * Shares of intervals that must hold the true target where the promise is 95 %: in each cell, which 2,000 tables
 * measure to half a point of per cent, and on average.
 */
export const PROMISE = { least: 0.9, most: 0.99, average: 0.93 } as const;

/** A cell as it was measured. */
export interface CoverageCell extends Cell {
  /** Repetitions; null where every reserve keeps the share. */
  readonly trueTarget: number | null;
  readonly tables: number;
  readonly shapes: Readonly<Record<CalibratedCurve, CurveCoverage>>;
}

export type CalibratedCurve = 'line' | 'flexible';

export const CURVE_NAMES = { flexible: 'flexible curve', line: 'straight line' } as const satisfies Record<
  CalibratedCurve,
  string
>;
/** Reserves of the arms that leave something, repetitions. */
export const LAYOUT_WORDS: Readonly<Record<Layout, string>> = { spread: '1 to 10', near: 'mostly 1 to 4' };

/** What a truth says, for a reader who trains people. */
export const TRUTH_WORDS: Readonly<Record<TruthName, string>> = {
  line: 'every repetition left costs the same',
  log: 'the first ones left cost most',
  plateau: 'the first 2.5 left cost nothing',
  saturating: 'steep at first, then hardly any more',
  parabola: 'hardly any at first, then more and more',
  'shallow line': 'every one left costs a little',
  'square root': 'the first half repetition costs most',
  'early corner': 'the first 1.5 left cost nothing',
  'steep, then flat': 'the first 2 cost, others nothing',
  'no loss': 'none left costs anything',
  step: 'hardly any up to 3, then half of all at once',
};
