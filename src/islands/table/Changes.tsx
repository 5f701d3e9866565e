/** What changed between the site's table and the reader's: studies, rows, cells, the answer, and who moved it. */
import { showValue } from '../../evidence/problem.ts';
import { type CellValue, writeCell } from '../../evidence/writeTable.ts';
import { formatNumber, slopeUnit } from '../../figures/format.ts';
import { showFineTarget, showSlope } from '../../figures/studyWords.ts';
import type { BandChange, TableComparison } from '../../model/compareTables.ts';
import type { NamedRow, RowChanges, StudyRowChanges } from '../../model/rowChanges.ts';
import type { Metric } from '../../model/settings.ts';
import type { StudyMove } from '../../model/studyMoves.ts';
import { countOf, countStudies, listFirst } from '../../numerics/countOf.ts';
import { writePercent } from '../../numerics/percent.ts';
import { LOAD_NAMES } from '../../practice/loadNames.ts';
import { Facts } from '../../ui/Facts.tsx';
import { Scroll } from '../../ui/Scroll.tsx';
import { TableHead } from '../../ui/TableHead.tsx';

/** Studies whose cells or moves are listed; the rest is counted. */
const SHOWN_STUDIES = 50;
/** Changed studies up to which their cells are shown at once. */
const FEW = 3;

export function TableChanges({ comparison }: { readonly comparison: TableComparison }) {
  const { same, rowsBefore, rowsAfter, studies, bands, settings } = comparison;
  return (
    <div>
      <h3>What changed</h3>
      {same ? (
        <p>Nothing: every study has the same rows.</p>
      ) : (
        <>
          <p>
            {countOf(rowsBefore, 'row')} in the site's table, {rowsAfter.toLocaleString('en')} in yours.
          </p>
          <Studies changes={studies} />
        </>
      )}
      {bands.map((band) => (
        <BandChanges key={band.band} change={band} metric={settings.metric} keptShare={settings.keptShare} />
      ))}
    </div>
  );
}

function Studies({ changes }: { readonly changes: RowChanges }) {
  const { added, removed, renamed, changed, unchanged } = changes;
  const facts = [
    ['Added', added],
    ['Removed', removed],
    ['Renamed', renamed.map(({ before, after }) => `${before} is now ${after}`)],
    ['Changed', changed.map(({ study }) => study)],
  ] as const;
  return (
    <>
      <Facts
        facts={[
          ...facts.map(([name, names]) => [`${name}: ${names.length}`, listFirst(names, SHOWN_STUDIES)] as const),
          [`Unchanged: ${unchanged.length}`, 'every cell as before'],
        ]}
      />
      {changed.length > 0 && (
        <details open={changed.length <= FEW}>
          <summary>What changed in them, cell by cell</summary>
          {changed.slice(0, SHOWN_STUDIES).map((study) => (
            <StudyChanges key={study.study} changes={study} />
          ))}
          <NotListed number={changed.length - SHOWN_STUDIES} />
        </details>
      )}
    </>
  );
}

function StudyChanges({ changes }: { readonly changes: StudyRowChanges }) {
  const { study, added, removed, changed, unchanged, doubled } = changes;
  return (
    <details>
      <summary>
        {study}: {changed.length} changed, {added.length} added, {removed.length} removed, {unchanged} as before
      </summary>
      <ul>
        {changed.map(({ before, after, cells }) => (
          <li key={`changed ${after.line}`}>
            Line {after.line} (was {before.line}), {nameRow(after)}:{' '}
            {cells.map((cell) => `${cell.column} ${showCell(cell.before)} → ${showCell(cell.after)}`).join('; ')}
          </li>
        ))}
        {added.map((row) => (
          <li key={`added ${row.line}`}>
            Line {row.line} added: {nameRow(row)}
          </li>
        ))}
        {removed.map((row) => (
          <li key={`removed ${row.line}`}>
            Line {row.line} of the site's table removed: {nameRow(row)}
          </li>
        ))}
        {doubled.length > 0 && (
          <li>
            {countOf(doubled.length, 'row')} could not be matched: another row says the same of arm, exercise, muscle
            and measure.
          </li>
        )}
      </ul>
    </details>
  );
}

/** How many studies are not listed; nothing where all are. */
function NotListed({ number }: { readonly number: number }) {
  return number > 0 ? <p class="small">and {countStudies(number)} more.</p> : null;
}

function nameRow({ arm, exercise, muscle, outcome, measure }: NamedRow): string {
  return [arm, exercise, muscle, outcome, measure].filter(Boolean).join(', ');
}

function showCell(value: CellValue): string {
  return value === null ? 'nothing' : `“${showValue(writeCell(value))}”`;
}

interface BandProps {
  readonly change: BandChange;
  readonly metric: Metric;
  readonly keptShare: number;
}

function BandChanges({ change, metric, keptShare }: BandProps) {
  const { band, before, after, moves, untouched, limits } = change;
  const sides = [
    ['The site’s table', before],
    ['Your table', after],
  ] as const;
  return (
    <>
      <h4>{LOAD_NAMES[band]}</h4>
      <Scroll label={`Answer before and after, ${LOAD_NAMES[band]}`}>
        <table>
          <caption>
            Slope: the mean over all reserves studied, in {slopeUnit(metric)} for each repetition in reserve; target at{' '}
            {writePercent(keptShare)}; with intervals.
          </caption>
          <TableHead columns={['Table', 'Rows of studies', 'Slope', 'Target']} />
          <tbody>
            {sides.map(([name, answer]) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>
                  {answer.rows} of {answer.studies}
                </td>
                <td>{answer.slope ? showSlope(answer.slope, metric, true) : `none: ${answer.reason}`}</td>
                <td>
                  {answer.target.point === null ? `none: ${answer.target.reason}` : showFineTarget(answer.target, true)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      {moves.length > 0 && (
        <>
          <p>What each change moved, the others in place, most first:</p>
          <ol>
            {moves.slice(0, SHOWN_STUDIES).map((move) => (
              <li key={move.study}>{stateMove(move)}</li>
            ))}
          </ol>
          <NotListed number={moves.length - SHOWN_STUDIES} />
        </>
      )}
      {limits && <p class="small">{limits}.</p>}
      {untouched.length > 0 && (
        <p class="small">Changed without reaching this fit: {listFirst(untouched, SHOWN_STUDIES)}.</p>
      )}
    </>
  );
}

function stateMove({ study, change, targetMoved, targetChange, reason }: StudyMove): string {
  if (targetMoved !== null) {
    return `${study} (${change}): the target by ${targetMoved > 0 ? '+' : ''}${formatNumber(targetMoved, 2)}`;
  }
  if (targetChange === 'came') return `${study} (${change}): there is a target only with it`;
  if (targetChange === 'went') return `${study} (${change}): there is no target any more because of it`;
  return `${study} (${change}): ${reason ?? 'no target either way'}`;
}
