/** The demonstration tables: the same bytes on every run, varied enough to show everything, and true to their source. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import {
  BEYOND_FAILURE_GAIN,
  FATIGUE,
  GROWTH_AT_FAILURE,
  GROWTH_SPREAD,
  STRENGTH,
  trueGrowth,
  trueKeptShare,
  trueStrength,
} from '../../scripts/demo/truth.ts';
import { DEMO_SEED, generateDemo } from '../../scripts/demo-evidence.ts';
import { isDemonstration } from '../../src/evidence/demonstration.ts';
import type { ArmColumn } from '../../src/evidence/schema.ts';
import { readArms } from '../../src/evidence/table.ts';
import {
  BEYOND_FAILURE,
  DESIGNS,
  FAILURE_DEFINITIONS,
  OUTCOMES,
  RESERVE_BASES,
} from '../../src/evidence/vocabulary.ts';
import { analyse } from '../../src/model/analyse.ts';
import { compareBeyondFailure } from '../../src/model/beyondFailure.ts';
import { makeCurve } from '../../src/model/curve.ts';
import { analyseFatigue } from '../../src/model/fatigue.ts';
import { defaultSettings } from '../../src/model/settings.ts';
import { analyseStrength } from '../../src/model/strength.ts';
import { leastSquares } from '../../src/numerics/leastSquares.ts';
import { toPercent } from '../../src/numerics/percent.ts';
import { expectWithin } from '../support/closeness.ts';

const read = (name: string) => readFileSync(new URL(`../../data/${name}`, import.meta.url), 'utf8');
const demo = generateDemo(DEMO_SEED);
const { arms } = readArms(demo.arms, 'arms.csv');
const values = (column: ArmColumn) => [...new Set(arms.map((arm) => arm[column]))];

describe('the demonstration tables', () => {
  it('are the shipped ones, byte for byte (else: npm run demo)', () => {
    expect(demo.arms).toBe(read('arms.csv'));
    expect(demo.studies).toBe(read('studies.csv'));
    expect(demo.truth).toBe(read('demonstration-truth.json'));
    expect(generateDemo(DEMO_SEED)).toEqual(demo);
  });

  it('hold 48 studies, some 150 arms and 390 rows, all marked as invented', () => {
    expect(values('study')).toHaveLength(48);
    expect(new Set(arms.map(({ study, arm }) => `${study}/${arm}`)).size).toBeGreaterThanOrEqual(140);
    expect(arms.length).toBeGreaterThanOrEqual(360);
    expect(arms.length).toBeLessThanOrEqual(420);
    expect(arms.every((arm) => isDemonstration([arm]))).toBe(true);
  });

  it.each([
    ['outcome', OUTCOMES],
    ['design', DESIGNS],
    ['reserve_basis', RESERVE_BASES.filter((word) => word !== 'repetitions')],
    ['failure_definition', FAILURE_DEFINITIONS],
    ['beyond_failure', BEYOND_FAILURE.filter((word) => word !== 'rest-pause' && word !== 'assisted')],
  ] as const)('hold every %s', (column, words) => {
    expect(values(column)).toEqual(expect.arrayContaining([...words]));
  });

  it.each<ArmColumn>([
    'change_sd',
    'change_se',
    'change_ci_low',
    'change_t',
    'change_p',
    'correlation',
    'followup_sd',
    'effect',
  ])('report %s in some rows and not in others', (column) => {
    expect(arms.some((arm) => arm[column] !== null)).toBe(true);
    expect(arms.some((arm) => arm[column] === null)).toBe(true);
  });

  it('span loads of 25 to 90 % and reserves of 0 to 10', () => {
    const range = (column: 'load_pct_1rm' | 'reserve_reps') => {
      const numbers = arms.flatMap((arm) => arm[column] ?? []);
      return [Math.min(...numbers), Math.max(...numbers)];
    };
    expect(range('load_pct_1rm')).toEqual([25, 90]);
    expect(range('reserve_reps')).toEqual([0, 10]);
  });

  it('name each arm by the reserve that its rows report', () => {
    let named = 0;
    for (const { arm, reserve_reps: reserve, beyond_failure: beyond } of arms) {
      const left = arm.match(/with (\S+) left$/u)?.[1];
      if (left !== undefined) named++;
      expect(reserve, arm).toBe(left === undefined ? 0 : Number(left));
      expect(/to failure$/u.test(arm) || left !== undefined, arm).toBe((beyond ?? 'none') === 'none');
    }
    expect(named).toBeGreaterThan(150);
  });

  it('hold ten studies of fatigue or more with either training status, and ten of work beyond failure', () => {
    const studies = (chosen: (arm: (typeof arms)[number]) => boolean) =>
      new Set(arms.filter(chosen).map(({ study }) => study)).size;
    for (const status of ['untrained', 'trained'])
      expect(studies((arm) => arm.outcome === 'fatigue' && arm.training_status === status)).toBeGreaterThanOrEqual(10);
    expect(studies((arm) => (arm.beyond_failure ?? 'none') !== 'none')).toBeGreaterThanOrEqual(10);
  });
});

describe('the truth of the demonstration', () => {
  const { bands, tableSha256 } = JSON.parse(demo.truth);

  it('is stated of the very table that was drawn from it', () => {
    expect(tableSha256).toBe(createHash('sha256').update(demo.arms).digest('hex'));
    expect(JSON.parse(generateDemo(DEMO_SEED + 1).truth).tableSha256).not.toBe(tableSha256);
  });

  it('keeps 90 % with 1 repetition in reserve at light loads, about 3 at heavy ones, 2 between', () => {
    expectWithin(trueKeptShare(40, 1), 0.9, 1e-12, 'light');
    expectWithin(trueKeptShare(68, 2), 0.9, 0.02, 'between');
    expectWithin(trueKeptShare(80, 3.4), 0.9, 1e-3, 'heavy');
    expect(bands.light.target).toBe(1);
    expectWithin(bands.heavy.target, 3, 0.1, 'heavy loads of the table');
    expect(trueKeptShare(40, 0)).toBe(1);
    expect(toPercent(Math.log1p(trueGrowth(80, 0) / 100))).toBeCloseTo(GROWTH_AT_FAILURE, 12);
  });

  it('bends as none of the shapes that are fitted: the best of each through it leaves a distance', () => {
    const reserves = Array.from({ length: 21 }, (_, i) => i / 2);
    for (const load of [40, 80]) {
      const truth = Float64Array.from(reserves, (reserve) => trueKeptShare(load, reserve));
      for (const curve of ['line', 'log', 'quadratic', 'flexible'] as const) {
        const { at, terms } = makeCurve(curve, reserves);
        const columns = terms.map((_, j) => Float64Array.from(reserves, (reserve) => at(reserve)[j]));
        const { coefficients } = leastSquares(columns, truth);
        const distances = reserves.map((reserve, i) =>
          Math.abs(at(reserve).reduce((sum, x, j) => sum + x * coefficients[j], 0) - truth[i]),
        );
        expect(Math.max(...distances), `${curve} at ${load} %`).toBeGreaterThan(curve === 'flexible' ? 1e-4 : 0.004);
      }
    }
  });
});

describe('writing the demonstration', () => {
  const folder = mkdtempSync(join(tmpdir(), 'demo-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  mkdirSync(join(folder, 'data'));
  const write = (name: string, text: string) => writeFileSync(join(folder, 'data', name), text);
  const readBack = (name: string) => readFileSync(join(folder, 'data', name), 'utf8');
  const run = () =>
    spawnSync(process.execPath, [resolve('scripts/demo-evidence.ts')], { encoding: 'utf8', cwd: folder });

  it('puts it where there is nothing, or an edited demonstration', () => {
    expect(run().status).toBe(0);
    write('arms.csv', demo.arms.replace(',30,', ',31,'));
    expect(run().status).toBe(0);
    expect([readBack('arms.csv'), readBack('studies.csv')]).toEqual([demo.arms, demo.studies]);
    expect(readBack('demonstration-truth.json')).toBe(demo.truth);
  });

  it('leaves both tables alone where one has a line of another origin, and names it', () => {
    const own = `${demo.studies}Own 2020,Own A,2020,A study that exists,,,,,\n`;
    write('arms.csv', `${demo.arms}broken`);
    write('studies.csv', demo.studies);
    expect(run()).toMatchObject({ status: 1, stderr: expect.stringMatching(/data\/arms\.csv, line 395/u) });
    write('arms.csv', '');
    write('studies.csv', own);
    expect(run()).toMatchObject({ status: 1, stderr: expect.stringMatching(/data\/studies\.csv, line 50/u) });
    expect([readBack('arms.csv'), readBack('studies.csv')]).toEqual(['', own]);
  });
});

describe('the fit of the demonstration', () => {
  const analysis = analyse(arms, defaultSettings);
  if (!('light' in analysis.bands)) throw new Error('expected two bands');
  const { light, heavy } = analysis.bands;

  const truth = JSON.parse(demo.truth);

  it.each([
    ['light', light],
    ['heavy', heavy],
  ] as const)('holds the true target and growth with %s loads in its intervals', (name, band) => {
    const { target, atFailure } = band;
    expect(target.low).toBeLessThan(truth.bands[name].target);
    expect(target.high).toBeGreaterThan(truth.bands[name].target);
    expect(toPercent(atFailure?.ciLow ?? Number.NaN)).toBeLessThan(GROWTH_AT_FAILURE);
    expect(toPercent(atFailure?.ciHigh ?? Number.NaN)).toBeGreaterThan(GROWTH_AT_FAILURE);
  });

  it('recovers the spread between and within studies to about a third, both bands together', () => {
    const together = (of: 'tau2' | 'omega2') => 100 * Math.sqrt(((light[of] ?? NaN) + (heavy[of] ?? NaN)) / 2);
    expect(together('tau2')).toBeGreaterThan(GROWTH_SPREAD.study / 1.5);
    expect(together('tau2')).toBeLessThan(GROWTH_SPREAD.study * 1.5);
    expect(together('omega2')).toBeGreaterThan(GROWTH_SPREAD.row / 1.5);
    expect(together('omega2')).toBeLessThan(GROWTH_SPREAD.row * 1.5);
  });

  it('shows that the first repetitions in reserve cost more with light loads', () => {
    const two = analysis.difference?.keptShares.find(({ reserve }) => reserve >= 1 && reserve <= 2);
    expect(two?.ciLow).toBeGreaterThan(0);
  });
});

describe('the intervals of what stands beside growth', () => {
  const strength = analyseStrength(arms, defaultSettings);
  /** The truth of each on the log scale, where the slope of load is the derivative of ln(1 + per cent/100); loads are centred near 59 %. */
  const compared: readonly (readonly [name: string, low: number | null, high: number | null, truth: number])[] = [
    ...(
      [
        ['strength by load', strength.load, STRENGTH.perLoad / (100 + trueStrength(59, 0))],
        ['strength by reserve', strength.reserve, STRENGTH.perReserve / 100],
        ...compareBeyondFailure(arms, defaultSettings).map(
          ({ kind, difference }) =>
            [
              `gain from ${kind}`,
              difference,
              (kind in BEYOND_FAILURE_GAIN
                ? BEYOND_FAILURE_GAIN[kind as keyof typeof BEYOND_FAILURE_GAIN]
                : Number.NaN) /
                (100 + GROWTH_AT_FAILURE),
            ] as const,
        ),
        ...analyseFatigue(arms, defaultSettings).byStatus.flatMap(
          ({ status, start, perReserve }) =>
            [
              [`fatigue of ${status} people at failure`, start, FATIGUE[status].start / 100],
              [`fatigue of ${status} people by reserve`, perReserve, FATIGUE[status].perReserve / 100],
            ] as const,
        ),
      ] as const
    ).map(([name, estimate, truth]) => [name, estimate?.ciLow ?? null, estimate?.ciHigh ?? null, truth] as const),
    ...analyseFatigue(arms, defaultSettings).byStatus.map(
      ({ status, decay }) =>
        [`hours of decay of ${status} people`, decay?.low ?? null, decay?.high ?? null, FATIGUE[status].hours] as const,
    ),
  ];

  it('hold the truth, but for the one in twenty that the seed, which was not chosen by it, happens to miss', () => {
    expect(compared).toHaveLength(10);
    const missed = compared.filter(
      ([, low, high, truth]) => low === null || high === null || low > truth || high < truth,
    );
    expect(missed.map(([name]) => name)).toEqual(['hours of decay of trained people']);
    // By 2 %: 14.7 hours at most, 15 put in.
    const [, , high, truth] = missed[0];
    expect(high).toBeGreaterThan(0.95 * truth);
  });
});
