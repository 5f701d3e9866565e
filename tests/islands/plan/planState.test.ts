/** The page that plans between a reader, the address and its worker. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { readPlan } from '../../../src/islands/analysis/plannedStudyAddress.ts';
import { settleNeed } from '../../../src/islands/plan/need.ts';
import { type Built, createPlanPage, SIMULATED, START } from '../../../src/islands/plan/plan.state.ts';
import {
  addArm,
  changeArm,
  changeDesign,
  defaultPlans,
  removeArm,
  withoutPlan,
  withPlan,
} from '../../../src/islands/plan/plans.ts';
import { answerPlan } from '../../../src/model/plan/planAnswer.ts';
import type { PlannedStudy } from '../../../src/model/plan/plannedStudy.ts';
import { openPlanning } from '../../../src/model/plan/planningBase.ts';
import { describePlanning } from '../../../src/model/plan/planningFacts.ts';
import { makeArms } from '../../support/tables.ts';
import { pretendBrowser } from '../pretendBrowser.ts';

const SHIPPED = '/data/arms.csv';
const OWN = `own-table:${'a'.repeat(64)}`;
const rows = makeArms([{}]);
const planning = openPlanning(rows, START.settings);
const first = START.plans.A as PlannedStudy;
const opened = { facts: describePlanning(planning, rows), dataVersion: '12345678' };
const built: Built = {
  opened,
  answers: { A: answerPlan(planning, first) },
  place: { design: 'parallel', arms: 2, people: 40, band: null },
  search: { best: [], tried: 0, unsaid: 0, reason: 'no curve' },
  agreement: { both: 149, most: '3.7 %' },
};
const answerOf = (plan: PlannedStudy) => ({ ...answerPlan(planning, first), plan });
const other = readPlan('parallel heavy_1_9') as PlannedStudy;

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

describe('the page that plans', () => {
  it('shows what the build made and asks no worker at the defaults, and writes no address', () => {
    const browser = pretendBrowser();
    const state = createPlanPage(built, SHIPPED);
    const disconnect = state.connect();
    vi.advanceTimersByTime(1000);
    expect(state.answers.answers.value).toEqual(built.answers);
    expect([state.answers.pending.value, state.answers.isShown.value]).toEqual([false, true]);
    expect([browser.workers.length, browser.written.length]).toEqual([0, 0]);
    disconnect();
  });

  it('asks for each plan that is changed, takes the newest answer alone, and gives the address an entry', () => {
    const browser = pretendBrowser();
    const state = createPlanPage(built, SHIPPED);
    const disconnect = state.connect();
    state.setPlan('B', first);
    state.setPlan('B', other);
    const [worker] = browser.workers;
    expect(worker.askedFor('answer').map(({ request }) => request.plan)).toEqual([first, other]);
    expect(worker.cancelled).toEqual([worker.asked[0].id]);
    expect(state.answers.pending.value).toBe(true);
    worker.say({ id: worker.asked[0].id, result: answerOf(first) });
    expect(state.answers.answers.value.B).toBeUndefined();
    worker.answer('answer', { result: answerOf(other) });
    expect([state.answers.pending.value, state.answers.answers.value.B?.plan]).toEqual([false, other]);
    vi.advanceTimersByTime(1000);
    expect(browser.written).toEqual(['push ?a=parallel+light_0_20+light_2_20&b=parallel+heavy_1_9']);
    state.removePlan('B');
    expect(Object.keys(state.answers.answers.value)).toEqual(['A']);
    disconnect();
    expect(browser.written.at(-1)).toBe('push ');
  });

  it('reads plans, questions and settings of the address, and says what it could not read', () => {
    const browser = pretendBrowser(
      '?a=parallel+heavy_1_9&b=x&need=a_heavy_1.5&place=parallel_2_40_light&v=2&curve=log',
    );
    const state = createPlanPage(built, SHIPPED);
    const disconnect = state.connect();
    expect(state.page.value.plans).toEqual({ A: other });
    expect(state.notice.value).toMatch(/left out: b\./u);
    const [worker] = browser.workers;
    for (const name of ['open', 'answer', 'people', 'place']) {
      const [question] = worker.askedFor(name);
      expect(question.request, name).toMatchObject({ table: SHIPPED, settings: { curve: 'log' } });
    }
    expect(worker.askedFor('people')[0].request).toMatchObject({ plan: other, band: 'heavy', width: 1.5 });
    expect(worker.askedFor('place')[0].request.question).toMatchObject({ arms: 2, people: 40, band: 'light' });
    vi.advanceTimersByTime(1000);
    // What could not be read is put right in its place.
    expect(browser.written).toEqual([
      'replace ?a=parallel+heavy_1_9&need=a_heavy_1.5&place=parallel_2_40_light&v=2&curve=log',
    ]);
    disconnect();
  });

  it('shows nothing of the site’s table while the reader’s own is worked out, and nothing old beside an error', () => {
    const browser = pretendBrowser();
    const state = createPlanPage(built, OWN);
    const disconnect = state.connect();
    expect([state.answers.isShown.value, state.answers.answers.value]).toEqual([false, {}]);
    const [worker] = browser.workers;
    worker.answer('open', { result: { ...opened, dataVersion: 'aaaaaaaa' } });
    expect([state.answers.isShown.value, state.answers.pending.value]).toEqual([true, true]);
    worker.answer('answer', { result: answerOf(first) });
    expect(state.answers.pending.value).toBe(false);
    state.setPlan('A', other);
    worker.break();
    expect([state.answers.answers.value, state.answers.pending.value]).toEqual([{}, false]);
    expect(state.answers.failed.value.A).toMatch(/could not be loaded or started/u);
    state.answers.retry();
    expect([state.answers.failed.value, state.answers.pending.value]).toEqual([{}, true]);
    browser.workers[1].answer('open', { result: opened });
    browser.workers[1].answer('answer', { result: answerOf(other) });
    expect([state.answers.isShown.value, state.answers.pending.value]).toEqual([true, false]);
    disconnect();
  });

  it('hides everything where the table itself cannot be read, and says so once', () => {
    const browser = pretendBrowser();
    const state = createPlanPage(built, OWN);
    const disconnect = state.connect();
    browser.workers[0].answer('answer', { problem: 'it is gone' });
    browser.workers[0].answer('open', { problem: 'it is gone' });
    expect([state.answers.isShown.value, state.answers.pending.value]).toEqual([false, false]);
    expect(state.answers.problem.value).toBe('it is gone');
    state.answers.retry();
    expect(state.answers.problem.value).toBeNull();
    disconnect();
  });

  it('shows the other plans beside one that failed, and asks for that one alone again', () => {
    const browser = pretendBrowser();
    const state = createPlanPage(built, SHIPPED);
    const disconnect = state.connect();
    state.setPlan('B', other);
    const [worker] = browser.workers;
    worker.answer('answer', { problem: 'the matrix is singular' });
    const { answers } = state;
    expect([answers.isShown.value, answers.pending.value, answers.problem.value]).toEqual([true, false, null]);
    expect(answers.failed.value).toEqual({ B: 'the matrix is singular' });
    expect(Object.keys(answers.answers.value)).toEqual(['A']);
    answers.retry();
    expect(worker.askedFor('answer').map(({ request }) => request.plan)).toEqual([other, other]);
    expect([answers.failed.value, answers.pending.value]).toEqual([{}, true]);
    worker.answer('answer', { result: answerOf(other) });
    expect([answers.pending.value, Object.keys(answers.answers.value)]).toEqual([false, ['A', 'B']]);
    // A failure goes with its plan.
    state.setPlan('C', { ...other, weeks: 9 });
    worker.answer('answer', { problem: 'no' });
    state.removePlan('C');
    expect([answers.failed.value, answers.pending.value]).toEqual([{}, false]);
    disconnect();
  });

  it('asks again for people once their plan is another, and not when another plan is', () => {
    const browser = pretendBrowser();
    const state = createPlanPage(built, SHIPPED);
    const disconnect = state.connect();
    state.change({ need: { plan: 'A', band: 'light', width: 0.5 } });
    const [worker] = browser.workers;
    worker.answer('people', { result: { perArm: 30 } });
    expect(state.people.asked.value?.result).toMatchObject({ perArm: 30 });
    state.setPlan('B', other);
    expect(worker.askedFor('people')).toHaveLength(1);
    state.setPlan('A', other);
    expect(worker.askedFor('people')).toHaveLength(2);
    expect(state.people.asked.value?.result).toBeNull();
    disconnect();
  });

  it('checks by simulation with its progress, can stop, and forgets what it drew of another plan', () => {
    const browser = pretendBrowser();
    const state = createPlanPage(built, SHIPPED);
    const disconnect = state.connect();
    state.simulation.start('A');
    const [worker] = browser.workers;
    expect(worker.askedFor('simulate')[0].request).toMatchObject({ plan: first, tables: SIMULATED, seed: 1 });
    worker.answer('simulate', { progress: 0.4 });
    expect(state.simulation.share.value).toBe(0.4);
    state.simulation.stop();
    expect([worker.cancelled.length, state.simulation.asked.value]).toEqual([1, null]);
    state.simulation.start('A');
    expect(state.simulation.share.value).toBe(0);
    worker.answer('simulate', { result: [] });
    expect(state.simulation.asked.value?.result).toEqual([]);
    state.setPlan('B', other);
    expect(state.simulation.asked.value?.result).toEqual([]);
    state.setPlan('A', other);
    expect(state.simulation.asked.value).toBeNull();
    disconnect();
  });

  it('saves a script when it comes, and says why where it does not', () => {
    const browser = pretendBrowser();
    const state = createPlanPage(built, SHIPPED);
    const context = { table: 'arms.csv', dataVersion: '12345678', isDemonstration: false, address: '' };
    state.saveScript('.R', [], context);
    browser.workers[0].answer('scripts', {
      result: ['plans.R', 'plans.py'].map((name) => ({ name, type: 'text/plain', text: '' })),
    });
    expect(browser.saved).toEqual(['plans.R']);
    state.saveScript('.py', [], context);
    browser.workers[0].answer('scripts', { problem: 'gone' });
    expect(state.fileProblem.value).toBe('gone');
  });
});

describe('whose people are asked for', () => {
  const page = { ...START, plans: { A: other, C: first } };
  const need = { plan: 'C', band: 'light', width: 1 } as const;

  it('is the plan and band that was asked, as far as they are there, else the first', () => {
    expect(settleNeed({ ...page, need })).toMatchObject({ plan: 'C', band: 'light' });
    expect(settleNeed({ ...page, need: { ...need, plan: 'B' } })).toMatchObject({ plan: 'A', band: 'heavy' });
    expect(settleNeed({ ...page, need: { ...need, plan: 'A' } })).toMatchObject({ plan: 'A', band: 'heavy' });
    expect(settleNeed(page)).toEqual({ plan: 'A', bands: ['heavy'], band: 'heavy' });
  });

  it('is none where the plan has no arms with people', () => {
    const none = readPlan('parallel light_0_0') as PlannedStudy;
    expect(settleNeed({ ...page, plans: { A: none } })).toBeNull();
    expect(settleNeed({ ...page, plans: { A: { ...none, arms: [] } } })).toBeNull();
  });
});

describe('plans', () => {
  it('are changed an arm at a time, and stay as they were', () => {
    const frozen = Object.freeze({ ...first, arms: Object.freeze([...first.arms]) });
    expect(addArm(frozen, 'light').arms).toHaveLength(3);
    expect(addArm({ ...frozen, arms: [] }, 'heavy').arms).toEqual([{ load: 'heavy', reserve: 0, people: 20 }]);
    expect(changeArm(frozen, 1, { reserve: 5 }).arms.map(({ reserve }) => reserve)).toEqual([0, 5]);
    expect(removeArm(frozen, 0).arms.map(({ reserve }) => reserve)).toEqual([2]);
    expect(frozen).toEqual(first);
  });

  it('within persons have the most people of any arm in all of them', () => {
    const uneven = changeArm(first, 1, { people: 35 });
    expect(changeDesign(uneven, 'within-person').arms.map(({ people }) => people)).toEqual([35, 35]);
    expect(changeDesign(uneven, 'parallel')).toEqual(uneven);
  });

  it('stand in the order of their names, and one is always left', () => {
    const both = withPlan(withPlan({ C: first }, 'A', other), 'B', first);
    expect(Object.keys(both)).toEqual(['A', 'B', 'C']);
    expect(withoutPlan(both, 'A')).toEqual({ B: first, C: first });
    expect(withoutPlan({ B: first }, 'B')).toEqual({ B: first });
    expect(defaultPlans({ split: null }).A?.arms[0].load).toBe('all');
  });
});
