/** The calculator's address: what is written is read again, and a bad part costs only itself. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TRAINING_STATUSES } from '../../../src/evidence/vocabulary.ts';
import {
  type Choices,
  DEFAULT_CHOICES,
  readChoices,
  writeChoices,
} from '../../../src/islands/target/situationAddress.ts';
import { COMPANIES } from '../../../src/practice/cautions.ts';
import { JUDGEMENTS } from '../../../src/practice/judgement.ts';
import { PURPOSES } from '../../../src/practice/situation.ts';

const EXERCISES = ['bench press', 'leg press'];
const tenth = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((value) => value / 10);
const choices: fc.Arbitrary<Choices> = fc.record({
  purpose: fc.constantFrom(...PURPOSES),
  exercise: fc.constantFrom('another', ...EXERCISES),
  load: tenth(20, 95),
  planned: fc.integer({ min: 1, max: 30 }),
  pins: fc.boolean(),
  stops: fc.boolean(),
  partials: fc.boolean(),
  company: fc.constantFrom(...COMPANIES),
  status: fc.constantFrom(...TRAINING_STATUSES),
  hours: fc.option(tenth(0, 336), { nil: null }),
  judgement: fc.constantFrom(...JUDGEMENTS),
  sets: fc.array(fc.record({ said: fc.integer({ min: 0, max: 30 }), done: fc.integer({ min: 0, max: 30 }) }), {
    maxLength: 20,
  }),
  keep: fc.integer({ min: 50, max: 99 }),
  confidence: fc.integer({ min: 50, max: 99 }),
});

describe('the calculator’s address', () => {
  it('is empty for the defaults', () => expect(writeChoices(DEFAULT_CHOICES)).toBe(''));

  it('is read as it was written', () => {
    fc.assert(
      fc.property(choices, (chosen) => {
        const { values, unread } = readChoices(writeChoices(chosen), EXERCISES);
        expect(unread).toEqual([]);
        expect({ ...DEFAULT_CHOICES, ...values }).toEqual(chosen);
      }),
      { seed: 7, numRuns: 500 },
    );
  });

  it.each([
    ['load=abc', 'load'],
    ['load=96', 'load'],
    ['load=1e3', 'load'],
    ['planned=2.5', 'planned'],
    ['exercise=juggling', 'exercise'],
    ['hours=-1', 'hours'],
    ['sets=2-31', 'sets'],
    ['sets=2', 'sets'],
    ['sets=2-4,3-3', 'sets'],
    [`sets=${'2-4+'.repeat(20)}2-4`, 'sets'],
    ['bias=1', 'bias'],
    ['company=friend', 'company'],
    ['__proto__=1', '__proto__'],
    ['colour=red', 'colour'],
  ])('with %s names the part that it did not take', (query, name) => {
    const { values, unread } = readChoices(`?keep=80&${query}`, EXERCISES);
    expect(unread).toEqual([name]);
    expect(values).toEqual({ keep: 80 });
  });

  it('of any text never throws', () => {
    fc.assert(
      fc.property(fc.string(), (query) => {
        readChoices(query, EXERCISES);
      }),
      { seed: 9, numRuns: 500 },
    );
  });
});
