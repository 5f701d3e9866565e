/** The lifters of a programme: who they are, their own loads, and their sheets for the gym. Loaded when it is wanted. */
import { useEffect, useMemo } from 'preact/hooks';
import { ROUNDING_RULE, STEP_RULE } from '../../../practice/lifters/step.ts';
// By its address: a style sheet that is imported would be part of the page as it is loaded at first.
import styles from '../../../styles/lifters.css?url';
import type { ProgrammeState } from '../programme.state.ts';
import { takeStep } from '../steps.ts';
import { LifterList } from './LifterList.tsx';
import { LiftersBar } from './LiftersBar.tsx';
import { LiftersOpening } from './LiftersOpening.tsx';
import { createLifters } from './lifters.state.ts';
import { createOpening } from './opening.state.ts';
import { Sheets } from './Sheets.tsx';
import { createSheets } from './sheets.state.ts';

interface Props {
  readonly programme: ProgrammeState;
  /** True where the studies behind what is advised are. */
  readonly isInvented: boolean;
}

export function Lifters({ programme, isInvented }: Props) {
  const { state, sheets, opening } = useMemo(() => {
    const made = createLifters(programme);
    return { state: made, sheets: createSheets(programme, made), opening: createOpening(programme, made) };
  }, [programme]);
  useEffect(() => {
    const disconnect = state.connect();
    const end = sheets.connect();
    return () => {
      end();
      disconnect();
    };
  }, [state, sheets]);
  const press = (event: KeyboardEvent) => {
    if (!(event.target instanceof Element && event.target.closest('.pasting'))) takeStep(event, state);
  };
  return (
    <>
      <link rel="stylesheet" href={styles} />
      <section class="entry lifters" aria-labelledby="lifters" onKeyDown={press}>
        <h2 id="lifters" tabIndex={-1}>
          Lifters and their loads
        </h2>
        <p>
          Optional: who trains by this programme, and what they can lift once. Each gets a sheet for the gym with the
          loads in kilograms or pounds. {ROUNDING_RULE}
        </p>
        <p class="small">
          {STEP_RULE} Names and loads stay in this browser: nothing is sent, and a saved programme does not hold them.
          Undo of the lines above does not touch them; they have their own here.
        </p>
        <LiftersBar state={state} opening={opening} />
        <LiftersOpening opening={opening} />
        <LifterList programme={programme} state={state} sheets={sheets} />
      </section>
      <Sheets state={state} sheets={sheets} isInvented={isInvented} />
    </>
  );
}
