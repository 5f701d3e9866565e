/** The rows of one study, and where each of their numbers comes from. */
import { traceNumbers } from '../../evidence/provenance.ts';
import { formatSignificant } from '../../figures/format.ts';
import { outlineNumbers, showChange, showWeight, stateMeasurement } from '../../figures/studyWords.ts';
import type { Settings } from '../../model/settings.ts';
import type { RowReport } from '../../model/studyReports.ts';
import { writePercent } from '../../numerics/percent.ts';
import { LOAD_NAMES } from '../../practice/loadNames.ts';
import { NumbersTable } from '../../ui/NumbersTable.tsx';
import { Scroll } from '../../ui/Scroll.tsx';
import { TableHead } from '../../ui/TableHead.tsx';

interface RowsProps {
  readonly rows: readonly RowReport[];
  readonly settings: Pick<Settings, 'confidence' | 'outcome'>;
  /** Level of the heading inside. */
  readonly heading?: 'h3' | 'h4';
}

/** Every row of a study: effect, weight or why it is left out; then where each of its numbers comes from. */
export function StudyRows({ rows, settings, heading: Heading = 'h3' }: RowsProps) {
  return (
    <>
      <Scroll label="Rows">
        <table class="study-rows">
          <caption>
            Change with its {writePercent(settings.confidence)} interval from sampling error alone; variance of the
            effect on the scale of the analysis; rests on: whether all numbers are printed, or some recovered from
            others, assumed, or pooled from other rows; weight: share of all weight in the fit. Lines are those of the
            table's file.
          </caption>
          <TableHead
            columns={[
              ['Line', 'number'],
              'Arm',
              'Outcome',
              'Measured',
              ['People', 'number'],
              'Change',
              ['Variance', 'number'],
              'Rests on',
              `In the fit of ${settings.outcome}`,
              'Place in the paper',
              'Note',
            ]}
          />
          <tbody>
            {rows.map((row) => (
              <tr key={row.arm.line}>
                <td class="number">{row.arm.line}</td>
                <th scope="row">{row.arm.arm}</th>
                <td>{row.arm.outcome}</td>
                <td>{stateMeasurement(row)}</td>
                <td class="number">{row.arm.n}</td>
                <td>{showChange(row)}</td>
                <td class="number">{row.effect ? formatSignificant(row.effect.v, 3) : 'none'}</td>
                <td>{row.effect?.restsOn ?? '–'}</td>
                <td>
                  {row.band !== null && row.weight !== null
                    ? `${showWeight(row.weight)} of ${LOAD_NAMES[row.band]}`
                    : `left out: ${row.leftOut}`}
                </td>
                <td>{row.arm.source_place ?? 'not given'}</td>
                <td>{row.arm.note ?? '–'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <Heading class="apart">How each number was obtained</Heading>
      {rows.map((row) => (
        <RowNumbers key={row.arm.line} row={row} />
      ))}
    </>
  );
}

function RowNumbers({ row }: { readonly row: RowReport }) {
  const numbers = traceNumbers(row.arm, row.effect);
  return (
    <details>
      <summary>
        Line {row.arm.line}: {row.arm.arm}, {stateMeasurement(row)}{' '}
        <span class="small">({outlineNumbers(numbers)})</span>
      </summary>
      <NumbersTable label={`Numbers of line ${row.arm.line}`} numbers={numbers} />
      {row.noEffect && <p class="small">No effect: {row.noEffect}.</p>}
    </details>
  );
}
