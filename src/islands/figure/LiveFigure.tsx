/** Any figure with a reader's own settings and table, drawn here, with its files. */
import { useMemo, useState } from 'preact/hooks';
import { type CataloguedFigure, LISTED_FIGURES } from '../../figures/catalogue.ts';
import { stateSettings } from '../../figures/settingsWords.ts';
import { useConnection, useTable } from '../../ownTable/useTable.ts';
import { Facts } from '../../ui/Facts.tsx';
import { FigureView } from '../../ui/FigureView.tsx';
import { reasonOf } from '../../ui/reasonOf.ts';
import { Trouble } from '../../ui/Trouble.tsx';
import { writeSettings } from '../analysis/settingsAddress.ts';
import { LIVE_FILES, saveFigure } from './downloads.ts';
import { createLiveFigure, type LiveFigureState } from './liveFigure.state.ts';

/** @param table address of the site's table */
export function LiveFigure({ table }: { readonly table: string }) {
  const { address, isKnown } = useTable(table);
  const state = useMemo(() => createLiveFigure(address), [address]);
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
      </div>
      {made && <Made state={state} made={made} />}
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

function Made({ state, made }: { readonly state: LiveFigureState; readonly made: CataloguedFigure }) {
  const [problem, setProblem] = useState<string | null>(null);
  const source = state.source.value;
  if (!source) return null;
  const { dataVersion, demonstration } = source;
  const save = (ending: (typeof LIVE_FILES)[number]['ending']) => {
    setProblem(null);
    saveFigure(made, ending, state.contextOf(source)).catch((error: unknown) => setProblem(reasonOf(error)));
  };
  return (
    <>
      <div class="alone">
        <FigureView figure={made.figure} />
      </div>
      <div class="buttons">
        {LIVE_FILES.map(({ ending, label }) => (
          <button key={ending} type="button" onClick={() => save(ending)}>
            {label}
          </button>
        ))}
      </div>
      {problem !== null && (
        <p class="problem" role="alert">
          The file could not be made: {problem}
        </p>
      )}
      <h2>What is shown, and from what</h2>
      <p>{made.shown}</p>
      <p>
        To cite it, give the address of this page, which holds the figure and the settings, and the version of the
        table: <code>{dataVersion}</code>
        {demonstration && ' (invented for demonstration)'}.
      </p>
      <Facts class="facts apart" facts={stateSettings(state.settings.value)} />
      <p>
        <a href={`../../evidence/${writeSettings(state.settings.value)}`}>Change the settings on Evidence</a>
      </p>
    </>
  );
}
