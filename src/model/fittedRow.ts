/** The rows of a band as they are drawn: with a fit, or where none could be made. */
import type { Arm } from '../evidence/schema.ts';
import type { RestsOn } from '../evidence/vocabulary.ts';

/** A row as any picture of it needs it. */
interface DrawnRow {
  readonly line: number;
  readonly study: string;
  readonly arm: string;
  readonly year: number;
  readonly reserve: number;
  readonly load: number | null;
  readonly n: Arm['n'];
  readonly effect: number;
  readonly standardError: number;
  /** The weakest that its effect, variance, people and reserve rest on. */
  readonly restsOn: RestsOn;
}

/** A row that was there for a fit that could not be made, with the interval of its effect from its sampling variance alone. */
export interface UnfittedRow extends DrawnRow {
  readonly ciLow: number;
  readonly ciHigh: number;
}

/** A row that was fitted. */
export interface FittedRow extends DrawnRow {
  /** Share of all weight in the fit that this row carries (sums to 1). */
  readonly weight: number;
}
