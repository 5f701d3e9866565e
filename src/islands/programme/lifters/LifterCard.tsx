/** One lifter: name, unit and step, and what they can lift once in each exercise. */
import { useState } from 'preact/hooks';
import { formatExpectation } from '../../../evidence/problem.ts';
import { exerciseKey, type Lifter, nameExercise } from '../../../practice/lifters/lifter.ts';
import { findOneRm } from '../../../practice/lifters/oneRm.ts';
import { readStep, USUAL_STEPS } from '../../../practice/lifters/step.ts';
import { WEIGHT_UNITS } from '../../../practice/lifters/weight.ts';
import { useTyped } from '../../../ui/useTyped.ts';
import { ExercisePick } from '../ExercisePick.tsx';
import type { ProgrammeState } from '../programme.state.ts';
import type { LiftersState } from './lifters.state.ts';
import { OneRmEntry } from './OneRmEntry.tsx';
import type { SheetsState } from './sheets.state.ts';

interface Props {
  readonly programme: ProgrammeState;
  readonly state: LiftersState;
  readonly sheets: SheetsState;
  readonly lifter: Lifter;
}

export function LifterCard(props: Props) {
  const { programme, state, sheets, lifter } = props;
  const { id, name } = lifter;
  const isOpen = state.unfolded.value.has(id);
  const used = usedExercises(programme, sheets);
  const given = used.filter((exercise) => findOneRm(lifter, programme.exercises.value, exercise).kind === 'read');
  return (
    <li>
      <details class="lifter" open={isOpen} onToggle={(event) => state.fold(id, event.currentTarget.open)}>
        <summary>
          <bdi>{name}</bdi>{' '}
          <span class="small">
            {used.length === 0 ? '' : `1RM of ${given.length} of the programme’s ${used.length} exercises`}
          </span>
        </summary>
        {isOpen && <Opened {...props} used={used} />}
      </details>
    </li>
  );
}

/** Names of the exercises of the version that sheets are of, each once, as the list has them. */
function usedExercises({ exercises }: ProgrammeState, { list }: SheetsState): readonly string[] {
  const names = list.value.lines.map(({ cells }) => cells.exercise).filter((name) => name.trim() !== '');
  const byKey = new Map(names.map((name) => [exerciseKey(exercises.value, name), nameExercise(exercises.value, name)]));
  byKey.delete('');
  return [...byKey.values()];
}

function Opened({ programme, state, sheets, lifter, used }: Props & { readonly used: readonly string[] }) {
  const { id, name, unit, step, maxima } = lifter;
  const exercises = programme.exercises.value;
  const keys = new Set(used.map((one) => exerciseKey(exercises, one)));
  const others = maxima.filter(({ exercise }) => !keys.has(exerciseKey(exercises, exercise)));
  const found = readStep(step, unit);
  const refused = state.refused.value?.where === id ? state.refused.value.refusal : null;
  const typed = useTyped(refused?.value ?? name, (written) => state.rename(id, written));
  const field = (part: string) => `lifter-${id}-${part}`;
  return (
    <div class="lifter-card">
      <div class="lifter-facts">
        <div class="control name">
          <label for={field('name')}>Name</label>
          <input
            id={field('name')}
            type="text"
            dir="auto"
            autocomplete="off"
            spellcheck={false}
            {...typed}
            aria-invalid={refused !== null}
            aria-describedby={field('name-refused')}
          />
          <span class="help" role="status" id={field('name-refused')}>
            {refused && `${formatExpectation(refused)} The name stays as it was.`}
          </span>
        </div>
        <div class="control">
          <label for={field('unit')}>Loads in</label>
          <select
            id={field('unit')}
            value={unit}
            onChange={(event) => {
              const chosen = WEIGHT_UNITS.find((one) => one === event.currentTarget.value);
              if (chosen) state.setUnit(id, chosen);
            }}
          >
            {WEIGHT_UNITS.map((one) => (
              <option key={one} value={one}>
                {one === 'kg' ? 'kilograms (kg)' : 'pounds (lb)'}
              </option>
            ))}
          </select>
        </div>
        <div class="control">
          <label for={field('step')}>Step of the loads, {unit}</label>
          <input
            id={field('step')}
            type="text"
            inputMode="decimal"
            autocomplete="off"
            placeholder={String(USUAL_STEPS[unit])}
            value={step}
            aria-invalid={found.kind === 'refused'}
            aria-describedby={field('step-said')}
            onInput={(event) => state.setStep(id, event.currentTarget.value)}
          />
          <span class="help" id={field('step-said')}>
            {found.kind === 'empty' && `Empty takes ${USUAL_STEPS[unit]} ${unit}.`}
            {found.kind === 'refused' &&
              `${formatExpectation({ ...found, value: step })} Until then ${USUAL_STEPS[unit]} ${unit} are taken.`}
          </span>
        </div>
      </div>
      <ol class="maxima" aria-label="What can be lifted once">
        {[
          ...used.map((exercise) => ({ exercise, isUsed: true })),
          ...others.map(({ exercise }) => ({ exercise: nameExercise(exercises, exercise), isUsed: false })),
        ].map(({ exercise, isUsed }) => (
          <OneRmEntry
            key={exercise}
            programme={programme}
            state={state}
            sheets={sheets}
            lifter={lifter}
            exercise={exercise}
            isUsed={isUsed}
          />
        ))}
      </ol>
      <OtherExercise programme={programme} state={state} id={id} />
      <p class="buttons">
        <button type="button" class="inline" onClick={() => state.remove(id)}>
          Remove <bdi>{name}</bdi>
        </button>
      </p>
    </div>
  );
}

interface OtherProps {
  readonly programme: ProgrammeState;
  readonly state: LiftersState;
  readonly id: number;
}

function OtherExercise({ programme, state, id }: OtherProps) {
  const [name, setName] = useState('');
  const field = `lifter-${id}-other`;
  return (
    <form
      class="control other-exercise"
      onSubmit={(event) => {
        event.preventDefault();
        if (state.listExercise(id, name)) setName('');
      }}
    >
      <label for={field}>1RM of another exercise</label>
      <span class="with-button">
        <ExercisePick
          id={field}
          value={name}
          exercises={programme.exercises.value}
          isWrong={false}
          describedBy={`${field}-help`}
          onChange={setName}
        />
        <button type="submit">Add the exercise</button>
      </span>
      <span class="help" id={`${field}-help`}>
        From the list or a name of your own; this programme need not have it.
      </span>
    </form>
  );
}
