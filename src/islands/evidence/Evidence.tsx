/** The Evidence page: the regression, live. */
import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import { growthByReserve } from '../../figures/growthByReserve.ts';
import { stateTarget } from '../../figures/panels.ts';
import { pointOut } from '../../figures/pointOut.ts';
import { listBands } from '../../model/bands.ts';
import type { Analysis, BandName } from '../../model/result.ts';
import { AwaitOwn } from '../../ownTable/AwaitOwn.tsx';
import { useConnection, useTable } from '../../ownTable/useTable.ts';
import { LOAD_HEADINGS } from '../../practice/loadNames.ts';
import { FigureView } from '../../ui/FigureView.tsx';
import { LeftOut } from '../../ui/LeftOut.tsx';
import { Trouble } from '../../ui/Trouble.tsx';
import type { Vocabulary } from '../analysis/filterOptions.ts';
import { EvidenceControls } from './Controls.tsx';
import { createEvidence, type EvidenceState } from './evidence.state.ts';
import { EvidenceGuide, GuideOpener } from './Guide.tsx';
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
        <div class="pair" aria-busy={fitting.pending.value} hidden={!isShown}>
          <Figures state={state} drawn={drawn} />
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
      {fitting.isShown.value && <p class="unseen">{outlineTargets(fitting.analysis.value)}</p>}
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
  const analysis = state.fitting.analysis.value;
  const ringed = state.guide.ringed.value;
  const figures = useMemo(
    () =>
      (Object.keys(analysis.bands) as BandName[]).map((band) => ({
        band,
        figure: pointOut(growthByReserve(analysis, { band }), ringed?.band === band ? ringed.spots : []),
      })),
    [analysis, ringed],
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
