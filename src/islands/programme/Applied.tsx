/** What applying the advice changed, line by line with its reason, and what it left. */

import { countOf } from '../../numerics/countOf.ts';
import type { AppliedLine } from './appliedWords.ts';
import type { ProgrammeState } from './programme.state.ts';

export function ProgrammeApplied({ state }: { readonly state: ProgrammeState }) {
  const applied = state.applied.value;
  if (!applied) return null;
  const { moves, left, unchecked, asAdvised } = applied;
  const numbers = new Map(state.draft.value.first.lines.map(({ id }, i) => [id, i + 1]));
  const nameOf = ({ id, name }: AppliedLine) => `Line ${numbers.get(id) ?? 'that is gone'}, ${name}`;
  return (
    <section class="entry applied" aria-labelledby="applied">
      <h2 id="applied" tabIndex={-1}>
        {moves.length === 0
          ? `Nothing was changed${state.draft.value.second ? ' in version two' : ''}`
          : `${countOf(moves.length, 'line')} changed in version two`}
      </h2>
      {asAdvised > 0 && <p>{countOf(asAdvised, 'line is', 'lines are')} as advised already.</p>}
      {moves.length > 0 && (
        <ul>
          {moves.map((move) => (
            <li key={move.id}>
              <strong>{nameOf(move)}:</strong> {move.said}
            </li>
          ))}
        </ul>
      )}
      {left.length + unchecked.length > 0 && (
        <div class="problem">
          <p>
            <strong>Left as written</strong>
          </p>
          <ul>
            {left.map((one) => (
              <li key={one.id}>
                <strong>{nameOf(one)}:</strong> {one.said}
              </li>
            ))}
            {unchecked.length > 0 && (
              <li>
                <strong>
                  {unchecked.length === 1 ? 'Line' : 'Lines'} {unchecked.map((id) => numbers.get(id)).join(', ')}:
                </strong>{' '}
                not checked, since something is missing or wrong there.
              </li>
            )}
          </ul>
        </div>
      )}
      <p class="buttons">
        <button type="button" onClick={state.closeApplied}>
          Close this list
        </button>
      </p>
    </section>
  );
}
