/**
 * The evidence map, shaded by what one more study would do, with what the shades mean and a slider for its people. The
 * build draws the first one; without JavaScript it stands as it is.
 */
import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useState } from 'preact/hooks';
import { evidenceMap } from '../../figures/evidenceMap.ts';
import { gainMap } from '../../figures/gainMap.ts';
import { listLegend, stateGains, stateUnsaid } from '../../figures/gainWords.ts';
import type { EvidenceMap } from '../../model/evidenceMap.ts';
import { ASKED_PEOPLE } from '../../model/plan/usualPeople.ts';
import type { Settings } from '../../model/settings.ts';
import { useConnection } from '../../ownTable/useTable.ts';
import { FigureView } from '../../ui/FigureView.tsx';
import { Slider } from '../../ui/Slider.tsx';
import { Trouble } from '../../ui/Trouble.tsx';
import type { GainsView } from '../analysis/gainsView.ts';
import { GainBasis, GainLegend } from './GainLegend.tsx';
import { createGains, type GainsState } from './gains.state.ts';

interface Props {
  /** Beginning of the ids, since the site's map stays on the page below a reader's own. */
  readonly id: string;
  readonly map: EvidenceMap;
  /** Address of the table that is read. */
  readonly table: string;
  readonly settings: Settings;
  /** As the build made it; null where it is still to be made. */
  readonly first: GainsView | null;
  /** Address of the words on how it is worked out. */
  readonly methods: string;
  /** Address of the page where a study is planned. */
  readonly planPage: string;
  /** The picture as the build drew it. */
  readonly children?: ComponentChildren;
}

/** The figure of a view, as the build draws it too. */
export function figureOfGains(map: EvidenceMap, view: GainsView | null) {
  return view && stateUnsaid(view.tiles) === null ? gainMap(map, view.people, view.tiles) : evidenceMap(map);
}

export function GainMap({ id, map, table, settings, first, methods, planPage, children }: Props) {
  const state = useMemo(() => createGains({ table, settings, first }), [table, settings, first]);
  useConnection(state, true);
  const view = state.view.value;
  const isShaded = state.isShaded.value;
  const figure = useMemo(() => figureOfGains(map, isShaded ? view : null), [map, view, isShaded]);
  const unsaid = view && stateUnsaid(view.tiles);
  return (
    <div class="gain-map" aria-busy={state.isBusy.value}>
      <div class="map">
        <FigureView figure={figure}>{children}</FigureView>
      </div>
      <section class="gain-about" aria-labelledby={`${id}-title`}>
        <h3 id={`${id}-title`}>What one more study would narrow</h3>
        {unsaid !== null && <p>{unsaid}</p>}
        {unsaid === null && view && isShaded && <GainLegend id={id} entries={listLegend(view.tiles)} />}
        {unsaid === null && <Controls id={id} state={state} />}
        <Trouble what="This could not be worked out" reason={state.problem.value} onRetry={state.retry} />
        {view && unsaid === null && <GainBasis view={view} methods={methods} planPage={planPage} />}
      </section>
    </div>
  );
}

function Controls({ id, state }: { readonly id: string; readonly state: GainsState }) {
  const { view, people, isShaded, isBusy, change } = state;
  // What cannot be moved without a script says so.
  const [isReady, setReady] = useState(false);
  useEffect(() => setReady(true), []);
  const [shown, wanted] = [view.value, people.value];
  const { median = null } = shown?.usual ?? {};
  return (
    <fieldset class="controls" aria-labelledby={`${id}-title`} disabled={!isReady || wanted === null}>
      <Slider
        id={`${id}-people`}
        label="People of one more study"
        value={wanted ?? ASKED_PEOPLE.from}
        min={ASKED_PEOPLE.from}
        max={ASKED_PEOPLE.to}
        step={ASKED_PEOPLE.step}
        unit="people"
        help={`Half of them train to failure; the other half, other people, leave the reserve at which a cell begins.${median === null ? '' : ` The middle study here has ${Math.round(median)}.`}`}
        onChange={change}
      />
      <label class="choice plain">
        <input
          type="checkbox"
          checked={isShaded.value}
          onChange={(event) => {
            isShaded.value = event.currentTarget.checked;
          }}
        />{' '}
        Shade the map by it
      </label>
      <p class="small" role="status">
        {isBusy.value
          ? `Being worked out${wanted === null ? '' : ` for ${wanted} people`} …`
          : shown && stateGains(shown.people, shown.tiles)}
      </p>
    </fieldset>
  );
}
