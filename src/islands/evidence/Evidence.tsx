/** The Evidence page: the regression, live. */
import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import type { Analysis } from '../../model/result.ts';
import { AwaitOwn } from '../../ownTable/AwaitOwn.tsx';
import { useConnection, useTable } from '../../ownTable/useTable.ts';
import { LeftOut } from '../../ui/LeftOut.tsx';
import { Trouble } from '../../ui/Trouble.tsx';
import type { Vocabulary } from '../analysis/filterOptions.ts';
import { EvidenceControls } from './Controls.tsx';
import { createEvidence, type EvidenceState } from './evidence.state.ts';
import { EvidenceFigures } from './Figures.tsx';
import { EvidenceGuide, GuideOpener } from './Guide.tsx';
import { EvidenceMoves } from './Moves.tsx';
import { EvidencePanels } from './Panels.tsx';
import { TakeHome } from './TakeHome.tsx';

interface Props {
  readonly analysis: Analysis;
  /** Address of the site's table. */
  readonly table: string;
  /** What the site's table offers to choose by. */
  readonly vocabulary: Vocabulary;
  /** The figures as the build drew them. */
  readonly light?: ComponentChildren;
  readonly heavy?: ComponentChildren;
}

export function Evidence({ analysis, table, vocabulary, ...drawn }: Props) {
  const { address, isKnown } = useTable(table);
  const state = useMemo(() => createEvidence(analysis, address, vocabulary), [analysis, address, vocabulary]);
  useConnection(state, isKnown);
  const { fitting } = state;
  const isShown = fitting.isShown.value;
  return (
    <div class="workbench">
      <div class="picture">
        <Messages state={state} />
        {isShown && <GuideOpener state={state} />}
        {isShown && <EvidenceMoves state={state} />}
        <div aria-busy={fitting.pending.value} hidden={!isShown}>
          <EvidenceFigures state={state} drawn={drawn} />
        </div>
        {isShown && <LeftOut {...fitting.analysis.value.rows} />}
      </div>
      <EvidenceGuide state={state} />
      <EvidenceControls state={state} {...fitting.vocabulary.value} />
      <div class="panels" hidden={!isShown}>
        <EvidencePanels state={state} />
        <TakeHome state={state} />
      </div>
    </div>
  );
}

function Messages({ state: { fitting, address } }: { readonly state: EvidenceState }) {
  return (
    <div aria-live="polite">
      <AwaitOwn awaits={fitting.awaitsOwn.value} problem={fitting.problem.value} />
      {address.notice.value !== null && <p class="problem">{address.notice.value}</p>}
      <Trouble what="The numbers could not be worked out" reason={fitting.problem.value} onRetry={fitting.retry} />
    </div>
  );
}
