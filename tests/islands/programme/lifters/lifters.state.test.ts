/** The lifters between a reader, the browser's store and other tabs. */
import { signal } from '@preact/signals';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { hasKeptLifters, LIFTERS_STORE } from '../../../../src/islands/programme/lifters/keptMark.ts';
import { createLifters } from '../../../../src/islands/programme/lifters/lifters.state.ts';
import { readKept, writeKept } from '../../../../src/practice/lifters/keptForm.ts';
import { teamOf } from '../../../practice/lifters/people.ts';
import { exercises } from '../../../practice/programme/shipped.ts';
import { pretendBrowser } from '../../pretendBrowser.ts';

let listeners: Record<string, (event: unknown) => void>;
const open = (storage: Readonly<Record<string, string>> | 'forbidden' = {}) => {
  const browser = pretendBrowser('', storage);
  listeners = {};
  vi.stubGlobal('addEventListener', (name: string, listener: (event: unknown) => void) => {
    listeners[name] = listener;
  });
  const state = createLifters({ exercises: signal(exercises) });
  const disconnect = state.connect();
  return { browser, state, disconnect };
};
const kept = () => localStorage.getItem(LIFTERS_STORE);
const team = teamOf([{ name: 'Lifter A', maxima: { squat: '140' } }, { name: 'Lifter B' }]);

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

describe('lifters', () => {
  it('are kept at every key, opened again, and of none nothing is left in the store', () => {
    const { state } = open();
    expect([hasKeptLifters(), state.add('Lifter A')]).toEqual([false, true]);
    for (const weight of ['1', '14', '140']) state.setMaximum(1, 'squat', { weight });
    expect(hasKeptLifters()).toBe(true);
    expect(readKept(kept() ?? '').lifters).toEqual(state.lifters.value);
    const again = createLifters({ exercises: signal(exercises) });
    again.connect();
    expect(again.lifters.value).toEqual(state.lifters.value);
    state.forget();
    expect([kept(), state.lifters.value.all]).toEqual([null, []]);
    state.undo();
    expect(readKept(kept() ?? '').lifters?.all[0].maxima).toEqual([{ exercise: 'squat', weight: '140', step: '' }]);
  });

  it('are undone step by step, what was typed in one cell at once, and done again', () => {
    const { state } = open({ [LIFTERS_STORE]: writeKept(team) });
    for (const weight of ['1', '15', '150']) state.setMaximum(1, 'Squats', { weight });
    state.setUnit(1, 'lb');
    state.remove(2);
    const last = state.lifters.value;
    for (let i = 0; i < 3; i++) state.undo();
    expect(state.lifters.value).toEqual(team);
    expect(state.said.value).toBe('Undone: change the 1RM of Lifter A in Squats.');
    state.undo();
    expect(state.said.value).toBe('Nothing to be undone.');
    for (let i = 0; i < 3; i++) state.redo();
    expect(state.lifters.value).toEqual(last);
    expect(readKept(kept() ?? '').lifters).toEqual(last);
  });

  it('are refused a name that another has, with the reason, and keep the one that they had', () => {
    const { state } = open({ [LIFTERS_STORE]: writeKept(team) });
    expect(state.add(' LIFTER a')).toBe(false);
    expect(state.refused.value).toMatchObject({
      where: 'new',
      refusal: { expected: 'a name that no other lifter has' },
    });
    state.rename(2, 'Lifter A');
    expect(state.refused.value).toMatchObject({ where: 2 });
    expect(state.lifters.value).toEqual(team);
    state.rename(2, 'Lifter C');
    expect([state.refused.value, state.lifters.value.all[1].name]).toEqual([null, 'Lifter C']);
  });

  it('of a file have nothing of a name that was refused to those before them, and are counted', () => {
    const { state } = open({ [LIFTERS_STORE]: writeKept(team) });
    const refuse = () => {
      state.rename(1, 'Lifter B');
      expect(state.refused.value).toMatchObject({ where: 1 });
    };
    refuse();
    expect(state.take(teamOf([{ name: 'Lifter C' }]), 'a file', 'replace')).toBeNull();
    expect([state.refused.value, state.said.value]).toEqual([null, 'a file was opened: 1 lifter stands here.']);
    state.undo();
    refuse();
    state.redo();
    expect(state.refused.value).toBeNull();
  });

  it('of another tab are taken as a step of their own, their removal too', () => {
    const { state } = open({ [LIFTERS_STORE]: writeKept(team) });
    const other = teamOf([{ name: 'Lifter C' }]);
    listeners.storage({ key: LIFTERS_STORE, newValue: writeKept(other) });
    expect(state.lifters.value).toEqual(other);
    listeners.storage({ key: 'something else', newValue: '' });
    expect(state.lifters.value).toEqual(other);
    listeners.storage({ key: null, newValue: null });
    expect(state.lifters.value.all).toEqual([]);
    state.undo();
    state.undo();
    expect(state.lifters.value).toEqual(team);
  });

  it('that cannot be read stay in the store, and nothing goes over them, until the reader removes them', () => {
    const half = writeKept(team).slice(0, 80);
    const { state, browser } = open({ [LIFTERS_STORE]: half });
    expect(state.unread.value?.problem).toMatch(/no JSON/u);
    state.add('Lifter C');
    expect(kept()).toBe(half);
    vi.stubGlobal('URL', { createObjectURL: () => 'blob:', revokeObjectURL: () => undefined });
    state.saveUnread();
    expect(browser.saved).toEqual(['lifters-not-read.txt']);
    state.dropUnread();
    expect(readKept(kept() ?? '').lifters?.all.map(({ name }) => name)).toEqual(['Lifter C']);
  });

  it('can be written where the browser keeps nothing, and it says so', () => {
    const { state } = open('forbidden');
    expect([hasKeptLifters(), state.notKept.value]).toEqual([false, 'it keeps nothing for this site']);
    expect(state.add('Lifter A')).toBe(true);
    expect(state.notKept.value).toBe('the store is forbidden');
    expect(state.lifters.value.all).toHaveLength(1);
  });

  it('say where there is no room, and keep again once there is', () => {
    const { state } = open();
    const { setItem } = localStorage;
    localStorage.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
    state.add('Lifter A');
    expect(state.notKept.value).toMatch(/no room left for this site/u);
    localStorage.setItem = setItem;
    state.add('Lifter B');
    expect(state.notKept.value).toBeNull();
    expect(readKept(kept() ?? '').lifters?.all).toHaveLength(2);
  });

  it('may have exercises that the programme has not, once each', () => {
    const { state } = open({ [LIFTERS_STORE]: writeKept(team) });
    expect(state.listExercise(1, '***')).toBe(false);
    expect(state.listExercise(1, 'RDLs')).toBe(true);
    expect(state.listExercise(1, 'Romanian deadlift')).toBe(true);
    expect(state.lifters.value.all[0].maxima.map(({ exercise }) => exercise)).toEqual(['squat', 'Romanian deadlift']);
    state.dropExercise(1, 'Romanian deadlift');
    expect(state.lifters.value.all[0].maxima.map(({ exercise }) => exercise)).toEqual(['squat']);
  });
});
