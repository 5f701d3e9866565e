/** Plans, questions and settings in an address and back: the same, whatever is written there. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../../src/evidence/table.ts';
import { PLAN_NAMES } from '../../../src/figures/plan/planWords.ts';
import { readPlan, writePlan } from '../../../src/islands/analysis/plannedStudyAddress.ts';
import { ASKED_WIDTHS, type PlanPage, readPage, writePage } from '../../../src/islands/plan/planAddress.ts';
import { defaultPlans } from '../../../src/islands/plan/plans.ts';
import type { PlannedStudy } from '../../../src/model/plan/plannedStudy.ts';
import { defaultSettings } from '../../../src/model/settings.ts';
import { CELLS, CHARACTERS } from '../../support/awkwardTexts.ts';
import { anySettings } from '../../support/settingsArbitrary.ts';

const { arms } = readArms(readFileSync(new URL('../../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');

const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => (value === 0 ? 0 : value));
const band = fc.constantFrom('light' as const, 'heavy' as const, 'all' as const);
const maybe = <Value>(of: fc.Arbitrary<Value>) => fc.option(of, { nil: null });
const plans: fc.Arbitrary<PlannedStudy> = fc.record({
  design: fc.constantFrom('parallel' as const, 'within-person' as const),
  arms: fc.array(fc.record({ load: fc.oneof(band, number), reserve: number, people: number }), { maxLength: 12 }),
  weeks: maybe(number),
  coefficientOfVariation: maybe(number),
  correlation: maybe(number),
  // Half of a pair of UTF-16 stands in no address.
  measure: maybe(
    fc.oneof(
      fc.string({ minLength: 1 }),
      fc.constantFrom(...[...CELLS, ...CHARACTERS].filter((text) => text !== '' && !/\p{Cs}/u.test(text))),
    ),
  ),
});
const pages: fc.Arbitrary<PlanPage> = fc.record({
  settings: anySettings(arms),
  plans: fc
    .tuple(plans, fc.subarray([...PLAN_NAMES], { minLength: 1 }), fc.array(plans, { minLength: 3, maxLength: 3 }))
    .map(([, names, three]) => Object.fromEntries(names.map((name, i) => [name, three[i]]))),
  need: maybe(
    fc.record({
      plan: fc.constantFrom(...PLAN_NAMES),
      band,
      width: fc.double({ min: ASKED_WIDTHS.from, max: ASKED_WIDTHS.to, noNaN: true }),
    }),
  ),
  place: maybe(
    fc.record({
      design: fc.constantFrom('parallel' as const, 'within-person' as const),
      arms: fc.constantFrom(2 as const, 3 as const),
      people: fc.nat(),
      band: maybe(band),
    }),
  ),
});

describe('the address', () => {
  it('gives back what was written, of any plans, questions and settings', () => {
    fc.assert(
      fc.property(pages, (page) => {
        expect(readPage(writePage(page))).toEqual({ ...page, notice: null });
      }),
      { seed: 20261126, numRuns: 300 },
    );
  });

  it('is short and to be read: nothing at the defaults, arms as load, reserve and people', () => {
    const start: PlanPage = {
      settings: defaultSettings,
      plans: defaultPlans(defaultSettings),
      need: null,
      place: null,
    };
    expect(writePage(start)).toBe('');
    expect(readPage('')).toEqual({ ...start, notice: null });
    const { A } = start.plans;
    if (!A) throw new Error('expected a first plan');
    expect(
      writePage({
        ...start,
        settings: { ...defaultSettings, curve: 'log' },
        plans: { A: { ...A, weeks: 8, measure: 'muscle thickness' }, C: A },
        need: { plan: 'C', band: 'light', width: 0.6 },
        place: { design: 'within-person', arms: 3, people: 30, band: null },
      }),
    ).toBe(
      '?a=parallel+light_0_20+light_2_20+weeks_8+measure_muscle+thickness&c=parallel+light_0_20+light_2_20' +
        '&need=c_light_0.6&place=within-person_3_30_both&v=2&curve=log',
    );
  });

  it('begins with all loads in one plan where the settings do not tell loads apart', () => {
    const { plans: found, notice } = readPage('?v=2&split=none');
    expect(found.A?.arms.map(({ load }) => load)).toEqual(['all', 'all']);
    expect(notice).toBeNull();
  });

  it.each([
    ['?a=parallel+light_0', 'a'],
    ['?a=crossover+light_0_20', 'a'],
    ['?a=parallel+light_0_20_3', 'a'],
    ['?a=parallel+light_x_20', 'a'],
    ['?a=parallel+light_0_Infinity', 'a'],
    ['?a=parallel+medium_0_20', 'a'],
    ['?a=parallel+cv_0.1+cv_0.2', 'a'],
    ['?a=parallel+light_0_20&a=parallel', 'a'],
    ['?a=parallel+light_0_20+measure_', 'a'],
    [`?a=parallel${'+light_0_20'.repeat(21)}`, 'a'],
    ['?b=<img src=x onerror=alert(1)>', 'b'],
    ['?place=parallel_4_40_light', 'place'],
    ['?place=parallel_2_4.5_light', 'place'],
    ['?place=parallel_2_40_medium', 'place'],
    ['?c=parallel+light_0_20&place=&b=', 'b, place'],
  ])('%s names what could not be read', (query, names) => {
    expect(readPage(query).notice).toBe(`Parts of the address could not be read and were left out: ${names}.`);
  });

  it.each(['a_light_-1', 'a_light_0', 'a_light_0.0001', 'a_light_31', 'd_light_1', 'a_light', ''])(
    'asks for no width where need=%s, and says what was expected',
    (written) => {
      const { need, notice } = readPage(`?need=${written}`);
      expect(need).toBeNull();
      expect(notice).toBe(
        'Parts of the address could not be read and were left out: need. Expected of “need”: a plan, its loads and a width from 0.05 to 30 repetitions, as in a_light_0.6.',
      );
    },
  );

  it('says what of the settings could not be read as well as what of the plans', () => {
    const { notice, plans: found } = readPage('?b=x&a=parallel+heavy_1_9&v=2&curve=zigzag');
    expect(notice).toMatch(/left out: b\..*stand at their defaults: curve\./u);
    expect(found).toEqual({ A: readPlan('parallel heavy_1_9') });
  });

  it('of any text never throws, and what it gives is written and read the same', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.constantFrom('a', 'b', 'c', 'need', 'place', 'v', 'x'), fc.string()), (parts) => {
        const { notice: _, ...page } = readPage(`?${new URLSearchParams(parts)}`);
        expect(readPage(writePage(page))).toEqual({ ...page, notice: null });
      }),
      { seed: 1, numRuns: 300 },
    );
    expect(
      readPlan(writePlan({ ...(defaultPlans(defaultSettings).A as PlannedStudy), measure: 'a measure_b' })),
    ).toEqual({
      ...defaultPlans(defaultSettings).A,
      measure: 'a measure_b',
    });
  });
});
