/** Shares and changes in per cent. */

/** 0.9 → 90, 0.9996 → 99.96: four digits, so that a share up to 0.9999 is not shown as 100. */
export function inPercent(share: number): number {
  return Number((100 * share).toPrecision(4));
}

/** 0.9 → “90 %”. */
export function writePercent(share: number): string {
  return `${inPercent(share)}\u00a0%`;
}

/** Per cent change of a log ratio. */
export function toPercent(logRatio: number): number {
  return 100 * Math.expm1(logRatio);
}
