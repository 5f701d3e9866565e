/**
 * Reserve estimated from load or share. Published: Nuzzo, Pinto, Nosaka & Steele 2024 (Sports Med
 * 54:303), bench press, means and between-person SDs read second-hand (2.51 at 80 %, 4.36 at 60 %).
 */
import { describe, expect, it } from 'vitest';
import { loadForRepetitions, meanRepetitions, repetitionsAtLoad } from '../../src/evidence/repetitions.ts';
import { reserveFromLoad, reserveFromShare } from '../../src/evidence/reserve.ts';
import { expectWithin } from '../support/closeness.ts';

describe('repetitions possible at a load', () => {
  it.each([
    [80, 8.82, 2.51],
    [60, 19.34, 4.36],
    [70, 14.08, 3.435],
  ])('of %d %% are %d with a between-person SD of %d', (load, mean, sd) => {
    const possible = repetitionsAtLoad(load);
    expect(possible?.mean).toBe(mean);
    // The SDs are printed with two decimals.
    expectWithin(possible?.sd ?? Number.NaN, sd, 0.005, 'SD');
  });

  it('fall with every per cent of load, between and at the published points', () => {
    const loads = Array.from({ length: 801 }, (_, i) => 15 + i / 10);
    const means = loads.map((load) => meanRepetitions(load) ?? Number.NaN);
    for (let i = 1; i < means.length; i++) expect(means[i]).toBeLessThan(means[i - 1]);
  });

  it('are undone by the load for a number of repetitions', () => {
    for (const load of [15, 33.3, 62, 80, 95]) {
      // Two linear steps there and back: rounding only.
      expectWithin(loadForRepetitions(meanRepetitions(load) ?? Number.NaN) ?? Number.NaN, load, 1e-10, 'load');
    }
  });

  it.each([39.9, 90.1, Number.NaN])('are not known with their spread at %d %%', (load) => {
    expect(repetitionsAtLoad(load)).toBeNull();
  });

  it.each([14, 96, Number.NaN])('are not known at %d %% even without spread', (load) => {
    expect(meanRepetitions(load)).toBeNull();
  });
});

describe('reserve', () => {
  it('after 10 repetitions at 70 % is 14.08 − 10, with the spread between people', () => {
    const estimate = reserveFromLoad(70, 10);
    expectWithin(estimate.mean ?? Number.NaN, 4.08, 1e-12, 'reserve');
    expectWithin(estimate.sd ?? Number.NaN, 9.91 - 0.0925 * 70, 1e-12, 'SD');
    expect(estimate.how).toBe('14.1 repetitions possible at 70 % of 1RM, minus 10 done');
  });

  it('is not below 0 where more was done than is usually possible, and says so', () => {
    const estimate = reserveFromLoad(85, 9);
    expect(estimate.mean).toBe(0);
    expect(estimate.how).toMatch(/not below 0/);
  });

  it('after 60 % of the repetitions possible at 20RM is 8, with its share of the spread', () => {
    expect(reserveFromShare(0.6, 20, 2)).toMatchObject({ mean: 8, sd: 0.8 });
  });

  it.each([
    ['a load outside 40–90 %', reserveFromLoad(30, 10), /40 to 90 % of 1RM, not 30 %/],
    ['repetitions below 0', reserveFromLoad(70, -1), /at least 0, not -1/],
    ['repetitions that are no number', reserveFromLoad(70, Number.NaN), /not NaN/],
    ['a share above 1', reserveFromShare(1.2, 20, 2), /between 0 and 1, not at 1.2/],
    ['a maximum of 0', reserveFromShare(0.5, 0, 2), /maximum of 0 repetitions/],
    ['a spread below 0', reserveFromShare(0.5, 20, -1), /at least 0, not -1/],
  ])('is not estimated from %s, with the reason', (_what, estimate, reason) => {
    expect([estimate.mean, estimate.sd]).toEqual([null, null]);
    expect(estimate.reason).toMatch(reason);
  });
});
