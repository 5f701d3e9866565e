/** The Evidence page between its controls, its address and two workers: only the newest is shown, and what fails says so. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { listVocabulary } from '../../../src/islands/analysis/filterOptions.ts';
import { createEvidence } from '../../../src/islands/evidence/evidence.state.ts';
import { analyse } from '../../../src/model/analyse.ts';
import { defaultSettings, type Settings } from '../../../src/model/settings.ts';
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
  const answer = (part: object = {}) => {
    const request = fitter.askedFor('analyse').at(-1) as { id: number; settings: Settings };
    fitter.say({ kind: 'analysis', id: request.id, analysis: { ...start, settings: request.settings }, ...part });
  };
  return { state, fitter, answer };
}

describe('a move of a control', () => {
  it('while another is fitted is fitted after it, and only then is the picture up to date', () => {
    const { state, fitter, answer } = open();
    answer();
    expect(state.pending.value).toBe(false);
    state.change((settings) => ({ ...settings, curve: 'log' }));
    state.change((settings) => ({ ...settings, curve: 'spline' }));
    expect(fitter.askedFor('analyse')).toHaveLength(2);
    answer();
    expect(state.pending.value).toBe(true);
    answer();
    expect(state.pending.value).toBe(false);
    expect(state.analysis.value.settings.curve).toBe('spline');
  });

  it('is fitted too where the settings before it could not be', () => {
    const { state, fitter, answer } = open();
    answer();
    state.change((settings) => ({ ...settings, curve: 'log' }));
    state.change((settings) => ({ ...settings, curve: 'spline' }));
    answer({ kind: 'problem', problem: 'singular' });
    expect(fitter.askedFor('analyse').at(-1)).toMatchObject({ settings: { curve: 'spline' } });
    answer();
    expect(state.problem.value).toBeNull();
    expect(state.analysis.value.settings.curve).toBe('spline');
  });

  it('that cannot be fitted says why, and nobody goes on waiting for it', () => {
    const { state, answer } = open();
    answer();
    state.change((settings) => ({ ...settings, curve: 'log' }));
    answer({ kind: 'problem', problem: 'singular' });
    expect([state.problem.value, state.pending.value]).toEqual(['singular', false]);
  });

  it('ends the checks of what stood before; those that fail say so', () => {
    const { state } = open();
    vi.advanceTimersByTime(REST);
    const [, first] = browser.workers;
    state.change((settings) => ({ ...settings, curve: 'log' }));
    expect(first.isEnded).toBe(true);
    vi.advanceTimersByTime(REST);
    const second = browser.workers[2];
    expect(state.checks.value).toBeNull();
    second.say({ kind: 'problem', id: second.asked.at(-1)?.id, problem: 'too few' });
    expect([state.checkProblem.value, state.problem.value]).toEqual(['too few', null]);
    state.startSweep();
    second.break();
    expect([state.sweepProgress.value, state.sweepProblem.value]).toEqual([
      null,
      'the calculation could not be started in this browser',
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
    expect(browser.written).toEqual(['push ?v=1&curve=spline']);
  });

  it('that holds a bad part is put right in its place, so that “back” leads away from it', () => {
    const { state } = open('?v=1&curve=zigzag&split=65');
    expect(state.notice.value).toMatch(/curve/u);
    vi.advanceTimersByTime(REST);
    expect(browser.written).toEqual(['replace ?v=1&split=65']);
  });
});

describe('two files that are asked for one after the other', () => {
  it('are both saved, each once', () => {
    const { state, fitter } = open();
    state.download('.json');
    state.download('.R');
    const files = ['a.json', 'a.R'].map((name) => ({ name, type: 'text/plain', text: '' }));
    for (const { id } of fitter.askedFor('take home')) fitter.say({ kind: 'files', id, files });
    expect(browser.saved).toEqual(['a.json', 'a.R']);
  });

  it('do not make the fit that is awaited count as done', () => {
    const { state, fitter } = open();
    state.download('.json');
    fitter.say({ kind: 'problem', id: fitter.askedFor('take home')[0].id, problem: 'no room' });
    expect(state.problem.value).toBe('no room');
    state.change((settings) => ({ ...settings, curve: 'log' }));
    expect(fitter.askedFor('analyse')).toHaveLength(1);
  });
});

describe('in a browser that lets pages keep nothing', () => {
  it('the site’s table is read', () => {
    const { state, fitter } = open('', 'forbidden');
    expect(fitter.asked[0]).toMatchObject({ kind: 'analyse', table: '/data/arms.csv' });
    expect(state.foreign.value).toBe(false);
  });
});

it('the guided steps end where they began, with a move that was not fitted yet', () => {
  const { state } = open();
  state.change((settings) => ({ ...settings, split: 50 }));
  state.goToStep(0);
  expect(state.settings.value).toMatchObject({ split: 50, weighting: 'equal' });
  state.endGuide();
  expect(state.settings.value).toMatchObject({ split: 50, weighting: 'mixed' });
});
