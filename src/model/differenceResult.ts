/** What a comparison of light and heavy loads is, as a part of an `Analysis`. */

/**
 * Slope in heavy minus slope in light loads: of reserve for a straight line, else the mean slope
 * from reserve 0 to the largest reserve studied in both.
 */
export interface BandDifference {
  readonly term: string;
  /** null with a reason where a band could not be fitted. */
  readonly estimate: number | null;
  readonly standardError: number | null;
  readonly df: number | null;
  readonly ciLow: number | null;
  readonly ciHigh: number | null;
  readonly p: number | null;
  /** The kept share in heavy minus that in light, along reserve. */
  readonly keptShares: readonly KeptShareDifference[];
  readonly reason: string | null;
}

/** Difference of two kept shares (0 to 1 each) at a reserve above 0, with its interval. */
export interface KeptShareDifference {
  readonly reserve: number;
  readonly estimate: number;
  readonly standardError: number;
  readonly df: number;
  readonly ciLow: number;
  readonly ciHigh: number;
}
