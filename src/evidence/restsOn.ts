/**
 * What a row's effect rests on, the weakest of what it is made of.
 *
 * printed: effect and variance follow by their formulas from what the paper prints as it stands. recovered: a number was
 * made from others that are printed, an SD from a standard error, a reserve from repetitions. assumed: the paper does
 * not print something that the effect needs, and something stands in for it, an equal share of people, a bound for p.
 * pooled: its spread is that of other rows. The assumed correlation of before with after, and equal SDs at both, count
 * for none of these: most papers print no correlation, and the setting, its sweep and each row's steps say so apart.
 * A load that is estimated decides only where the row stands, and is marked there.
 */
import type { Recovered } from './recover.ts';
import type { Arm } from './schema.ts';
import { RESTS_ON, type RestsOn } from './vocabulary.ts';

/** Cells whose filling the fit of a row rests on: its people and its reserve. */
const NEEDED = ['n', 'reserve_reps'] as const;

export function restsOn(arm: Arm, steps: readonly Recovered[]): RestsOn {
  const filled = (arm.derived ?? []).filter(({ column }) => NEEDED.some((name) => name === column));
  const ranks = [...steps, ...filled].map((step) => RESTS_ON.indexOf(step.restsOn ?? 'printed'));
  return RESTS_ON[Math.max(0, ...ranks)];
}

/** True where everything behind the row is in its paper. */
export function isInPaper(rests: RestsOn): boolean {
  return rests === 'printed' || rests === 'recovered';
}
