/** The guided sequence: one step at a time, each changing one thing. */
import { describeChange, GUIDE_STEPS } from './evidence.guide.ts';
import type { EvidenceState } from './evidence.state.ts';

export function EvidenceGuide({ state }: { readonly state: EvidenceState }) {
  const guide = state.guide.value;
  if (guide === null) {
    return (
      <p>
        <button type="button" onClick={() => state.goToStep(0)}>
          Learn by changing one thing: {GUIDE_STEPS.length} steps
        </button>
      </p>
    );
  }
  const { index, start } = guide;
  const step = GUIDE_STEPS[index];
  return (
    <section class="cautions guide" aria-label="Guided steps">
      <h2>
        {index + 1} of {GUIDE_STEPS.length}: {step.title}
      </h2>
      <p>{step.ask}</p>
      <p aria-live="polite" id="guide-finding">
        {state.pending.value ? 'Fitting …' : describeChange(start, state.analysis.value)}
      </p>
      <div class="buttons">
        <button type="button" disabled={index === 0} onClick={() => state.goToStep(index - 1)}>
          Step back
        </button>
        <button type="button" disabled={index === GUIDE_STEPS.length - 1} onClick={() => state.goToStep(index + 1)}>
          Next step
        </button>
        <button type="button" onClick={state.endGuide}>
          End, and back to where I started
        </button>
      </div>
    </section>
  );
}
