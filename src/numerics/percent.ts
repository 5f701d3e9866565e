/** A share as people read it. */

/** 0.9 → 90, 0.9996 → 99.96: four digits, so that a share up to 0.9999 is not shown as 100. */
export function inPercent(share: number): number {
  return Number((100 * share).toPrecision(4));
}

/** 0.9 → “90 %”. */
export function writePercent(share: number): string {
  return `${inPercent(share)} %`;
}
