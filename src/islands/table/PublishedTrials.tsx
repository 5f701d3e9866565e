/** The published trials that come with the site: opened with one click, like a file of the reader's. */
import { countOf } from '../../numerics/countOf.ts';
import type { YourTableState } from './yourTable.state.ts';

export interface Trials {
  /** Name under which the table is kept. */
  readonly name: string;
  readonly address: string;
  /** Address of their references. */
  readonly references: string;
  readonly rows: number;
  readonly studies: number;
  /** How they were read, and what of them counts for the answer. */
  readonly reading: string;
}

export function PublishedTrials({ trials, state }: { readonly trials: Trials; readonly state: YourTableState }) {
  return (
    <section aria-labelledby="published-trials">
      <h2 id="published-trials">Published trials to begin with</h2>
      <p>
        {countOf(trials.rows, 'result')} of {countOf(trials.studies, 'published trial')} of resistance training, as the
        papers print them: real, and far from a systematic review. {trials.reading}
      </p>
      <p class="buttons">
        <button type="button" onClick={() => void state.opening.openServed(trials.address, trials.name)}>
          Open the published trials
        </button>
        <a href={trials.address} download={trials.name}>
          The table
        </a>
        <a href={trials.references} download="published-studies.csv">
          Their references
        </a>
      </p>
    </section>
  );
}
