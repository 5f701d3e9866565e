/** What a lifter can lift once in an exercise, with a step of its own, and the loads that follow. */
import { formatExpectation } from '../../../evidence/problem.ts';
import { isWithBodyWeight } from '../../../practice/lifters/bodyWeight.ts';
import { type Lifter, oneRmOf } from '../../../practice/lifters/lifter.ts';
import { askUnit, findOneRm, inUnitOf, stepOf } from '../../../practice/lifters/oneRm.ts';
import { readStep } from '../../../practice/lifters/step.ts';
import { writeWeight } from '../../../practice/lifters/weight.ts';
import type { ProgrammeState } from '../programme.state.ts';
import { idOfMaximum, type LiftersState } from './lifters.state.ts';
import { sayLoads } from './sayLoads.ts';
import type { SheetsState } from './sheets.state.ts';

interface Props {
  readonly programme: ProgrammeState;
  readonly state: LiftersState;
  readonly sheets: SheetsState;
  readonly lifter: Lifter;
  /** Name of the list, or as written. */
  readonly exercise: string;
  /** True where the programme has it. */
  readonly isUsed: boolean;
}

export function OneRmEntry({ programme, state, sheets, lifter, exercise, isUsed }: Props) {
  const { id, unit } = lifter;
  const exercises = programme.exercises.value;
  const typed = oneRmOf(lifter, exercises, exercise);
  const found = findOneRm(lifter, exercises, exercise);
  const step = readStep(typed?.step ?? '', unit);
  const withBody = isWithBodyWeight(exercise);
  const field = idOfMaximum(id, exercise);
  const isOther = found.kind === 'read' && found.weight.unit !== unit;
  const question = found.kind === 'read' ? askUnit(found.weight) : null;
  return (
    <li class="maximum">
      <span class="exercise-name">{exercise}</span>
      <Cell
        id={field}
        label={`1RM, ${unit}`}
        exercise={exercise}
        value={typed?.weight}
        isWrong={found.kind === 'refused'}
        said={`${field}-said`}
        onInput={(weight) => state.setMaximum(id, exercise, { weight })}
      />
      {!withBody && (
        <Cell
          id={idOfMaximum(id, exercise, 'step')}
          label={`Its step, ${unit}`}
          exercise={exercise}
          placeholder={String(stepOf(lifter, exercises, exercise).value)}
          value={typed?.step}
          isWrong={step.kind === 'refused'}
          said={`${field}-said`}
          onInput={(written) => state.setMaximum(id, exercise, { step: written })}
        />
      )}
      <div class="help said" id={`${field}-said`}>
        {withBody && <p>Body weight and what is added, together; what plates allow is not reckoned in.</p>}
        {found.kind === 'refused' && <p>1RM: {formatExpectation({ ...found, value: typed?.weight ?? '' })}</p>}
        {step.kind === 'refused' && (
          <p>
            Step: {formatExpectation({ ...step, value: typed?.step ?? '' })} Until then{' '}
            {writeWeight(stepOf(lifter, exercises, exercise))} are taken.
          </p>
        )}
        {isOther && <p>That is {writeWeight(inUnitOf(lifter, found.weight))}.</p>}
        {question && <p>{question}</p>}
        {isUsed ? (
          <p>{sayLoads(sheets.list.value.lines, lifter, exercise, exercises)}</p>
        ) : (
          <p>
            This programme does not have it.{' '}
            <button type="button" class="inline" onClick={() => state.dropExercise(id, exercise)}>
              Remove<span class="unseen"> {exercise}</span>
            </button>
          </p>
        )}
      </div>
    </li>
  );
}

interface CellProps {
  readonly id: string;
  readonly label: string;
  readonly exercise: string;
  readonly placeholder?: string;
  readonly value: string | undefined;
  readonly isWrong: boolean;
  /** Id of what is said of it. */
  readonly said: string;
  readonly onInput: (written: string) => void;
}

function Cell({ id, label, exercise, placeholder, value = '', isWrong, said, onInput }: CellProps) {
  return (
    <div class="control">
      <label for={id}>
        {label}
        <span class="unseen"> of {exercise}</span>
      </label>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        placeholder={placeholder}
        value={value}
        aria-invalid={isWrong}
        aria-describedby={said}
        onInput={(event) => onInput(event.currentTarget.value)}
      />
    </div>
  );
}
