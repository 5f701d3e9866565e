/** Words of the form that makes rows, and the way from a problem to its entry. */
import type { DescribedColumn } from '../../evidence/column.ts';
import { DESCRIBED_ARM_COLUMNS } from '../../evidence/columnMeanings.ts';
import { COLUMN_WORDS, nameColumns } from '../../evidence/columnWords.ts';
import { formatExpectation, type Problem } from '../../evidence/problem.ts';
import type { ArmColumn } from '../../evidence/schema.ts';
import { upperFirst } from '../../figures/firstLetter.ts';
import { countOf } from '../../numerics/countOf.ts';
import type { StudyReading } from './readStudies.ts';
import type { Place, StudyDraft } from './studyDraft.ts';
import { wordsOf } from './wordsOf.ts';

/** Id of the heading over the studies so far. */
export const STUDIES_HEADING = 'curate-studies';

/** “2 to mend, 3 still needed, 1 warning”; “nothing entered yet”; “no problem”. */
export function outlineReading(
  { problems, needed, warnings }: Pick<StudyReading, 'problems' | 'needed' | 'warnings'>,
  isEmpty: boolean,
): string {
  if (isEmpty) return 'Nothing entered yet.';
  const parts = [
    problems.length > 0 ? `${problems.length} to mend` : null,
    needed.length > 0 ? `${needed.length} still needed` : null,
    warnings.length > 0 ? countOf(warnings.length, 'warning') : null,
  ].filter(Boolean);
  return parts.length > 0 ? `${parts.join(', ')}.` : 'No problem.';
}

/** What is wrong with an entry, to stand at it: “Expected a number above 0, received “6,3”. Use a decimal point.” */
export function sayProblem(problem: Pick<Problem, 'value' | 'expected' | 'remedy'>): string {
  return upperFirst(nameColumns(formatExpectation(problem)));
}

/** Choices explain themselves; of a text only the example helps, of a number its range and unit too. */
export function explainColumn(help: string, column: DescribedColumn<unknown>): string {
  const { expected, unit, example, field } = column;
  if (wordsOf(column)) return help;
  if (field.constraints.maxLength !== undefined) return `${help} For example: ${example}`;
  return `${help} ${upperFirst(expected)}${unit ? ` (${unit})` : ''}, for example ${example}.`;
}

export function explain(name: ArmColumn): string {
  return explainColumn(COLUMN_WORDS[name].help, DESCRIBED_ARM_COLUMNS[name]);
}

/** The arm, the measure or both that an entry belongs to; empty where it is the study’s. */
export function sayWhere(draft: StudyDraft, place: Place): string {
  const parts = [
    place.of === 'arm' || place.of === 'result' ? nameOfArm(draft, place.arm) : '',
    place.of === 'measure' || place.of === 'result' ? nameOfMeasure(draft, place.measure) : '',
  ];
  return parts.filter(Boolean).join(', ');
}

export function nameOfArm({ arms }: StudyDraft, id: number): string {
  const at = arms.findIndex((arm) => arm.id === id);
  const { arm = '', exercise = '' } = arms[at]?.cells ?? {};
  // An arm that trained two exercises has its name twice.
  const isTwice = arm !== '' && arms.filter(({ cells }) => cells.arm === arm).length > 1;
  return (isTwice && exercise ? `${arm}, ${exercise}` : arm.trim()) || `arm ${at + 1}`;
}

export function nameOfMeasure({ measures }: StudyDraft, id: number): string {
  const at = measures.findIndex((measure) => measure.id === id);
  const { measure = '', muscle = '', hours_after: hours = '' } = measures[at]?.cells ?? {};
  const name = [measure.trim(), muscle.trim(), hours.trim() && `${hours.trim()} h after`].filter(Boolean).join(', ');
  return name || `measure ${at + 1}`;
}
