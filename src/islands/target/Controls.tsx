/** The calculator's inputs: purpose, set, exercise, company, lifter, event, and what is asked of the evidence. */
import type { Exercise } from '../../evidence/exercises.ts';
import { TRAINING_STATUSES } from '../../evidence/vocabulary.ts';
import { upperFirst } from '../../figures/firstLetter.ts';
import { formatPlain } from '../../figures/format.ts';
import { countOf } from '../../numerics/countOf.ts';
import { COMPANIES } from '../../practice/cautions.ts';
import { JUDGEMENTS, PUBLISHED_JUDGEMENT_SOURCE } from '../../practice/judgement.ts';
import { LOAD_RANGE, POSSIBLE_REPETITIONS, statePossibleInFull } from '../../practice/possible.ts';
import { PURPOSES } from '../../practice/situation.ts';
import { Choice } from '../../ui/Choice.tsx';
import { ExerciseFacts } from '../../ui/ExerciseFacts.tsx';
import { NumberEntry, type NumberEntryProps } from '../../ui/NumberEntry.tsx';
import { Slider } from '../../ui/Slider.tsx';
import { type Calculator, isOther } from './calculator.state.ts';
import { MOST_HOURS, type NumberChoice, OTHER_EXERCISE, PLANNED } from './situationAddress.ts';
import { TestSets } from './TestSets.tsx';

interface Props {
  readonly state: Calculator;
  readonly exercises: readonly Exercise[];
}

export function CalculatorControls({ state, exercises }: Props) {
  const { purpose, load, hours, keep, confidence, company, status, judgement, exercise } = state.choices.value;
  const possible = state.possible.value;
  const bound = state.bound.value;
  return (
    <>
      <Choice
        id="purpose"
        label="What the set is for"
        value={purpose}
        options={PURPOSES.map((name) => [name, name])}
        onChange={(value) => state.change({ purpose: value })}
      />
      <Choice
        id="exercise"
        label="Exercise"
        value={exercise}
        options={[
          ...exercises.map(({ name }) => [name, name] as const),
          [OTHER_EXERCISE, 'another exercise: describe it'] as const,
        ]}
        onChange={(value) => state.change({ exercise: value })}
      />
      {isOther(state.choices.value) && <OtherExercise state={state} />}
      <Slider
        id="load"
        label="Load, % of 1RM"
        value={load}
        min={LOAD_RANGE.from}
        max={LOAD_RANGE.to}
        unit="%"
        help={possible ? statePossibleInFull(possible) : 'No repetitions are published for this load.'}
        onChange={(value) => state.change({ load: value })}
      />
      <NumberEntry
        id="repetitions"
        label="Or: repetitions possible in a set"
        value={possible === null ? null : Math.round(possible.mean)}
        {...POSSIBLE_REPETITIONS}
        help={`${bound === null ? '' : `${upperFirst(bound)}. `}From ${POSSIBLE_REPETITIONS.from} to ${POSSIBLE_REPETITIONS.to}. Sets the load at which so many are possible on average.`}
        refused={state.refused.value.repetitions}
        stays={`the load stays at ${formatPlain(load)}\u00a0%`}
        onEnter={state.enterRepetitions}
      />
      {purpose === 'strength, main lift' && (
        <AddressedEntry
          state={state}
          name="planned"
          label="Repetitions planned in a set"
          {...PLANNED}
          help="The load leads: reserve is what these leave of the repetitions possible."
        />
      )}
      <Choice
        id="company"
        label="What would take the load"
        value={company}
        options={COMPANIES.map((name) => [name, name === 'alone' ? 'nothing: alone, no safety arms' : name])}
        onChange={(value) => state.change({ company: value })}
      />
      <Choice
        id="status"
        label="Used to such training"
        value={status}
        options={TRAINING_STATUSES.map((name) => [name, name === 'trained' ? 'yes: trained' : 'no: untrained'])}
        help="Decides how long recovery takes."
        onChange={(value) => state.change({ status: value })}
      />
      <AddressedEntry
        state={state}
        name="hours"
        label="Hours from the session to an event"
        from={0}
        to={MOST_HOURS}
        help="Leave empty where none is near. A match, a race, a test."
        stays={hours === null ? 'no event is planned for' : `the event stays ${countOf(hours, 'hour')} away`}
      />
      <Choice
        id="judgement"
        label="How the lifter judges what is left"
        value={judgement}
        options={JUDGEMENTS.map((name) => [name, JUDGEMENT_LABELS[name]])}
        help={`On average ${PUBLISHED_JUDGEMENT_SOURCE}.`}
        onChange={(value) => state.change({ judgement: value })}
      />
      {judgement === 'own test sets' && (
        <TestSets sets={state.choices.value.sets} own={state.own.value} onChange={(sets) => state.change({ sets })} />
      )}
      <Slider
        id="keep"
        label="Growth to keep"
        value={keep}
        min={50}
        max={99}
        unit="%"
        help="Share of the growth at reserve 0. Asking for more brings the target closer to failure."
        onChange={(value) => state.change({ keep: value })}
      />
      <Slider
        id="confidence"
        label="Confidence of intervals"
        value={confidence}
        min={50}
        max={99}
        unit="%"
        help="Higher makes the interval wider; the estimate stays."
        onChange={(value) => state.change({ confidence: value })}
      />
    </>
  );
}

const JUDGEMENT_LABELS = {
  'taken as said': 'taken as said',
  'as most people': 'as most people do: they stop early',
  'own test sets': 'known from test sets of their own',
} as const;

function OtherExercise({ state }: { readonly state: Calculator }) {
  const { pins, stops, partials } = state.choices.value;
  return (
    <fieldset class="facts">
      <legend>About this exercise</legend>
      <ExerciseFacts
        id="other"
        facts={{ canPin: pins, stoppable: stops, partials }}
        onChange={(facts) => state.change({ pins: facts.canPin, stops: facts.stoppable, partials: facts.partials })}
      />
    </fieldset>
  );
}

interface AddressedEntryProps extends Pick<NumberEntryProps, 'label' | 'help' | 'from' | 'to'> {
  readonly state: Calculator;
  readonly name: NumberChoice;
  /** What stays where the entry is not taken; the number that stands, unless it is said. */
  readonly stays?: string;
}

/** A number whose limits are those of its part of the address. */
function AddressedEntry({ state, name, stays, ...entry }: AddressedEntryProps) {
  const value = state.choices.value[name];
  return (
    <NumberEntry
      {...entry}
      id={name}
      value={value}
      refused={state.refused.value[name]}
      stays={stays ?? `it stays at ${value}`}
      onEnter={(written) => state.enterNumber(name, written)}
    />
  );
}
