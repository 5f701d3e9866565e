/**
 * The answer before and after, and who moved it. Proven: the answers are the analysis's own; undoing
 * a study's change is the fit of a table that was put together by hand; the sole change of a table is
 * its whole difference; ranking, limits and what is missing.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Arm } from '../../src/evidence/schema.ts';
import { readArms } from '../../src/evidence/table.ts';
import { analyse } from '../../src/model/analyse.ts';
import { type BandChange, compareTables, type TableComparison } from '../../src/model/compareTables.ts';
import type { Band } from '../../src/model/result.ts';
import { defaultSettings, settingsSchema } from '../../src/model/settings.ts';
import { expectWithin } from '../support/closeness.ts';

const { arms } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const names = [...new Set(arms.map(({ study }) => study))].sort();

function bandsOf(table: readonly Arm[], settings = defaultSettings): readonly Band[] {
  return Object.values(analyse(table, settings).bands);
}

/** Studies with a row in the band's fit. */
function studiesIn(band: number): readonly string[] {
  return [...new Set(bandsOf(arms)[band].fitted.map(({ study }) => study))].sort();
}

const without = (...studies: string[]) => arms.filter(({ study }) => !studies.includes(study));
/** The study with a smaller mean before, so that it shows more growth. */
const grown = (study: string, by: number) =>
  arms.map((arm) =>
    arm.study === study && arm.baseline_mean !== null ? { ...arm, baseline_mean: arm.baseline_mean / by } : arm,
  );
const band = (comparison: TableComparison, name: string): BandChange => {
  const found = comparison.bands.find((one) => one.band === name);
  if (!found) throw new Error(`no band ${name}`);
  return found;
};

/** Mean slope of the curve that was fitted, as it stands among the shapes compared. */
const slopeOfCurve = ({ curves, curve }: Band) => curves.find((one) => one.curve === curve)?.slope ?? null;

describe('two tables that are the same', () => {
  const comparison = compareTables(arms, [...arms], defaultSettings);

  it('are told so, and nothing moved', () => {
    expect(comparison).toMatchObject({ same: true, rowsBefore: arms.length, rowsAfter: arms.length });
    for (const one of comparison.bands) {
      expect(one).toMatchObject({ slopeMoved: 0, targetMoved: 0, targetChange: 'moved', moves: [], limits: null });
      expect(one.after).toEqual(one.before);
    }
  });

  it('have the answers of the analysis, as plain JSON', () => {
    bandsOf(arms).forEach((analysed, i) => {
      const { before } = comparison.bands[i];
      expect(before.target).toEqual(analysed.target);
      expect(before.slope).toEqual(slopeOfCurve(analysed));
      expect([before.studies, before.rows]).toEqual([analysed.studies, analysed.rows]);
    });
    expect(JSON.parse(JSON.stringify(comparison))).toEqual(comparison);
  });
});

describe('the sole change of a table', () => {
  const [study] = studiesIn(0);
  it.each([
    ['added', without(study), arms],
    ['removed', arms, without(study)],
    ['changed', arms, grown(study, 1.03)],
  ])('that a study was %s is the whole difference', (change, before, after) => {
    const light = band(compareTables(before, after, defaultSettings), 'light');
    expect(light.moves.map((move) => [move.study, move.change])).toEqual([[study, change]]);
    const [move] = light.moves;
    expect(Math.abs(light.slopeMoved ?? 0)).toBeGreaterThan(1e-6);
    expectWithin(move.slopeMoved ?? Number.NaN, light.slopeMoved ?? Number.NaN, 1e-12, 'slope moved');
    expectWithin(move.targetMoved ?? Number.NaN, light.targetMoved ?? Number.NaN, 1e-9, 'target moved');
    expectWithin(move.undone.target.high ?? Number.NaN, light.before.target.high ?? Number.NaN, 1e-9, 'upper end');
  });
});

describe('several changes', () => {
  const [a, b, c] = studiesIn(1);
  // Old: without a. New: without b, and c has grown more.
  const before = without(a);
  const after = grown(c, 1.04).filter(({ study }) => study !== b);
  const heavy = band(compareTables(before, after, defaultSettings), 'heavy');

  it('are undone one at a time, as tables put together by hand', () => {
    expect(new Map(heavy.moves.map(({ study, change }) => [study, change]))).toEqual(
      new Map([
        [a, 'added'],
        [b, 'removed'],
        [c, 'changed'],
      ]),
    );
    const byHand = new Map([
      [a, after.filter(({ study }) => study !== a)],
      [b, grown(c, 1.04)],
      [c, without(b)],
    ]);
    for (const { study, undone } of heavy.moves) {
      const fitted = bandsOf(byHand.get(study) ?? [])[1];
      expectWithin(
        undone.slope?.estimate ?? Number.NaN,
        slopeOfCurve(fitted)?.estimate ?? Number.NaN,
        1e-12,
        `slope, ${study}`,
      );
      expectWithin(undone.target.point ?? Number.NaN, fitted.target.point ?? Number.NaN, 1e-9, `target, ${study}`);
      expectWithin(undone.target.low ?? Number.NaN, fitted.target.low ?? Number.NaN, 1e-9, `lower end, ${study}`);
    }
  });

  it('are ranked by how far they moved the target', () => {
    const sizes = heavy.moves.map(({ targetMoved }) => Math.abs(targetMoved ?? Number.NaN));
    expect(sizes).toEqual([...sizes].sort((x, y) => y - x));
    expect(sizes[0]).toBeGreaterThan(sizes[2]);
  });

  it('beyond the limit are named, and said to be left', () => {
    const limited = band(compareTables(before, after, defaultSettings, 2), 'heavy');
    expect(limited.moves).toHaveLength(2);
    expect(limited.notRefitted).toHaveLength(1);
    expect([...limited.moves.map(({ study }) => study), ...limited.notRefitted].sort()).toEqual([a, b, c].sort());
    expect(limited.limits).toBe(
      '3 changed studies reach this band; the 2 with most rows were refitted, so that one of the other 1 may have moved more',
    );
  });
});

describe('a change that the regression does not read', () => {
  it.each([
    ['a note', (arm: Arm) => ({ ...arm, note: 'read anew' })],
    ['the name of an arm', (arm: Arm) => ({ ...arm, arm: `${arm.arm} *` })],
    ['a row of another outcome', (arm: Arm) => (arm.outcome === 'strength' ? { ...arm, n: (arm.n ?? 0) + 1 } : arm)],
  ])('of %s is listed and moves nothing', (_what, change) => {
    const study = arms.find(({ outcome }) => outcome === 'strength')?.study;
    const comparison = compareTables(
      arms,
      arms.map((arm) => (arm.study === study ? change(arm) : arm)),
      defaultSettings,
    );
    expect(comparison.same).toBe(false);
    expect(comparison.studies.changed.map((one) => one.study)).toEqual([study]);
    for (const one of comparison.bands) {
      expect(one).toMatchObject({ slopeMoved: 0, targetMoved: 0, moves: [], untouched: [study] });
    }
  });
});

describe('a band that one table lacks', () => {
  const heavyOnly = arms.filter((arm) => (arm.load_pct_1rm ?? 0) >= 60);

  it.each([
    ['old', heavyOnly, arms, 'came'],
    ['new', arms, heavyOnly, 'went'],
  ] as const)('in the %s one has a reason in the place of its answer', (side, before, after, targetChange) => {
    const light = band(compareTables(before, after, defaultSettings), 'light');
    const missing = side === 'old' ? light.before : light.after;
    expect(missing).toMatchObject({ rows: 0, studies: 0, slope: null, studiedReserve: null });
    expect(missing.reason).toMatch(/row/u);
    expect(light).toMatchObject({ slopeMoved: null, targetMoved: null, targetChange });
    expect(light.reason).toMatch(/^no target: no fit was possible, since /u);
  });

  it('in both has no answer and no moves', () => {
    const light = band(compareTables(heavyOnly, heavyOnly.slice(0, -1), defaultSettings), 'light');
    expect(light).toMatchObject({ targetChange: 'none', slopeMoved: null, moves: [] });
  });

  it('may be the only one: an empty table compared with the shipped one', () => {
    const comparison = compareTables([], arms, defaultSettings);
    expect(comparison.studies.added).toEqual(names);
    expect(band(comparison, 'heavy').moves.length).toBe(studiesIn(1).length);
  });
});

it('a study without which there is no target goes first', () => {
  // Only one study trained near failure: without it there is nothing that growth could be a share of.
  const [other, ...studies] = studiesIn(0);
  const near = studies.at(-1) ?? '';
  const table = arms.filter(({ study, reserve_reps }) => study === near || (reserve_reps ?? 0) >= 1);
  const before = table.filter(({ study }) => study !== near && study !== other);
  const light = band(compareTables(before, table, defaultSettings), 'light');
  expect(light.targetChange).toBe('came');
  expect(light.moves.map(({ study, targetChange }) => [study, targetChange])).toEqual([
    [near, 'came'],
    [other, 'moved'],
  ]);
  expect(light.moves[0]).toMatchObject({ targetMoved: null, reason: expect.stringMatching(/nobody here trained to/u) });
  const back = band(compareTables(table, before, defaultSettings), 'light');
  expect([back.targetChange, back.moves[0].study, back.moves[0].targetChange]).toEqual(['went', near, 'went']);
});

it.each(['log', 'quadratic', 'spline'] as const)(
  'with the %s curve the slope is the mean over the reserve shown',
  (curve) => {
    const settings = settingsSchema.parse({ curve, split: null });
    const comparison = compareTables(without(names[0]), arms, settings);
    const all = band(comparison, 'all');
    const [analysed] = bandsOf(arms, settings);
    const [start] = analysed.curvePoints;
    const end = analysed.curvePoints.at(-1);
    expect(all.after.studiedReserve).toEqual(analysed.studiedReserve);
    const mean = ((end?.estimate ?? Number.NaN) - start.estimate) / (analysed.studiedReserve?.high ?? Number.NaN);
    expectWithin(all.after.slope?.estimate ?? Number.NaN, mean, 1e-13, 'mean slope');
    expect(all.moves[0]).toMatchObject({ study: names[0], change: 'added' });
  },
);
