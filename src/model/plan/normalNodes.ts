/**
 * Points that stand for draws from independent standard normal distributions: the same on every machine and for every
 * plan, so that plans are compared on the same outcomes, and more even than chance, so that few do. The additive
 * recurrence with the generalised golden ratio (Roberts 2018, “The unreasonable effectiveness of quasirandom
 * sequences”, from memory), each coordinate through the normal quantile.
 */
import { normalQuantile } from '../../numerics/distributions.ts';

/** Enough to bring x = (1 + x)^(1/(d + 1)) to rest: each round shrinks the error by more than half. */
const ROUNDS = 60;

/**
 * @param count of points
 * @param dimensions of each, at least 1
 */
export function normalNodes(count: number, dimensions: number): readonly Float64Array[] {
  let ratio = 2;
  for (let round = 0; round < ROUNDS; round++) ratio = (1 + ratio) ** (1 / (dimensions + 1));
  const steps = Array.from({ length: dimensions }, (_, j) => ratio ** -(j + 1));
  return Array.from({ length: count }, (_, i) =>
    Float64Array.from(steps, (step) => normalQuantile((0.5 + (i + 1) * step) % 1)),
  );
}
