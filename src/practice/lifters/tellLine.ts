/**
 * A line of a programme in words for the lifter who reads it in the gym. Of another exercise than theirs nothing is
 * said, nor of anybody else.
 */
import { TOO_MANY, tellGuarded } from '../tellGuarded.ts';
import { tellLifter } from '../tellLifter.ts';
import type { LifterLine } from './judge.ts';
import type { LifterLoad } from './loadFor.ts';
import { tellPlannedLoad } from './planned.ts';
import { effectOfRounding, isSaid, type RoundingEffect } from './step.ts';
import { writeWeight } from './weight.ts';

/** “107.5 kg”, “97.5 to 105 kg”, “78 % of 1RM”. */
export function tellLoad(load: LifterLoad): string {
  switch (load.kind) {
    case 'weight':
      return load.from ? `${load.from.value} to ${writeWeight(load.weight)}` : writeWeight(load.weight);
    case 'no 1RM':
    case 'wrong 1RM':
      return tellPlannedLoad(load.load);
    case 'above 1RM':
      return 'none';
    case 'below step':
      return `${Number(load.planned.toFixed(1))}\u00a0% of 1RM`;
    case 'by repetitions':
      return `one you could lift ${load.possible} times`;
    case 'not read':
      return load.written === '' ? 'not given' : load.written;
  }
}

/** What the lifter has to know of a load beside it; null where it is plain. */
export function explainLoad(load: LifterLoad): string | null {
  switch (load.kind) {
    case 'weight':
      return load.step === null ? 'Your body weight is part of it.' : null;
    case 'no 1RM':
      return `No 1RM of ${load.exercise} given.`;
    case 'wrong 1RM':
      return `The 1RM of ${load.exercise} cannot be read.`;
    case 'above 1RM':
      return `${writeWeight(load.meant)} is more than your 1RM, ${writeWeight(load.oneRm)}. Do not lift it: ask your coach.`;
    case 'below step':
      return `That is ${writeWeight(load.meant)}, less than the smallest step of ${writeWeight(load.step)}.`;
    case 'not read':
      return load.written === '' ? 'Ask your coach for the load.' : 'The load cannot be read: ask your coach.';
    case 'by repetitions':
      return null;
  }
}

/** What rounding does to the set, where that is enough to be said; null else. */
export function roundingOf({ load, checked }: Pick<LifterLine, 'load' | 'checked'>): RoundingEffect | null {
  if (load.kind !== 'weight' || load.actual === load.planned) return null;
  const effect = effectOfRounding(load.planned, load.actual, checked?.line.exercise.relation ?? null);
  return isSaid(effect) ? effect : null;
}

/** When to end the set, and with whom; what is not safe, or does not fit the load, is not asked for. */
export function tellSet({ load, reserve, checked, unsafe, problems }: LifterLine): string {
  if (load.kind === 'above 1RM') return 'Ask your coach before this set.';
  if (checked?.plausibility.kind === 'too many') return TOO_MANY;
  if (reserve === null)
    return problems.length > 0 ? 'Ask your coach: this line is not whole.' : 'Not given: ask your coach.';
  return tellGuarded(tellLifter(reserve), unsafe);
}

/** Who or what takes the load, where the exercise can pin; null else. */
export function tellCompany({ canPin, company }: Pick<LifterLine, 'canPin' | 'company'>): string | null {
  if (company === 'spotter') return 'With a spotter.';
  if (company === 'safety arms') return 'With the safety arms set.';
  return canPin ? 'It can pin you, and nothing would take the load.' : null;
}

/** What stands below the exercise; empty where there is nothing to know. */
export function noteOf(line: LifterLine): string {
  return [explainLoad(line.load), tellCompany(line)].filter((one) => one !== null).join(' ');
}
