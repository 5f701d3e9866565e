/** A lifter's own test sets, entered one by one: what was said to be left, and what was then done to failure. */
import { useRef, useState } from 'preact/hooks';
import { countOf } from '../../numerics/countOf.ts';
import {
  isWholeCount,
  MOST_TEST_SETS,
  type OwnJudgement,
  stateOwn,
  TEST_SET,
  type TestSet,
} from '../../practice/ownJudgement.ts';

interface Props {
  readonly sets: readonly TestSet[];
  readonly own: OwnJudgement;
  readonly onChange: (sets: readonly TestSet[]) => void;
}

const ENTRIES = [
  ['said', 'Said to be left'],
  ['done', 'Then done, to failure'],
] as const;

export function TestSets({ sets, own, onChange }: Props) {
  const said = useRef<HTMLInputElement>(null);
  const done = useRef<HTMLInputElement>(null);
  /** What was last added, removed or refused, for all to hear. */
  const [status, setStatus] = useState('');
  const [refused, setRefused] = useState<readonly string[]>([]);
  const isFull = sets.length >= MOST_TEST_SETS;

  const add = () => {
    if (isFull) {
      setStatus('Nothing was added.');
      return;
    }
    const written = { said: readCount(said.current), done: readCount(done.current) };
    const wrong = ENTRIES.filter(([name]) => written[name] === null);
    setRefused(wrong.map(([name]) => name));
    if (written.said === null || written.done === null) {
      const where = wrong.map(([, label]) => `“${label}”`).join(' and ');
      setStatus(`Expected whole repetitions from ${TEST_SET.from} to ${TEST_SET.to} in ${where}; nothing was added.`);
      (wrong[0][0] === 'said' ? said : done).current?.focus();
      return;
    }
    const added = { said: written.said, done: written.done };
    onChange([...sets, added]);
    setStatus(`Added: ${tellSet(added)}. ${tellCount(sets.length + 1)}`);
    for (const { current } of [said, done]) if (current) current.value = '';
    said.current?.focus();
  };
  const remove = (index: number) => {
    onChange(sets.filter((_, i) => i !== index));
    setStatus(`Removed: ${tellSet(sets[index])}. ${tellCount(sets.length - 1)}`);
    // The button that was pressed is gone.
    said.current?.focus();
  };

  return (
    <fieldset class="facts test-sets">
      <legend>Test sets of this lifter</legend>
      <p class="help">
        In a set the lifter says once how many are left, then goes on to failure while you count. Only with a spotter or
        safety arms, or where nothing can pin them; not before an event.
      </p>
      {sets.length > 0 && (
        <ol>
          {sets.map((set, i) => (
            <li key={`${i} ${tellSet(set)}`}>
              <span>{tellSet(set)}</span>
              <button type="button" class="inline" aria-label={`Remove ${tellSet(set)}`} onClick={() => remove(i)}>
                Remove
              </button>
            </li>
          ))}
        </ol>
      )}
      <div class="pair">
        {ENTRIES.map(([name, label]) => (
          <div class="control" key={name}>
            <label for={`test-${name}`}>{label}</label>
            <input
              ref={name === 'said' ? said : done}
              id={`test-${name}`}
              // Text, since an entry of numbers would drop the comma of “2,5” and take 25.
              type="text"
              inputMode="numeric"
              autocomplete="off"
              // A disabled field would lose the focus that adding the last one leaves here.
              readOnly={isFull}
              aria-invalid={refused.includes(name)}
              aria-describedby="test-status"
              onKeyDown={(event) => {
                if (event.key !== 'Enter') return;
                event.preventDefault();
                add();
              }}
            />
          </div>
        ))}
      </div>
      <button type="button" aria-disabled={isFull} onClick={add}>
        Add this set
      </button>
      <p class="help" role="status" id="test-status">
        {status} {isFull && `${MOST_TEST_SETS} test sets are as many as are kept: remove one to add another.`}
      </p>
      <p class="help">{stateOwn(own)}</p>
    </fieldset>
  );
}

function readCount(input: HTMLInputElement | null): number | null {
  const typed = input?.value.trim() ?? '';
  const value = typed === '' ? Number.NaN : Number(typed);
  return isWholeCount(value) ? value : null;
}

function tellSet({ said, done }: TestSet): string {
  return `said ${said}, did ${done}`;
}

/** Beside what was done to a set, so that the same done again is said again. */
function tellCount(sets: number): string {
  return `Now ${countOf(sets, 'test set')}.`;
}
