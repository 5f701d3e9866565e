/** The panel of the sweep: worked out when it is asked for, with progress, and stopped on a wish. */
import { stateSweep } from '../../figures/findings.ts';
import type { EvidenceState } from './evidence.state.ts';

export function EvidenceSweep({ state }: { readonly state: EvidenceState }) {
  const progress = state.checking.sweepProgress.value;
  const sweep = state.checking.sweep.value;
  const problem = state.checking.sweepProblem.value;
  return (
    <section class="panel">
      <h2>Every combination of choices</h2>
      <p>
        The target under each combination of metric, correlations, split, curve, weighting, adjustment and inclusion,
        with the other choices as they stand above.
      </p>
      {/* One button for both, so that it keeps the focus. */}
      <div class="buttons">
        {progress && <progress value={progress.done} max={progress.total} aria-label="Combinations worked out" />}
        <button key="run" type="button" onClick={progress ? state.checking.stopSweep : state.checking.startSweep}>
          {progress ? 'Stop' : 'Work them out'}
        </button>
      </div>
      <div aria-live="polite">
        {problem !== null && <p class="problem">The combinations could not be worked out: {problem}</p>}
        {sweep && (
          <ul id="sweep-finding">
            <li>{stateSweep('light', sweep)}</li>
            <li>{stateSweep('heavy', sweep)}</li>
          </ul>
        )}
      </div>
    </section>
  );
}
