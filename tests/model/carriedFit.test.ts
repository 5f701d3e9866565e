/** Fits that are refused because their numbers would rest on nothing, each by the rule and the sentence meant. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fitCarried, LEAST_SPARE_STUDIES, LEAST_STUDIES } from '../../src/model/carriedFit.ts';
import { fitModel } from '../../src/model/mixed.ts';
import type { Observation } from '../../src/model/observations.ts';
import { makeRandom } from '../../src/numerics/random.ts';

const MIXED = { rho: 0.5, weighting: 'mixed' } as const;

/** Rows of each study, at reserves 0, 2 and 4, with effects that differ as real ones do. */
function rowsOf(studies: number, rows = 3, seed = 4) {
  const { normal } = makeRandom(seed);
  const observations: Observation[] = [];
  const reserves: number[] = [];
  for (let study = 0; study < studies; study++) {
    const shift = 0.02 * normal();
    for (let row = 0; row < rows; row++) {
      reserves.push(2 * row);
      observations.push({ study: `S${study}`, cohort: null, y: 0.08 - 0.01 * row + shift + 0.01 * normal(), v: 1e-4 });
    }
  }
  const numbers = observations.map(({ study }) => Number(study.slice(1)));
  return { observations, reserves, numbers, ones: reserves.map(() => 1) };
}

describe('studies against columns that differ only between studies', () => {
  it.each([0, 1, 2, 3])('with %i covariates of studies: two more are needed than such columns', (covariates) => {
    const needed = 1 + covariates + LEAST_SPARE_STUDIES;
    const fitOf = (studies: number) => {
      const { observations, reserves, numbers, ones } = rowsOf(studies);
      const more = Array.from({ length: covariates }, (_, c) => numbers.map((k) => Math.sin((c + 1) * (k + 1))));
      return fitCarried(observations, [ones, reserves, ...more], MIXED);
    };
    expect(fitOf(needed).failure).toBeNull();
    const { failure } = fitOf(needed - 1);
    expect(failure?.kind).toBe('too-few-studies');
    expect(failure?.reason).toContain(`${needed - 1} studies are left`);
    expect(failure?.reason).toContain(`at least ${needed} are needed`);
  });

  it('count a reserve that differs only between studies, and not one that differs inside one of them', () => {
    const { observations, numbers, ones } = rowsOf(3);
    expect(fitCarried(observations, [ones, numbers], MIXED).failure).toEqual({
      kind: 'too-few-studies',
      reason:
        '3 studies are left for 2 columns that differ only between studies (the level and 1 more); at least 4 are needed, 2 more than such columns',
    });
    const inside = numbers.map((value, i) => value + (i % 3));
    expect(fitCarried(observations, [ones, inside], MIXED).failure).toBeNull();
  });

  it('are three at least, whatever the weights', () => {
    const { observations, reserves, ones } = rowsOf(LEAST_STUDIES - 1);
    for (const weighting of ['mixed', 'precision', 'equal'] as const) {
      expect(fitCarried(observations, [ones, reserves], { rho: 0.5, weighting }).failure?.reason).toBe(
        '2 studies are left; at least 3 are needed to see how studies differ',
      );
    }
  });
});

describe('a fit is refused where', () => {
  const { observations, reserves, numbers, ones } = rowsOf(6);

  it('one study alone decides a covariate, by name', () => {
    const mark = numbers.map((k) => Number(k === 2));
    expect(fitCarried(observations, [ones, reserves, mark], MIXED).failure).toEqual({
      kind: 'one-study-decides',
      reason:
        'study S2 alone decides a part of the curve or a covariate, and no other study shows how wrong that may be',
    });
  });

  it('variances inside a study differ more than digits can weigh', () => {
    const uneven = observations.map((one, i) => ({ ...one, v: i === 4 ? 1e-13 : one.v }));
    expect(fitCarried(uneven, [ones, reserves], { rho: 0.5, weighting: 'precision' }).failure).toEqual({
      kind: 'variances-too-uneven',
      reason:
        'variances in study S1 differ 1e+9 times, and up to 1e+7 times can be weighed: look at its smallest standard deviation',
    });
  });

  it('one study has nearly all the information in a direction', () => {
    const precise = observations.map((one, i) => ({ ...one, v: numbers[i] === 1 ? 1e-12 : 1e-2 }));
    const { failure } = fitCarried(precise, [ones, reserves], { rho: 0.5, weighting: 'precision' });
    expect(failure?.kind).toBe('one-study-decides');
    expect(failure?.reason).toContain('study S1');
  });

  it('effects lie on the curve, or are all equal, or 0', () => {
    for (const y of [(i: number) => 0.1 - 0.01 * reserves[i], () => 0.05, () => 0]) {
      const exact = observations.map((one, i) => ({ ...one, y: y(i) }));
      for (const weighting of ['mixed', 'precision', 'equal'] as const) {
        expect(fitCarried(exact, [ones, reserves], { rho: 0.5, weighting }).failure?.kind).toBe('no-error');
      }
    }
  });

  it('effects differ between studies only, so that the slope alone has no error', () => {
    const level = observations.map((one, i) => ({ ...one, y: 0.05 + 0.01 * Math.sin(numbers[i]) }));
    expect(fitCarried(level, [ones, reserves], MIXED).failure?.kind).toBe('no-error');
  });

  it('the rows cannot tell one variance from the other', () => {
    // Two rows a study with a column that takes up their difference: only τ² + ω²/2 is seen.
    const two = rowsOf(6, 2);
    const columns = [two.ones, ...[0, 1, 2, 3, 4, 5].map((k) => two.numbers.map((j, i) => (j === k ? i % 2 : 0)))];
    const { failure } = fitCarried(two.observations, columns, MIXED);
    expect(['flat-likelihood', 'one-study-decides']).toContain(failure?.kind);
  });
});

it('a fit that carries an answer is the fit of the engine, with every contrast’s error above 0', () => {
  const { observations, reserves, ones } = rowsOf(5);
  const carried = fitCarried(observations, [ones, reserves], MIXED).fit;
  const plain = fitModel(observations, [ones, reserves], MIXED).fit;
  expect(carried?.inference.coefficients).toEqual(plain?.inference.coefficients);
  expect(carried?.inference.covariance[3]).toBeGreaterThan(0);
});

it('no other file of the source fits without these rules', () => {
  const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((name) => /\.tsx?$/u.test(name));
  const callers = files.filter((name) => /\bfit(?:Model|Arranged|Design)\(/u.test(readFileSync(`src/${name}`, 'utf8')));
  expect(callers.sort()).toEqual(['model/carriedFit.ts', 'model/mixed.ts']);
});
