/**
 * Text of a programme into lines that can be checked. All problems come back at once, by line; an
 * exercise that neither the list nor the programme describes is asked about, and its lines wait.
 */
import { type Exercise, findExercise, plainName, splitMuscles } from '../../evidence/exercises.ts';
import { type Problem, sortByLine } from '../../evidence/problem.ts';
import { readTable } from '../../evidence/table.ts';
import { loadForPossible, possibleAt } from '../possible.ts';
import { columnNamed, PROGRAMME_COLUMNS, type ProgrammeLine, type WrittenLine, writeDay } from './columns.ts';
import { checkNumbers, findUnusual } from './numbers.ts';

export interface AskedExercise {
  readonly name: string;
  readonly lines: readonly number[];
}

export interface Programme {
  readonly lines: readonly ProgrammeLine[];
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
  /** Exercises that nothing is known of. */
  readonly asked: readonly AskedExercise[];
}

/** Nothing is thrown, whatever the text. */
export function readProgramme(text: string, file: string, exercises: readonly Exercise[]): Programme {
  const { rows, problems, warnings } = readTable<WrittenLine>(
    text,
    file,
    PROGRAMME_COLUMNS,
    (row) => checkNumbers(row, file, findExercise(exercises, row.exercise)?.relation ?? null),
    columnNamed,
  );
  const { known, contradictions } = gatherExercises(rows, exercises, file);
  const complete = rows.flatMap((row) => {
    const exercise = known.get(plainName(row.exercise));
    return exercise ? completeLine(row, exercise) : [];
  });
  return {
    lines: complete,
    problems: sortByLine([...problems, ...contradictions]),
    warnings: [...warnings, ...complete.flatMap((line) => findUnusual(line, file))],
    asked: listAsked(rows.filter((row) => !known.has(plainName(row.exercise)))),
  };
}

/** Each exercise once, as first written, with all its lines. */
function listAsked(rows: readonly WrittenLine[]): readonly AskedExercise[] {
  const asked = new Map<string, { name: string; lines: number[] }>();
  for (const { exercise, line } of rows) {
    const name = plainName(exercise);
    const earlier = asked.get(name) ?? { name: exercise, lines: [] };
    earlier.lines.push(line);
    asked.set(name, earlier);
  }
  return [...asked.values()];
}

/** The exercises of the rows by plain name: described by the rows themselves, else by the list. */
function gatherExercises(rows: readonly WrittenLine[], exercises: readonly Exercise[], file: string) {
  const known = new Map<string, Exercise>();
  const first = new Map<string, WrittenLine>();
  const contradictions: Problem[] = [];
  for (const row of rows) {
    const name = plainName(row.exercise);
    const described = mergeExercise(row, findExercise(exercises, row.exercise));
    if (!described) continue;
    const earlier = known.get(name);
    if (!earlier) {
      known.set(name, described);
      first.set(name, row);
    } else if (saysAnything(row) && JSON.stringify(earlier) !== JSON.stringify({ ...described, name: earlier.name })) {
      contradictions.push({
        kind: 'contradiction',
        file,
        line: row.line,
        column: 'exercise',
        value: row.exercise,
        expected: `the same facts of this exercise as where it stands first, ${sayFirst(first.get(name))}`,
        remedy: 'Give the two exercises two names, or say the same of both.',
      });
    }
  }
  return { known, contradictions };
}

/** By its day: an editor counts its lines otherwise than its text. */
function sayFirst(row: WrittenLine | undefined): string {
  return row ? `on ${writeDay(row.day)}` : 'above';
}

function saysAnything({ muscles, can_pin, stoppable, partials }: WrittenLine): boolean {
  return [muscles, can_pin, stoppable, partials].some((value) => value !== null);
}

/** What a row says of its exercise, over what the list says; null where something is missing. */
function mergeExercise(row: WrittenLine, listed: Exercise | undefined): Exercise | null {
  const muscles = row.muscles === null ? (listed?.muscles ?? []) : splitMuscles(row.muscles);
  const canPin = row.can_pin ?? listed?.canPin;
  const stoppable = row.stoppable ?? listed?.stoppable;
  const partials = row.partials ?? listed?.partials;
  if (muscles.length === 0 || canPin === undefined || stoppable === undefined || partials === undefined) return null;
  return {
    name: listed?.name ?? row.exercise.trim(),
    muscles,
    canPin,
    stoppable,
    partials,
    relation: listed?.relation ?? null,
    ...(listed && !listed.isUnlisted ? {} : { isUnlisted: true }),
  };
}

/** None where a number that is needed is missing, which its problem says. */
function completeLine(row: WrittenLine, exercise: Exercise): ProgrammeLine[] {
  const { line, day, sets, repetitions } = row;
  const found = row.load === null && row.possible !== null ? loadForPossible(row.possible, exercise.relation) : null;
  const load = row.load ?? found?.load ?? null;
  if (load === null) return [];
  const mean = row.possible ?? possibleAt(load, exercise.relation)?.mean ?? null;
  const reserve = row.reserve ?? (mean === null ? null : Math.max(0, mean - repetitions));
  if (reserve === null) return [];
  const how = [
    ...(row.load === null && found
      ? [found.bound ?? `load from ${row.possible} possible repetitions (${found.relation})`]
      : []),
    ...(row.reserve === null && mean !== null
      ? [`reserve from ${Number(mean.toFixed(1))} possible, ${row.possible === null ? 'on average' : 'as given'}`]
      : []),
  ];
  return [
    {
      line,
      day,
      exercise,
      sets,
      repetitions,
      load,
      reserve,
      possible: row.possible,
      how: how.length > 0 ? how.join('; ') : null,
      company: row.company ?? 'alone',
    },
  ];
}
