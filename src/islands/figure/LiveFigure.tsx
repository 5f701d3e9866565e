/** Any figure with a reader's own settings and table, drawn here, with its files and its reference. */
import { useMemo } from 'preact/hooks';
import { LISTED_FIGURES } from '../../figures/catalogue.ts';
import type { Release } from '../../figures/citing/figureItem.ts';
import { useConnection, useTable } from '../../ownTable/useTable.ts';
import { Trouble } from '../../ui/Trouble.tsx';
import { CitedThen, ElsewhereFigure } from './CitedThen.tsx';
import { createLiveFigure, type LiveFigureState } from './liveFigure.state.ts';
import { MadeFigure } from './MadeFigure.tsx';

interface Props {
  /** Address of the site's table. */
  readonly table: string;
  readonly release: Release;
}

export function LiveFigure({ table, release }: Props) {
  const { address, isKnown } = useTable(table);
  const state = useMemo(() => createLiveFigure({ inUse: address, site: table }), [address, table]);
  useConnection(state, isKnown);
  const made = state.catalogue.value?.figures[0];
  const missing = state.catalogue.value?.missing[0];
  return (
    <>
      <div class="control">
        <label for="live-figure">Figure</label>
        <select
          id="live-figure"
          value={state.slug.value}
          onChange={({ currentTarget }) => state.choose(currentTarget.value)}
        >
          {LISTED_FIGURES.map(({ slug, name }) => (
            <option key={slug} id={slug} value={slug}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <div aria-live="polite" aria-busy={state.pending.value}>
        {state.notice.value !== null && <p class="problem">{state.notice.value}</p>}
        <Trouble what="There is no figure" reason={state.problem.value} onRetry={state.retry} />
        {state.pending.value && <Waiting state={state} />}
        {missing && <p>There is no such figure: {missing.reason}.</p>}
        {state.isElsewhere.value && <ElsewhereFigure state={state} />}
        <CitedThen state={state} />
      </div>
      {made && <MadeFigure state={state} made={made} release={release} />}
    </>
  );
}

function Waiting({ state }: { readonly state: LiveFigureState }) {
  const progress = state.sweepProgress.value;
  return (
    <p class="apart">
      Being worked out …{' '}
      {progress && <progress value={progress.done} max={progress.total} aria-label="Combinations worked out" />}
    </p>
  );
}
