/** The Evidence page: the regression, live. */

import type { ComponentChildren } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { growthByReserve } from '../../figures/growthByReserve.ts';
import { stateTarget } from '../../figures/panels.ts';
import { listBands } from '../../model/bands.ts';
import type { Analysis, BandName } from '../../model/result.ts';
import { OwnTableWait } from '../../ownTable/OwnTableWait.tsx';
import { LOAD_HEADINGS } from '../../practice/loadNames.ts';
import { FigureView } from '../../ui/FigureView.tsx';
import { LeftOut } from '../../ui/LeftOut.tsx';
import type { Vocabulary } from '../analysis/filterOptions.ts';
import { EvidenceControls } from './Controls.tsx';
import { createEvidence, type EvidenceState } from './evidence.state.ts';
import { EvidenceGuide } from './Guide.tsx';
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
  const state = useMemo(() => createEvidence(analysis, table, vocabulary), [analysis, table, vocabulary]);
  useEffect(() => state.connect(), [state]);
  return (
    <div class="workbench">
      <div class="picture">
        <Messages state={state} />
        <div class="pair" aria-busy={state.pending.value}>
          <Figures state={state} drawn={drawn} />
        </div>
        <LeftOut {...state.analysis.value.rows} />
        <EvidenceGuide state={state} />
      </div>
      <EvidenceControls state={state} {...state.vocabulary.value} />
      <div class="panels">
        <EvidencePanels state={state} />
        <TakeHome state={state} />
      </div>
    </div>
  );
}

function Messages({ state }: { readonly state: EvidenceState }) {
  return (
    <div aria-live="polite">
      <OwnTableWait foreign={state.foreign.value} problem={state.problem.value} />
      {state.notice.value !== null && <p class="problem">{state.notice.value}</p>}
      {state.problem.value !== null && (
        <p class="problem">The numbers could not be worked out: {state.problem.value}</p>
      )}
      <p class="unseen">{outlineTargets(state.analysis.value)}</p>
    </div>
  );
}

/** What a move of a control came to, for those who do not see the figures change. */
function outlineTargets({ bands }: Analysis): string {
  return listBands(bands)
    .map(([name, { failure, target }]) => `${LOAD_HEADINGS[name]}: ${failure?.reason ?? stateTarget(target)}.`)
    .join(' ');
}

interface FiguresProps {
  readonly state: EvidenceState;
  readonly drawn: Readonly<Partial<Record<BandName, ComponentChildren>>>;
}

function Figures({ state, drawn }: FiguresProps) {
  const analysis = state.analysis.value;
  const figures = useMemo(
    () =>
      (Object.keys(analysis.bands) as BandName[]).map((band) => ({
        band,
        figure: growthByReserve(analysis, { band }),
      })),
    [analysis],
  );
  return (
    <>
      {figures.map(({ band, figure }) => (
        <FigureView key={band} figure={figure}>
          {drawn[band]}
        </FigureView>
      ))}
    </>
  );
}
