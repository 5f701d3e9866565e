/** Steps of editing lifters. Names must have been looked at before (`refuseName`). */
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import { cleanText, exerciseKey, type Lifter, type Lifters, type OneRm, sameName } from './lifter.ts';
import { HEAVIEST } from './oneRm.ts';
import { readWeight, type WeightUnit } from './weight.ts';

export function addLifter({ all, nextId }: Lifters, name: string, unit: WeightUnit): Lifters {
  const lifter: Lifter = { id: nextId, name: cleanText(name).trim(), unit, step: '', maxima: [] };
  return { all: [...all, lifter], nextId: nextId + 1 };
}

export function removeLifter(lifters: Lifters, id: number): Lifters {
  const all = lifters.all.filter((lifter) => lifter.id !== id);
  return all.length === lifters.all.length ? lifters : { ...lifters, all };
}

export function changeLifter(lifters: Lifters, id: number, part: Partial<Pick<Lifter, 'name' | 'step'>>): Lifters {
  const { name, step } = part;
  return changeOne(lifters, id, (lifter) => ({
    ...lifter,
    ...(name === undefined ? {} : { name: cleanText(name).trim() }),
    ...(step === undefined ? {} : { step: cleanText(step) }),
  }));
}

/**
 * Another unit for the loads; what can be lifted once stays what it was: a number without a unit gets the one that it
 * was in. Steps are of plates in the unit before, and go.
 */
export function changeUnit(lifters: Lifters, id: number, unit: WeightUnit): Lifters {
  return changeOne(lifters, id, (lifter) => {
    if (lifter.unit === unit) return lifter;
    const maxima = lifter.maxima.map((one) => {
      const found = readWeight(one.weight, lifter.unit, HEAVIEST);
      const isBare = found.kind === 'read' && found.isBare;
      return { ...one, step: '', weight: isBare ? `${one.weight.trim()} ${lifter.unit}` : one.weight };
    });
    return { ...lifter, unit, step: '', maxima };
  });
}

/** An exercise that is not there yet is added, with nothing in it too; one that was emptied stays until it is taken out. */
export function setOneRm(
  lifters: Lifters,
  id: number,
  exercises: readonly NamedExercise[],
  exercise: string,
  part: Partial<Pick<OneRm, 'weight' | 'step'>>,
): Lifters {
  return changeOne(lifters, id, (lifter) => {
    const key = exerciseKey(exercises, exercise);
    const at = lifter.maxima.findIndex((one) => exerciseKey(exercises, one.exercise) === key);
    const before = lifter.maxima[at] ?? { exercise: cleanText(exercise).trim(), weight: '', step: '' };
    const after = {
      ...before,
      ...(part.weight === undefined ? {} : { weight: cleanText(part.weight) }),
      ...(part.step === undefined ? {} : { step: cleanText(part.step) }),
    };
    return { ...lifter, maxima: at < 0 ? [...lifter.maxima, after] : lifter.maxima.with(at, after) };
  });
}

export function removeOneRm(
  lifters: Lifters,
  id: number,
  exercises: readonly NamedExercise[],
  exercise: string,
): Lifters {
  const key = exerciseKey(exercises, exercise);
  return changeOne(lifters, id, (lifter) => ({
    ...lifter,
    maxima: lifter.maxima.filter((one) => exerciseKey(exercises, one.exercise) !== key),
  }));
}

/** Those of a file beside those that are there: of a lifter who is there already, what the file says goes over what stood. */
export function mergeLifters(before: Lifters, opened: Lifters, exercises: readonly NamedExercise[]): Lifters {
  return opened.all.reduce((made, one) => {
    const known = made.all.find(({ name }) => sameName(name, one.name));
    if (!known) return { all: [...made.all, { ...one, id: made.nextId }], nextId: made.nextId + 1 };
    const isSameUnit = known.unit === one.unit;
    const withStep = isSameUnit && one.step !== '' ? changeLifter(made, known.id, { step: one.step }) : made;
    return one.maxima.reduce((now, { exercise, weight, step }) => {
      const found = readWeight(weight, one.unit, HEAVIEST);
      const isBare = found.kind === 'read' && found.isBare && !isSameUnit;
      return setOneRm(now, known.id, exercises, exercise, {
        ...(weight === '' ? {} : { weight: isBare ? `${weight} ${one.unit}` : weight }),
        ...(isSameUnit && step !== '' ? { step } : {}),
      });
    }, withStep);
  }, before);
}

/** The very same list where nothing changed. */
function changeOne(lifters: Lifters, id: number, change: (lifter: Lifter) => Lifter): Lifters {
  const at = lifters.all.findIndex((lifter) => lifter.id === id);
  if (at < 0) return lifters;
  const before = lifters.all[at];
  const after = change(before);
  const isSame = after === before || JSON.stringify(after) === JSON.stringify(before);
  return isSame ? lifters : { ...lifters, all: lifters.all.with(at, after) };
}
