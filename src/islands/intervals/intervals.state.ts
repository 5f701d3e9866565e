/** State of the page of intervals: what a reader draws, kept in the address, the run of it, and the lesson. */
import { computed, signal } from '@preact/signals';
import { type Experiment, drawAgain as nextSeed, readExperiment, writeExperiment } from './experiment.ts';
import { createLesson } from './lesson.state.ts';
import { createRunning, type Run } from './running.state.ts';

/** @param start a whole run of the defaults, as the build made it */
export function createIntervals(start: Run) {
  const experiment = signal<Experiment>(start.experiment);
  const ignored = signal<readonly string[]>([]);
  const running = createRunning(start);
  const lesson = createLesson(running);
  /** What of the run is to be seen: all of it, or what the lesson's step shows. */
  const seen = computed(
    () =>
      lesson.now.value?.seen ?? { experiment: experiment.value, shown: 'fits' as const, hasIntervals: true, look: 0 },
  );

  const writeAddress = () => {
    history.replaceState(null, '', `${location.pathname}${writeExperiment(experiment.peek())}${location.hash}`);
  };
  const show = (now: Experiment) => {
    experiment.value = now;
    ignored.value = [];
    writeAddress();
    running.draw(now);
  };
  const change = (part: Partial<Experiment>) => show({ ...experiment.value, ...part });
  const drawAgain = () => show(nextSeed(experiment.value));
  /** Draws the same tables again, where they were stopped or could not be drawn. */
  const retry = () => (lesson.now.peek() ? lesson.show() : running.draw(experiment.peek()));
  const leave = () => {
    const back = lesson.leave();
    if (back) show(back);
  };
  /** Whether the address was read yet, and whether the reader was quicker. */
  let isConnected = false;
  let isWanted = false;
  const begin = () => {
    isWanted = !isConnected;
    if (isConnected) lesson.begin(experiment.peek());
  };
  const connect = () => {
    const read = readExperiment(location.search);
    experiment.value = read.experiment;
    ignored.value = read.unread;
    const disconnect = lesson.connect(writeExperiment(read.experiment));
    isConnected = true;
    if (isWanted && !lesson.progress.peek()) begin();
    if (!lesson.now.peek()) running.draw(read.experiment);
    return () => {
      isConnected = false;
      disconnect();
      running.end();
    };
  };
  return { experiment, ignored, running, lesson, seen, change, drawAgain, retry, begin, leave, connect };
}

export type IntervalsState = ReturnType<typeof createIntervals>;
