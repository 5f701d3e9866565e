/**
 * The lesson: its state driven as a reader drives it, by runs that the engine makes; what its answers and its summary say
 * are those runs' counts; reload, leaving and a browser that keeps nothing.
 */
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  cellOf,
  curvesOf,
  DEFAULT_EXPERIMENT,
  TABLES,
  writeExperiment,
} from '../../../src/islands/intervals/experiment.ts';
import { Messages } from '../../../src/islands/intervals/Intervals.tsx';
import { createIntervals } from '../../../src/islands/intervals/intervals.state.ts';
import { LessonPanel } from '../../../src/islands/intervals/LessonPanel.tsx';
import { LESSON } from '../../../src/islands/intervals/lesson.state.ts';
import { lessonSteps } from '../../../src/islands/intervals/lessonSteps.ts';
import { resultOf } from '../../../src/islands/intervals/results.ts';
import { spotsOf } from '../../../src/islands/intervals/spots.ts';
import { makeWholeRun } from '../../../src/islands/intervals/wholeRun.ts';
import { measuredSteps } from '../../../src/site/intervalsLesson.ts';
import { type PretendBrowser, pretendBrowser } from '../pretendBrowser.ts';

afterEach(() => vi.unstubAllGlobals());

const start = makeWholeRun(DEFAULT_EXPERIMENT);
const steps = lessonSteps(1);
/** A seed whose first table gives an interval of the line that holds the truth. */
const LUCKY = 5;
/** The engine's runs, made once each. */
const runs = new Map<string, ReturnType<typeof makeWholeRun>>();
const runOf = (experiment: typeof DEFAULT_EXPERIMENT) => {
  const key = writeExperiment(experiment);
  const run = runs.get(key) ?? makeWholeRun(experiment);
  runs.set(key, run);
  return run;
};

/** Answers what the page has asked its worker, as the worker would, until nothing is asked any more. */
function work({ workers }: PretendBrowser, experimentNow: () => typeof DEFAULT_EXPERIMENT): void {
  const worker = workers.at(-1);
  if (!worker) return;
  let answered = new Set<number>();
  for (;;) {
    const open = worker.asked.find(({ id }) => !answered.has(id) && !done.has(`${workers.length} ${id}`));
    if (!open) return;
    done.add(`${workers.length} ${open.id}`);
    answered = new Set([...answered, open.id]);
    if (worker.cancelled.includes(open.id)) continue;
    const { cell, curves, seed } = open.request as ReturnType<typeof asked>;
    const run = runOf({
      ...experimentNow(),
      truth: cell.truth,
      studies: cell.studies,
      reserves: cell.layout,
      fit: curves[0],
      against: curves[1] ?? 'none',
      seed,
    });
    if (open.name === 'look') worker.say({ id: open.id, result: run.table });
    else {
      worker.say({ id: open.id, progress: run.answers.slice(0, 50) });
      worker.say({ id: open.id, progress: run.answers.slice(50) });
      worker.say({ id: open.id, result: 1 });
    }
  }
}
const asked = (experiment: typeof DEFAULT_EXPERIMENT) => ({
  cell: cellOf(experiment),
  curves: curvesOf(experiment),
  seed: experiment.seed,
});
let done = new Set<string>();

function open(query = '', storage: Parameters<typeof pretendBrowser>[1] = {}) {
  done = new Set();
  const browser = pretendBrowser(query, storage);
  const state = createIntervals(start);
  const disconnect = state.connect();
  const settle = () => work(browser, () => state.experiment.value);
  settle();
  return { browser, state, settle, disconnect };
}

describe('the lesson', () => {
  it('asks each question before its answer is to be seen, and answers by the counts of its own runs', () => {
    const { state, settle } = open();
    state.begin();
    settle();
    steps.forEach((step, i) => {
      const at = state.lesson.now.value;
      expect(at?.step.title).toBe(step.title);
      expect(at?.guess).toBeNull();
      expect(at?.seen).toEqual(step.before);
      expect(writeExperiment(state.running.run.value.experiment)).toBe(writeExperiment(step.before.experiment));
      state.lesson.guess(step.choices[0].id);
      settle();
      expect(state.lesson.now.value?.seen).toEqual(step.after);
      const after = resultOf(runOf(step.after.experiment));
      expect(state.lesson.found(step.after.experiment)).toEqual(after);
      const before = resultOf(runOf(step.before.experiment));
      expect(step.choices.map(({ id }) => id)).toContain(step.right(after, before));
      for (const { held, given } of Object.values(after))
        if (i > 1) expect(step.answer(after, before)).toContain(`${held} of ${given}`);
      state.lesson.goTo(i + 1);
      settle();
    });
    expect(state.lesson.now.value).toBeNull();
    expect(state.lesson.progress.value?.step).toBe(steps.length);
    for (const { before, after } of steps)
      for (const { experiment } of [before, after]) expect(state.lesson.found(experiment)).not.toBeNull();
  });

  it('gives away nothing in what it shows before a question', () => {
    for (const { before, after } of steps) expect(after).not.toEqual(before);
    expect(steps[0].before.shown).toBe('curve');
    expect(steps.slice(0, 3).map(({ before }) => before.hasIntervals)).toEqual([false, false, false]);
  });

  // The second seed's tables are unlucky: the flexible curve's intervals hold the truth in fewer than 90 % of 200.
  it.each([2, 3])('has answers that came as its words explain them, with seed %d', (seed) => {
    const right = lessonSteps(seed)
      .slice(2)
      .map(({ right: choose, before, after }) =>
        choose(resultOf(runOf(after.experiment)), resultOf(runOf(before.experiment))),
      );
    expect(right).toEqual(['0.25', 'fewer', 'wide', 'both', 'no']);
  });

  it('explains one table by what came of it: an interval that missed, or one that was lucky', () => {
    const answerOf = (seed: number) => {
      const { answer, after } = lessonSteps(seed)[1];
      const result = resultOf(runOf(after.experiment));
      return { holds: result.line?.first?.holds, said: answer(result, result) };
    };
    expect(answerOf(1)).toMatchObject({
      holds: false,
      said: expect.stringMatching(/misses .* 1 in 20 misses by bad luck/u),
    });
    expect(answerOf(LUCKY)).toMatchObject({
      holds: true,
      said: expect.stringMatching(/holds .*: a wrong shape can be lucky once\.$/u),
    });
  });

  it('says that a step is not drawn where it was stopped, and draws it when it is come back to', () => {
    const { browser, state, settle } = open();
    state.begin();
    settle();
    state.lesson.goTo(3);
    settle();
    const said = () => renderToString(h(LessonPanel, { state }));
    state.lesson.guess('more');
    expect(said()).toMatch(/Being worked out/u);
    state.running.stop();
    expect(said()).not.toMatch(/Being worked out/u);
    expect(said()).toMatch(/Not drawn\./u);
    browser.workers.at(-1)?.asked.forEach(({ id }) => {
      done.add(`${browser.workers.length} ${id}`);
    });
    state.lesson.goTo(3);
    settle();
    expect(said()).toMatch(/around the same wrong place/u);
  });

  it('speaks of rings only where a figure has them, not in the list of what was measured', () => {
    expect(steps.some(({ where }) => where !== undefined)).toBe(true);
    for (const { ask, came } of measuredSteps) expect(`${ask} ${came}`).not.toMatch(/ring/u);
  });

  it('survives a reload at any step, answered or not, and goes on with what was found', () => {
    const first = open();
    first.state.begin();
    first.settle();
    first.state.lesson.guess('0.5');
    first.settle();
    first.state.lesson.goTo(1);
    first.settle();
    first.state.lesson.guess('yes');
    first.settle();
    const kept = JSON.stringify(first.state.lesson.progress.value);
    first.disconnect();
    const again = open('', { [LESSON]: kept });
    expect(again.state.lesson.progress.value).toEqual(JSON.parse(kept));
    expect(again.state.lesson.now.value?.guess).toBe('yes');
    expect(again.state.running.run.value.experiment).toEqual(steps[1].after.experiment);
  });

  it('is not taken up at another address, from another version, or from nonsense', () => {
    const kept = { step: 2, guesses: {}, start: '', found: {} };
    expect(open('?seed=4', { [LESSON]: JSON.stringify(kept) }).state.lesson.progress.value).toBeNull();
    for (const text of ['{', '{"step":1}', JSON.stringify({ ...kept, step: 99 }), '[]', 'null'])
      expect(open('', { [LESSON]: text }).state.lesson.progress.value, text).toBeNull();
    expect(open('', { [LESSON]: JSON.stringify(kept) }).state.lesson.progress.value?.step).toBe(2);
  });

  it('goes on in a browser that keeps nothing', () => {
    const { state, settle } = open('', 'forbidden');
    state.begin();
    settle();
    state.lesson.guess('');
    settle();
    expect(state.lesson.now.value?.guess).toBe('');
  });

  it('gives back what was shown before it, and begins again from the first question', () => {
    const { state, settle, browser } = open('?truth=log&seed=5');
    const before = state.experiment.value;
    state.begin();
    settle();
    state.lesson.guess('');
    state.lesson.goTo(1);
    settle();
    state.lesson.again();
    settle();
    expect(state.lesson.progress.value).toMatchObject({ step: 0, guesses: {}, start: '?truth=log&seed=5' });
    // Its tables have the reader's own seed.
    expect(state.running.run.value.experiment.seed).toBe(5);
    state.leave();
    settle();
    expect(state.lesson.progress.value).toBeNull();
    expect(state.running.run.value.experiment).toEqual(before);
    expect(browser.location.search).toBe('?truth=log&seed=5');
  });

  it('rings what it speaks of on the figures, at places of the run', () => {
    const { state, settle } = open();
    state.begin();
    settle();
    for (const [i, step] of steps.entries()) {
      for (const guess of [null, '']) {
        if (guess !== null) state.lesson.guess(guess);
        settle();
        const run = state.running.run.value;
        const { table, intervals } = spotsOf(state.lesson.now.value, run);
        const spots = [...table, ...intervals.flat()];
        expect(spots.length, `${step.title}, ${guess}`).toBeGreaterThan(0);
        intervals.forEach((list, place) => {
          for (const { y, x } of list) {
            const { holds, low, high } = run.answers[y - 1][place];
            expect(holds).toBe(false);
            expect([low, high]).toContain(x);
          }
        });
      }
      state.lesson.goTo(i + 1);
      settle();
    }
    expect(spotsOf(null, start)).toEqual({ table: [], intervals: [] });
  });
});

it('begins at the address where the reader was quicker than the page', () => {
  pretendBrowser('?truth=log&seed=5');
  const state = createIntervals(start);
  state.begin();
  expect(state.lesson.progress.value).toBeNull();
  const disconnect = state.connect();
  expect(state.lesson.progress.value).toMatchObject({ step: 0, start: '?truth=log&seed=5' });
  disconnect();
});

describe('a run', () => {
  it('shows tables as they come, can be stopped and drawn to its end, and says why it failed', () => {
    const { browser, state, settle } = open();
    // The defaults are there already.
    expect(browser.workers).toHaveLength(0);
    state.change({ studies: 15 });
    const [worker] = browser.workers;
    const whole = runOf(state.experiment.value);
    worker.answer('look', { result: whole.table });
    worker.answer('run', { progress: whole.answers.slice(0, 30) });
    expect(state.running.run.value.answers).toHaveLength(30);
    expect(state.running.isRunning.value).toBe(true);
    state.running.stop();
    expect(worker.cancelled).toHaveLength(1);
    expect([state.running.isRunning.value, state.running.isStopped.value]).toEqual([false, true]);
    worker.answer('run', { progress: whole.answers.slice(30, 60) });
    expect(state.running.run.value.answers).toHaveLength(30);
    state.retry();
    worker.answer('look', { result: whole.table });
    worker.answer('run', { problem: 'no more memory' });
    expect(state.running.problem.value).toBe('no more memory');
    done = new Set(worker.asked.map(({ id }) => `1 ${id}`));
    state.retry();
    settle();
    expect(state.running.problem.value).toBeNull();
    expect(state.running.run.value.answers).toEqual(whole.answers);
    expect(state.running.run.value.answers).toHaveLength(TABLES);
  });

  it('stopped before its first table says so, not what was drawn before', () => {
    const { browser, state } = open();
    state.change({ studies: 15 });
    expect([state.running.drawn.value, state.running.isFormer.value]).toEqual([0, true]);
    state.running.stop();
    const said = () => renderToString(h(Messages, { state }));
    expect(said()).toMatch(/Stopped after 0 of 200 tables/u);
    expect(said()).toMatch(/Below still stands what was drawn before/u);
    expect(said()).not.toMatch(/Straight line:/u);
    state.retry();
    browser.workers[0].answer('look', { problem: 'no more memory' });
    expect(said()).toMatch(/no more memory.*Below still stands/u);
    state.change({ studies: DEFAULT_EXPERIMENT.studies });
    expect([state.running.drawn.value, state.running.isFormer.value]).toEqual([TABLES, false]);
    expect(said()).not.toMatch(/Below still stands/u);
  });

  it('is given up for a newer one, and the address says which', () => {
    const { browser, state } = open();
    state.change({ truth: 'step' });
    state.drawAgain();
    expect(browser.location.search).toBe('?truth=step&seed=2');
    expect(browser.workers[0].cancelled).toHaveLength(1);
  });
});

describe('the lesson without a browser’s tables', () => {
  it('gives for each step what calibration counted', () => {
    expect(measuredSteps).toHaveLength(steps.length);
    for (const { came } of measuredSteps) expect(came).toMatch(/\d/u);
    expect(measuredSteps[2].came).toMatch(/^The line’s interval held the truth in 491 of 2000, 24\.6\u00a0% /u);
    // None of as many is no promise of none.
    expect(measuredSteps[3].came).toMatch(/in 0 of 2000, 0\.0\u00a0% \(0\.0 to 0\.2\u00a0%\)/u);
  });
});
