/** The set that tests of advice start from. */
import type { Situation } from '../../src/practice/situation.ts';

/** A set for growth of a trained lifter on an exercise that cannot pin, at a load in per cent of 1RM. */
export const at = (load: number): Situation => ({
  purpose: 'growth',
  load,
  planned: 5,
  exercise: { name: 'any', canPin: false, stoppable: true, partials: true, relation: null },
  company: 'alone',
  status: 'trained',
  hoursToEvent: null,
  judgement: { bias: 0, spread: 0 },
});
