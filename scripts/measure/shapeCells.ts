/** The cells of the calibration over truths, worked through on every core; each has tables of its own. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Cell } from '../../src/model/coverage.ts';
import { LAYOUTS, type Layout } from '../../src/model/simulation.ts';
import { LEAST_TARGET_STUDIES } from '../../src/model/target.ts';
import { ALL_TRUTHS, FURTHER_TRUTHS, type Growth, TRUTHS, type TruthName } from '../../src/model/truths.ts';
import { type CellResult, SHAPE_STUDY_COUNTS } from './shapeCalibration.ts';

/** Each truth with each number of studies and each layout. */
export const CELLS = cellsOf(TRUTHS, SHAPE_STUDY_COUNTS);
/** The same truths with the fewest studies that give a target. */
export const FEWEST_CELLS = cellsOf(TRUTHS, [LEAST_TARGET_STUDIES]);
export const FURTHER_CELLS = cellsOf(FURTHER_TRUTHS, SHAPE_STUDY_COUNTS);

export interface CellTask {
  readonly cell: Cell;
  readonly tables: number;
  readonly seed: number;
}

/** A cell's own seed, which stays when other cells come or go. */
export function seedOf({ truth, studies, layout }: Cell, seed: number): number {
  const place = (names: object, name: string) => Object.keys(names).indexOf(name);
  return seed + 1000 * (1 + place(ALL_TRUTHS, truth)) + 10 * studies + place(LAYOUTS, layout);
}

/** @param done called as each cell ends, with how many have */
export async function calibrateCells(
  cells: readonly Cell[],
  tables: number,
  seed: number,
  done: (result: CellResult, count: number) => void,
): Promise<readonly CellResult[]> {
  const results: CellResult[] = [];
  let next = 0;
  let count = 0;
  const workThrough = async () => {
    const worker = new Worker(new URL('./shapeWorker.ts', import.meta.url));
    try {
      while (next < cells.length) {
        const place = next++;
        const cell = cells[place];
        results[place] = await ask(worker, { cell, tables, seed: seedOf(cell, seed) });
        done(results[place], ++count);
      }
    } finally {
      await worker.terminate();
    }
  };
  await Promise.all(Array.from({ length: Math.min(availableParallelism(), cells.length) }, workThrough));
  return results;
}

function ask(worker: Worker, task: CellTask): Promise<CellResult> {
  return new Promise((resolve, reject) => {
    worker.removeAllListeners();
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.postMessage(task);
  });
}

function cellsOf(truths: Partial<Record<TruthName, Growth>>, counts: readonly number[]): readonly Cell[] {
  return (Object.keys(truths) as TruthName[]).flatMap((truth) =>
    (Object.keys(LAYOUTS) as Layout[]).flatMap((layout) => counts.map((studies) => ({ truth, studies, layout }))),
  );
}
