/** Coefficients of every band, in hundredths of the log ratio or in SDs, and how far true effects spread. */
import { stateHeterogeneity } from '../figures/panels.ts';
import { listBands } from '../model/bands.ts';
import { type Analysis, type Band, LEAST_RELIABLE_DF } from '../model/result.ts';
import { writePercent } from '../numerics/percent.ts';
import { LOAD_HEADINGS } from '../practice/loadNames.ts';
import { coefficientCells, isEstimated, stateCoefficientUnit } from './coefficientWords.ts';
import { Scroll } from './Scroll.tsx';
import { TableHead } from './TableHead.tsx';

export function CoefficientTable({ analysis }: { readonly analysis: Analysis }) {
  const { difference, settings } = analysis;
  const { metric } = settings;
  const cellsOf = (estimate: Parameters<typeof coefficientCells>[0]) => coefficientCells(estimate, metric);
  const bands = listBands(analysis.bands);
  const rows: readonly (readonly [loads: string, term: string, cells: readonly string[]])[] = [
    ...bands.flatMap(([name, { coefficients }]) =>
      coefficients.map((coefficient) => [name, coefficient.term, cellsOf(coefficient)] as const),
    ),
    ...(difference && isEstimated(difference)
      ? [['heavy − light', difference.term, cellsOf(difference)] as const]
      : []),
  ];
  if (rows.length === 0) return <p>{stateUnfitted(bands)}</p>;
  return (
    <>
      <Scroll label="Coefficients">
        <table>
          <caption>
            {stateCoefficientUnit(metric)} Cluster-robust standard errors (CR2) and Satterthwaite degrees of freedom.
          </caption>
          <TableHead
            columns={[
              'Loads',
              'Term',
              ['Estimate', 'number'],
              [`${writePercent(settings.confidence)} interval`, 'number'],
              ['df', 'number'],
              ['p', 'number'],
            ]}
          />
          <tbody>
            {rows.map(([loads, term, cells]) => (
              <tr key={`${loads} ${term}`}>
                <td>{loads}</td>
                <td>{term}</td>
                {cells.map((cell, i) => (
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
        {bands
          .filter(([, { failure }]) => failure === null)
          .map(([name, band]) => `${LOAD_HEADINGS[name]}. ${stateHeterogeneity(band, metric)}`)
          .join(' ')}{' '}
        {stateUnfitted(bands)}{' '}
        {bands.some(([, { unreliable }]) => unreliable) &&
          `Where df is below ${LEAST_RELIABLE_DF} the interval is unreliable.`}
      </p>
    </>
  );
}

/** Why bands have no coefficients; empty where all have. */
function stateUnfitted(bands: ReturnType<typeof listBands<Band>>): string {
  return bands
    .flatMap(([name, { failure }]) =>
      failure ? [`${LOAD_HEADINGS[name]} could not be fitted: ${failure.reason}.`] : [],
    )
    .join(' ');
}
