/** The figures of a run: the intervals of all tables, the first table, and how the count settles. */
import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import { pointOut } from '../../figures/pointOut.ts';
import { drawnIntervals } from '../../figures/simulation/drawnIntervals.ts';
import { drawnTable } from '../../figures/simulation/drawnTable.ts';
import { runningCoverage } from '../../figures/simulation/runningCoverage.ts';
import { FigureView } from '../../ui/FigureView.tsx';
import { curvesOf, TABLES } from './experiment.ts';
import type { IntervalsState } from './intervals.state.ts';
import { trueTargetIn } from './results.ts';
import type { Run } from './running.state.ts';
import { spotsOf } from './spots.ts';

/** The figures as the build drew them, of the run that the page begins with. */
export interface DrawnByBuild {
  readonly first?: ComponentChildren;
  readonly left?: ComponentChildren;
  readonly right?: ComponentChildren;
  readonly settling?: ComponentChildren;
}

interface Props {
  readonly state: IntervalsState;
  readonly drawn: DrawnByBuild;
}

/** All figures of a whole run, as the build draws them too. */
export function figuresOf({ experiment, answers, table }: Run) {
  const curves = curvesOf(experiment);
  const trueTarget = trueTargetIn(experiment);
  return {
    first: drawnTable(table, 'fits'),
    intervals: curves.map((curve, place) =>
      drawnIntervals(
        answers.map((of) => of[place]),
        { curve, place: place === 0 ? 0 : 1, tables: TABLES, trueTarget },
      ),
    ),
    settling: runningCoverage(answers, { curves, tables: TABLES }),
  };
}

export function Runs({ state, drawn }: Props) {
  const run = state.running.run.value;
  const now = state.lesson.now.value;
  const { shown, hasIntervals } = state.seen.value;
  const figures = useMemo(() => figuresOf(run), [run]);
  const spots = useMemo(() => spotsOf(now, run), [now, run]);
  const first = useMemo(() => pointOut(drawnTable(run.table, shown), spots.table), [run.table, shown, spots]);
  const intervals = useMemo(
    () => figures.intervals.map((figure, place) => pointOut(figure, spots.intervals[place] ?? [])),
    [figures, spots],
  );
  const pictures = [drawn.left, drawn.right];
  return (
    <div class="pair" aria-busy={state.running.isRunning.value}>
      {hasIntervals &&
        intervals.map((figure, place) => (
          <FigureView key={place === 0 ? 'left' : 'right'} figure={figure}>
            {pictures[place]}
          </FigureView>
        ))}
      <FigureView key="first" figure={first}>
        {drawn.first}
      </FigureView>
      {hasIntervals && (
        <FigureView key="settling" figure={figures.settling}>
          {drawn.settling}
        </FigureView>
      )}
    </div>
  );
}
