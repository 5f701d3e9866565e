/**
 * What the guide says is what it does: the text of every step held to the two analyses that stand before and after its
 * change, from many start settings, on drawn parts of the shipped table, and on tables on which it would easily be false.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Arm } from '../../../src/evidence/schema.ts';
import { readArms } from '../../../src/evidence/table.ts';
import { RESERVE_BASES } from '../../../src/evidence/vocabulary.ts';
import { GUIDE_STEPS } from '../../../src/islands/evidence/guideSteps.ts';
import { CURVES, type SettingsInput, WEIGHTINGS } from '../../../src/model/settings.ts';
import { type Cells, makeArms } from '../../support/tables.ts';
import { CHECKS, checkRefusal } from './guideChecks.ts';
import { goThrough, type Told } from './guideThrough.ts';

const { arms: shipped } = readArms(readFileSync('data/arms.csv', 'utf8'), 'arms.csv');
const growth = shipped.filter(({ outcome }) => outcome === 'growth');
const studies = [...new Set(growth.map(({ study }) => study))];
const TITLES = Object.keys(CHECKS);

const STARTS: readonly (readonly [string, SettingsInput])[] = [
  ...CURVES.map((curve) => [`curve ${curve}`, { curve }] as const),
  ...WEIGHTINGS.map((weighting) => [`weighting ${weighting}`, { weighting }] as const),
  ...[40, 60, 62.5, 76, 80, 84, 85, 90, null].map((split) => [`split ${split}`, { split }] as const),
  ...(['flexible', 'log', 'line'] as const).flatMap((curve) => [
    [`strength, ${curve}`, { outcome: 'strength', curve }] as const,
    [`strength together, ${curve}`, { outcome: 'strength', split: null, curve }] as const,
  ]),
  ...RESERVE_BASES.map((basis) => {
    const reserveBasis = RESERVE_BASES.filter((one) => one !== basis);
    return [`without ${basis}`, { include: { reserveBasis } }] as const;
  }),
  ['only prescribed', { include: { reserveBasis: ['prescribed'] } }],
  ['standardised, no errors shared', { metric: 'standardised', rho: 0, weighting: 'precision', curve: 'spline' }],
];

/** Goes through a step and holds it to its word; true where it asked. */
function hold(title: string, input: SettingsInput, arms: readonly Arm[] = shipped): boolean {
  const gone = goThrough(title, input, arms);
  if (gone.told) CHECKS[title](gone.told);
  else checkRefusal(gone.whyNot, gone.before, arms);
  return gone.told !== null;
}

function tell(title: string, input: SettingsInput, arms: readonly Arm[]): Told {
  expect(hold(title, input, arms)).toBe(true);
  const { told, whyNot } = goThrough(title, input, arms);
  if (!told) throw new Error(`expected “${title}” to ask: ${whyNot}`);
  return told;
}

function refuse(title: string, input: SettingsInput, arms: readonly Arm[]): string | null {
  expect(hold(title, input, arms)).toBe(false);
  return goThrough(title, input, arms).whyNot;
}

describe.each(STARTS)('from %s', (_, input) => {
  it.each(TITLES)('“%s” says what it does', (title) => {
    hold(title, input);
  });
});

describe('every step', () => {
  it('is held to what it does, and asks at most of these starts', () => {
    expect(TITLES).toEqual(GUIDE_STEPS.map(({ title }) => title));
    for (const title of TITLES) {
      const asked = STARTS.filter(([, input]) => goThrough(title, input, shipped).told);
      expect(asked.length, title).toBeGreaterThan(STARTS.length / 2);
    }
  });

  it('says what it does on any part of the table', () => {
    let asked = 0;
    const parts = fc.subarray(studies, { minLength: 3, maxLength: 12 });
    const choices = fc.record({
      curve: fc.constantFrom(...CURVES),
      weighting: fc.constantFrom(...WEIGHTINGS),
      split: fc.constantFrom(null, 45, 60, 75, 82),
    });
    fc.assert(
      fc.property(parts, choices, (kept, input) => {
        const arms = growth.filter(({ study }) => kept.includes(study));
        for (const title of TITLES) if (hold(title, input, arms)) asked++;
      }),
      { seed: 5, numRuns: 40 },
    );
    expect(asked).toBeGreaterThan(100);
  });
});

/** Far below the error of a row: studies do not differ, and yet no row lies on the line exactly, mm. */
const HARDLY_OFF = 0.05;

/** Studies of one row each at these reserves; growth falls by a line, which they lie off in turn by `scatter` mm. @param first number of their years */
function makeStudies(
  reserves: readonly number[],
  cells: Cells = {},
  first = 0,
  scatter = HARDLY_OFF,
): readonly Cells[] {
  return reserves.map((reserve, i) => ({
    study: `Wren ${2001 + first + i}`,
    year: String(2001 + first + i),
    reserve_reps: String(reserve),
    attempted_failure: reserve === 0 ? 'yes' : 'no',
    followup_mean: String(44 - 0.3 * reserve + (i % 2 ? scatter : -scatter)),
    ...cells,
  }));
}

describe('on a table of its own', () => {
  const many = [0, 0, 1, 2, 2, 3, 4, 5, 6, 8];

  it('“Let studies differ” says that there is nothing to share out, where studies do not differ', () => {
    const alike = tell('Let studies differ', {}, makeArms(makeStudies(many)));
    expect([alike.is?.tau2, alike.is?.omega2]).toEqual([0, 0]);
    expect(alike.lesson).toMatch(/^With heavy loads, results differ by no more than their own error/u);
    const apart = tell('Let studies differ', { curve: 'line' }, makeArms(makeStudies(many, {}, 0, 1.5)));
    expect(apart.lesson).toMatch(/^With heavy loads, results differ by more than their own error/u);
  });

  it('“Count by precision” says that no mark grew, where rows counted so before', () => {
    expect(tell('Count by precision', {}, makeArms(makeStudies(many))).lesson).toMatch(/hardly changed/u);
  });

  it('“Straighten or bend” names the parabola that stands for the flexible curve at three reserves, either way', () => {
    const arms = makeArms(makeStudies([0, 0, 0, 2, 2, 2, 5, 5, 5]));
    const shapes = (['flexible', 'line'] as const).map((curve) => tell('Straighten or bend', { curve }, arms).question);
    expect(shapes[0]).toContain('Now the straight line takes the place of the parabola.');
    expect(shapes[1]).toContain('Now the parabola takes the place of the straight line.');
  });

  it('“Straighten or bend” asks of the loads that are followed: not where those have two reserves and others more', () => {
    const light = makeStudies(many, { load_pct_1rm: '40' });
    const heavy = makeStudies([0, 0, 0, 4, 4, 4], {}, many.length);
    const arms = makeArms([...light, ...heavy]);
    expect(refuse('Straighten or bend', {}, arms)).toMatch(/with heavy loads/u);
    expect(tell('Straighten or bend', { curve: 'log' }, arms).question).toContain('the logarithm does not.');
  });

  it('“Move the split” counts heavy rows that have no fit, and a single one', () => {
    const light = makeStudies(many, { load_pct_1rm: '40' });
    const lone = makeStudies([1], { load_pct_1rm: '65' }, many.length);
    const { rings, name } = tell('Move the split', {}, makeArms([...light, ...lone]));
    expect([name, rings.spots.length]).toEqual(['light', 1]);
  });

  it('“Move the split” knows that a load at the new split stays heavy', () => {
    const arms = makeArms(makeStudies(many, { load_pct_1rm: '70' }));
    expect(refuse('Move the split', {}, arms)).toMatch(/lifted at 60 to below 70\u00a0%/u);
  });

  it('“Doubt the reserve” does not take silence for measuring', () => {
    const said = makeStudies(many, { reserve_basis: 'reported' });
    const silent = makeStudies([1, 3], { reserve_basis: '' }, many.length);
    expect(refuse('Doubt the reserve', {}, makeArms([...said, ...silent]))).toMatch(/^Every study that says/u);
  });
});
