/** The lines of a version on paper, and where nothing can be edited: each against the evidence. */
import { formatPlain, formatShare } from '../../figures/format.ts';
import { stateAgainst } from '../../figures/programmeFindings.ts';
import { nameLines } from '../../numerics/countOf.ts';
import { writePercent } from '../../numerics/percent.ts';
import { isBlock } from '../../practice/programme/checkedWeeks.ts';
import { weekdayOf, weekOfDay, writeDay } from '../../practice/programme/columns.ts';
import type { CheckedLine } from '../../practice/programme/line.ts';
import { showReserve } from '../../ui/reserveWords.ts';
import { TableHead } from '../../ui/TableHead.tsx';
import { usePaper } from './usePaper.ts';

interface Props {
  readonly lines: readonly CheckedLine[];
  /** Numbers of lines that could not be checked. */
  readonly left: readonly number[];
  readonly name: string;
  readonly numberOf: (line: number) => number;
  /** Share of growth that is to be kept, 0–1. */
  readonly keptShare: number;
}

export function ProgrammeSheet({ left, ...table }: Props) {
  const isNeeded = usePaper();
  if (!isNeeded) return null;
  const all = [...new Set(table.lines.map(({ line }) => weekOfDay(line.day)))].sort((a, b) => a - b);
  // A week of a block is a page of its own.
  const weeks = isBlock(all.map((week) => ({ week }))) ? all : [null];
  return (
    <>
      {left.length > 0 && <p class="problem">Not whole, and so neither checked nor below: {nameLines(left)}.</p>}
      {weeks.map((week) => (
        <Table key={week} {...table} week={week} />
      ))}
    </>
  );
}

function Table({
  lines: all,
  name,
  numberOf,
  keptShare,
  week,
}: Omit<Props, 'left'> & { readonly week: number | null }) {
  const lines = week === null ? all : all.filter(({ line }) => weekOfDay(line.day) === week);
  return (
    <table class={week === null ? 'sheet' : 'sheet of-week'}>
      <caption>
        {name}
        {week !== null && `, week ${week}`}: each line against the evidence, the share of growth at reserve 0 that its
        reserve keeps (interval), and what would be advised for {writePercent(keptShare)}.
      </caption>
      <TableHead
        columns={[
          'Line',
          'Exercise, day, sets × repetitions',
          'Load',
          'In reserve',
          'Advised',
          'Verdict',
          'Growth kept',
        ]}
      />
      <tbody>
        {lines.map((one) => (
          <Row key={one.line.line} checked={one} number={numberOf(one.line.line)} isOfWeek={week !== null} />
        ))}
      </tbody>
    </table>
  );
}

interface RowProps {
  readonly checked: CheckedLine;
  readonly number: number;
  /** True where the table is of one week, which its days need not name. */
  readonly isOfWeek: boolean;
}

function Row({ checked, number, isOfWeek }: RowProps) {
  const { line, kept, advised, near } = checked;
  const { day, exercise, sets, repetitions, load, reserve, how, company } = line;
  return (
    <tr>
      <td>{number}</td>
      <th scope="row">
        {exercise.name}
        <br />{' '}
        <span class="small">
          {isOfWeek ? weekdayOf(day) : writeDay(day)}, {sets} × {repetitions}, {company}
          {how && `; ${how}`}
        </span>
      </th>
      <td>{formatPlain(load)}&nbsp;%</td>
      <td>{formatPlain(reserve)}</td>
      <td>{showReserve(advised.reserve)}</td>
      <td>{stateAgainst(checked)}</td>
      <td>
        {kept.share ? formatShare(kept.share) : `not known: ${kept.reason}`}
        {near.loadOutside > 0 && '; load outside all that was studied'}
      </td>
    </tr>
  );
}
