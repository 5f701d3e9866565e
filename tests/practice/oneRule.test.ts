/**
 * One rule for whole numbers, whatever the situation: what is told lies inside the interval that is shown, staying
 * fresh is never closer to failure than growth, and sentence, programme line and choices give the same numbers.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { RELATIONS } from '../../src/evidence/repetitions.ts';
import { analyseForPractice } from '../../src/model/full.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { showTarget } from '../../src/model/wholeRepetitions.ts';
import { advise } from '../../src/practice/advice.ts';
import { COMPANIES } from '../../src/practice/cautions.ts';
import { TAKEN_AS_SAID } from '../../src/practice/judgement.ts';
import { checkLine } from '../../src/practice/programme/line.ts';
import { tellLifter } from '../../src/practice/tellLifter.ts';
import { arms } from './programme/shipped.ts';
import { at } from './setAt.ts';

/** Shares and confidences that a reader may ask for, curves, and tables of other sizes. */
const analyses = [
  ...[0.5, 0.8, 0.9, 0.97].map((keptShare) => analyseForPractice(arms, settingsSchema.parse({ keptShare }))),
  ...[0.6, 0.99].map((confidence) => analyseForPractice(arms, settingsSchema.parse({ confidence }))),
  analyseForPractice(arms, settingsSchema.parse({ curve: 'line' })),
  analyseForPractice(arms, settingsSchema.parse({ curve: 'flexible', split: 70 })),
  analyseForPractice(
    arms.filter(({ study }) => /^[A-K]/u.test(study)),
    settingsSchema.parse({}),
  ),
];

const situations = fc.record({
  load: fc.double({ min: 20, max: 95, noNaN: true }),
  canPin: fc.boolean(),
  relation: fc.constantFrom(null, ...RELATIONS),
  company: fc.constantFrom(...COMPANIES),
  status: fc.constantFrom('untrained' as const, 'trained' as const),
  hoursToEvent: fc.option(fc.double({ min: 0, max: 120, noNaN: true }), { nil: null }),
  bias: fc.constantFrom(0, 0, 0.95, -1.2, 2.5),
});

it('holds in 5,000 situations', () => {
  const seen = { own: 0, fresh: 0, pinned: 0, asked: 0, lines: 0 };
  fc.assert(
    fc.property(fc.constantFrom(...analyses), situations, (analysis, { load, canPin, relation, bias, ...rest }) => {
      const exercise = { ...at(load).exercise, canPin, relation };
      const situation = { ...at(load), ...rest, exercise, judgement: { bias, spread: 1 } };
      const growth = advise(analysis, { ...situation, purpose: 'growth' });
      const fresh = advise(analysis, { ...situation, purpose: 'staying fresh' });
      for (const { reserve, sentence } of [growth, fresh]) {
        if (reserve) expect(sentence).toBe(tellLifter(reserve));
        if (reserve && canPin && rest.company === 'alone') {
          seen.pinned++;
          expect(reserve.least).toBeGreaterThanOrEqual(1);
        }
      }

      const { point, low, high } = growth.target;
      if (growth.reserve && growth.adjustments.length === 0 && point !== null && low !== null) {
        seen.own++;
        const toSay = (reserve: number) => Math.max(0, reserve - bias);
        const told = showTarget({ point: toSay(point), low: toSay(low), high: high === null ? null : toSay(high) });
        expect(growth.reserve).toEqual(told.whole);
        expect(growth.reserve.least).toBeGreaterThanOrEqual(told.shown.low);
        expect(growth.reserve.most).toBeLessThanOrEqual(told.shown.high ?? Number.POSITIVE_INFINITY);
        if (bias === 0) expect(growth.reserve).toEqual(growth.target.whole);
        expect(growth.choices.map(({ reserve }) => reserve)).toEqual(
          expect.arrayContaining([growth.reserve.least, growth.reserve.most]),
        );
      }

      if (rest.hoursToEvent === null) {
        seen.asked++;
        expect(fresh.reserve).toBeNull();
        expect(fresh.sentence).toMatch(/^Say how many hours/u);
      } else if (growth.reserve && fresh.reserve) {
        seen.fresh++;
        expect(fresh.reserve.least).toBeGreaterThanOrEqual(growth.reserve.least);
      }

      const line = {
        line: 2,
        day: 1,
        exercise: { ...exercise, muscles: ['quadriceps'] },
        sets: 3,
        repetitions: 5,
        load,
        reserve: 2,
        possible: null,
        how: null,
        company: rest.company,
      };
      const asSaid = advise(analysis, {
        ...situation,
        purpose: 'growth',
        hoursToEvent: null,
        judgement: TAKEN_AS_SAID,
      });
      const { advised } = checkLine(analysis, line, rest.status);
      if (advised.reserve) seen.lines++;
      expect([advised.reserve, advised.sentence]).toEqual([asSaid.reserve, asSaid.sentence]);
    }),
    { seed: 21, numRuns: 5000 },
  );
  for (const count of Object.values(seen)) expect(count).toBeGreaterThan(200);
});
