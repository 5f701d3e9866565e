/** State of the guided sequence on the Evidence page: which step, and what it goes back to at its end. */
import { type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { Analysis } from '../../model/result.ts';
import type { Settings } from '../../model/settings.ts';
import { GUIDE_STEPS } from './guideSteps.ts';

interface Guide {
  readonly index: number;
  /** What it started from. */
  readonly settings: Settings;
  readonly analysis: Analysis;
}

export function createGuide(settings: Signal<Settings>, analysis: ReadonlySignal<Analysis>) {
  const now = signal<Guide | null>(null);
  const goToStep = (index: number) => {
    const step = GUIDE_STEPS[index];
    if (!step) throw new Error(`invalid step; there are ${GUIDE_STEPS.length}: ${index}`);
    const from = now.value ?? { settings: settings.value, analysis: analysis.value };
    now.value = { ...from, index };
    settings.value = step.apply(from.settings, from.analysis);
  };
  const end = () => {
    if (now.value) settings.value = now.value.settings;
    now.value = null;
  };
  return { now, goToStep, end };
}
