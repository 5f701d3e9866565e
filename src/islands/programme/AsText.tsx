/** A version as text: the same lines, to be read, copied and written. */
import { useState } from 'preact/hooks';
import { ProblemList } from '../../ui/ProblemList.tsx';
import type { VersionName } from './editing.state.ts';
import type { ProgrammeState } from './programme.state.ts';

interface Props {
  readonly state: ProgrammeState;
  readonly which: VersionName;
  readonly name: string;
}

export function ProgrammeText({ state, which, name }: Props) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details class="entry" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{name} as text</summary>
      {isOpen && <Text state={state} which={which} name={name} />}
    </details>
  );
}

function Text({ state, which, name }: Props) {
  const { text, problems } = state.textOf(which);
  return (
    <div class="control">
      <label for={`text-${which}`}>{name} as text</label>
      <textarea
        id={`text-${which}`}
        rows={13}
        spellcheck={false}
        autocomplete="off"
        wrap="off"
        value={text}
        onInput={(event) => state.setText(which, event.currentTarget.value)}
        aria-describedby="columns-help"
      />
      {problems.length > 0 && <ProblemList heading="Of this text" problems={problems} />}
    </div>
  );
}
