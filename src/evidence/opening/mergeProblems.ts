/** Problems of a sheet's cells among those of its rows. */
import { type Problem, sortByLine } from '../problem.ts';

/** All of both, once each: where both speak of one cell, the sheet knows the cause. */
export function mergeProblems(ofSheet: readonly Problem[], ofRows: readonly Problem[]): readonly Problem[] {
  if (ofSheet.length === 0) return ofRows;
  const cell = ({ line, column }: Problem) => `${line} ${column}`;
  const known = new Set(ofSheet.map(cell));
  return sortByLine([...ofSheet, ...ofRows.filter((one) => one.kind !== 'wrong-value' || !known.has(cell(one)))]);
}
