/** Tables of the Evidence page: coefficients, curve shapes and weights of one band. */

import { writeEquation } from '../../figures/equation.ts';
import { upperFirst } from '../../figures/firstLetter.ts';
import { formatNumber, formatRange } from '../../figures/format.ts';
import { stateAverageSlope, stateHeterogeneity, stateTarget, stateWeightings } from '../../figures/panels.ts';
import { CURVE_WORDS, SHAPES_NOTE, stateSimplerCurve } from '../../figures/settingsWords.ts';
import type { BandChecks } from '../../model/full.ts';
import { type Analysis, type Band, LEAST_RELIABLE_DF } from '../../model/result.ts';
import type { Metric } from '../../model/settings.ts';
import { writePercent } from '../../numerics/percent.ts';
import { LOAD_HEADINGS } from '../../practice/loadNames.ts';
import { coefficientCells, stateCoefficientUnit } from '../../ui/coefficientWords.ts';
import { Scroll } from '../../ui/Scroll.tsx';
import { TableHead } from '../../ui/TableHead.tsx';
import type { BandView } from './Panel.tsx';

export function Coefficients({ name, band, analysis }: BandView & { readonly analysis: Analysis }) {
  const { metric, confidence } = analysis.settings;
  return (
    <>
      <p>
        <code>{writeEquation(band, analysis)}</code>
      </p>
      <p class="small">{stateCoefficientUnit(metric)}</p>
      <Scroll label={`Coefficients: ${LOAD_HEADINGS[name]}`}>
        <table class="numbers">
          <TableHead
            columns={[
              'Term',
              ['Estimate', 'number'],
              [`${writePercent(confidence)} interval`, 'number'],
              ['df', 'number'],
              ['p', 'number'],
            ]}
          />
          <tbody>
            {band.coefficients.map((coefficient) => (
              <tr key={coefficient.term}>
                <th scope="row">{coefficient.term}</th>
                {coefficientCells(coefficient, metric).map((cell, i) => (
                  <td key={i} class="number">
                    {cell}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="small">
        {stateSimplerCurve(band, analysis.settings)} {stateHeterogeneity(band, metric)}{' '}
        {band.unreliable && `Some df are below ${LEAST_RELIABLE_DF}: those intervals are unreliable.`}
      </p>
      <p>{upperFirst(stateTarget(band.target))}.</p>
    </>
  );
}

export function CurveShapes({ name, band, metric }: BandView & { readonly metric: Metric }) {
  return (
    <>
      <Scroll label={`Curve shapes: ${LOAD_HEADINGS[name]}`}>
        <table class="numbers">
          <TableHead columns={['Curve', ['AICc above best', 'number'], 'Target']} />
          <tbody>
            {band.curves.map((shape) => (
              <tr key={shape.curve} aria-current={shape.curve === band.curve ? 'true' : undefined}>
                <th scope="row">{CURVE_WORDS[shape.curve]}</th>
                <td class="number">{shape.aboveBest === null ? 'none' : formatNumber(shape.aboveBest, 2)}</td>
                <td>{showShapeTarget(shape)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p>{stateAverageSlope(band.curves, metric)}</p>
      <p class="small">{SHAPES_NOTE}</p>
    </>
  );
}

function showShapeTarget({ failure, target }: Band['curves'][number]): string | null {
  if (failure) return failure.reason;
  const { point, low, high, reason } = target;
  return point === null ? reason : `${formatNumber(point, 2)} (${formatRange(low, high, 2)})`;
}

interface StudyWeightsProps {
  readonly name: BandView['name'];
  readonly checks: BandChecks;
}

export function StudyWeights({ name, checks: { weightings } }: StudyWeightsProps) {
  const [first] = weightings;
  return (
    <>
      <p>{stateWeightings(weightings)}</p>
      <Scroll label={`Weights: ${LOAD_HEADINGS[name]}`}>
        <table class="numbers">
          <TableHead
            columns={['Study, share in %', ...weightings.map(({ weighting }) => [weighting, 'number'] as const)]}
          />
          <tbody>
            <tr>
              <th scope="row">target</th>
              {weightings.map(({ weighting, target }) => (
                <td key={weighting} class="number">
                  {target.point === null ? 'none' : formatNumber(target.point, 2)}
                </td>
              ))}
            </tr>
            {first?.shares.map(({ study }, place) => (
              <tr key={study}>
                <th scope="row">{study}</th>
                {weightings.map(({ weighting, shares }) => (
                  <td key={weighting} class="number">
                    {shares[place] ? formatNumber(100 * shares[place].share, 1) : 'none'}
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
