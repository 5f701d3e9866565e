/** The whole of the Answer page, from an analysis: by the build for the site's table, in the browser for a reader's own. */
import type { ComponentChildren } from 'preact';
import type { Figure } from '../../figures/figure.ts';
import { stateBestCurve } from '../../figures/findings.ts';
import { growthByReserve } from '../../figures/growthByReserve.ts';
import { stateBeyondFailure, stateStrength } from '../../figures/outcomeFindings.ts';
import { recoveryByHours } from '../../figures/recoveryByHours.ts';
import { listBands } from '../../model/bands.ts';
import type { FullAnalysis } from '../../model/full.ts';
import { writePercent } from '../../numerics/percent.ts';
import { stateDoubts, stateHeadline, stateIntervals } from '../../practice/answer.ts';
import { GENERAL_CAUTIONS } from '../../practice/cautions.ts';
import { COMMON_PRACTICE_TAG, HOURS_WITHOUT_FAILURE } from '../../practice/commonPractice.ts';
import { Cautions } from '../../ui/Cautions.tsx';
import { CoefficientTable } from '../../ui/CoefficientTable.tsx';
import { FigureView } from '../../ui/FigureView.tsx';
import { GrowthKeptTable } from '../../ui/GrowthKeptTable.tsx';
import { LeftOut } from '../../ui/LeftOut.tsx';
import { TargetTable } from '../../ui/TargetTable.tsx';

interface Props {
  readonly analysis: FullAnalysis;
  /** Address of the page that works out a target. */
  readonly targetPage: string;
  /** The picture of a figure as the build drew it; without it this browser draws. */
  readonly draw?: (figure: Figure) => ComponentChildren;
  /** What bands without a target lack; empty where all have one. */
  readonly needs: string;
  /** What would move the answer most, in one line; empty where it was not worked out. */
  readonly mover: string;
  /** What one more study would do, in words. */
  readonly nextStudy: ComponentChildren;
  /** What would change the answer, by loads. */
  readonly children: ComponentChildren;
}

export function Answer({ analysis, targetPage, draw, needs, mover, nextStudy, children }: Props) {
  const { settings, bands } = analysis;
  const bestCurves = listBands(bands)
    .map(([name, band]) => stateBestCurve(name, band))
    .filter((words) => words !== '');
  const show = (figure: Figure) => (
    <FigureView key={figure.title} figure={figure}>
      {draw?.(figure)}
    </FigureView>
  );
  return (
    <>
      <h1>{stateHeadline(analysis)}</h1>
      <p class="lead">{stateIntervals(analysis)}</p>
      {mover && <p>{mover}</p>}
      <p class="small">
        Load is in per cent of the most that can be lifted once (1RM). A repetition in reserve is one more full
        repetition that could have been done when the set ended.
      </p>
      {[...stateDoubts(analysis), needs].filter(Boolean).map((doubt) => (
        <p key={doubt} class="doubt">
          {doubt}
        </p>
      ))}

      <div class="pair">{listBands(bands).map(([band]) => show(growthByReserve(analysis, { band })))}</div>

      <h2>What to tell a lifter</h2>
      <TargetTable analysis={analysis} />
      <p>
        <a href={targetPage}>Work out a target for one exercise, load and company</a>.
      </p>

      <Cautions cautions={GENERAL_CAUTIONS} />

      <h2>How sure this is</h2>
      <GrowthKeptTable analysis={analysis} />
      <details>
        <summary>The coefficients of the curves, and which shape describes the rows best</summary>
        <CoefficientTable analysis={analysis} />
        {bestCurves.length > 0 && <p class="small">{bestCurves.join(' ')}</p>}
      </details>
      <LeftOut {...analysis.rows} />

      <h2>What would change the answer</h2>
      {children}
      <ul>
        <li>
          The share to keep: {writePercent(settings.keptShare)} is a choice; who asks for less growth may leave more in
          reserve.
        </li>
        <li>{nextStudy}</li>
      </ul>

      <h2>What reserve costs and saves besides growth</h2>
      <p>{stateStrength(analysis.strength, settings)}</p>
      {analysis.beyondFailure.map((contrast) => (
        <p key={contrast.kind}>{stateBeyondFailure(contrast, settings)}</p>
      ))}
      <div class="pair">
        {analysis.fatigue.byStatus.map(({ status }) => show(recoveryByHours(analysis, { status })))}
      </div>
      <p class="small">
        What counts as a difference worth having ({settings.smallestWorthwhile['log-ratio']}&nbsp;% of strength) and as
        recovered (within {settings.fatigueMargin}&nbsp;%) is {COMMON_PRACTICE_TAG}. Common practice also keeps away
        from failure in the {HOURS_WITHOUT_FAILURE.untrained} hours before an event, about{' '}
        {HOURS_WITHOUT_FAILURE.trained} when accustomed; load drops are of about 10–15&nbsp;% each; partials suit
        exercises that can be stopped safely anywhere in the range and do not suit a barbell on the body.
      </p>
    </>
  );
}
