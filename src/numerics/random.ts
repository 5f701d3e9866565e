/** Seeded chance: the same seed gives the same draws on every machine (pure-rand does the drawing). */

import { randomNormal } from 'd3-random';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

export interface Random {
  /** A number in [0, 1). */
  readonly uniform: () => number;
  /** A draw from the standard normal distribution. */
  readonly normal: () => number;
}

/** @param seed a whole number */
export function makeRandom(seed: number): Random {
  const generator = xoroshiro128plus(seed);
  const uniform = () => uniformFloat64(generator);
  return { uniform, normal: randomNormal.source(uniform)(0, 1) };
}
