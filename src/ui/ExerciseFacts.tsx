/** What is asked of an exercise that no list knows: what safety and stopping need to know. */
import type { Exercise } from '../evidence/exercises.ts';

export type AskedFacts = Pick<Exercise, 'canPin' | 'stoppable' | 'partials'>;

const QUESTIONS = [
  {
    name: 'canPin',
    label: 'It can pin the lifter',
    help: 'A bar over the chest, neck or back; a sled above the body.',
  },
  { name: 'stoppable', label: 'It can be stopped anywhere in the range', help: 'Most machines and cables.' },
  { name: 'partials', label: 'Shortened-range repetitions are feasible', help: null },
] as const;

interface Props {
  /** Begins the ids of the entries. */
  readonly id: string;
  readonly facts: AskedFacts;
  readonly onChange: (facts: AskedFacts) => void;
}

export function ExerciseFacts({ id, facts, onChange }: Props) {
  return (
    <>
      {QUESTIONS.map(({ name, label, help }) => (
        <div class="control" key={name}>
          <label class="choice">
            <input
              type="checkbox"
              checked={facts[name]}
              aria-describedby={help ? `${id}-${name}-help` : undefined}
              onChange={(event) => onChange({ ...facts, [name]: event.currentTarget.checked })}
            />
            <span>{label}</span>
          </label>
          {help && (
            <span class="help" id={`${id}-${name}-help`}>
              {help}
            </span>
          )}
        </div>
      ))}
    </>
  );
}
