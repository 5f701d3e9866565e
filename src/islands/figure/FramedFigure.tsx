/** A figure with somebody's settings in a frame of another page: always of the site's table, never of a reader's own. */
import { useMemo } from 'preact/hooks';
import { PICTURE_NOTICE } from '../../figures/figureFiles.ts';
import { useConnection } from '../../ownTable/useTable.ts';
import { Drawings } from '../../ui/Drawings.tsx';
import { SITE_NAME } from '../../ui/siteName.ts';
import { Trouble } from '../../ui/Trouble.tsx';
import { CitedThen } from './CitedThen.tsx';
import { createLiveFigure } from './liveFigure.state.ts';

/** @param table address of the site's table */
export function FramedFigure({ table }: { readonly table: string }) {
  const state = useMemo(() => createLiveFigure({ inUse: table, site: table }), [table]);
  useConnection(state, true);
  const made = state.catalogue.value?.figures[0];
  const missing = state.catalogue.value?.missing[0];
  const source = state.source.value;
  return (
    <div aria-busy={state.pending.value}>
      {state.notice.value !== null && <p class="problem">{state.notice.value}</p>}
      <Trouble what="There is no figure" reason={state.problem.value} onRetry={state.retry} />
      {state.isElsewhere.value && <p>This figure is of a table that never left the browser it was opened in.</p>}
      {state.pending.value && <p>Being worked out …</p>}
      {missing && <p>There is no such figure: {missing.reason}.</p>}
      {made && source && (
        <figure class="figure">
          <h1 class="figure-title">{made.figure.title}</h1>
          <Drawings figure={made.figure} />
          <figcaption>
            {made.figure.caption} {source.demonstration && <strong>{PICTURE_NOTICE}</strong>}{' '}
            <a href={`../${location.search}${location.hash}`} target="_blank" rel="noopener">
              {SITE_NAME}, data version {source.dataVersion}
            </a>
          </figcaption>
        </figure>
      )}
      <CitedThen state={state} />
    </div>
  );
}
