/** Target, Programme, Your table and the live figure between a reader and their workers. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { decodeHash } from '../../src/islands/figure/liveFigure.state.ts';
import { createProgramme } from '../../src/islands/programme/programme.state.ts';
import { createYourTable } from '../../src/islands/table/yourTable.state.ts';
import { createCalculator } from '../../src/islands/target/calculator.state.ts';
import { analyseForPractice } from '../../src/model/full.ts';
import { defaultSettings } from '../../src/model/settings.ts';
import { MARK_NAME } from '../../src/ownTable/ownTableMark.ts';
import { makeArms } from '../support/tables.ts';
import { pretendBrowser } from './pretendBrowser.ts';

const analysis = analyseForPractice(makeArms([{}]), defaultSettings);
const MARK = JSON.stringify({ name: 'mine.csv', rows: 2, studies: 1, demonstration: false });
const SHIPPED = { address: '/data/arms.csv', demonstration: true };

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
    const state = createCalculator(analysis, [], SHIPPED);
    const disconnect = state.connect();
    for (let load = 40; load < 90; load++) state.change({ load });
    vi.advanceTimersByTime(1000);
    expect(browser.written).toEqual(['replace ?load=89']);
    disconnect();
  });

  it('calls its answer a demonstration by the table that it is from', () => {
    const browser = pretendBrowser('', { [MARK_NAME]: MARK });
    const state = createCalculator(analysis, [], SHIPPED);
    const disconnect = state.connect();
    expect([state.foreign.value, state.demonstration.value]).toEqual([true, true]);
    const [worker] = browser.workers;
    worker.say({ kind: 'practice', id: worker.asked[0].id, analysis });
    expect([state.foreign.value, state.demonstration.value]).toEqual([false, false]);
    disconnect();
  });
});

describe('the programme check', () => {
  const calendar = { status: 'trained', sessionHour: 19, event: null } as const;
  const example = { first: 'day,exercise\n', second: null, exercises: [], calendar };
  const file = (name: string, text: Promise<string>) => ({ name, text: () => text }) as unknown as File;

  it('does not show what it found of an older text once there is a newer one', () => {
    const browser = pretendBrowser();
    const state = createProgramme(analysis, [], example, SHIPPED.address);
    const disconnect = state.connect();
    const [worker] = browser.workers;
    const shown = state.report.value;
    state.change({ first: 'older' });
    vi.advanceTimersByTime(1000);
    state.change({ first: 'newer' });
    worker.say({ id: worker.asked[0].id, report: { ...shown, comparison: null }, problem: null });
    expect([state.report.value, state.pending.value]).toEqual([shown, true]);
    vi.advanceTimersByTime(1000);
    const found = { ...shown };
    worker.say({ id: worker.asked[1].id, report: found, problem: null });
    expect(state.report.value).toBe(found);
    disconnect();
  });

  it('takes the file that was opened last, whichever is read first', async () => {
    pretendBrowser();
    const state = createProgramme(analysis, [], example, SHIPPED.address);
    let finish = (_text: string) => {};
    const slow = new Promise<string>((resolve) => {
      finish = resolve;
    });
    const older = state.open(file('slow.csv', slow), 'first');
    await state.open(file('quick.csv', Promise.resolve('quick')), 'first');
    finish('slow');
    await older;
    expect(state.programme.value.first).toBe('quick');
    await state.open(file('gone.csv', Promise.reject(new Error('it is gone'))), 'first');
    expect(state.problem.value).toBe('gone.csv: it is gone');
  });

  it('checks all the same where a browser lets pages keep nothing', () => {
    const browser = pretendBrowser('', 'forbidden');
    const state = createProgramme(analysis, [], example, SHIPPED.address);
    const disconnect = state.connect();
    state.change({ first: 'newer' });
    vi.advanceTimersByTime(1000);
    expect(browser.workers[0].asked).toHaveLength(1);
    disconnect();
  });
});

describe('your table', () => {
  it('goes on comparing while it hands out a file', () => {
    const browser = pretendBrowser();
    vi.stubGlobal('Event', class {});
    const state = createYourTable(SHIPPED.address);
    state.downloadTable();
    state.compare();
    browser.workers[0].say({ kind: 'file', name: 'arms.csv', text: '' });
    expect([browser.saved, state.comparing.value]).toEqual([['arms.csv'], true]);
    browser.workers[0].say({ kind: 'failed', reason: 'no room' });
    expect([state.failure.value, state.comparing.value]).toEqual(['no room', false]);
  });

  it('says so where the browser does not let the site keep it', () => {
    const browser = pretendBrowser('', 'forbidden');
    const state = createYourTable(SHIPPED.address);
    state.open({ name: 'mine.csv' } as File);
    const opened = { mark: JSON.parse(MARK), problems: [], problemCount: 0, warnings: [], warningCount: 0 };
    browser.workers[0].say({ kind: 'opened', stored: true, opened });
    expect([state.failure.value, state.own.value]).toEqual(['the store is forbidden', null]);
  });
});

it('a hash that is no encoded text is read as it was written', () => {
  expect(['#growth-light', '#a%20b', '#%E0%A4%A', ''].map(decodeHash)).toEqual(['growth-light', 'a b', '%E0%A4%A', '']);
});
