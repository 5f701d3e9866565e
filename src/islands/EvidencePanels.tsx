/** The panels under the figure: the same fit looked at from many sides, each with its finding. */
import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import { deviationsByStudy } from '../figures/deviationsByStudy.ts';
import { writeEquation } from '../figures/equation.ts';
import type { Figure } from '../figures/figure.ts';
import { describeSweep } from '../figures/findings.ts';
import { formatNumber, formatP, formatRange } from '../figures/format.ts';
import {
  describeBootstrap,
  describeDeviations,
  describeHeterogeneity,
  describeReserveError,
  describeTarget,
  describeWeightings,
  describeWithinBetween,
} from '../figures/panels.ts';
import { smallStudyPattern } from '../figures/smallStudyPattern.ts';
import { targetsByYear } from '../figures/targetsByYear.ts';
import { targetsWithoutStudies } from '../figures/targetsWithoutStudies.ts';
import type { BandChecks } from '../model/full.ts';
import type { Analysis, Band, BandName } from '../model/result.ts';
import type { EvidenceState } from './evidence.state.ts';
import { FigureView } from './FigureView.tsx';
import { Scroll } from './Scroll.tsx';

interface BandView {
  readonly name: BandName;
  readonly band: Band;
  readonly checks: BandChecks | null;
}

const HEADINGS = { light: 'Light loads', heavy: 'Heavy loads', all: 'All loads' } as const;
const CURVE_NAMES = { line: 'straight line', log: 'logarithm', quadratic: 'parabola', spline: 'spline' } as const;

export function EvidencePanels({ state }: { readonly state: EvidenceState }) {
  const analysis = state.analysis.value;
  const checks = state.checks.value;
  const views = (Object.entries(analysis.bands) as [BandName, Band][]).map(([name, band]) => ({
    name,
    band,
    checks: checks?.[name] ?? null,
  }));
  const waiting = checks === null;
  const { metric } = analysis.settings;
  return (
    <>
      <Panel title="Coefficients" views={views}>
        {({ name, band }) => <Coefficients name={name} band={band} analysis={analysis} />}
      </Panel>
      <Panel title="Curve shapes compared" views={views}>
        {({ name, band }) => <Curves name={name} band={band} />}
      </Panel>
      <Panel title="Inside studies against between them" views={views}>
        {({ band }) => <p>{describeWithinBetween(band.withinBetween, metric)}</p>}
      </Panel>
      <Panel title="What each study counts for" views={views} waiting={waiting}>
        {({ name, checks: own }) => own && <Weights name={name} checks={own} />}
      </Panel>
      <Panel title="Study by study" views={views} waiting={waiting}>
        {({ checks: own, name }) =>
          own && (
            <>
              <p>{describeDeviations(own.deviations)}</p>
              <CheckFigure of={own} make={() => deviationsByStudy(own.deviations, name, analysis.settings)} />
            </>
          )
        }
      </Panel>
      <Panel title="Without each study" views={views} waiting={waiting}>
        {({ checks: own, name, band }) =>
          own && (
            <CheckFigure
              of={own}
              make={() => targetsWithoutStudies(own.influence, band.target, band.studiedReserve?.high ?? 0, name)}
            />
          )
        }
      </Panel>
      <Panel title="Small studies" views={views} waiting={waiting}>
        {({ checks: own, name }) =>
          own && <CheckFigure of={own} make={() => smallStudyPattern(own.smallStudies, name, metric)} />
        }
      </Panel>
      <Panel title="Year by year" views={views} waiting={waiting}>
        {({ checks: own, name, band }) =>
          own && (
            <CheckFigure of={own} make={() => targetsByYear(own.cumulative, band.studiedReserve?.high ?? 0, name)} />
          )
        }
      </Panel>
      <Panel title="Reserve known with error" views={views} waiting={waiting}>
        {({ checks: own }) => own && <p>{describeReserveError(own.reserveError, metric)}</p>}
      </Panel>
      <Panel title="Resampling studies" views={views} waiting={waiting}>
        {({ checks: own }) => own && <p>{describeBootstrap(own.bootstrap)}</p>}
      </Panel>
      <SweepPanel state={state} />
    </>
  );
}

interface CheckFigureProps {
  /** The checks that the figure shows; while they stay, it is not drawn again. */
  readonly of: BandChecks;
  readonly make: () => Figure;
}

function CheckFigure({ of, make }: CheckFigureProps) {
  return <FigureView heading="h4" figure={useMemo(make, [of])} />;
}

interface PanelProps {
  readonly title: string;
  readonly views: readonly BandView[];
  /** True while the slower numbers are being worked out. */
  readonly waiting?: boolean;
  readonly children: (view: BandView) => ComponentChildren;
}

function Panel({ title, views, waiting = false, children }: PanelProps) {
  return (
    <section class="panel" aria-busy={waiting}>
      <h2>{title}</h2>
      <div class="pair">
        {views.map((view) => (
          <div key={view.name}>
            <h3 class={view.name === 'light' ? 'light-load' : 'heavy-load'}>{HEADINGS[view.name]}</h3>
            {waiting ? (
              <p class="small">Being worked out …</p>
            ) : view.band.failure ? (
              <p>Nothing to show: {view.band.failure.reason}.</p>
            ) : (
              children(view)
            )}
          </div>
        ))}
      </div>
    </section>
  );
}

function Coefficients({
  name,
  band,
  analysis,
}: {
  readonly name: BandName;
  readonly band: Band;
  readonly analysis: Analysis;
}) {
  const { metric, confidence } = analysis.settings;
  return (
    <>
      <p>
        <code>{writeEquation(band, analysis)}</code>
      </p>
      <Scroll label={`Coefficients: ${HEADINGS[name]}`}>
        <table>
          <thead>
            <tr>
              <th scope="col">Term</th>
              <th scope="col" class="number">
                Estimate
              </th>
              <th scope="col" class="number">
                {formatNumber(100 * confidence, 0)} % interval
              </th>
              <th scope="col" class="number">
                df
              </th>
              <th scope="col" class="number">
                p
              </th>
            </tr>
          </thead>
          <tbody>
            {band.coefficients.map(({ term, estimate, ciLow, ciHigh, df, p }) => (
              <tr key={term}>
                <td>{term}</td>
                <td class="number">{formatNumber(estimate, 4)}</td>
                <td class="number">
                  {formatNumber(ciLow, 4)} to {formatNumber(ciHigh, 4)}
                </td>
                <td class="number">{formatNumber(df, 1)}</td>
                <td class="number">{formatP(p)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="small">
        {describeHeterogeneity(band, metric)}{' '}
        {band.unreliable && 'Some df are below 4: those intervals are unreliable.'}
      </p>
      <p>{describeTarget(band.target)}.</p>
    </>
  );
}

function Curves({ name, band }: { readonly name: BandName; readonly band: Band }) {
  return (
    <Scroll label={`Curve shapes: ${HEADINGS[name]}`}>
      <table>
        <thead>
          <tr>
            <th scope="col">Curve</th>
            <th scope="col" class="number">
              AICc above best
            </th>
            <th scope="col">Target</th>
          </tr>
        </thead>
        <tbody>
          {band.curves.map(({ curve, aboveBest, target, failure }) => (
            <tr key={curve} aria-current={curve === band.curve ? 'true' : undefined}>
              <td>{CURVE_NAMES[curve]}</td>
              <td class="number">{aboveBest === null ? 'none' : formatNumber(aboveBest, 2)}</td>
              <td>
                {failure
                  ? failure.reason
                  : target.point === null
                    ? target.reason
                    : `${formatNumber(target.point, 2)} (${formatRange(target.low, target.high, 2)})`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Weights({ name, checks }: { readonly name: BandName; readonly checks: BandChecks }) {
  const [mixed] = checks.weightings;
  return (
    <>
      <p>{describeWeightings(checks.weightings)}</p>
      <Scroll label={`Weights: ${HEADINGS[name]}`}>
        <table>
          <thead>
            <tr>
              <th scope="col">Study, share in %</th>
              {checks.weightings.map(({ weighting }) => (
                <th key={weighting} scope="col" class="number">
                  {weighting}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">target</th>
              {checks.weightings.map(({ weighting, target }) => (
                <td key={weighting} class="number">
                  {target.point === null ? 'none' : formatNumber(target.point, 2)}
                </td>
              ))}
            </tr>
            {mixed?.shares.map(({ study }, k) => (
              <tr key={study}>
                <td>{study}</td>
                {checks.weightings.map(({ weighting, shares }) => (
                  <td key={weighting} class="number">
                    {shares[k] ? formatNumber(100 * shares[k].share, 1) : 'none'}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </>
  );
}

function SweepPanel({ state }: { readonly state: EvidenceState }) {
  const progress = state.sweepProgress.value;
  const sweep = state.sweep.value;
  return (
    <section class="panel">
      <h2>Every combination of choices</h2>
      <p>
        The target under each combination of metric, correlations, split, curve, weighting, adjustment and inclusion,
        with the other choices as they stand above.
      </p>
      {progress === null ? (
        <button type="button" onClick={state.startSweep}>
          Work them out
        </button>
      ) : (
        <div class="buttons">
          <progress value={progress.done} max={progress.total} aria-label="Combinations worked out" />
          <button type="button" onClick={state.stopSweep}>
            Stop
          </button>
        </div>
      )}
      <div aria-live="polite">
        {sweep && (
          <ul id="sweep-finding">
            <li>{describeSweep('light', sweep)}</li>
            <li>{describeSweep('heavy', sweep)}</li>
          </ul>
        )}
      </div>
    </section>
  );
}
