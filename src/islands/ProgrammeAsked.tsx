/** Asks for the facts of an exercise that nothing is known of; its lines wait for them. */
import { useState } from 'preact/hooks';
import { splitMuscles } from '../evidence/exercises.ts';
import type { AskedExercise } from '../practice/programme/read.ts';
import type { ProgrammeState } from './programme.state.ts';

export function ProgrammeAsked({ state, asked }: { readonly state: ProgrammeState; readonly asked: AskedExercise }) {
  const [muscles, setMuscles] = useState('');
  // The careful answers stand until the reader gives others.
  const [facts, setFacts] = useState({ canPin: true, stoppable: false, partials: false });
  const [refused, setRefused] = useState(false);
  const id = `asked-${asked.lines[0]}`;
  const add = () => {
    const named = splitMuscles(muscles);
    setRefused(named.length === 0);
    if (named.length > 0) state.describe({ name: asked.name, muscles: named, ...facts, relation: null });
  };
  return (
    <fieldset class="facts">
      <legend>
        What is “{asked.name}”? Line {asked.lines.join(', ')} {asked.lines.length === 1 ? 'waits' : 'wait'} for it.
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
      {(
        [
          ['canPin', 'It can pin the lifter'],
          ['stoppable', 'It can be stopped anywhere in the range'],
          ['partials', 'Shortened-range repetitions are feasible'],
        ] as const
      ).map(([name, label]) => (
        <label class="choice" key={name}>
          <input
            type="checkbox"
            checked={facts[name]}
            onChange={(event) => setFacts({ ...facts, [name]: event.currentTarget.checked })}
          />
          <span>{label}</span>
        </label>
      ))}
      <p class="buttons">
        <button type="button" onClick={add}>
          Use this for “{asked.name}”
        </button>
      </p>
    </fieldset>
  );
}
