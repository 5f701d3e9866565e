/** The page of intervals: tables drawn from a known truth, which intervals hold it, and a lesson around that. */
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { nameCurve } from '../../figures/simulation/words.ts';
import type { Curve } from '../../model/settings.ts';
import { type Handed, takeOver } from '../../ui/built.ts';
import { Trouble } from '../../ui/Trouble.tsx';
import { ExperimentControls } from './ExperimentControls.tsx';
import { TABLES } from './experiment.ts';
import { createIntervals, type IntervalsState } from './intervals.state.ts';
import { LessonPanel } from './LessonPanel.tsx';
import { Measured, type MeasuredCells } from './Measured.tsx';
import { type DrawnByBuild, Runs } from './Runs.tsx';
import { resultOf, writeResult } from './results.ts';
import type { Run } from './running.state.ts';

/** What the page is built with. */
export interface BuiltIntervals {
  /** A whole run of the defaults. */
  readonly start: Run;
  readonly measured: MeasuredCells;
}

interface Props extends DrawnByBuild {
  readonly built: Handed<BuiltIntervals>;
}

export function Intervals({ built, ...drawn }: Props) {
  const { start, measured } = useMemo(() => takeOver(built), [built]);
  const state = useMemo(() => createIntervals(start), [start]);
  useEffect(() => state.connect(), [state]);
  const isLesson = state.lesson.progress.value !== null;
  const was = useRef(false);
  const hadLesson = was.current;
  was.current = isLesson;
  return (
    <div class="workbench lesson">
      <div class="picture">
        <Messages state={state} />
        {!isLesson && <Opener state={state} hasLeft={hadLesson} />}
        <Progress state={state} />
        <Runs state={state} drawn={drawn} />
        {state.seen.value.hasIntervals && <Measured run={state.running.run.value} measured={measured} />}
      </div>
      {isLesson ? <LessonPanel state={state} /> : <ExperimentControls state={state} />}
    </div>
  );
}

interface OpenerProps {
  readonly state: IntervalsState;
  /** Whether the lesson was just left. */
  readonly hasLeft: boolean;
}

function Opener({ state, hasLeft }: OpenerProps) {
  const opener = useRef<HTMLButtonElement>(null);
  // The button that ended the lesson is gone: the focus goes to what stands in its place.
  useEffect(() => {
    if (hasLeft) opener.current?.focus();
  }, []);
  return (
    <p class="buttons">
      <button ref={opener} type="button" class="onward" onClick={state.begin}>
        Begin: {state.lesson.count} questions
      </button>
      <span class="small">Five minutes, each answered by tables drawn then and there. Or choose for yourself.</span>
    </p>
  );
}

/** How far a run is, and the way to stop it, in a place of its own so that nothing moves. */
function Progress({ state: { running } }: { readonly state: IntervalsState }) {
  return (
    <div class="buttons progress">
      {running.isRunning.value && (
        <>
          <progress value={running.drawn.value} max={TABLES} aria-label="Tables drawn" />
          <button type="button" class="inline" onClick={running.stop}>
            Stop
          </button>
        </>
      )}
    </div>
  );
}

export function Messages({ state }: { readonly state: IntervalsState }) {
  const { running, ignored } = state;
  const run = running.run.value;
  const drawn = running.drawn.value;
  const isWhole = drawn === TABLES && !running.isRunning.value;
  return (
    <div aria-live="polite">
      {ignored.value.length > 0 && (
        <p class="problem">
          Parts of the address could not be read and stand at their defaults: {ignored.value.join(', ')}.
        </p>
      )}
      <Trouble what="The tables could not be drawn" reason={running.problem.value} onRetry={state.retry} />
      {running.isStopped.value && (
        <p>
          Stopped after {drawn} of {TABLES} tables.{' '}
          <button type="button" class="inline" onClick={state.retry}>
            Draw them
          </button>
        </p>
      )}
      {running.isFormer.value && !running.isRunning.value && <p>Below still stands what was drawn before.</p>}
      {isWhole && state.seen.value.hasIntervals && (
        <p class="unseen">
          {Object.entries(resultOf(run))
            .map(([curve, result]) => `${nameCurve(curve as Curve)}: ${writeResult(result)}.`)
            .join(' ')}
        </p>
      )}
    </div>
  );
}
