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
