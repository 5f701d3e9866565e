/** The paired test of the change: t and F against one another, the change, p and the standard error. */
import type { CountedArm } from './countedArm.ts';
import {
  dfOf,
  errorOfInterval,
  impliedChange,
  pFromT,
  printedError,
  type RangeOf,
  sizeOfTest,
} from './impliedStatistics.ts';
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

/** F of one degree of freedom above is the square of t. */
export const checkFAgainstT: SelfCheck = (arm, rangeOf) => {
  const [t, f] = [rangeOf('change_t'), rangeOf('change_f')];
  if (!t || !f) return null;
  const { low, high } = sizes(t);
  const fitting = { low: low ** 2, high: high ** 2 };
  if (!areApart(fitting, f)) return null;
  return {
    column: 'change_f',
    doubted: ['change_t', 'change_f'],
    expected: `an F of ${writeRange(fitting)}, the square of ${quoteCells(arm, ['change_t'])}`,
    remedy: 'Correct one of the two; an F of several times or arms does not belong in this column.',
    isImpossible: false,
  };
};

/** t, or the root of F, and the two-sided p. */
export const checkTAgainstP: SelfCheck = ofPeople((arm, rangeOf) => {
  const [test, p] = [sizeOfTest(rangeOf), rangeOf('change_p')];
  if (!test || !p) return null;
  const fitting = pFromT(test.range, dfOf(arm));
  if (!areApart(fitting, p)) return null;
  return {
    column: 'change_p',
    doubted: [...test.from, 'change_p'],
    expected: `a p of ${writeRange(fitting)}, the two-sided one of ${quoteCells(arm, test.from)} with ${dfOf(arm)} degrees of freedom`,
    remedy: 'Correct one of the two. A one-sided p and a p of another test or comparison do not belong in this column.',
    isImpossible: false,
  };
});

/** t, or the root of F, = change / SE, the error from its column, the SD or the interval. */
export const checkTAgainstError: SelfCheck = ofPeople((arm, rangeOf) => {
  const [test, implied] = [sizeOfTest(rangeOf), impliedT(arm, rangeOf)];
  if (!test || !implied || !areApart(test.range, implied.range)) return null;
  const [column] = test.from;
  return {
    column,
    doubted: [column, ...implied.spread],
    expected: `a ${column === 'change_t' ? 't' : 'root of F'} of the size ${writeRange(implied.range)}, as ${quoteCells(arm, implied.from)} give with ${quoteCells(arm, ['n'])}`,
    remedy: 'Correct what is misread, or clear what belongs to another comparison, as that between arms.',
    isImpossible: false,
  };
});

/** The p of change / SE. */
export const checkPAgainstError: SelfCheck = ofPeople((arm, rangeOf) => {
  const [p, implied] = [rangeOf('change_p'), impliedT(arm, rangeOf)];
  if (!p || !implied) return null;
  const fitting = pFromT(implied.range, dfOf(arm));
  if (!areApart(fitting, p)) return null;
  return {
    column: 'change_p',
    doubted: ['change_p', ...implied.spread],
    expected: `a p of ${writeRange(fitting)}, as ${quoteCells(arm, implied.from)} give with ${quoteCells(arm, ['n'])}`,
    remedy:
      'Correct what is misread. A one-sided p and a p of another test or comparison do not belong in this column.',
    isImpossible: false,
  };
});

/** Size of t from the change and its error; null where one of the two is not given. */
function impliedT(arm: CountedArm, rangeOf: RangeOf) {
  const change = impliedChange(rangeOf);
  const error = printedError(rangeOf, arm.n) ?? errorOfInterval(rangeOf, arm);
  if (!change || !error) return null;
  return {
    range: over(sizes(change.range), error.range),
    from: [...change.from, ...error.from],
    spread: error.from,
  };
}
