/** The way to the lifters: their part of the page is loaded when it is wanted, or where this browser keeps some. */
import { useEffect, useState } from 'preact/hooks';
import { reasonOf } from '../../../ui/reasonOf.ts';
import { Trouble } from '../../../ui/Trouble.tsx';
import type { ProgrammeState } from '../programme.state.ts';
import { hasKeptLifters } from './keptMark.ts';

interface Props {
  readonly state: ProgrammeState;
  readonly isInvented: boolean;
}

type Room = typeof import('./Lifters.tsx').Lifters;

export function LiftersDoor({ state, isInvented }: Props) {
  const [room, setRoom] = useState<{ readonly Lifters: Room } | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  /** @param goTo id of what takes the focus; null where nobody has asked */
  const open = async (goTo: string | null) => {
    try {
      setRoom(await import('./Lifters.tsx'));
      setProblem(null);
      if (goTo !== null) state.focusOn(goTo);
    } catch (error) {
      setProblem(reasonOf(error));
    }
  };
  const asked = state.liftersAsked.value;
  useEffect(() => {
    if (asked || hasKeptLifters()) void open(asked && 'lifters');
  }, [asked]);
  if (room) return <room.Lifters programme={state} isInvented={isInvented} />;
  return (
    <div class="entry lifters">
      <p class="buttons">
        <button type="button" onClick={state.askForLifters}>
          Add lifters, for loads in kilograms or pounds and sheets for the gym
        </button>
      </p>
      <div role="status">
        <Trouble what="The lifters’ part of the page could not be loaded" reason={problem} />
      </div>
    </div>
  );
}
