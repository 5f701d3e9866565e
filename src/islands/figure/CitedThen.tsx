/** What an address that cites a figure says of then, beside what is now. */
import { headlineOf, stateFound } from '../../figures/citing/headline.ts';
import { isHashed } from '../../ownTable/citedVersion.ts';
import { changedSince } from './citedAddress.ts';
import type { LiveFigureState } from './liveFigure.state.ts';

export function CitedThen({ state }: { readonly state: LiveFigureState }) {
  const pin = state.pin.value;
  const source = state.source.value;
  if (!pin || pin.own || !source) return null;
  const { metric } = state.settings.value;
  const slug = state.slug.value;
  const now = headlineOf(slug, source);
  const since = changedSince(pin, source.dataVersion, now);
  if (since === null)
    return (
      <p class="small" data-cited="same">
        The table is still the one that this address cites, version <code>{pin.version}</code>.
      </p>
    );
  return (
    <div class="panel" data-cited="changed">
      {since === 'finding' ? (
        <p>
          <strong>What is found is no longer what this address cites.</strong> The table is still version{' '}
          <code>{pin.version}</code>, so the site now works it out otherwise, or the address is not as it was given.
        </p>
      ) : (
        <p>
          <strong>The table has changed since this was cited.</strong> It was version <code>{pin.version}</code>; what
          is shown here is of version <code>{source.dataVersion}</code>.
        </p>
      )}
      {pin.found && (
        <>
          <p>When this was cited, as the address says: {stateFound(slug, pin.found, metric)}.</p>
          <p>Now: {stateFound(slug, now, metric)}.</p>
        </>
      )}
    </div>
  );
}

/** In place of a figure whose table is not in this browser. */
export function ElsewhereFigure({ state }: { readonly state: LiveFigureState }) {
  const pin = state.pin.value;
  if (!pin) return null;
  return (
    <div class="panel" data-elsewhere>
      <p>
        This address was made while a table of somebody’s own was read,{' '}
        {isHashed(pin) ? (
          <>
            version <code>{pin.version}</code>
          </>
        ) : (
          'of which no version is known'
        )}
        . Such a table never leaves the browser that it was opened in, so its figure cannot be shown here. If it was
        yours, <a href="../../table/">open it again</a> and come back.
      </p>
      <button type="button" onClick={state.drawFromSite}>
        Draw the site’s figure with these settings
      </button>
    </div>
  );
}
