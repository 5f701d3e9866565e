/** The paired t test of the change: t against the change, p and the standard error. */
import { errorOfInterval, impliedChange, pFromT, printedError, type RangeOf } from './impliedStatistics.ts';
import { areApart, over, sizes, writeRange } from './printed.ts';
import { ofPeople, quoteCells, type SelfCheck } from './selfCheck.ts';

/** t and the mean change have one sign. */
export const checkSignOfT: SelfCheck = (arm, rangeOf) => {
  const [t, change] = [rangeOf('change_t'), impliedChange(rangeOf)];
  if (!t || !change) return null;
  const { low, high } = change.range;
  const isOpposite = (t.high < 0 && low > 0) || (t.low > 0 && high < 0);
  if (!isOpposite) return null;
  return {
    column: 'change_t',
    // Its size may be right all the same.
    doubted: [],
    expected: `a t ${low > 0 ? 'above' : 'below'} 0, as the change is (${writeRange(change.range)}, from ${quoteCells(arm, change.from)})`,
    remedy: 'Where the paper subtracts the other way round, change the sign of t; else correct the change.',
    isImpossible: false,
  };
};

/** t and the two-sided p of n − 1 degrees of freedom. */
export const checkTAgainstP: SelfCheck = ofPeople((arm, rangeOf) => {
  const [t, p] = [rangeOf('change_t'), rangeOf('change_p')];
  if (!t || !p) return null;
  const fitting = pFromT(t, arm.n);
  if (!areApart(fitting, p)) return null;
  return {
    column: 'change_p',
    doubted: ['change_t', 'change_p'],
    expected: `a p of ${writeRange(fitting)}, the two-sided one of ${quoteCells(arm, ['change_t'])} with ${arm.n - 1} degrees of freedom`,
    remedy:
      'Correct one of the two. A bound (p < 0.001), a one-sided p and a p of another test or comparison do not belong in this column.',
    isImpossible: false,
  };
});

/** t = change / SE, the error from its column, the SD or the interval. */
export const checkTAgainstError: SelfCheck = ofPeople((arm, rangeOf) => {
  const [t, implied] = [rangeOf('change_t'), impliedT(arm.n, rangeOf)];
  if (!t || !implied || !areApart(sizes(t), implied.range)) return null;
  return {
    column: 'change_t',
    doubted: ['change_t', ...implied.spread],
    expected: `a t of the size ${writeRange(implied.range)}, as ${quoteCells(arm, implied.from)} give with ${quoteCells(arm, ['n'])}`,
    remedy: 'Correct what is misread, or clear what belongs to another comparison, as that between arms.',
    isImpossible: false,
  };
});

/** The p of change / SE. */
export const checkPAgainstError: SelfCheck = ofPeople((arm, rangeOf) => {
  const [p, implied] = [rangeOf('change_p'), impliedT(arm.n, rangeOf)];
  if (!p || !implied) return null;
  const fitting = pFromT(implied.range, arm.n);
  if (!areApart(fitting, p)) return null;
  return {
    column: 'change_p',
    doubted: ['change_p', ...implied.spread],
    expected: `a p of ${writeRange(fitting)}, as ${quoteCells(arm, implied.from)} give with ${quoteCells(arm, ['n'])}`,
    remedy:
      'Correct what is misread. A bound (p < 0.001), a one-sided p and a p of another test or comparison do not belong in this column.',
    isImpossible: false,
  };
});

/** Size of t from the change and its error; null where one of the two is not given. */
function impliedT(n: number, rangeOf: RangeOf) {
  const change = impliedChange(rangeOf);
  const error = printedError(rangeOf, n) ?? errorOfInterval(rangeOf, n);
  if (!change || !error) return null;
  return {
    range: over(sizes(change.range), error.range),
    from: [...change.from, ...error.from],
    spread: error.from,
  };
}
