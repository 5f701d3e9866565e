/** The loads of one exercise for one lifter in a programme, each once, as they stand below what the lifter can lift. */
import type { NamedExercise } from '../../../evidence/exerciseNames.ts';
import { lowerFirst } from '../../../figures/firstLetter.ts';
import { formatPlain } from '../../../figures/format.ts';
import { exerciseKey, type Lifter } from '../../../practice/lifters/lifter.ts';
import { type LifterLoad, loadFor } from '../../../practice/lifters/loadFor.ts';
import { explainToCoach, tellLoadToCoach } from '../../../practice/lifters/tellCoach.ts';
import type { EditorLine } from '../../../practice/programme/edit.ts';

/**
 * “107.5 kg for 78 %; 110 kg for 80 %.”, then a sentence for what has to be known of others: “75 % of 1RM, 80 % of
 * 1RM: no 1RM of squat given.”
 *
 * @param lines of a programme that has the exercise
 */
export function sayLoads(
  lines: readonly EditorLine[],
  lifter: Lifter,
  exercise: string,
  exercises: readonly NamedExercise[],
): string {
  const key = exerciseKey(exercises, exercise);
  const plain = new Set<string>();
  const byExplanation = new Map<string, Set<string>>();
  for (const line of lines) {
    if (exerciseKey(exercises, line.cells.exercise) !== key) continue;
    const load = loadFor(lifter, line, exercises);
    const explanation = explainToCoach(load);
    if (explanation === null) plain.add(sayPlain(load));
    else byExplanation.set(explanation, (byExplanation.get(explanation) ?? new Set()).add(tellLoadToCoach(load)));
  }
  const explained = [...byExplanation].map(([said, loads]) => `${[...loads].join(', ')}: ${lowerFirst(said)}`);
  return [...(plain.size > 0 ? [`${[...plain].join('; ')}.`] : []), ...explained].join(' ');
}

function sayPlain(load: LifterLoad): string {
  if (load.kind !== 'weight') return tellLoadToCoach(load);
  const [planned, actual] = [formatPlain(load.planned), formatPlain(load.actual)];
  const rounded = actual === planned ? '' : `, rounded down to ${actual}\u00a0%`;
  // Of a range both ends are told, and the per cent of the heavier one.
  return `${tellLoadToCoach(load)} for ${load.from ? 'at most ' : ''}${planned}\u00a0%${rounded}`;
}
