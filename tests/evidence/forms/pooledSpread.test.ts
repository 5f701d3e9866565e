/**
 * SDs pooled from other rows: by hand against the formulas, and over 500 invented tables, half of whose rows print no
 * spread, against a truth that was put in.
 */
import { describe, expect, it } from 'vitest';
import { computeEffect } from '../../../src/evidence/effects.ts';
import { poolSpreads } from '../../../src/evidence/pooledSpread.ts';
import { fitEffects } from '../../../src/model/bandFit.ts';
import { inferContrast } from '../../../src/model/robust.ts';
import { selectRows } from '../../../src/model/selection.ts';
import { settingsSchema } from '../../../src/model/settings.ts';
import { makeRandom } from '../../../src/numerics/random.ts';
import { expectRelative } from '../../support/closeness.ts';
import { type Cells, makeArms } from '../../support/tables.ts';

const BARE: Cells = { baseline_sd: '', followup_sd: '', correlation: '' };

describe('a pooled spread', () => {
  const rows: readonly Cells[] = [
    { study: 'A 2001', year: '2001', n: '10', baseline_sd: '6', followup_sd: '6.45' },
    { study: 'B 2002', year: '2002', n: '30', baseline_sd: '4', followup_sd: '4.3' },
    { study: 'C 2003', year: '2003', n: '16', ...BARE },
    { study: 'D 2004', year: '2004', measure: 'area', ...BARE },
  ];
  const arms = makeArms(rows);
  const choice = { metric: 'log-ratio', assumedCorrelation: 0.8 } as const;
  // k² = (10 · 0.15² + 30 · 0.1²)/40 before as after, all means being 40 and 43.
  const k2 = (10 * 0.0225 + 30 * 0.01) / 40;

  it('is the mean of CV² by people, and gives a row without a spread its variance', () => {
    const effect = computeEffect(arms[2], { ...choice, pooled: poolSpreads(arms, 'missing') });
    if (typeof effect === 'string') throw new Error(effect);
    expectRelative(effect.y, Math.log(43 / 40), 1e-13, 'y');
    expectRelative(effect.v, (2 * k2 * 0.2) / 16 + (k2 ** 2 * (1 - 0.64)) / 16 ** 2, 1e-12, 'v');
    expect(effect.restsOn).toBe('pooled');
    expect(effect.steps.map(({ how }) => how).join()).toMatch(/pooled over 2 rows of 2 studies/u);
  });

  it('leaves rows with a spread of their own as they are, unless it is asked for all', () => {
    const own = computeEffect(arms[0], choice);
    expect(computeEffect(arms[0], { ...choice, pooled: poolSpreads(arms, 'missing') })).toEqual(own);
    const all = computeEffect(arms[0], { ...choice, pooled: poolSpreads(arms, 'all') });
    if (typeof all === 'string') throw new Error(all);
    expect(all.restsOn).toBe('pooled');
  });

  it('is none where no other row of the measure prints an SD, and where only one study does', () => {
    const of = (chosen: typeof arms, at: number) =>
      computeEffect(chosen[at], { ...choice, pooled: poolSpreads(chosen, 'missing') });
    expect(of(arms, 3)).toMatch(/no row of growth by area prints an SD/u);
    expect(of([arms[0], arms[2]], 1)).toMatch(/only 1 study prints an SD/u);
  });

  it('by two different coefficients moves the effect by (k₂² − k₁²)/(2n)', () => {
    const uneven = makeArms([rows[0], { ...rows[1], followup_sd: '8.6' }, rows[2]]);
    const effect = computeEffect(uneven[2], { ...choice, pooled: poolSpreads(uneven, 'missing') });
    if (typeof effect === 'string') throw new Error(effect);
    const after = (10 * 0.0225 + 30 * 0.04) / 40;
    expectRelative(effect.y, Math.log(43 / 40) + (after - k2) / 32, 1e-12, 'y');
  });
});

const TABLES = 500;
const STUDIES = 14;
const TRUTH = { start: 0.08, slope: -0.006 } as const;
/** Between studies, log ratio. */
const TAU = 0.015;
const RESERVES = [0, 2, 5] as const;
/** Coefficients of variation and correlation of the people that are drawn. */
const PEOPLE = { cv: 0.15, correlation: 0.9 } as const;

/** Means of people before and after with all their digits; every second row, by chance, prints no SD. */
function drawTable(random: ReturnType<typeof makeRandom>): Cells[] {
  return Array.from({ length: STUDIES }, (_, k) => {
    const ofStudy = TAU * random.normal();
    const n = 10 + Math.floor(15 * random.uniform());
    return RESERVES.map((reserve): Cells => {
      const growth = Math.exp(TRUTH.start + TRUTH.slope * reserve + ofStudy);
      const people = Array.from({ length: n }, () => {
        const z = random.normal();
        const e = PEOPLE.correlation * z + Math.sqrt(1 - PEOPLE.correlation ** 2) * random.normal();
        return [40 * (1 + PEOPLE.cv * z), 40 * growth * (1 + PEOPLE.cv * e)] as const;
      });
      const [before, after] = [0, 1].map((time) => people.map((one) => one[time]));
      const isMissing = random.uniform() < 0.5;
      return {
        study: `Study ${k}`,
        arm: `reserve ${reserve}`,
        attempted_failure: '',
        reserve_reps: String(reserve),
        n: String(n),
        baseline_mean: String(mean(before)),
        baseline_sd: isMissing ? '' : String(sd(before)),
        followup_mean: String(mean(after)),
        followup_sd: isMissing ? '' : String(sd(after)),
        correlation: '',
      };
    });
  }).flat();
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const sd = (values: readonly number[]) => {
  const centre = mean(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / (values.length - 1));
};

describe('a table whose SDs are missing at random', () => {
  it.each([{ missingSds: 'off' }, { missingSds: 'missing' }, { missingSds: 'all' }] as const)(
    'gives the slope that was put in, its 95 % interval holding it in 93 to 97 %: $missingSds',
    ({ missingSds }) => {
      const settings = settingsSchema.parse({
        curve: 'line',
        split: null,
        missingSds,
        assumedCorrelation: PEOPLE.correlation,
      });
      const random = makeRandom(2023);
      const found = Array.from({ length: TABLES }, () => {
        const { effects } = selectRows(makeArms(drawTable(random)), settings);
        const { fit } = fitEffects(effects, { ...settings, answerOnly: true }).outcome;
        return fit && { rows: effects.length, ...inferContrast(fit.inference, [0, 1], 0.95) };
      }).filter((fit) => fit !== null);
      expect(found.length).toBeGreaterThan(0.99 * TABLES);
      expect(mean(found.map(({ rows }) => rows)) > 0.9 * STUDIES * RESERVES.length).toBe(missingSds !== 'off');
      const estimates = found.map(({ estimate }) => estimate);
      const held = found.filter(({ ciLow, ciHigh }) => ciLow <= TRUTH.slope && TRUTH.slope <= ciHigh).length;
      console.log(
        `#${missingSds} bias ${(mean(estimates) - TRUTH.slope).toPrecision(3)} se ${(sd(estimates) / Math.sqrt(found.length)).toPrecision(3)} spread ${sd(estimates).toPrecision(3)} held ${held / found.length} n ${found.length} width ${mean(found.map(({ ciLow, ciHigh }) => ciHigh - ciLow)).toPrecision(3)}`,
      );
      // Three standard errors of the mean over the tables.
      expect(Math.abs(mean(estimates) - TRUTH.slope)).toBeLessThan((3 * sd(estimates)) / Math.sqrt(found.length));
      expect(held / found.length).toBeGreaterThan(0.93);
      expect(held / found.length).toBeLessThan(0.97);
    },
  );
});
