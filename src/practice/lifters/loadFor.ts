/**
 * The load of a programme's line for one lifter. Per cent of 1RM become a weight by what the lifter can lift once, a
 * weight becomes per cent by the same; both are rounded down to what the plates make (step.ts), and per cent are then
 * those of the rounded load. Without a 1RM nothing is made up.
 */
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import type { EditorLine } from '../programme/edit.ts';
import type { WrittenLoad } from '../programme/written/understood.ts';
import { isWithBodyWeight } from './bodyWeight.ts';
import { type Lifter, nameExercise } from './lifter.ts';
import { findOneRm, inUnitOf, stepOf } from './oneRm.ts';
import { plannedLoad, plannedSpan } from './planned.ts';
import { roundDown } from './step.ts';
import { type Weight, weightIn } from './weight.ts';

export type LifterLoad =
  | {
      readonly kind: 'weight';
      /** What the plates make; of a range its heavier end. In the lifter’s unit. */
      readonly weight: Weight;
      /** The lighter end of a range; null where there is none, or both are one load. */
      readonly from: Weight | null;
      /** % of 1RM that is meant, and that the plates make. */
      readonly planned: number;
      readonly actual: number;
      readonly oneRm: Weight;
      /** null where no step is taken: body weight is a part of it. */
      readonly step: Weight | null;
    }
  /** Per cent are meant, and no 1RM is given by which they would be a weight. */
  | { readonly kind: 'no 1RM'; readonly load: WrittenLoad; readonly exercise: string }
  /** The 1RM cannot be read. */
  | { readonly kind: 'wrong 1RM'; readonly load: WrittenLoad; readonly exercise: string }
  /** More than can be lifted once. */
  | { readonly kind: 'above 1RM'; readonly meant: Weight; readonly oneRm: Weight }
  /** Less than the smallest step. */
  | { readonly kind: 'below step'; readonly meant: Weight; readonly step: Weight; readonly planned: number }
  /** The load is the one at which so many repetitions are possible: each lifter finds their own. */
  | { readonly kind: 'by repetitions'; readonly possible: number }
  | { readonly kind: 'not read'; readonly written: string };

/** Of a load that is 1RM but for the rounding of a unit. */
const SLACK = 1e-9;
const ALL = 100;

export function loadFor(lifter: Lifter, { cells }: EditorLine, exercises: readonly NamedExercise[]): LifterLoad {
  const load = plannedLoad(cells);
  if (load === null) {
    const possible = cells.load.trim() === '' ? plannedSpan(cells, 'possible') : null;
    return possible
      ? { kind: 'by repetitions', possible: possible.least }
      : { kind: 'not read', written: cells.load.trim() };
  }
  const exercise = nameExercise(exercises, cells.exercise);
  const found = findOneRm(lifter, exercises, exercise);
  if (found.kind !== 'read') return { kind: found.kind === 'none' ? 'no 1RM' : 'wrong 1RM', load, exercise };
  const oneRm = inUnitOf(lifter, found.weight);
  const meant = meantWeight(load, load.most, oneRm);
  if (meant > oneRm.value * (1 + SLACK)) {
    return { kind: 'above 1RM', meant: { value: meant, unit: lifter.unit }, oneRm };
  }
  const step = isWithBodyWeight(exercise) ? null : stepOf(lifter, exercises, exercise);
  const round = (value: number) => (step ? roundDown(value, step.value) : value);
  const planned = load.unit === '%' ? load.most : (ALL * meant) / oneRm.value;
  const value = round(meant);
  if (step && value === 0) return { kind: 'below step', meant: { value: meant, unit: lifter.unit }, step, planned };
  const least = round(meantWeight(load, load.least, oneRm));
  return {
    kind: 'weight',
    weight: { value, unit: lifter.unit },
    from: least > 0 && least < value ? { value: least, unit: lifter.unit } : null,
    planned,
    // A load that is exactly what is meant is that per cent, without the rounding of sums.
    actual: Math.abs(value - meant) <= SLACK * meant ? planned : (ALL * value) / oneRm.value,
    oneRm,
    step,
  };
}

/** In the unit of the 1RM. */
function meantWeight({ unit }: WrittenLoad, value: number, oneRm: Weight): number {
  return unit === '%' ? (value / ALL) * oneRm.value : weightIn({ value, unit }, oneRm.unit);
}

/**
 * % of 1RM that the check reads for this lifter; null where it is not known, or is more than can be lifted. Without a
 * 1RM per cent stand as they are meant.
 */
export function checkedPercent(load: LifterLoad): number | null {
  switch (load.kind) {
    case 'weight':
      return Math.min(ALL, load.actual);
    case 'below step':
      return load.planned;
    case 'no 1RM':
    case 'wrong 1RM':
      return load.load.unit === '%' ? load.load.most : null;
    default:
      return null;
  }
}
