/** State of the Answer page of a reader's own table: what a worker made of it. */
import { signal } from '@preact/signals';
import { defaultSettings } from '../../model/settings.ts';
import { type StatedNextStudy, stateNextStudy } from '../../practice/nextStudy.ts';
import { openCalculation } from '../analysis/calculation.ts';
import type { FigureSource } from '../analysis/figureSource.ts';
import { openPlanningCalls } from '../analysis/planningCalls.ts';

/** @param table address of the reader's own table */
export function createOwnAnswer(table: string) {
  /** At first without the checks, which are most of the work. */
  const source = signal<FigureSource | null>(null);
  const problem = signal<string | null>(null);
  /** null until it is worked out. */
  const nextStudy = signal<StatedNextStudy | null>(null);
  const nextProblem = signal<string | null>(null);
  const calculation = openCalculation();
  const planning = openPlanningCalls();
  const asked = { table, settings: defaultSettings };
  /** A search of seconds: only once the page stands, so that it takes nothing from the answer. */
  const askNext = () => {
    nextProblem.value = null;
    planning.ask('next study', asked, {
      take: (found) => {
        nextStudy.value = stateNextStudy(found);
      },
      fail: (reason) => {
        nextProblem.value = reason;
      },
    });
  };
  const ask = () => {
    problem.value = null;
    const take = (found: FigureSource) => {
      source.value = found;
      if (found.checked) askNext();
    };
    const fail = (reason: string) => {
      problem.value = reason;
    };
    calculation.ask('figures', asked, { progress: take, take, fail });
  };
  const connect = () => {
    ask();
    return () => {
      calculation.end();
      planning.end();
    };
  };
  return { source, problem, retry: ask, nextStudy, nextProblem, retryNext: askNext, connect };
}

export type OwnAnswerState = ReturnType<typeof createOwnAnswer>;
