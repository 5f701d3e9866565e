/** Where a function of one number changes sign. */

/** Enough halvings to bring any interval of doubles to neighbours. */
const MOST_HALVINGS = 200;

/**
 * Bisects between `low` and `high`, at which `isLeft` differs, to machine precision.
 *
 * @param isLeft true at `low`, false at `high`
 */
export function bisect(isLeft: (x: number) => boolean, low: number, high: number): number {
  let left = low;
  let right = high;
  for (let step = 0; step < MOST_HALVINGS; step++) {
    const middle = (left + right) / 2;
    if (middle <= left || middle >= right) break;
    if (isLeft(middle)) left = middle;
    else right = middle;
  }
  return (left + right) / 2;
}

/**
 * Root of a continuous function between `low` and `high`, at which its signs differ, to a few units in
 * the last place; where only the sign is at hand, `bisect` does the same in more steps. Inverse quadratic
 * interpolation where three points allow it, else the middle (Chandrupatla 1997, Adv Eng Softw 28:145).
 *
 * @returns an end where f is 0 there; NaN where the signs do not differ
 */
export function findRoot(f: (x: number) => number, low: number, high: number): number {
  let a = high;
  let b = low;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) return Number.NaN;
  let share = 0.5;
  for (let step = 0; step < MOST_HALVINGS; step++) {
    const x = a + share * (b - a);
    const fx = f(x);
    let c = a;
    let fc = fa;
    if (fx > 0 !== fa > 0) {
      c = b;
      fc = fb;
      b = a;
      fb = fa;
    }
    a = x;
    fa = fx;
    const nearest = Math.abs(fa) < Math.abs(fb) ? a : b;
    const least = (2 * Number.EPSILON * Math.abs(nearest)) / Math.abs(b - a);
    if (fa === 0 || fb === 0 || least > 0.5) return nearest;
    const along = (a - b) / (c - b);
    const up = (fa - fb) / (fc - fb);
    const isMild = up * up < along && (1 - up) * (1 - up) < 1 - along;
    const quadratic = isMild
      ? (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
      : 0.5;
    share = Math.min(1 - least, Math.max(least, quadratic));
  }
  return (a + b) / 2;
}

/** Points at which a function is first looked at, so that the search starts on its highest hill. */
const FIRST_LOOKS = 24;
/** (√5 − 1)/2: the golden section keeps one of its two inner points at every step. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Width, as a share of the interval, at which a maximum is located: a smooth f is flat to rounding there. */
const LOCATED = 1e-7;

/**
 * Highest point of a function on [low, high]: a look at equal distances, then golden sections around
 * the best (Kiefer 1953, Proc Am Math Soc 4:502). Finds a hill only if it is wider than a look.
 */
export function maximiseOnInterval(f: (x: number) => number, low: number, high: number): { at: number; value: number } {
  const step = (high - low) / FIRST_LOOKS;
  let best = 0;
  let bestValue = Number.NEGATIVE_INFINITY;
  for (let i = 0; i <= FIRST_LOOKS; i++) {
    const value = f(low + i * step);
    if (value > bestValue) {
      best = i;
      bestValue = value;
    }
  }
  let left = Math.max(low, low + (best - 1) * step);
  let right = Math.min(high, low + (best + 1) * step);
  let innerLeft = right - GOLDEN * (right - left);
  let innerRight = left + GOLDEN * (right - left);
  let valueLeft = f(innerLeft);
  let valueRight = f(innerRight);
  while (right - left > LOCATED * (high - low)) {
    if (valueLeft >= valueRight) {
      right = innerRight;
      innerRight = innerLeft;
      valueRight = valueLeft;
      innerLeft = right - GOLDEN * (right - left);
      valueLeft = f(innerLeft);
    } else {
      left = innerLeft;
      innerLeft = innerRight;
      valueLeft = valueRight;
      innerRight = left + GOLDEN * (right - left);
      valueRight = f(innerRight);
    }
  }
  const found = valueLeft >= valueRight ? { at: innerLeft, value: valueLeft } : { at: innerRight, value: valueRight };
  return bestValue > found.value ? { at: low + best * step, value: bestValue } : found;
}
