/** State of the lesson: which step, what was guessed, and what the runs on the way came to. */
import { computed, effect, signal } from '@preact/signals';
import { type GuideProgress, keepProgress, readProgress } from '../../ui/keptGuide.ts';
import { type Experiment, readExperiment, writeExperiment } from './experiment.ts';
import { lessonSteps } from './lessonSteps.ts';
import { type Result, resultOf, resultSchema } from './results.ts';
import type { Running } from './running.state.ts';

/** Name under which the browser keeps it. */
export const LESSON = 'shy-of-failure lesson on intervals';
/** As many whatever the seed. */
const COUNT = lessonSteps(1).length;

export function createLesson(running: Pick<Running, 'run' | 'draw'>) {
  const progress = signal<GuideProgress | null>(null);
  const start = computed(() => (progress.value ? readExperiment(progress.value.start).experiment : null));
  const steps = computed(() => lessonSteps(start.value?.seed ?? 1));
  /** The step as it stands; null before the lesson, and at its summary. */
  const now = computed(() => {
    const at = progress.value;
    const step = at && steps.value[at.step];
    if (!at || !step) return null;
    const guess = at.guesses[at.step] ?? null;
    return { step, guess, seen: guess === null ? step.before : step.after };
  });

  const found = (experiment: Experiment): Result | null => {
    const parsed = resultSchema.safeParse(progress.value?.found[writeExperiment(experiment)]);
    return parsed.success ? parsed.data : null;
  };
  /** Draws what a step needs, one run after the other, and keeps what they come to; what is to be seen comes last. */
  const draw = (experiments: readonly Experiment[]) => {
    const [first, ...rest] = experiments;
    if (!first) return;
    running.draw(first, () => {
      const at = progress.peek();
      if (!at) return;
      const result = resultOf(running.run.peek());
      progress.value = { ...at, found: { ...at.found, [writeExperiment(first)]: result } };
      draw(rest);
    });
  };
  const show = () => {
    const at = now.peek();
    if (!at) return;
    const { before } = at.step;
    const hasBefore = at.guess === null || found(before.experiment) !== null;
    draw([...(hasBefore ? [] : [before.experiment]), at.seen.experiment]);
  };
  const goTo = (step: number) => {
    if (!progress.value || step < 0 || step > COUNT) return;
    progress.value = { ...progress.value, step };
    show();
  };
  const guess = (choice: string) => {
    const at = progress.value;
    if (!at) return;
    progress.value = { ...at, guesses: { ...at.guesses, [at.step]: choice } };
    show();
  };
  /** @param experiment that is shown, to go back to at the end */
  const begin = (experiment: Experiment) => {
    progress.value = { step: 0, guesses: {}, start: writeExperiment(experiment), found: {} };
    show();
  };
  const again = () => {
    if (start.value) begin(start.value);
  };
  /** Ends the lesson and gives what was shown before it. */
  const leave = (): Experiment | null => {
    const back = start.value;
    progress.value = null;
    return back;
  };
  /** Takes up a lesson that was begun at this address, and keeps it from now on; gives what ends that. */
  const connect = (address: string) => {
    const kept = readProgress(LESSON, COUNT);
    if (kept && kept.start === address) progress.value = kept;
    show();
    return effect(() => keepProgress(LESSON, progress.value));
  };
  return { progress, steps, now, count: COUNT, found, show, goTo, guess, begin, again, leave, connect };
}

export type Lesson = ReturnType<typeof createLesson>;
