/** Target, Programme, Your table and the live figure between a reader and their workers. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { decodeHash } from '../../src/islands/figure/liveFigure.state.ts';
import { checkExample } from '../../src/islands/programme/checkExample.ts';
import { createLifters } from '../../src/islands/programme/lifters/lifters.state.ts';
import { createOpening as createLiftersOpening } from '../../src/islands/programme/lifters/opening.state.ts';
import { createProgramme } from '../../src/islands/programme/programme.state.ts';
import { createYourTable } from '../../src/islands/table/yourTable.state.ts';
import { createCalculator } from '../../src/islands/target/calculator.state.ts';
import { analyseForPractice } from '../../src/model/full.ts';
import { defaultSettings } from '../../src/model/settings.ts';
import { makeArms } from '../support/tables.ts';
import { pretendBrowser } from './pretendBrowser.ts';

const analysis = analyseForPractice(makeArms([{}]), defaultSettings);
const built = { analysis, shares: [] };
const SHIPPED = '/data/arms.csv';
const OWN = `own-table:${'a'.repeat(64)}`;

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

describe('the calculator', () => {
  it('writes its address once a slider rests, not at every step of it', () => {
    const browser = pretendBrowser();
    const state = createCalculator(built, [], SHIPPED);
    const disconnect = state.connect();
    for (let load = 40; load < 90; load++) state.change({ load });
    vi.advanceTimersByTime(1000);
    expect(browser.written).toEqual(['replace ?load=89']);
    disconnect();
  });

  it('shows nothing of the site’s table while the reader’s own is worked out', () => {
    const browser = pretendBrowser();
    const state = createCalculator(built, [], OWN);
    const disconnect = state.connect();
    const { isShown, shares } = state.fitted;
    expect([isShown.value, shares.value]).toEqual([false, null]);
    const [worker] = browser.workers;
    worker.answer('practice', { result: analysis });
    expect([isShown.value, shares.value]).toEqual([true, null]);
    worker.answer('shares', { result: [{ keptShare: 0.9, bands: [] }] });
    expect(shares.value).toHaveLength(1);
    disconnect();
  });

  it('shows no old advice beside an error, and starts afresh at the next move', () => {
    const browser = pretendBrowser();
    const state = createCalculator(built, [], SHIPPED);
    const disconnect = state.connect();
    const { isShown, pending, problem } = state.fitted;
    expect([isShown.value, browser.workers.length]).toEqual([true, 0]);
    state.change({ keep: 80 });
    browser.workers[0].break();
    expect([isShown.value, pending.value]).toEqual([false, false]);
    expect(problem.value).toMatch(/could not be loaded or started/u);
    state.change({ keep: 85 });
    expect([pending.value, problem.value]).toEqual([true, null]);
    browser.workers[1].answer('practice', { result: analysis });
    expect([isShown.value, pending.value]).toEqual([true, false]);
    disconnect();
  });

  it('takes numbers within their limits, nothing as no event, and refuses the rest as it was written', () => {
    pretendBrowser();
    const state = createCalculator(built, [], SHIPPED);
    state.enterNumber('hours', ' 24 ');
    expect(state.choices.value.hours).toBe(24);
    state.enterNumber('hours', '');
    expect(state.choices.value.hours).toBeNull();
    for (const written of ['31', '1.5', '1e1', '5&keep=50', '']) {
      state.enterNumber('planned', written);
      expect([state.choices.value.planned, state.choices.value.keep]).toEqual([5, 90]);
      expect(state.refused.value).toEqual({ planned: written });
    }
  });
});

describe('the programme check', () => {
  const calendar = { status: 'trained', sessionHour: 19, event: null } as const;
  const example = { first: 'day,exercise\n', second: null, exercises: [], calendar };
  const worked = checkExample(analysis, [], example);
  const file = (name: string, text: Promise<string>) =>
    ({ name, arrayBuffer: async () => new TextEncoder().encode(await text).buffer }) as unknown as File;
  const week = (exercise: string) => `day,exercise,sets,repetitions,load\nMonday,${exercise},3,8,75\n`;

  it('does not show what it found of an older text once there is a newer one', () => {
    const browser = pretendBrowser();
    const state = createProgramme(analysis, [], worked, SHIPPED);
    const disconnect = state.connect();
    const { made, pending } = state.checking;
    const shown = made.value.report;
    state.setText('first', week('older'));
    vi.advanceTimersByTime(1000);
    const [worker] = browser.workers;
    const [older] = worker.asked;
    state.setText('first', week('newer'));
    vi.advanceTimersByTime(1000);
    // One at a time: of what comes meanwhile only the newest is asked for.
    expect(worker.askedFor('check')).toHaveLength(1);
    worker.say({ id: older.id, result: { ...shown, comparison: null } });
    expect([made.value.report, pending.value]).toEqual([shown, true]);
    const found = { ...shown };
    worker.answer('check', { result: found });
    expect(made.value.report).toBe(found);
    disconnect();
  });

  it('shows no old report beside an error; another worker is given all that it needs', () => {
    const browser = pretendBrowser();
    const state = createProgramme(analysis, [], worked, SHIPPED);
    const disconnect = state.connect();
    const { isShown, pending, problem } = state.checking;
    state.setText('first', week('older'));
    vi.advanceTimersByTime(1000);
    browser.workers[0].break();
    expect([isShown.value, pending.value]).toEqual([false, false]);
    expect(problem.value).toMatch(/could not be loaded or started/u);
    state.checking.retry();
    vi.advanceTimersByTime(1000);
    const [asked] = browser.workers[1].asked;
    expect(asked.request).toMatchObject({
      analysis: { settings: defaultSettings },
      input: { first: expect.stringMatching(/older,3,8,75/u) },
    });
    browser.workers[1].answer('check', { result: state.checking.made.value.report });
    expect([isShown.value, problem.value]).toEqual([true, null]);
    disconnect();
  });

  it('shows nothing by the site’s table while the reader’s own is worked out, and then by that', () => {
    const browser = pretendBrowser();
    const state = createProgramme(analysis, [], worked, OWN);
    const disconnect = state.connect();
    const { isShown, made } = state.checking;
    expect([isShown.value, browser.workers.length]).toEqual([false, 1]);
    const own = { ...analysis };
    browser.workers[0].answer('practice', { result: own });
    vi.advanceTimersByTime(1000);
    expect(isShown.value).toBe(false);
    browser.workers[1].answer('check', { result: made.value.report });
    expect([isShown.value, made.value.by]).toEqual([true, own]);
    disconnect();
  });

  it('takes the file that was opened last, whichever is read first', async () => {
    pretendBrowser();
    const state = createProgramme(analysis, [], worked, SHIPPED);
    const { opening } = state;
    let finish = (_text: string) => {};
    const slow = new Promise<string>((resolve) => {
      finish = resolve;
    });
    const older = opening.open(file('slow.csv', slow));
    await opening.open(file('quick.csv', Promise.resolve('quick')));
    finish('slow');
    await older;
    expect(opening.text.value).toBe('quick');
    await opening.open(file('gone.csv', Promise.reject(new Error('it is gone'))));
    expect(opening.problem.value).toBe('gone.csv: it is gone');
  });

  it('lets nothing of a file in that was still being read when the room was closed, of lines or of lifters', async () => {
    pretendBrowser();
    const programme = createProgramme(analysis, [], worked, SHIPPED);
    const lifters = createLiftersOpening(programme, createLifters(programme));
    for (const [opening, close] of [
      [programme.opening, () => programme.opening.close('paste')],
      [lifters, lifters.close],
    ] as const) {
      let finish = (_text: string) => {};
      const slow = new Promise<string>((resolve) => {
        finish = resolve;
      });
      opening.start();
      const reading = opening.open(file('slow.csv', slow));
      close();
      finish('slow');
      await reading;
      expect([opening.text.value, opening.problem.value, opening.isOpen.value]).toEqual(['', null, false]);
    }
  });

  it('checks all the same where a browser lets pages keep nothing', () => {
    const browser = pretendBrowser('', 'forbidden');
    const state = createProgramme(analysis, [], worked, SHIPPED);
    const disconnect = state.connect();
    state.setText('first', week('newer'));
    vi.advanceTimersByTime(1000);
    expect(browser.workers[0].asked).toHaveLength(1);
    disconnect();
  });
});

describe('your table', () => {
  const kept = {
    version: 'a'.repeat(64),
    name: 'mine.csv',
    rows: 2,
    studies: 1,
    demonstration: false,
    bytes: 100,
    opened: 0,
  };

  it('goes on comparing while it hands out a file', () => {
    const browser = pretendBrowser();
    const state = createYourTable(SHIPPED);
    state.download(kept);
    state.compare();
    browser.workers[0].answer('export', { result: { name: 'mine.csv', bytes: new Uint8Array(), said: 'As it was.' } });
    expect(state.done.value).toBe('As it was.');
    expect([browser.saved, state.comparing.value]).toEqual([['mine.csv'], true]);
    browser.workers[0].answer('compare', { problem: 'no room' });
    expect([state.failure.value, state.comparing.value]).toEqual(['no room', false]);
  });

  it('says that it cannot be taken up where the browser lets the site keep nothing, and not that it was taken', async () => {
    const browser = pretendBrowser('', 'forbidden');
    const { opening } = createYourTable(SHIPPED);
    opening.open({ name: 'mine.csv' } as File);
    const opened = { facts: kept, kept, problems: [], problemCount: 0, warnings: [], warningCount: 0 };
    browser.workers[0].answer('open', { result: opened });
    await vi.waitFor(() => expect(opening.failure.value).toMatch(/cannot be taken up: the store is forbidden/u));
    expect([opening.opened.value, opening.progress.value]).toEqual([null, null]);
  });
});

it('a hash that is no encoded text is read as it was written', () => {
  expect(['#growth-light', '#a%20b', '#%E0%A4%A', ''].map(decodeHash)).toEqual(['growth-light', 'a b', '%E0%A4%A', '']);
});
