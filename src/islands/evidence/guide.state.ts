/** State of the guided sequence on the Evidence page: which step, what was guessed, what came, and what it goes back to. */
import { batch, computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { Analysis } from '../../model/result.ts';
import { defaultSettings, type Settings } from '../../model/settings.ts';
import { type GuideProgress, keepProgress, readProgress } from '../../ui/keptGuide.ts';
import { readSettings, writeSettings } from '../analysis/settingsAddress.ts';
import type { createFitting } from './fitting.state.ts';
import { type Finding, findChange, findingSchema, passOver } from './guideFindings.ts';
import { type Ringed, ringTarget } from './guideRings.ts';
import { GUIDE_STEPS, refuseGuide, stateQuestion } from './guideSteps.ts';

/** Name under which the browser keeps it, before the address of the table that is read. */
const STORE = 'shy-of-failure guide';

type Fitting = Pick<ReturnType<typeof createFitting>, 'analysis' | 'vocabulary' | 'pending' | 'problem'>;

/**
 * @param table address of the table that is read: another has a guide of its own
 * @param rest called before each change, so that it is a move by itself
 */
export function createGuide(table: string, settings: Signal<Settings>, fitting: Fitting, rest: () => void) {
  const store = `${STORE} ${table}`;
  const progress = signal<GuideProgress | null>(null);
  /** The analysis that the present step starts from; null until it is fitted. */
  const before = signal<Analysis | null>(null);
  const step = computed(() => (progress.value ? (GUIDE_STEPS[progress.value.step] ?? null) : null));
  const guess = computed(() => progress.value?.guesses[progress.value.step] ?? null);
  /** What each step came to, in their order; null where it has not come to anything. */
  const findings = computed<readonly (Finding | null)[]>(() =>
    GUIDE_STEPS.map((_, i) => {
      const parsed = findingSchema.safeParse(progress.value?.found[i]);
      return parsed.success ? parsed.data : null;
    }),
  );
  const context = computed(() =>
    before.value ? { analysis: before.value, options: fitting.vocabulary.value.options } : null,
  );
  /** Why the present step says nothing of the table; null where it does, or that is not known yet. */
  const whyNot = computed(() =>
    step.value && context.value ? (refuseGuide(context.value.analysis) ?? step.value.whyNot(context.value)) : null,
  );
  /** What is asked; null until that is known. An answered step says what it asked, whatever is fitted now. */
  const question = computed(() => {
    const found = findings.value[progress.value?.step ?? 0];
    if (found?.wasAsked) return found.question;
    return step.value && context.value ? stateQuestion(step.value, context.value) : null;
  });
  const ringed: ReadonlySignal<Ringed | null> = computed(() => {
    const at = progress.value;
    if (!at || !step.value || fitting.pending.value) return null;
    if (guess.value !== null) return findings.value[at.step] ? ringTarget(fitting.analysis.value) : null;
    return context.value && whyNot.value === null ? step.value.rings(context.value) : null;
  });

  const move = (to: Settings) => {
    rest();
    settings.value = to;
  };
  /** True from going to a step until it is fitted as it begins. */
  let isArriving = false;
  const goTo = (to: number) => {
    const at = progress.value;
    if (!at || to < 0 || to > GUIDE_STEPS.length) return;
    const start = readSettings(at.start).settings;
    isArriving = true;
    // At once, or the former step would be taken to begin anew.
    batch(() => {
      before.value = null;
      progress.value = { ...at, step: to };
      move(GUIDE_STEPS[to]?.base(start) ?? start);
    });
  };
  /** Whether the address was read yet, and whether the reader was quicker. */
  let isConnected = false;
  let isWanted = false;
  const begin = () => {
    isWanted = !isConnected;
    if (isWanted) return;
    progress.value = { step: 0, guesses: {}, start: writeSettings(settings.peek()), found: {} };
    goTo(0);
  };
  const again = () => {
    if (progress.value) settings.value = readSettings(progress.value.start).settings;
    begin();
  };
  const leave = () => {
    const at = progress.value;
    if (!at) return;
    batch(() => {
      before.value = null;
      progress.value = null;
      move(readSettings(at.start).settings);
    });
  };
  const choose = (choice: string) => {
    const at = progress.value;
    if (!at || !step.value || !context.value) return;
    progress.value = { ...at, guesses: { ...at.guesses, [at.step]: choice } };
    move(step.value.change(context.value));
  };
  const note = (finding: Finding) => {
    const at = progress.peek();
    if (at) progress.value = { ...at, found: { ...at.found, [at.step]: finding } };
  };
  /** Goes on with what this tab kept, and follows the fits; gives what ends that. */
  const connect = () => {
    isConnected = true;
    const kept = readProgress(store, GUIDE_STEPS.length);
    // Left before its address was written, the page goes on with what it showed.
    if (kept?.last !== undefined && kept.search === location.search) settings.value = readSettings(kept.last).settings;
    const here = writeSettings(settings.peek());
    // Settings that a link asks for go before a sequence that was begun at others; a plain address asks for none.
    const isAskedFor = here !== writeSettings(defaultSettings) && here !== kept?.last;
    progress.value = isAskedFor ? null : kept;
    if (isWanted && !progress.value) begin();
    // An answered step stands as the address has it.
    else if (progress.value && !findings.value[progress.value.step]?.wasAsked) goTo(progress.value.step);
    const stops = [
      effect(() => {
        const [last, { search }] = [writeSettings(settings.value), location];
        keepProgress(store, progress.value && { ...progress.value, last, search });
      }),
      effect(() => {
        const at = progress.value;
        const analysis = fitting.analysis.value;
        if (!at || !step.value || fitting.pending.value) return;
        const is = (wanted: Settings) => JSON.stringify(analysis.settings) === JSON.stringify(wanted);
        if (!before.value) {
          if (!is(step.value.base(readSettings(at.start).settings))) return;
          before.value = analysis;
          // Who goes back to an answered step sees its change; who undoes a move is left alone.
          if (isArriving && guess.value !== null && context.value) move(step.value.change(context.value));
          isArriving = false;
        } else if (whyNot.value !== null) {
          if (!findings.value[at.step]) note(passOver(whyNot.value));
        } else if (guess.value !== null && !findings.value[at.step] && context.value) {
          if (is(step.value.change(context.value))) note(findChange(step.value, context.value, analysis));
        }
      }),
    ];
    return () => {
      isConnected = false;
      for (const stop of stops) stop();
    };
  };
  return {
    progress,
    step,
    guess,
    before,
    question,
    whyNot,
    findings,
    ringed,
    begin,
    again,
    leave,
    goTo,
    choose,
    connect,
  };
}

export type GuideState = ReturnType<typeof createGuide>;
