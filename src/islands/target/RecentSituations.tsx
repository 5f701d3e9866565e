/** The situations asked about last in this browser, each a link to its address. */
import type { Exercise } from '../../evidence/exercises.ts';
import type { Recent } from './recent.state.ts';
import { openSituation, readRecent, tellSituation } from './recentSituations.ts';
import { type Choices, writeChoices } from './situationAddress.ts';

interface Props {
  readonly recent: Recent;
  /** The present situation, which needs no link. */
  readonly choices: Choices;
  readonly exercises: readonly Exercise[];
}

export function RecentSituations({ recent, choices, exercises }: Props) {
  const names = exercises.map(({ name }) => name);
  const kept = readRecent(recent.text.value, names);
  const present = writeChoices(choices);
  const others = kept.filter((query) => query !== present);
  if (kept.length === 0) return null;
  return (
    <section class="recent" aria-labelledby="recent">
      <h2 id="recent">Recent situations</h2>
      <p class="small">Kept in this browser only.</p>
      {others.length > 0 && (
        <ul>
          {others.map((query) => {
            const situation = openSituation(query, names);
            return (
              situation && (
                <li key={query}>
                  <a href={query}>{tellSituation(situation)}</a>
                </li>
              )
            );
          })}
        </ul>
      )}
      <p class="buttons">
        <button type="button" onClick={recent.forget}>
          Forget them
        </button>
      </p>
    </section>
  );
}
