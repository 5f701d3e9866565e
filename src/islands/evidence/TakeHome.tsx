/** Downloads of the analysis as it stands. */

import { Trouble } from '../../ui/Trouble.tsx';
import { writeSettings } from '../analysis/settingsAddress.ts';
import type { EvidenceState } from './evidence.state.ts';

const FILES = [
  { ending: '.json', label: 'Analysis as JSON' },
  { ending: '-rows.csv', label: 'Rows used as CSV' },
  { ending: '.R', label: 'Script for R' },
  { ending: '.py', label: 'Script for Python' },
  { ending: '.ipynb', label: 'Notebook for Python' },
] as const;

export function TakeHome({ state }: { readonly state: EvidenceState }) {
  const { bands, settings } = state.fitting.analysis.value;
  const [band] = Object.keys(bands);
  return (
    <section class="panel">
      <h2>Take it home</h2>
      <p>
        The scripts hold the rows, fit them again with the likelihood written out (base R; numpy and scipy) and print
        their numbers, the target too, beside the site's. The notebook explains the same steps one by one.
      </p>
      <div class="buttons">
        {FILES.map(({ ending, label }) => (
          <button key={ending} type="button" onClick={() => state.download(ending)}>
            {label}
          </button>
        ))}
      </div>
      <Trouble what="The file could not be made" reason={state.fileProblem.value} />
      <p>
        <a href={`../figures/live/${writeSettings(settings)}#growth-${band}`}>Make this a figure</a>: any figure of
        these settings at an address of its own, with its files.
      </p>
    </section>
  );
}
