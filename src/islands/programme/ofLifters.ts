/**
 * What the lifters’ own loads say of the lines of each version. Their room puts it here once it is loaded: a line whose
 * load is a weight is another per cent of 1RM for each of them, and none for the programme by itself.
 */
import type { LineReport, ListReport } from '../../practice/programme/lineReports.ts';
import type { VersionName } from './editing.state.ts';

/** Sentences by the line's id. */
export type OfLifters = Readonly<Record<VersionName, ReadonlyMap<number, readonly string[]>>>;

export function withLifters(report: ListReport, said: OfLifters[VersionName] | undefined): ListReport {
  if (!said || said.size === 0) return report;
  const byId = new Map([...report.byId].map(([id, one]) => [id, addSaid(one, said.get(id))]));
  return { ...report, byId };
}

function addSaid(report: LineReport, said: readonly string[] | undefined): LineReport {
  if (!said) return report;
  return {
    ...report,
    // Each lifter has the load that is meant; only what is summed over the lines still waits for one in per cent.
    problems: report.problems.map((problem) =>
      problem.column === 'load' && problem.kind === 'wrong-value'
        ? { ...problem, kind: 'missing-value', expected: 'a load in % of 1RM, for the sums over all lines' }
        : problem,
    ),
    assumed: [...report.assumed, ...said],
  };
}
