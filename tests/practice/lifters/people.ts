/** Lifters and lines as tests of them begin. */
import { addLifter, changeLifter, changeUnit, setOneRm } from '../../../src/practice/lifters/editLifters.ts';
import { type Lifter, type Lifters, NO_LIFTERS } from '../../../src/practice/lifters/lifter.ts';
import type { WeightUnit } from '../../../src/practice/lifters/weight.ts';
import { type LineList, NO_LINES, replaceLines } from '../../../src/practice/programme/edit.ts';
import type { Cells } from '../../../src/practice/programme/editorColumns.ts';
import { exercises } from '../programme/shipped.ts';

/** One lifter with 1RMs by exercise, as typed. */
export function lifterWith(
  maxima: Readonly<Record<string, string>>,
  { unit = 'kg', step = '', name = 'Lifter A' }: { unit?: WeightUnit; step?: string; name?: string } = {},
): Lifter {
  return teamOf([{ name, unit, step, maxima }]).all[0];
}

interface Person {
  readonly name: string;
  readonly unit?: WeightUnit;
  readonly step?: string;
  readonly maxima?: Readonly<Record<string, string>>;
  readonly steps?: Readonly<Record<string, string>>;
}

export function teamOf(people: readonly Person[]): Lifters {
  return people.reduce((made, { name, unit = 'kg', step = '', maxima = {}, steps = {} }) => {
    const id = made.nextId;
    const added = changeLifter(changeUnit(addLifter(made, name, 'kg'), id, unit), id, { step });
    return Object.entries(maxima).reduce(
      (now, [exercise, weight]) => setOneRm(now, id, exercises, exercise, { weight, step: steps[exercise] ?? '' }),
      added,
    );
  }, NO_LIFTERS);
}

const PLAIN = { day: 'Monday', exercise: 'squat', sets: '3', repetitions: '6', load: '80', reserve: '2' };

/** A list of lines, each of squats unless it says otherwise. */
export function listOf(lines: readonly Partial<Cells>[]): LineList {
  return replaceLines(
    NO_LINES,
    lines.map((cells) => ({ ...PLAIN, ...cells })),
  );
}
