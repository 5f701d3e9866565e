/** The guided sequence: one step at a time, each changing one thing. */
import { useEffect, useRef } from 'preact/hooks';
import type { EvidenceState } from './evidence.state.ts';
import { GUIDE_STEPS, stateChange } from './guideSteps.ts';

const LAST = GUIDE_STEPS.length - 1;

export function EvidenceGuide({ state }: { readonly state: EvidenceState }) {
  const guide = state.guide.now.value;
  const heading = useRef<HTMLHeadingElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const wasOpen = useRef(false);
  const isOpen = guide !== null;
  // The button that opened or ended the sequence is gone: the focus goes to what stands in its place.
  useEffect(() => {
    if (isOpen !== wasOpen.current) (isOpen ? heading : opener).current?.focus();
    wasOpen.current = isOpen;
  }, [isOpen]);
  if (guide === null) {
    return (
      <p>
        <button ref={opener} type="button" onClick={() => state.guide.goToStep(0)}>
          Learn by changing one thing: {GUIDE_STEPS.length} steps
        </button>
      </p>
    );
  }
  const { index, analysis } = guide;
  const step = GUIDE_STEPS[index];
  const go = (to: number) => {
    state.guide.goToStep(to);
    // At either end the button that was pressed cannot be pressed again, and would lose the focus.
    if (to === 0 || to === LAST) heading.current?.focus();
  };
  return (
    <section class="cautions guide" aria-label="Guided steps">
      <div aria-live="polite">
        <h2 ref={heading} tabIndex={-1}>
          {index + 1} of {GUIDE_STEPS.length}: {step.title}
        </h2>
        <p>{step.ask}</p>
        <p id="guide-finding">
          {state.fitting.pending.value ? 'Fitting …' : stateChange(analysis, state.fitting.analysis.value)}
        </p>
      </div>
      <div class="buttons">
        <button type="button" disabled={index === 0} onClick={() => go(index - 1)}>
          Step back
        </button>
        <button type="button" disabled={index === LAST} onClick={() => go(index + 1)}>
          Next step
        </button>
        <button type="button" onClick={state.guide.end}>
          End, and back to where I started
        </button>
      </div>
    </section>
  );
}
