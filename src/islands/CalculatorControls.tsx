/** The calculator's inputs: purpose, set, exercise, company, lifter, event, and what is asked of the evidence. */
import type { Exercise } from '../evidence/exercises.ts';
import { TRAINING_STATUSES } from '../evidence/vocabulary.ts';
import { COMPANIES } from '../practice/cautions.ts';
import { JUDGEMENTS, PUBLISHED_JUDGEMENT_SOURCE } from '../practice/judgement.ts';
import { describePossible, LOAD_RANGE, POSSIBLE_REPETITIONS } from '../practice/possible.ts';
import { PURPOSES } from '../practice/situation.ts';
import { Choice } from './Choice.tsx';
import { type Calculator, isOther } from './calculator.state.ts';
import { NumberEntry } from './NumberEntry.tsx';
import { Slider } from './Slider.tsx';
import { BIAS, MOST_HOURS, OTHER_EXERCISE, PLANNED, SPREAD } from './situationAddress.ts';

interface Props {
  readonly state: Calculator;
  readonly exercises: readonly Exercise[];
}

export function CalculatorControls({ state, exercises }: Props) {
  const { purpose, load, planned, hours, keep, confidence, company, status, judgement, bias, spread, exercise } =
    state.choices.value;
  const possible = state.possible.value;
  const refused = state.refused.value;
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
        help={possible ? describePossible(possible) : 'No repetitions are published for this load.'}
        onChange={(value) => state.change({ load: value })}
      />
      <NumberEntry
        id="repetitions"
        label="Or: repetitions possible in a set"
        value={possible === null ? null : Number(possible.mean.toFixed(0))}
        {...POSSIBLE_REPETITIONS}
        help={`From ${POSSIBLE_REPETITIONS.from} to ${POSSIBLE_REPETITIONS.to}. Sets the load at which so many are possible on average.`}
        refused={refused.repetitions}
        stays={`the load stays at ${Number(load.toPrecision(3))} %`}
        onEnter={state.enterRepetitions}
      />
      {purpose === 'strength, main lift' && (
        <NumberEntry
          id="planned"
          label="Repetitions planned in a set"
          value={planned}
          {...PLANNED}
          help="The load leads: reserve is what these leave of the repetitions possible."
          refused={refused.planned}
          stays={`the plan stays at ${planned}`}
          onEnter={(written) => state.enterNumber('planned', written)}
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
      <NumberEntry
        id="hours"
        label="Hours from the session to an event"
        value={hours}
        from={0}
        to={MOST_HOURS}
        help="Leave empty where none is near. A match, a race, a test."
        refused={refused.hours}
        stays={hours === null ? 'no event is planned for' : `the event stays ${hours} hours away`}
        onEnter={(written) => state.enterNumber('hours', written)}
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
        <>
          <NumberEntry
            id="bias"
            label="More done in test sets than was said, mean"
            value={bias}
            {...BIAS}
            help="Repetitions; below 0 for a lifter who can do fewer than they say."
            refused={refused.bias}
            stays={`it stays at ${bias}`}
            onEnter={(written) => state.enterNumber('bias', written)}
          />
          <NumberEntry
            id="spread"
            label="Spread of that from set to set (SD)"
            value={spread}
            {...SPREAD}
            help="Repetitions."
            refused={refused.spread}
            stays={`it stays at ${spread}`}
            onEnter={(written) => state.enterNumber('spread', written)}
          />
        </>
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
  const facts = [
    {
      name: 'pins',
      checked: pins,
      label: 'It can pin the lifter',
      help: 'A bar over the chest, neck or back; a sled above the body.',
    },
    {
      name: 'stops',
      checked: stops,
      label: 'It can be stopped anywhere in the range',
      help: 'Most machines and cables.',
    },
    { name: 'partials', checked: partials, label: 'Shortened-range repetitions are feasible', help: '' },
  ] as const;
  return (
    <fieldset class="facts">
      <legend>About this exercise</legend>
      {facts.map(({ name, checked, label, help }) => (
        <div class="control" key={name}>
          <label class="choice">
            <input
              type="checkbox"
              checked={checked}
              onChange={(event) => state.change({ [name]: event.currentTarget.checked })}
            />
            <span>{label}</span>
          </label>
          {help && <span class="help">{help}</span>}
        </div>
      ))}
    </fieldset>
  );
}
