/** State of the Answer page of a reader's own table: what a worker made of it. */
import { signal } from '@preact/signals';
import { defaultSettings } from '../../model/settings.ts';
import { openCalculation } from '../analysis/calculation.ts';
import type { FigureSource } from '../analysis/figureSource.ts';

/** @param table address of the reader's own table */
export function createOwnAnswer(table: string) {
  /** At first without the checks, which are most of the work. */
  const source = signal<FigureSource | null>(null);
  const problem = signal<string | null>(null);
  const calculation = openCalculation();
  const ask = () => {
    problem.value = null;
    const take = (found: FigureSource) => {
      source.value = found;
    };
    const fail = (reason: string) => {
      problem.value = reason;
    };
    calculation.ask('figures', { table, settings: defaultSettings }, { progress: take, take, fail });
  };
  const connect = () => {
    ask();
    return calculation.end;
  };
  return { source, problem, retry: ask, connect };
}
