/** Comparison with an explicit tolerance; a failure prints value, expected, difference, tolerance. */
import { expect } from 'vitest';

/** |value − expected| ≤ tolerance · |expected| (the scale, where given, in place of |expected|). */
export function expectRelative(
  value: number,
  expected: number,
  tolerance: number,
  label: string,
  scale = expected,
): void {
  expectWithin(value, expected, tolerance * Math.abs(scale), label);
}

/** |value − expected| ≤ tolerance. */
export function expectWithin(value: number, expected: number, tolerance: number, label: string): void {
  const difference = Math.abs(value - expected);
  expect(
    difference <= tolerance,
    `${label}: value ${value}, expected ${expected}, difference ${difference}, tolerance ${tolerance}`,
  ).toBe(true);
}
