/** What stands below the figures of the Evidence page: the panels, and what can be taken home. */
import type { EvidenceState } from './evidence.state.ts';
import { EvidencePanels } from './Panels.tsx';
import { TakeHome } from './TakeHome.tsx';

export function EvidenceBelow({ state }: { readonly state: EvidenceState }) {
  return (
    <>
      <EvidencePanels state={state} />
      <TakeHome state={state} />
    </>
  );
}
