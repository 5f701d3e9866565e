/** The button behind which a version is sent to an athlete; what is behind it comes with the first press. */
import type { FunctionComponent } from 'preact';
import { useState } from 'preact/hooks';
import { reasonOf } from '../../ui/reasonOf.ts';
import { Trouble } from '../../ui/Trouble.tsx';
import type { VersionName } from './editing.state.ts';
import type { ProgrammeState } from './programme.state.ts';

interface Props {
  readonly state: ProgrammeState;
  readonly which: VersionName;
  readonly name: string;
  readonly numberOf: (line: number) => number;
}

type Room = FunctionComponent<Omit<Props, 'name'> & { readonly onClose: () => void }>;

export function SharingDoor({ state, which, name, numberOf }: Props) {
  const [room, setRoom] = useState<{ readonly Room: Room } | null>(null);
  const [isOpen, setOpen] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const id = `share-${which}`;
  const open = async () => {
    setOpen(true);
    try {
      const { Sharing } = await import('./Sharing.tsx');
      setRoom({ Room: Sharing });
      setProblem(null);
      state.focusOn(`sharing-${which}`);
    } catch (error) {
      setOpen(false);
      setProblem(reasonOf(error));
    }
  };
  const close = () => {
    setOpen(false);
    state.focusOn(id);
  };
  return (
    <div class="entry">
      <p class="buttons">
        <button type="button" id={id} aria-expanded={isOpen} onClick={() => void open()}>
          Send {name.toLowerCase()} to an athlete
        </button>
      </p>
      <div role="status">
        <Trouble what="The message could not be loaded" reason={problem} />
      </div>
      {isOpen && room && <room.Room state={state} which={which} numberOf={numberOf} onClose={close} />}
    </div>
  );
}
