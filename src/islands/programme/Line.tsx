/** One line to be edited: its cells, its buttons, and what the evidence says of it. */
import type { ComponentChildren } from 'preact';
import { useMemo, useRef, useState } from 'preact/hooks';
import { Asleep } from '../../ui/Asleep.tsx';
import { TEXT_CELLS } from './cellWords.ts';
import { idOfPart, type LinePart, type VersionName } from './editing.state.ts';
import { LineDetails } from './LineDetails.tsx';
import { LineFields } from './LineFields.tsx';
import { type LineProps, LineVerdict } from './LineVerdict.tsx';
import type { ProgrammeState } from './programme.state.ts';
import { saidOf } from './taken.ts';

interface Props extends Omit<LineProps, 'taken'> {
  /** The week and day that begin at it. */
  readonly head: ComponentChildren;
}

/** Laid out again only where something of it is another: a report comes with every key, and most of it is as before. */
export function ProgrammeLine({ state, which, line, number, report, head }: Props) {
  const taken = useSame(saidOf(state.opening.taken.value, line));
  const said = useSame(report);
  const shown = useMemo(
    () => <Line state={state} which={which} line={line} number={number} report={said} taken={taken} />,
    [state, which, line, number, said, taken],
  );
  return (
    <li>
      {head}
      <Asleep>{shown}</Asleep>
    </li>
  );
}

/** The value before, as long as it says the same. */
function useSame<Value>(value: Value): Value {
  const last = useRef(value);
  const isSame = last.current === value || JSON.stringify(last.current) === JSON.stringify(value);
  if (!isSame) last.current = value;
  return last.current;
}

function Line({ state, which, line, number, report, taken }: LineProps) {
  const { id, cells } = line;
  const [isOpen, setOpen] = useState(false);
  const name = cells.exercise.trim() || 'no exercise yet';
  const press = (event: KeyboardEvent) => {
    const isSelect = event.target instanceof HTMLSelectElement;
    const way = { ArrowUp: -1, ArrowDown: 1 }[event.key];
    if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) state.add(which, id);
    else if (way !== undefined && event.altKey && !isSelect) state.move(which, id, way, partOf(event.target));
    else return;
    event.preventDefault();
  };
  return (
    <fieldset class="line" onKeyDown={press}>
      <legend class="line-name">
        <span class="line-number">{number}</span>
        <span class="unseen">
          . line of version {which === 'first' ? 'one' : 'two'}: {name}
        </span>
      </legend>
      <LineFields state={state} which={which} line={line} report={report} />
      <div class="line-said" id={`${which}-${id}-said`}>
        <LineVerdict state={state} which={which} line={line} number={number} report={report} taken={taken} />
        {TEXT_CELLS.filter(({ column }) => cells[column] !== '').map(({ column, label }) => (
          <p class="small" key={column}>
            {label}: {cells[column]}
          </p>
        ))}
      </div>
      <p class="line-buttons">
        <Act state={state} of={[which, id]} part="up" word="↑" label={`Move line ${number} up`} />
        <Act state={state} of={[which, id]} part="down" word="↓" label={`Move line ${number} down`} />
        <Act state={state} of={[which, id]} part="copy" word="Copy" label={`Copy line ${number}`} />
        <Act state={state} of={[which, id]} part="delete" word="Delete" label={`Delete line ${number}`} />
        <button
          type="button"
          class="inline"
          id={idOfPart(which, id, 'more')}
          data-part="more"
          aria-expanded={isOpen}
          aria-label={`More of line ${number}: note, week, facts`}
          onClick={() => setOpen(!isOpen)}
        >
          More
        </button>
      </p>
      {isOpen && <LineDetails state={state} which={which} line={line} />}
    </fieldset>
  );
}

/** The part that has the focus, so that it keeps it where the line goes. */
function partOf(target: EventTarget | null): LinePart {
  const part = target instanceof HTMLElement ? target.dataset.part : undefined;
  // Written by the line itself.
  return (part as LinePart | undefined) ?? 'exercise';
}

interface ActProps {
  readonly state: ProgrammeState;
  readonly of: readonly [VersionName, number];
  readonly part: 'up' | 'down' | 'copy' | 'delete';
  readonly word: string;
  readonly label: string;
}

function Act({ state, of, part, word, label }: ActProps) {
  const act = () => {
    if (part === 'copy') state.copy(...of);
    else if (part === 'delete') state.remove(...of);
    else state.move(...of, part === 'up' ? -1 : 1, part);
  };
  return (
    <button type="button" class="inline" id={idOfPart(...of, part)} data-part={part} aria-label={label} onClick={act}>
      {word}
    </button>
  );
}
