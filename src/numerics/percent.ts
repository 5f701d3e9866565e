/** A share as people read it. */

/** 0.9 → “90 %”, 0.999 → “99.9 %”: four digits, so that no share below 1 is shown as 100 %. */
export function writePercent(share: number): string {
  return `${writePercentNumber(share)} %`;
}

/** 0.9 → “90”: for places that set the unit apart. */
export function writePercentNumber(share: number): string {
  return String(Number((100 * share).toPrecision(4)));
}
