/** What the last move did, undo and redo of moves, all moves to return to, and what the present is compared with. */
import { useEffect } from 'preact/hooks';
import type { EvidenceState } from './evidence.state.ts';
import { stateChanges } from './moveWords.ts';

export function EvidenceMoves({ state }: { readonly state: EvidenceState }) {
  const { moving, comparison } = state;
  const { places, now } = moving.moves.value;
  const isPinned = comparison.pinned.value !== null;
  useUndoKeys(state);
  return (
    <section class="moves" aria-label="Moves">
      <p class="unseen" role="status">
        {comparison.announced.value}
      </p>
      <p class="move-line">
        {comparison.line.value ||
          'Move a control: what stood before stays in the figures, pale and dashed, and what moved is said here.'}
      </p>
      <div class="buttons">
        <button type="button" aria-disabled={now === 0} onClick={moving.undo}>
          Undo
        </button>
        <button type="button" aria-disabled={now === places.length - 1} onClick={moving.redo}>
          Redo
        </button>
        <button type="button" aria-pressed={isPinned} onClick={() => state.pin(!isPinned)}>
          {isPinned ? 'Unpin' : 'Pin this, to compare'}
        </button>
        <label class="choice plain">
          <input
            type="checkbox"
            checked={comparison.showsNewStudy.value}
            onChange={(event) => state.showNewStudy(event.currentTarget.checked)}
          />
          <span>Show where a new study would lie</span>
        </label>
      </div>
      {places.length > 1 && <MoveList state={state} />}
    </section>
  );
}

function MoveList({ state: { moving } }: { readonly state: EvidenceState }) {
  const { places, now } = moving.moves.value;
  return (
    <details>
      <summary>Moves made: {places.length - 1}, kept until this tab is closed</summary>
      <ol class="move-list" start={0}>
        {places.map((place, index) => (
          <li key={index}>
            <button
              type="button"
              class="inline"
              aria-current={index === now ? 'step' : undefined}
              onClick={() => moving.goTo(index)}
            >
              {index === 0 ? 'Where you came in' : stateChanges(places[index - 1], place)}
            </button>
            {index === now && <span class="small"> shown now</span>}
          </li>
        ))}
      </ol>
    </details>
  );
}

/** Undo and redo by their usual keys. */
function useUndoKeys({ moving }: EvidenceState): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.altKey || !(event.ctrlKey || event.metaKey)) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) moving.redo();
      else moving.undo();
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [moving]);
}
