/**
 * Lifters as a CSV file and back: a line for each lifter with their unit and step, then one for each exercise. What
 * cannot be read of a file is told by its line and not taken; the other lines are.
 */
import Papa from 'papaparse';
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import { groupRows } from '../../evidence/groupRows.ts';
import { type Problem, sortByLine } from '../../evidence/problem.ts';
import { readTable } from '../../evidence/table.ts';
import { exerciseKey, foldPerson, type Lifter, type Lifters, MOST_LIFTERS, MOST_MAXIMA, type OneRm } from './lifter.ts';
import { LIFTER_COLUMNS, type LifterColumn, lifterColumnNamed, type WrittenLifterLine } from './lifterColumns.ts';
import { HEAVIEST } from './oneRm.ts';
import { readStep } from './step.ts';
import { type ReadWeight, readWeight, type WeightUnit } from './weight.ts';
import { readWide } from './wideTable.ts';

type Cells = Readonly<Record<LifterColumn, string>>;

/** A cell that cannot be read is written as it was typed, so that nothing is lost. */
export function writeLifters({ all }: Lifters): string {
  const columns = Object.keys(LIFTER_COLUMNS) as LifterColumn[];
  const rows = all.flatMap(writeLifter).map((row) => columns.map((column) => row[column]));
  // Only what cannot be read begins with a sign at which a spreadsheet would calculate.
  return `${Papa.unparse([columns, ...rows], { newline: '\n', escapeFormulae: true })}\n`;
}

function writeLifter({ name, unit, step, maxima }: Lifter): readonly Cells[] {
  return [
    { lifter: name, exercise: '', one_rm: '', unit, step: plain(readStep(step, unit), step) },
    ...maxima.map((one) => {
      const found = readWeight(one.weight, unit, HEAVIEST);
      return {
        lifter: name,
        exercise: one.exercise,
        // Of a weight in another unit than the lifter’s the unit stands with it.
        one_rm: found.kind === 'read' ? writeTyped(found, unit) : one.weight.trim(),
        unit,
        step: plain(readStep(one.step, unit), one.step),
      };
    }),
  ];
}

function plain(found: ReadWeight, written: string): string {
  return found.kind === 'read' ? String(found.weight.value) : written.trim();
}

export interface ReadLifters {
  readonly lifters: Lifters;
  readonly problems: readonly Problem[];
  /** Columns that are not read. */
  readonly warnings: readonly Problem[];
  /** What was taken without being written, a sentence each. */
  readonly said: readonly string[];
}

/** @param file name for messages. Nothing is thrown, whatever the text */
export function readLifters(text: string, file: string, exercises: readonly NamedExercise[]): ReadLifters {
  const wide = readWide(text, file);
  const { rows, problems, warnings } = wide
    ? { ...wide, warnings: [] }
    : readTable<WrittenLifterLine>(text, file, LIFTER_COLUMNS, () => [], lifterColumnNamed);
  const groups = [...groupRows(rows, ({ lifter }) => foldPerson(lifter)).values()];
  const made = groups.slice(0, MOST_LIFTERS).map((lines, i) => makeLifter(i + 1, lines, exercises));
  const tooMany = groups.slice(MOST_LIFTERS).map(([line]) => ({
    ...refuse(line, 'lifter', `at most ${MOST_LIFTERS} lifters`, 'Make two files of it.'),
  }));
  const lifters = made.map(({ lifter }) => lifter);
  return {
    lifters: { all: lifters, nextId: lifters.length + 1 },
    problems: sortByLine([
      ...problems,
      ...[...made.flatMap(({ refused }) => refused), ...tooMany].map((one) => ({ ...one, file })),
    ]),
    warnings,
    said: made.flatMap(({ said }) => said),
  };
}

type Refused = Omit<Problem, 'file'>;

interface MadeLifter {
  readonly lifter: Lifter;
  readonly refused: readonly Refused[];
  readonly said: readonly string[];
}

/** @param lines of one lifter, at least one */
function makeLifter(id: number, lines: readonly WrittenLifterLine[], exercises: readonly NamedExercise[]): MadeLifter {
  const [{ lifter: name }] = lines;
  const given = lines.find(({ unit }) => unit !== null)?.unit ?? null;
  const unit = given ?? 'kg';
  const refused: Refused[] = [];
  const maxima: OneRm[] = [];
  const lineOf = new Map<string, number>();
  let own = '';
  for (const line of lines) {
    const step = readStep(line.step ?? '', unit);
    if (step.kind === 'refused') refused.push(refuse(line, 'step', step.expected, step.remedy));
    const written = plain(step, '');
    const { exercise } = line;
    if (exercise === null) {
      if (line.one_rm !== null) refused.push(refuse(line, 'exercise', 'the exercise of the 1RM', null));
      else if (own !== '' && written !== '' && own !== written)
        refused.push(refuse(line, 'step', `one step for all exercises, ${own} above`, 'Remove one of the two lines.'));
      else if (written !== '') own = written;
      continue;
    }
    const key = exerciseKey(exercises, exercise);
    const earlier = lineOf.get(key);
    const weight = readWeight(line.one_rm ?? '', line.unit ?? unit, HEAVIEST);
    if (key === '') refused.push(refuse(line, 'exercise', 'a name with letters or digits', null));
    else if (earlier !== undefined) {
      const expected = `an exercise that line ${earlier} does not give ${name} already`;
      refused.push(refuse(line, 'exercise', expected, 'Remove one of the two lines.'));
    } else if (maxima.length === MOST_MAXIMA)
      refused.push(refuse(line, 'exercise', `at most ${MOST_MAXIMA} exercises of a lifter`, null));
    else if (weight.kind === 'refused')
      refused.push(refuse(line, 'one_rm', `${weight.expected}, of ${exercise}`, weight.remedy));
    else {
      lineOf.set(key, line.line);
      maxima.push({ exercise, weight: writeTyped(weight, unit), step: written });
    }
  }
  const said = given ? [] : [`${name}: no unit is given; kg is taken.`];
  return { lifter: { id, name, unit, step: own, maxima }, refused, said };
}

function refuse(line: WrittenLifterLine, column: LifterColumn, expected: string, remedy: string | null): Refused {
  return { kind: 'wrong-value', line: line.line, column, value: line[column] ?? '', expected, remedy };
}

/** As it is typed on the page: with its unit where that is not the lifter’s. */
function writeTyped(found: ReadWeight, lifters: WeightUnit): string {
  if (found.kind !== 'read') return '';
  const { value, unit } = found.weight;
  return unit === lifters ? String(value) : `${value} ${unit}`;
}
