/** What calibration over truths measured, as its figure, its words and its tests read it. */
import type { Layout } from '../model/simulation.ts';
import type { TruthName } from '../model/truths.ts';

/**
 * Shares of intervals that must hold the true target where the promise is 95 %: in each cell, which 2,000 tables
 * measure to half a point of per cent, and on average.
 */
export const PROMISE = { least: 0.9, most: 0.99, average: 0.93 } as const;

/** What one curve did with the tables of a cell. A refusal is not an interval that holds. */
export interface CurveCoverage {
  readonly given: number;
  /** Share of the intervals given that hold the true target, with its simulation error; null where none was given. */
  readonly held: number | null;
  readonly heldError: number | null;
  /** Tables without an interval: no fit; growth at 0 not told from nothing; no difference of reserve seen. */
  readonly refused: { readonly fit: number; readonly growth: number; readonly noDifference: number };
  /** Share of the intervals given. */
  readonly withoutUpperEnd: number | null;
  /** Repetitions, within the studied range. */
  readonly medianWidth: number | null;
  /** Repetitions. */
  readonly medianBias: number | null;
}

/** Tables drawn from one truth with as many studies and one layout of reserves. */
export interface CoverageCell {
  readonly truth: TruthName;
  readonly studies: number;
  readonly layout: Layout;
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
