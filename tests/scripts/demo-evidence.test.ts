/** The demonstration tables: the same bytes on every run, varied enough to show everything, and true to their source. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import {
  BEYOND_FAILURE_GAIN,
  FATIGUE,
  GROWTH_AT_FAILURE,
  GROWTH_SLOPE,
  GROWTH_SPREAD,
  STRENGTH,
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
import { analyseFatigue } from '../../src/model/fatigue.ts';
import type { Band, Estimate } from '../../src/model/result.ts';
import { defaultSettings } from '../../src/model/settings.ts';
import { analyseStrength } from '../../src/model/strength.ts';
import { toPercent } from '../../src/numerics/percent.ts';

const read = (name: string) => readFileSync(new URL(`../../data/${name}`, import.meta.url), 'utf8');
const demo = generateDemo(DEMO_SEED);
const { arms } = readArms(demo.arms, 'arms.csv');
const values = (column: ArmColumn) => [...new Set(arms.map((arm) => arm[column]))];

describe('the demonstration tables', () => {
  it('are the shipped ones, byte for byte (else: npm run demo)', () => {
    expect(demo.arms).toBe(read('arms.csv'));
    expect(demo.studies).toBe(read('studies.csv'));
    expect(generateDemo(DEMO_SEED)).toEqual(demo);
  });

  it('hold 36 studies, some 100 arms and 260 rows, all marked as invented', () => {
    expect(values('study')).toHaveLength(36);
    expect(new Set(arms.map(({ study, arm }) => `${study}/${arm}`)).size).toBeGreaterThanOrEqual(95);
    expect(arms.length).toBeGreaterThanOrEqual(240);
    expect(arms.length).toBeLessThanOrEqual(300);
    expect(arms.every((arm) => isDemonstration([arm]))).toBe(true);
  });

  it.each([
    ['outcome', OUTCOMES],
    ['design', DESIGNS],
    ['reserve_basis', RESERVE_BASES],
    ['failure_definition', FAILURE_DEFINITIONS],
    ['beyond_failure', BEYOND_FAILURE],
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
  });

  it('leaves both tables alone where one has a line of another origin, and names it', () => {
    const own = `${demo.studies}Own 2020,Own A,2020,A study that exists,,,,,\n`;
    write('arms.csv', `${demo.arms}broken`);
    write('studies.csv', demo.studies);
    expect(run()).toMatchObject({ status: 1, stderr: expect.stringMatching(/data\/arms\.csv, line 288/u) });
    write('arms.csv', '');
    write('studies.csv', own);
    expect(run()).toMatchObject({ status: 1, stderr: expect.stringMatching(/data\/studies\.csv, line 38/u) });
    expect([readBack('arms.csv'), readBack('studies.csv')]).toEqual(['', own]);
  });
});

describe('the fit of the demonstration', () => {
  const analysis = analyse(arms, defaultSettings);
  if (!('light' in analysis.bands)) throw new Error('expected two bands');
  const { light, heavy } = analysis.bands;

  /** Points of per cent per repetition over the first two, where targets lie. */
  const slopeInPoints = ({ coefficients: [intercept, slope] }: Band) =>
    (toPercent(intercept.estimate + 2 * slope.estimate) - toPercent(intercept.estimate)) / 2;

  it.each([
    ['light', light, GROWTH_SLOPE.light],
    ['heavy', heavy, GROWTH_SLOPE.heavy],
  ] as const)('recovers the true slope and growth with %s loads', (_name, band, slope) => {
    const [intercept, reserve] = band.coefficients;
    expect(toPercent(intercept.ciLow)).toBeLessThan(GROWTH_AT_FAILURE);
    expect(toPercent(intercept.ciHigh)).toBeGreaterThan(GROWTH_AT_FAILURE);
    // Two standard errors of the slope, which on this scale are about a hundredth smaller than points.
    expect(Math.abs(slopeInPoints(band) - slope)).toBeLessThan(200 * reserve.standardError);
  });

  it('recovers the spread between and within studies to about a third', () => {
    for (const { tau2, omega2 } of [light, heavy]) {
      expect(100 * Math.sqrt(tau2 ?? Number.NaN)).toBeGreaterThan(GROWTH_SPREAD.study / 1.5);
      expect(100 * Math.sqrt(tau2 ?? Number.NaN)).toBeLessThan(GROWTH_SPREAD.study * 1.5);
      expect(100 * Math.sqrt(omega2 ?? Number.NaN)).toBeGreaterThan(GROWTH_SPREAD.row / 1.5);
      expect(100 * Math.sqrt(omega2 ?? Number.NaN)).toBeLessThan(GROWTH_SPREAD.row * 1.5);
    }
  });

  it('shows that reserve costs more with light loads', () => {
    expect(analysis.difference?.ciLow).toBeGreaterThan(0);
  });
});

describe('the intervals of what stands beside growth', () => {
  const expectInside = (estimate: Estimate | null, truth: number) => {
    if (!estimate) throw new Error('expected an estimate');
    expect(estimate.ciLow).toBeLessThan(truth);
    expect(estimate.ciHigh).toBeGreaterThan(truth);
  };
  const strength = analyseStrength(arms, defaultSettings);

  it('hold the true effect of load on strength, and none of reserve', () => {
    // On the log scale the slope is the derivative of ln(1 + per cent/100); loads are centred near 59 % of 1RM.
    expectInside(strength.load, STRENGTH.perLoad / (100 + trueStrength(59, 0)));
    expectInside(strength.reserve, STRENGTH.perReserve / 100);
  });

  it.each(analyseFatigue(arms, defaultSettings).byStatus)(
    'hold the true decay of fatigue when $status',
    ({ status, decay, start, perReserve }) => {
      const truth = FATIGUE[status];
      expect(decay?.low).toBeLessThan(truth.hours);
      expect(decay?.high).toBeGreaterThan(truth.hours);
      // A drop d in per cent is −ln(1 − d/100) on the log scale, and a point of it 1/(100 − d).
      expectInside(start, -Math.log1p(-truth.start / 100));
      expectInside(perReserve, truth.perReserve / (100 - truth.start));
    },
  );

  // Two studies did load drops, too few to compare by.
  it.each(compareBeyondFailure(arms, defaultSettings).filter(({ kind }) => kind === 'partials'))(
    'hold the true gain from $kind after failure',
    ({ difference }) => {
      expectInside(difference, BEYOND_FAILURE_GAIN / (100 + GROWTH_AT_FAILURE));
    },
  );
});
