/** Asks for the facts of an exercise that nothing is known of; its lines wait for them. */
import { useState } from 'preact/hooks';
import { splitMuscles } from '../../evidence/exercises.ts';
import type { AskedExercise } from '../../practice/programme/read.ts';
import { type AskedFacts, ExerciseFacts } from '../../ui/ExerciseFacts.tsx';
import type { ProgrammeState } from './programme.state.ts';

interface Props {
  readonly state: ProgrammeState;
  readonly asked: AskedExercise;
  /** Id of the version's heading, which takes the focus when the question has gone. */
  readonly heading: string;
}

export function ProgrammeAsked({ state, asked, heading }: Props) {
  const [muscles, setMuscles] = useState('');
  // The careful answers stand until the reader gives others.
  const [facts, setFacts] = useState<AskedFacts>({ canPin: true, stoppable: false, partials: false });
  const [refused, setRefused] = useState(false);
  const id = `${heading}-asked-${asked.lines[0]}`;
  const add = () => {
    const named = splitMuscles(muscles);
    setRefused(named.length === 0);
    document.getElementById(named.length === 0 ? id : heading)?.focus();
    if (named.length > 0) state.describe({ name: asked.name, muscles: named, ...facts, relation: null });
  };
  return (
    <fieldset class="facts">
      <legend>
        What is “{asked.name}”? {asked.lines.length === 1 ? 'Line' : 'Lines'} {asked.lines.join(', ')}{' '}
        {asked.lines.length === 1 ? 'waits' : 'wait'} for it.
      </legend>
      <div class="control">
        <label for={id}>Muscles it trains</label>
        <input
          id={id}
          type="text"
          value={muscles}
          onInput={(event) => setMuscles(event.currentTarget.value)}
          aria-invalid={refused}
          aria-describedby={`${id}-help`}
        />
        <span class="help" id={`${id}-help`}>
          {refused ? 'Expected at least one muscle, received none.' : 'Separated by semicolons.'}
        </span>
      </div>
      <ExerciseFacts id={id} facts={facts} onChange={setFacts} />
      <p class="buttons">
        <button type="button" onClick={add}>
          Use this for “{asked.name}”
        </button>
      </p>
    </fieldset>
  );
}
