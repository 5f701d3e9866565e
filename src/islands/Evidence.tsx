/** The Evidence page: the regression, live. */
import type { ComponentChildren } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { growthByReserve } from '../figures/growthByReserve.ts';
import type { Analysis, BandName } from '../model/result.ts';
import { EvidenceControls } from './EvidenceControls.tsx';
import { EvidenceGuide } from './EvidenceGuide.tsx';
import { EvidencePanels } from './EvidencePanels.tsx';
import { createEvidence, type EvidenceState } from './evidence.state.ts';
import { FigureView } from './FigureView.tsx';
import type { Vocabulary } from './filterOptions.ts';
import { Scroll } from './Scroll.tsx';
import { TakeHome } from './TakeHome.tsx';

interface Props {
  readonly analysis: Analysis;
  readonly table: string;
  /** What the site's table offers to choose by. */
  readonly vocabulary: Vocabulary;
  /** The figures as the build drew them. */
  readonly light?: ComponentChildren;
  readonly heavy?: ComponentChildren;
  readonly all?: ComponentChildren;
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
        <LeftOut state={state} />
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
      {state.foreign.value && <p>Your table is being read; until then this is the site's own.</p>}
      {state.notice.value !== null && <p class="problem">{state.notice.value}</p>}
      {state.problem.value !== null && (
        <p class="problem">The numbers could not be worked out: {state.problem.value}</p>
      )}
    </div>
  );
}

function Figures({
  state,
  drawn,
}: {
  readonly state: EvidenceState;
  readonly drawn: Readonly<Partial<Record<BandName, ComponentChildren>>>;
}) {
  const analysis = state.analysis.value;
  const names = Object.keys(analysis.bands) as BandName[];
  const figures = useMemo(
    () => names.map((band) => ({ band, figure: growthByReserve(analysis, { band }) })),
    [analysis],
  );
  return (
    <>
      {figures.map(({ band, figure }) => (
        <FigureView key={band} figure={figure} drawn={drawn[band]} />
      ))}
    </>
  );
}

function LeftOut({ state }: { readonly state: EvidenceState }) {
  const { included, excluded } = state.analysis.value.rows;
  const byReason = new Map<string, number[]>();
  for (const { line, reason } of excluded) byReason.set(reason, [...(byReason.get(reason) ?? []), line]);
  return (
    <details>
      <summary id="left-out">
        {included} rows are in this fit, {excluded.length} of the table are not: why
      </summary>
      <Scroll label="Rows left out">
        <table>
          <thead>
            <tr>
              <th scope="col">Rows</th>
              <th scope="col">Reason</th>
              <th scope="col">Lines of the table</th>
            </tr>
          </thead>
          <tbody>
            {[...byReason].map(([reason, lines]) => (
              <tr key={reason}>
                <td>{lines.length}</td>
                <td>{reason}</td>
                <td>{lines.join(', ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}
