/** What is said of people without end agrees with the widths beside it, whatever the weights. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { statePeople } from '../../../scripts/terminal/planReport.ts';
import { readArms } from '../../../src/evidence/table.ts';
import {
  findWidening,
  LIMIT_WORDS,
  stateLimit,
  stateLimitWidth,
  WIDENING_WORDS,
} from '../../../src/figures/plan/limitWords.ts';
import { writeProtocol } from '../../../src/figures/plan/protocol.ts';
import { findPeople } from '../../../src/model/plan/peopleNeeded.ts';
import { answerPlan } from '../../../src/model/plan/planAnswer.ts';
import { planStudy } from '../../../src/model/plan/plannedStudy.ts';
import { openPlanning } from '../../../src/model/plan/planningBase.ts';
import { describePlanning } from '../../../src/model/plan/planningFacts.ts';
import { defaultSettings } from '../../../src/model/settings.ts';

const { arms } = readArms(readFileSync(new URL('../../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const wide = (width: number) => ({
  point: 1,
  low: 0,
  high: width,
  width,
  widthMissing: null,
  refused: 0,
  unbounded: 0,
});
const endless = { ...wide(1), high: null, width: null, widthMissing: 'no-upper-end' as const };
const none = { ...endless, point: null, low: null, widthMissing: 'no-target' as const };

describe('people without end', () => {
  it('are held against what is expected, then against today, as widths are told', () => {
    const beside = { before: wide(0.91), after: wide(0.902) };
    expect([0.945, 0.904, 0.62].map((width) => findWidening(wide(width), beside))).toEqual(['expected', null, null]);
    expect(findWidening(wide(0.93), { before: wide(0.91), after: wide(0.95) })).toBe('today');
    expect(findWidening(endless, beside)).toBe('expected');
    expect(findWidening(wide(3), { before: endless, after: endless })).toBeNull();
    expect(findWidening(none, beside)).toBeNull();
    expect(findWidening(wide(3), { before: none, after: null })).toBeNull();
  });

  it('narrow it only so far where they narrow it', () => {
    expect(stateLimit(wide(0.62), { before: wide(0.91), after: wide(0.75) }, { weighting: 'mixed' })).toBe(
      `With people without end: 0.62 wide. ${LIMIT_WORDS}`,
    );
  });

  it('widen it again, with the reason that the weights make true', () => {
    const beside = { before: wide(0.91), after: wide(0.9) };
    expect(stateLimit(wide(0.94), beside, { weighting: 'mixed' })).toBe(
      `More people may widen it again (with people without end: 0.94 wide). ${WIDENING_WORDS.mixed}`,
    );
    expect(stateLimit(endless, beside, { weighting: 'precision' })).toMatch(
      /people without end: no upper end\).*A larger study weighs/u,
    );
    expect(stateLimit(wide(0.94), beside, { weighting: 'equal' })).toMatch(/Every row weighs the same here/u);
    expect(stateLimit(wide(0.94), { before: wide(0.91), after: wide(0.92) }, { weighting: 'mixed' })).toMatch(
      /^More people may widen it \(with/u,
    );
    expect(stateLimit(wide(0.93), { before: wide(0.91), after: wide(0.95) }, { weighting: 'mixed' })).toBe(
      `With people without end: 0.93 wide, wider than today. ${WIDENING_WORDS.mixed}`,
    );
    expect(stateLimitWidth(wide(0.93), { before: wide(0.91), after: wide(0.95) })).toBe('0.93 wide, wider than today');
  });

  it('are told of a plan that more people widen in its protocol and at the terminal, without a promise that fails', () => {
    const planning = openPlanning(arms, defaultSettings);
    const plan = planStudy(
      'parallel',
      [5, 10].map((reserve) => ({ load: 'light' as const, reserve, people: 3 })),
    );
    const context = { table: 'arms.csv', dataVersion: '1', isDemonstration: true, address: '' };
    const text = writeProtocol(describePlanning(planning, arms), answerPlan(planning, plan), context);
    expect(text).toContain('More people may widen it again (with people without end: 0.94 wide)');
    expect(text).not.toContain(LIMIT_WORDS);
    expect(statePeople(findPeople(planning, plan, 'light', 0.905))).toBe(
      'light: no wider than 0.905 with 3 people an arm, 6 in all; not every larger number that was tried is enough; without end of people 0.94 wide, wider than with these people',
    );
    expect(statePeople(findPeople(planning, plan, 'light', 1))).toMatch(
      /no wider than 1 today already, with nobody more/u,
    );
  });
});
