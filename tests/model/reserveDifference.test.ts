/** Whether growth with reserve is told from growth at failure, on curves whose error and degrees of freedom are known. */
import { describe, expect, it } from 'vitest';
import { findReserveDifference } from '../../src/model/reserveDifference.ts';
import { expectRelative } from '../support/closeness.ts';
import { knownInference } from '../support/knownInference.ts';

const UNSURE = [
  [1e-6, 0],
  [0, 1e-6],
];
const LINE = (r: number) => [1, r];

describe('a difference by reserve', () => {
  it('of a straight line is told at the least reserve asked, since it is as clear at every one', () => {
    // Slopes whose p at the reserves differ in the last digit, some one way and some the other.
    for (let i = 0; i < 40; i++) {
      const slope = -0.01 - i / 7000;
      const { less, more } = findReserveDifference(knownInference([0.08, slope], UNSURE, 9 + i / 13), LINE, 10, 0.95);
      expectRelative(less?.estimate ?? Number.NaN, slope / 2, 1e-14, `slope ${slope}`);
      expect(more).toBeNull();
    }
  });

  it('of a curve that loses first and gains later is told on both sides, where each is clearest', () => {
    // −0.02 r + 0.004 r²: least at 2.5, above its start from 5 on; the error is the same for all of r's parts.
    const bent = knownInference(
      [0.08, -0.02, 0.004],
      [
        [1e-6, 0, 0],
        [0, 1e-6, 0],
        [0, 0, 1e-8],
      ],
      20,
    );
    const { less, more } = findReserveDifference(bent, (r) => [1, r, r * r], 8, 0.95);
    expectRelative(less?.estimate ?? Number.NaN, -0.02 * 0.5 + 0.004 * 0.25, 1e-12, 'loss, by t largest at 0.5');
    expectRelative(more?.estimate ?? Number.NaN, -0.02 * 8 + 0.004 * 64, 1e-12, 'gain, at the end');
  });

  it('is from the least reserve studied where that is asked, not from the curve continued to 0', () => {
    // −0.01 r, sure; but with a level at 0 that nobody knows, as where no one trained near it.
    const x = (r: number) => [1, r, r < 0.5 ? 1 : 0];
    const known = knownInference(
      [0.1, -0.01, 0],
      [
        [1e-6, 0, 0],
        [0, 1e-6, 0],
        [0, 0, 1],
      ],
      20,
    );
    expect(findReserveDifference(known, x, 8, 0.95).less).toBeNull();
    const { less } = findReserveDifference(known, x, 8, 0.95, 2);
    expectRelative(less?.estimate ?? Number.NaN, -0.005, 1e-12, 'half a repetition from 2');
  });

  it('is none where no reserve is told from 0', () => {
    const flat = knownInference([0.08, -0.0005], UNSURE, 9);
    expect(findReserveDifference(flat, LINE, 10, 0.95)).toEqual({ less: null, more: null });
  });
});
