/** What is entered in the calculator and what is then told of it. */
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { createCalculator } from '../../../src/islands/target/calculator.state.ts';
import { GymCard } from '../../../src/islands/target/GymCard.tsx';
import { mostReserve, POSSIBLE_REPETITIONS } from '../../../src/practice/possible.ts';
import { analysis, exercises } from '../../practice/programme/shipped.ts';

const state = createCalculator({ analysis, shares: [] }, exercises, 'arms.csv');
const { from, to } = POSSIBLE_REPETITIONS;

describe('repetitions entered', () => {
  it.each(Array.from({ length: to + 1 - from }, (_, i) => from + i))('as %i are possible, not one fewer', (entered) => {
    state.enterRepetitions(String(entered));
    const possible = state.possible.value;
    if (possible === null) throw new Error('expected repetitions at a load that can be entered');
    // All but one of them can be left.
    expect(mostReserve(possible)).toBe(entered - 1);
    expect(Math.round(possible.mean)).toBe(entered);
  });
});

describe('a set without a number', () => {
  it('is not said to have no target, which stands beside it', () => {
    state.change({ load: 75, purpose: 'staying fresh', hours: null });
    expect([state.advice.value.reserve, state.advice.value.target.shown]).toEqual([null, expect.anything()]);
    const card = renderToString(h(GymCard, { state, isInvented: true })).replace(/<[^>]+>/gu, ' ');
    expect(card).toMatch(/no number/u);
    expect(card).not.toMatch(/no target/u);
  });
});
