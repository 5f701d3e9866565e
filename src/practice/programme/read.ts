/**
 * Text of a programme into lines that can be checked. All problems come back at once, by line; an
 * exercise that neither the list nor the programme describes is asked about, and its lines wait.
 */
import { type Exercise, findExercise, plainName, splitMuscles } from '../../evidence/exercises.ts';
import type { Problem } from '../../evidence/problem.ts';
import { readTable } from '../../evidence/table.ts';
import type { Company } from '../cautions.ts';
import { loadForPossible, possibleAt } from '../possible.ts';
import { columnNamed, PROGRAMME_COLUMNS, type WrittenLine } from './columns.ts';

export interface ProgrammeLine {
  /** Physical line in the text; the header is line 1. */
  readonly line: number;
  /** 1 is the first Monday. */
  readonly day: number;
  readonly exercise: Exercise;
  readonly sets: number;
  readonly repetitions: number;
  /** Per cent of 1RM, given or from the repetitions possible. */
  readonly load: number;
  /** Repetitions in reserve, given or from those possible. */
  readonly reserve: number;
  /** How load or reserve was worked out where it was not given; null where both were. */
  readonly how: string | null;
  readonly company: Company;
}

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

/** Between-person SDs beyond which repetitions plus reserve are unusual for the load. */
const UNUSUAL_SDS = 2;

/** Nothing is thrown, whatever the text. */
export function readProgramme(text: string, file: string, exercises: readonly Exercise[]): Programme {
  const { rows, problems, warnings } = readTable<WrittenLine>(
    text,
    file,
    PROGRAMME_COLUMNS,
    (row) => checkNumbers(row, file, exercises),
    columnNamed,
  );
  const { known, contradictions } = gatherExercises(rows, exercises, file);
  const asked = new Map<string, { name: string; lines: number[] }>();
  const lines = rows.flatMap((row): ProgrammeLine[] => {
    const name = plainName(row.exercise);
    const exercise = known.get(name);
    if (exercise) return completeLine(row, exercise);
    const earlier = asked.get(name) ?? { name: row.exercise, lines: [] };
    earlier.lines.push(row.line);
    asked.set(name, earlier);
    return [];
  });
  return {
    lines,
    problems: [...problems, ...contradictions].sort((a, b) => (a.line ?? 0) - (b.line ?? 0)),
    warnings: [...warnings, ...lines.flatMap((line) => findUnusual(line, file))],
    asked: [...asked.values()],
  };
}

/** Problems of one row's numbers with each other. */
function checkNumbers(row: WrittenLine, file: string, exercises: readonly Exercise[]): Problem[] {
  const { line, load, possible, reserve, repetitions } = row;
  const relation = findExercise(exercises, row.exercise)?.relation ?? null;
  if (load === null && possible === null) {
    return [
      {
        kind: 'missing-value',
        file,
        line,
        column: 'load',
        value: '',
        expected: 'a load in per cent of 1RM, or the repetitions possible',
        remedy: 'Fill in one of the two columns load and possible.',
      },
    ];
  }
  if (possible !== null && repetitions > possible) {
    return [
      {
        kind: 'contradiction',
        file,
        line,
        column: 'repetitions',
        value: String(repetitions),
        expected: `no more repetitions than the ${possible} possible`,
        remedy: 'One of the two numbers is wrong.',
      },
    ];
  }
  if (load === null && possible !== null && loadForPossible(possible, relation) === null) {
    return [
      {
        kind: 'wrong-value',
        file,
        line,
        column: 'possible',
        value: String(possible),
        expected: 'so many repetitions that a load is published for them (3 to 127)',
        remedy: 'Enter the load in per cent of 1RM.',
      },
    ];
  }
  if (reserve === null && possible === null && load !== null && possibleAt(load, relation) === null) {
    return [
      {
        kind: 'missing-value',
        file,
        line,
        column: 'reserve',
        value: '',
        expected: `a reserve, since no repetitions are published for ${load} % of 1RM`,
        remedy: 'Fill in reserve, or the repetitions possible.',
      },
    ];
  }
  return [];
}

/** The exercises of the rows by plain name: described by the rows themselves, else by the list. */
function gatherExercises(rows: readonly WrittenLine[], exercises: readonly Exercise[], file: string) {
  const known = new Map<string, Exercise>();
  const first = new Map<string, WrittenLine>();
  const contradictions: Problem[] = [];
  for (const row of rows) {
    const name = plainName(row.exercise);
    const described = describeExercise(row, findExercise(exercises, row.exercise));
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
        expected: `the same facts of this exercise as on line ${first.get(name)?.line}`,
        remedy: 'Give the two exercises two names, or say the same of both.',
      });
    }
  }
  return { known, contradictions };
}

function saysAnything({ muscles, can_pin, stoppable, partials }: WrittenLine): boolean {
  return [muscles, can_pin, stoppable, partials].some((value) => value !== null);
}

/** What a row says of its exercise, over what the list says; null where something is missing. */
function describeExercise(row: WrittenLine, listed: Exercise | undefined): Exercise | null {
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
    ...(row.load === null && found ? [`load from ${row.possible} possible repetitions (${found.relation})`] : []),
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
      how: how.length > 0 ? how.join('; ') : null,
      company: row.company ?? 'alone',
    },
  ];
}

function findUnusual({ line, load, repetitions, reserve, exercise }: ProgrammeLine, file: string): Problem[] {
  const possible = possibleAt(load, exercise.relation);
  if (!possible || possible.sd === null) return [];
  const total = repetitions + reserve;
  if (Math.abs(total - possible.mean) <= UNUSUAL_SDS * possible.sd) return [];
  return [
    {
      kind: 'unusual',
      file,
      line,
      column: 'reserve',
      value: `${repetitions} done and ${Number(reserve.toFixed(1))} left`,
      expected: `about ${possible.mean.toFixed(0)} possible at ${Number(load.toFixed(0))} % of 1RM, give or take ${(UNUSUAL_SDS * possible.sd).toFixed(0)} (${possible.relation})`,
      remedy: 'Look at load, repetitions and reserve; people differ, so it may be right.',
    },
  ];
}
