/** The Evidence page: the regression, live. */
import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import type { Analysis } from '../../model/result.ts';
import { AwaitOwn } from '../../ownTable/AwaitOwn.tsx';
import { useConnection, useTable } from '../../ownTable/useTable.ts';
import { Asleep } from '../../ui/Asleep.tsx';
import { type Handed, takeOver } from '../../ui/built.ts';
import { LeftOut } from '../../ui/LeftOut.tsx';
import { Trouble } from '../../ui/Trouble.tsx';
import type { Vocabulary } from '../analysis/filterOptions.ts';
import { EvidenceBelow } from './Below.tsx';
import { EvidenceControls } from './Controls.tsx';
import { createEvidence, type EvidenceState } from './evidence.state.ts';
import { EvidenceFigures } from './Figures.tsx';
import { EvidenceGuide, GuideOpener } from './Guide.tsx';
import { EvidenceMoves } from './Moves.tsx';

/** What the page is built with. */
export interface BuiltEvidence {
  readonly analysis: Analysis;
  /** What the site's table offers to choose by. */
  readonly vocabulary: Vocabulary;
}

interface Props {
  readonly built: Handed<BuiltEvidence>;
  /** Address of the site's table. */
  readonly table: string;
  /** The figures as the build drew them. */
  readonly light?: ComponentChildren;
  readonly heavy?: ComponentChildren;
}

export function Evidence({ built, table, light, heavy }: Props) {
  const { address, isKnown } = useTable(table);
  const state = useMemo(() => {
    const { analysis, vocabulary } = takeOver(built);
    return createEvidence(analysis, address, vocabulary);
  }, [built, address]);
  // One and the same as long as the state is: each reads it for itself.
  const parts = useMemo(
    () => ({
      figures: <EvidenceFigures state={state} drawn={{ light, heavy }} />,
      below: <EvidenceBelow state={state} />,
    }),
    [state],
  );
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
          <Asleep>{parts.figures}</Asleep>
        </div>
        {isShown && <LeftOut {...fitting.analysis.value.rows} />}
      </div>
      <EvidenceGuide state={state} />
      <EvidenceControls state={state} />
      <div class="panels" hidden={!isShown}>
        <Asleep>{parts.below}</Asleep>
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
