/** The panels under the figure: the same fit looked at from many sides, each with its finding. */

import { useMemo } from 'preact/hooks';
import { deviationsByStudy } from '../../figures/deviationsByStudy.ts';
import type { Figure } from '../../figures/figure.ts';
import { stateBootstrap, stateDeviations, stateReserveError, stateWithinBetween } from '../../figures/panels.ts';
import { smallStudyPattern } from '../../figures/smallStudyPattern.ts';
import { targetsByYear } from '../../figures/targetsByYear.ts';
import { targetsWithoutStudies } from '../../figures/targetsWithoutStudies.ts';
import { listBands } from '../../model/bands.ts';
import type { BandChecks } from '../../model/full.ts';
import type { Band } from '../../model/result.ts';
import { FigureView } from '../../ui/FigureView.tsx';
import type { EvidenceState } from './evidence.state.ts';
import { CheckedPanel, EvidencePanel } from './Panel.tsx';
import { EvidenceSweep } from './Sweep.tsx';
import { Coefficients, CurveShapes, StudyWeights } from './Tables.tsx';

export function EvidencePanels({ state }: { readonly state: EvidenceState }) {
  const analysis = state.fitting.analysis.value;
  const { metric } = analysis.settings;
  const checks = state.checking.checks.value;
  const problem = state.checking.checkProblem.value;
  const views = listBands(analysis.bands).map(([name, band]) => ({
    name,
    band,
    checks: checks?.[name] ?? null,
  }));
  const slower = { views, problem, isWaiting: checks === null && problem === null };
  return (
    <>
      <EvidencePanel title="Coefficients" views={views}>
        {({ name, band }) => <Coefficients name={name} band={band} analysis={analysis} />}
      </EvidencePanel>
      <EvidencePanel title="Curve shapes compared" views={views}>
        {({ name, band }) => <CurveShapes name={name} band={band} metric={metric} />}
      </EvidencePanel>
      <EvidencePanel title="Inside studies against between them" views={views}>
        {({ band }) => <p>{stateWithinBetween(band.withinBetween, metric)}</p>}
      </EvidencePanel>
      <CheckedPanel title="What each study counts for" {...slower}>
        {({ name, checks: own }) => <StudyWeights name={name} checks={own} />}
      </CheckedPanel>
      <CheckedPanel title="Study by study" {...slower}>
        {({ name, checks: own }) => (
          <>
            <p>{stateDeviations(own.deviations)}</p>
            <CheckFigure of={own} make={() => deviationsByStudy(own.deviations, name, analysis.settings)} />
          </>
        )}
      </CheckedPanel>
      <CheckedPanel title="Without each study" {...slower}>
        {({ name, band, checks: own }) => (
          <CheckFigure
            of={own}
            make={() => targetsWithoutStudies(own.influence, band.target, furthestStudied(band), name)}
          />
        )}
      </CheckedPanel>
      <CheckedPanel title="Small studies" {...slower}>
        {({ name, checks: own }) => (
          <CheckFigure of={own} make={() => smallStudyPattern(own.smallStudies, name, metric)} />
        )}
      </CheckedPanel>
      <CheckedPanel title="Year by year" {...slower}>
        {({ name, band, checks: own }) => (
          <CheckFigure of={own} make={() => targetsByYear(own.cumulative, furthestStudied(band), name)} />
        )}
      </CheckedPanel>
      <CheckedPanel title="Reserve known with error" {...slower}>
        {({ checks: own }) => <p>{stateReserveError(own.reserveError, metric)}</p>}
      </CheckedPanel>
      <CheckedPanel title="Resampling studies" {...slower}>
        {({ checks: own }) => <p>{stateBootstrap(own.bootstrap)}</p>}
      </CheckedPanel>
      <EvidenceSweep state={state} />
    </>
  );
}

function furthestStudied({ studiedReserve }: Band): number {
  return studiedReserve?.high ?? 0;
}

interface CheckFigureProps {
  /** The checks that the figure shows; while they stay, it is not drawn again. */
  readonly of: BandChecks;
  readonly make: () => Figure;
}

function CheckFigure({ of, make }: CheckFigureProps) {
  return <FigureView heading="h4" figure={useMemo(make, [of])} />;
}
