/** State of the shading of the evidence map: people of one more study, and what a worker made of them. */
import { computed, signal } from '@preact/signals';
import type { Settings } from '../../model/settings.ts';
import type { GainsView } from '../analysis/gainsView.ts';
import { openPlanningCalls } from '../analysis/planningCalls.ts';

/** Milliseconds without a move after which the worker is asked: it takes longer than a move. */
const REST = 150;

interface Asked {
  /** Address of the table that is read. */
  readonly table: string;
  readonly settings: Settings;
  /** As the build made it; null where it is still to be made. */
  readonly first: GainsView | null;
}

export function createGains({ table, settings, first }: Asked) {
  /** What is shown. */
  const view = signal(first);
  /** People that are wanted; null for as many as usual. */
  const people = signal<number | null>(first?.people ?? null);
  const isShaded = signal(true);
  const problem = signal<string | null>(null);
  const isBusy = computed(
    () =>
      problem.value === null && (view.value === null || (people.value !== null && view.value.people !== people.value)),
  );
  const known = new Map<number, GainsView>(first ? [[first.people, first]] : []);
  const calls = openPlanningCalls();
  let rest: ReturnType<typeof setTimeout> | undefined;
  let giveUp = () => {};

  const ask = () => {
    giveUp();
    problem.value = null;
    giveUp = calls.ask(
      'gains',
      { table, settings, people: people.value },
      {
        take: (found) => {
          known.set(found.people, found);
          people.value ??= found.people;
          view.value = found;
        },
        fail: (reason) => {
          problem.value = reason;
        },
      },
    );
  };
  const change = (wanted: number) => {
    clearTimeout(rest);
    giveUp();
    problem.value = null;
    people.value = wanted;
    const found = known.get(wanted);
    if (found) view.value = found;
    else rest = setTimeout(ask, REST);
  };
  const connect = () => {
    if (view.peek() === null) ask();
    return () => {
      clearTimeout(rest);
      calls.end();
    };
  };
  return { view, people, isShaded, isBusy, problem, change, retry: ask, connect };
}

export type GainsState = ReturnType<typeof createGains>;
