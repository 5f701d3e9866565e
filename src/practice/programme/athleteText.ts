/**
 * A programme as a message to the athlete who trains it: days, exercises, sets, loads, and when to end each set, in
 * the words of `tellLifter`. Ranges stay as the coach wrote them. No statistics: those are the coach's.
 */
import { groupRows } from '../../evidence/groupRows.ts';
import { countOf } from '../../numerics/countOf.ts';
import { ALWAYS, groupCautions, guardCautions, tellCaution } from '../cautions.ts';
import { plannedLoad, plannedSpan, tellPlanned, tellPlannedLoad } from '../lifters/planned.ts';
import { TOO_MANY, tellGuarded } from '../tellGuarded.ts';
import { tellLifter } from '../tellLifter.ts';
import { isBlock } from './checkedWeeks.ts';
import { weekdayOf, weekOfDay, writeDay, writeDayOfBlock } from './columns.ts';
import type { Cells } from './editorColumns.ts';
import type { CheckedLine } from './line.ts';
import type { Calendar } from './sessions.ts';

/** A line as it was checked, and the cells that it was typed in. */
export interface AthleteLine {
  readonly checked: CheckedLine;
  readonly cells: Cells;
}

export interface AthleteTextOptions {
  /** The week that is told; null for all of them. */
  readonly week: number | null;
  readonly event: Calendar['event'];
}

/** Plain text, lines parted by line breaks, that reads the same in a message and in a file. */
export function writeForAthlete(lines: readonly AthleteLine[], { week, event }: AthleteTextOptions): string {
  const told = lines.filter(({ checked }) => week === null || weekOfDay(checked.line.day) === week);
  const weeks = [...groupRows(told, ({ checked }) => String(weekOfDay(checked.line.day))).values()].sort(
    ([a], [b]) => a.checked.line.day - b.checked.line.day,
  );
  const hasWeeks = isBlock(lines.map(({ checked }) => ({ week: weekOfDay(checked.line.day) })));
  return `${[
    'Your training',
    'In reserve are the good repetitions that you could still have done when you end a set.',
    ...weeks.map((all) => tellWeek(all, hasWeeks)),
    ...(event ? [`Event: ${hasWeeks ? writeDayOfBlock(event.day) : writeDay(event.day)}, ${event.hour}:00`] : []),
    tellSafety(told),
  ].join('\n\n')}\n`;
}

function tellWeek(lines: readonly AthleteLine[], hasWeeks: boolean): string {
  const days = [...groupRows(lines, ({ checked }) => String(checked.line.day)).values()].sort(
    ([a], [b]) => a.checked.line.day - b.checked.line.day,
  );
  const [{ checked }] = lines;
  const heads = hasWeeks ? [`WEEK ${weekOfDay(checked.line.day)}`] : [];
  return [...heads, ...days.map(tellDay)].join('\n\n');
}

function tellDay(lines: readonly AthleteLine[]): string {
  const [{ checked }] = lines;
  return [weekdayOf(checked.line.day).toUpperCase(), ...lines.map(tellLine)].join('\n');
}

/** “- leg press: 4 × 12 at 75 % of 1RM. Leave 4 in reserve. End the set when you could do 4 more good repetitions.” */
function tellLine({ checked, cells }: AthleteLine): string {
  const { exercise, company } = checked.line;
  const who = company === 'alone' ? '' : `, with ${company === 'spotter' ? 'a spotter' : 'safety arms set'}`;
  const note = cells.note.trim() === '' ? '' : ` Note: ${cells.note.trim()}`;
  return `- ${exercise.name}: ${tellPlanned(cells, 'sets')} × ${tellPlanned(cells, 'repetitions')} ${tellLoad(cells)}${who}. ${tellEnd({ checked, cells })}${note}`;
}

function tellLoad(cells: Cells): string {
  const load = plannedLoad(cells);
  return load ? `at ${tellPlannedLoad(load)}` : `with a load for ${tellPlanned(cells, 'possible')} repetitions at most`;
}

/** What is not safe, or does not fit the load, is not asked for as it stands. */
function tellEnd({ checked, cells }: AthleteLine): string {
  if (checked.plausibility.kind === 'too many') return TOO_MANY;
  const { least, most } = plannedSpan(cells, 'reserve') ?? {
    least: checked.line.reserve,
    most: checked.line.reserve,
  };
  // Worked out from what is possible a reserve may have decimals: of them both whole numbers are told.
  const range = { least: Math.floor(least), most: Math.ceil(most) };
  const leave = `Leave ${range.least === range.most ? countLeft(range.most) : `${range.least} to ${range.most}`} in reserve. `;
  return tellGuarded(`${leave}${tellLifter(range)}`, checked.unsafe);
}

function countLeft(repetitions: number): string {
  return repetitions === 0 ? 'none' : String(repetitions);
}

function tellSafety(lines: readonly AthleteLine[]): string {
  const cautions = lines.map(({ checked: { line } }) => ({
    exercise: line.exercise.name,
    cautions: guardCautions(line),
  }));
  const told = groupCautions(cautions).map((one) => `- ${tellCaution(one)}`);
  return ['SAFETY', ...told, ...ALWAYS.map((caution) => `- ${caution}`)].join('\n');
}

/** What a coach looks at before it is sent: lines that the message warns of, by their number in the editor. */
export function findToLookAt(
  lines: readonly CheckedLine[],
  numberOf: (line: number) => number,
): { readonly unsafe: readonly number[]; readonly questioned: readonly number[] } {
  const numbers = (all: readonly CheckedLine[]) => all.map(({ line }) => numberOf(line.line));
  return {
    unsafe: numbers(lines.filter(({ unsafe }) => unsafe)),
    questioned: numbers(lines.filter(({ plausibility }) => plausibility.kind === 'too many')),
  };
}

/** “22 lines of week 1” */
export function sayTold(lines: readonly AthleteLine[], week: number | null): string {
  const told = lines.filter(({ checked }) => week === null || weekOfDay(checked.line.day) === week);
  return `${countOf(told.length, 'line')}${week === null ? '' : ` of week ${week}`}`;
}
