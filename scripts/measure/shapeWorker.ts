/** Measures one cell of the calibration at a time, beside the script that asks for it. */
import { parentPort } from 'node:worker_threads';
import { calibrateCell } from './shapeCalibration.ts';
import type { CellTask } from './shapeCells.ts';

parentPort?.on('message', ({ cell, tables, seed }: CellTask) => {
  parentPort?.postMessage(calibrateCell(cell, tables, seed));
});
