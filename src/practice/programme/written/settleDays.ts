/** Days of the whole text: taken as Monday where none is written at all, asked for where only some lines have one. */
import { dayOf, LAST_DAY, PROGRAMME_COLUMNS, writeDay } from '../columns.ts';
import { type NotRead, notRead, type Place, type UnderstoodLine, type WrittenProgramme } from './understood.ts';

type Settled = Pick<WrittenProgramme, 'lines' | 'notRead' | 'assumed'>;

export function settleDays(lines: readonly UnderstoodLine[], told: readonly NotRead[]): Settled {
  const said = [...sayCompany(lines), ...sayOrder(lines), ...sayEarlierDays(lines)];
  const isTold = ({ line }: UnderstoodLine) =>
    told.some((one) => one.line === line && (one.column === 'day' || one.column === 'week'));
  const without = lines.filter((line) => line.day === null && !isTold(line));
  if (without.length === 0) return { lines, notRead: [], assumed: said };
  if (without.length === lines.length && lines.every((line) => firstDay(line) <= LAST_DAY)) {
    return {
      lines: lines.map((line) => ({ ...line, day: { value: firstDay(line), readFrom: nowhere(line) } })),
      notRead: [],
      assumed: ['No day is written: all sets are taken as of Monday.', ...said],
    };
  }
  const remedy = 'Write a day above it, or before its sets.';
  return {
    lines,
    notRead: without.map(({ line }) =>
      notRead(line, 'day', { value: '', expected: PROGRAMME_COLUMNS.day.expected, remedy }),
    ),
    assumed: said,
  };
}

/** Monday of its week. */
function firstDay({ week }: UnderstoodLine): number {
  return dayOf(week ?? 1, 1);
}

function nowhere({ line }: UnderstoodLine): Place {
  return { line, column: null, text: '' };
}

function sayCompany(lines: readonly UnderstoodLine[]): readonly string[] {
  return lines.some(({ company }) => company === null)
    ? ['Where neither a spotter nor safety arms are written, nobody counts as there.']
    : [];
}

/** In “4x6” nothing says which number is which. */
function sayOrder(lines: readonly UnderstoodLine[]): readonly string[] {
  const isShort = ({ sets }: UnderstoodLine) =>
    sets !== null &&
    !/^rep/iu.test(sets.readFrom.column ?? '') &&
    /^\d[^a-wyz]*[x×✕*][^a-wyz]*$/iu.test(sets.readFrom.text);
  return lines.some(isShort)
    ? ['Where sets and repetitions are written as “4x6”, the sets are taken to stand first.']
    : [];
}

/** A day that comes again after a later one may be of the next week. */
function sayEarlierDays(lines: readonly UnderstoodLine[]): readonly string[] {
  const named = lines.flatMap(({ day }) => (day ? [day] : []));
  const back = named.find(
    ({ value, readFrom }, i) =>
      i > 0 &&
      value < named[i - 1].value &&
      named.slice(0, i).some((one) => one.value === value && one.readFrom.line < readFrom.line),
  );
  if (!back) return [];
  return [
    `${writeDay(back.value)} comes again on line ${back.readFrom.line}, after a later day: it is taken as the same day. Write “Week 2” above it if it is of the next week.`,
  ];
}
