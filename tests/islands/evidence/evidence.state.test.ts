/** The Evidence page between its controls, its address and two workers: only the newest is shown, and what fails says so. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { listVocabulary } from '../../../src/islands/analysis/filterOptions.ts';
import { createEvidence } from '../../../src/islands/evidence/evidence.state.ts';
import { analyse } from '../../../src/model/analyse.ts';
import { defaultSettings } from '../../../src/model/settings.ts';
import { makeArms } from '../../support/tables.ts';
import { type PretendBrowser, pretendBrowser } from '../pretendBrowser.ts';

const arms = makeArms([{}]);
const start = analyse(arms, defaultSettings);
const REST = 400;

let browser: PretendBrowser;
let disconnect: () => void;
afterEach(() => {
  disconnect?.();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});
beforeEach(() => {
  vi.useFakeTimers();
});

function open(query = '', storage: Parameters<typeof pretendBrowser>[1] = {}) {
  browser = pretendBrowser(query, storage);
  const state = createEvidence(start, '/data/arms.csv', listVocabulary(arms));
  disconnect = state.connect();
  const [fitter] = browser.workers;
  /** Answers the newest fit, with the settings that were asked for unless with a problem. */
  const answer = (problem?: string) => {
    const { settings } = fitter.askedFor('analyse').at(-1)?.request ?? {};
    fitter.answer('analyse', problem === undefined ? { result: { ...start, settings } } : { problem });
  };
  return { state, fitter, answer };
}

describe('a move of a control', () => {
  it('while another is fitted is fitted after it, and only then is the picture up to date', () => {
    const { state, fitter, answer } = open();
    answer();
    expect(state.fitting.pending.value).toBe(false);
    state.change((settings) => ({ ...settings, curve: 'log' }));
    state.change((settings) => ({ ...settings, curve: 'spline' }));
    expect(fitter.askedFor('analyse')).toHaveLength(2);
    answer();
    expect(state.fitting.pending.value).toBe(true);
    answer();
    expect(state.fitting.pending.value).toBe(false);
    expect(state.fitting.analysis.value.settings.curve).toBe('spline');
  });

  it('is fitted too where the settings before it could not be', () => {
    const { state, fitter, answer } = open();
    answer();
    state.change((settings) => ({ ...settings, curve: 'log' }));
    state.change((settings) => ({ ...settings, curve: 'spline' }));
    answer('singular');
    expect(fitter.askedFor('analyse').at(-1)).toMatchObject({ request: { settings: { curve: 'spline' } } });
    answer();
    expect(state.fitting.problem.value).toBeNull();
    expect(state.fitting.analysis.value.settings.curve).toBe('spline');
  });

  it('that cannot be fitted says why, and nobody goes on waiting for it', () => {
    const { state, answer } = open();
    answer();
    state.change((settings) => ({ ...settings, curve: 'log' }));
    answer('singular');
    expect([state.fitting.problem.value, state.fitting.pending.value]).toEqual(['singular', false]);
  });

  it('ends the checks of what stood before; those that fail say so', () => {
    const { state } = open();
    vi.advanceTimersByTime(REST);
    const [, first] = browser.workers;
    state.change((settings) => ({ ...settings, curve: 'log' }));
    expect(first.isEnded).toBe(true);
    vi.advanceTimersByTime(REST);
    const second = browser.workers[2];
    expect(state.checking.checks.value).toBeNull();
    second.answer('check', { problem: 'too few' });
    expect([state.checking.checkProblem.value, state.fitting.problem.value]).toEqual(['too few', null]);
    state.checking.startSweep();
    second.break();
    expect([state.checking.sweepProgress.value, state.checking.sweepProblem.value]).toEqual([
      null,
      'the calculation could not be loaded or started',
    ]);
  });
});

describe('the address', () => {
  it('gets an entry for what a reader changed, once the controls have rested', () => {
    const { state } = open();
    state.change((settings) => ({ ...settings, curve: 'log' }));
    state.change((settings) => ({ ...settings, curve: 'spline' }));
    expect(browser.written).toEqual([]);
    vi.advanceTimersByTime(REST);
    expect(browser.written).toEqual(['push ?v=2&curve=spline']);
  });

  it('that holds a bad part is put right in its place, so that “back” leads away from it', () => {
    const { state } = open('?v=2&curve=zigzag&split=65');
    expect(state.address.notice.value).toMatch(/curve/u);
    vi.advanceTimersByTime(REST);
    expect(browser.written).toEqual(['replace ?v=2&split=65']);
  });
});

describe('two files that are asked for one after the other', () => {
  it('are both saved, each once', () => {
    const { state, fitter } = open();
    state.download('.json');
    state.download('.R');
    const files = ['a.json', 'a.R'].map((name) => ({ name, type: 'text/plain', text: '' }));
    for (const { id } of fitter.askedFor('take home')) fitter.say({ id, result: files });
    expect(browser.saved).toEqual(['a.json', 'a.R']);
  });

  it('do not make the fit that is awaited count as done', () => {
    const { state, fitter } = open();
    state.download('.json');
    fitter.answer('take home', { problem: 'no room' });
    expect([state.fileProblem.value, state.fitting.problem.value]).toEqual(['no room', null]);
    state.change((settings) => ({ ...settings, curve: 'log' }));
    expect(fitter.askedFor('analyse')).toHaveLength(1);
  });
});

describe('a worker that fails', () => {
  it('leaves no old picture, says so, and is replaced at the next move', () => {
    const { state, fitter, answer } = open();
    answer();
    state.change((settings) => ({ ...settings, curve: 'log' }));
    fitter.break();
    expect([state.fitting.isShown.value, state.fitting.pending.value]).toEqual([false, false]);
    expect(state.fitting.problem.value).toMatch(/could not be loaded or started/u);
    state.change((settings) => ({ ...settings, curve: 'spline' }));
    const next = browser.workers.at(-1);
    expect(next).not.toBe(fitter);
    next?.answer('analyse', { result: { ...start, settings: state.settings.value } });
    expect([state.fitting.isShown.value, state.fitting.problem.value]).toEqual([true, null]);
  });

  it('is replaced on a wish as well', () => {
    const { state, fitter } = open();
    fitter.break();
    state.fitting.retry();
    browser.workers.at(-1)?.answer('analyse', { result: start });
    expect(state.fitting.isShown.value).toBe(true);
  });
});

describe('a reader’s own table', () => {
  it('is fitted before anything is shown, and with its own words to choose by', () => {
    browser = pretendBrowser();
    const table = `own-table:${'a'.repeat(64)}`;
    const state = createEvidence(start, table, listVocabulary(arms));
    disconnect = state.connect();
    const [fitter] = browser.workers;
    expect([state.fitting.isShown.value, state.fitting.pending.value]).toEqual([false, true]);
    expect(fitter.asked.map(({ request }) => request.table)).toEqual([table, table]);
    fitter.answer('vocabulary', { result: { options: {}, years: { low: 1, high: 2 } } });
    fitter.answer('analyse', { result: start });
    expect([state.fitting.isShown.value, state.fitting.vocabulary.value.years.high]).toEqual([true, 2]);
  });
});

describe('in a browser that lets pages keep nothing', () => {
  it('the site’s table is read', () => {
    const { state, fitter } = open('', 'forbidden');
    expect(fitter.asked[0]).toMatchObject({ name: 'analyse', request: { table: '/data/arms.csv' } });
    expect(state.fitting.awaitsOwn.value).toBe(false);
  });
});
