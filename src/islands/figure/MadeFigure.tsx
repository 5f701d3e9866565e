/** A figure that was drawn here, its files, and how it is cited. */
import { useState } from 'preact/hooks';
import type { CataloguedFigure } from '../../figures/catalogue.ts';
import type { Release } from '../../figures/citing/figureItem.ts';
import { groupFiles } from '../../figures/downloads.ts';
import { stateSettings } from '../../figures/settingsWords.ts';
import { UNKNOWN_VERSION } from '../../ownTable/shownVersion.ts';
import { Drawings } from '../../ui/Drawings.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { FigureFrame } from '../../ui/FigureFrame.tsx';
import { reasonOf } from '../../ui/reasonOf.ts';
import { writeSettings } from '../analysis/settingsAddress.ts';
import { CiteFigure, CiteOwnTable } from './CiteFigure.tsx';
import { contextOf, referenceOf } from './citation.ts';
import { LIVE_FILES, REFERENCE_FILES, saveFigure, saveReference } from './downloads.ts';
import type { LiveFigureState } from './liveFigure.state.ts';

interface Props {
  readonly state: LiveFigureState;
  readonly made: CataloguedFigure;
  readonly release: Release;
}

export function MadeFigure({ state, made, release }: Props) {
  const [problem, setProblem] = useState<string | null>(null);
  const source = state.source.value;
  if (!source) return null;
  const isOwn = state.isOwn.value;
  const settings = state.settings.value;
  const cited = { made, source, settings, page: location.origin + location.pathname };
  const context = contextOf(cited, isOwn);
  const save = (file: (typeof LIVE_FILES)[number]) => {
    setProblem(null);
    saveFigure(made, file, context).catch((error: unknown) => setProblem(reasonOf(error)));
  };
  return (
    <>
      <div class="alone">
        <FigureFrame figure={made.figure}>
          <Drawings figure={made.figure} />
        </FigureFrame>
      </div>
      <dl class="downloads" aria-label="Downloads">
        {groupFiles(LIVE_FILES).map(([of, files]) => [
          <dt key={of}>{of}</dt>,
          <dd key={`${of} files`}>
            {files.map((file) => (
              <button key={file.kind} type="button" onClick={() => save(file)}>
                {file.label}
              </button>
            ))}
          </dd>,
        ])}
        {!isOwn && [
          <dt key="reference">{REFERENCE_FILES[0].of}</dt>,
          <dd key="reference files">
            {REFERENCE_FILES.map((file) => (
              <button
                key={file.kind}
                type="button"
                onClick={() => saveReference(made.slug, file, referenceOf(cited, release), context)}
              >
                {file.label}
              </button>
            ))}
          </dd>,
        ]}
      </dl>
      {problem !== null && (
        <p class="problem" role="alert">
          The file could not be made: {problem}
        </p>
      )}
      <h2>What is shown, and from what</h2>
      <p>{made.shown}</p>
      <p>
        {isOwn ? 'From your own table' : 'From the site’s table'}
        {source.dataVersion !== UNKNOWN_VERSION && (
          <>
            , version <code>{source.dataVersion}</code>
          </>
        )}
        {source.demonstration && ' (invented for demonstration)'}.
        {context.mark !== null && (
          <>
            {' '}
            These settings are marked <code>{context.mark}</code> in the names of files.
          </>
        )}
      </p>
      <Facts class="facts apart" facts={stateSettings(settings)} />
      <p>
        <a href={`../../evidence/${writeSettings(settings)}`}>Change the settings on Evidence</a>
      </p>
      {isOwn ? <CiteOwnTable source={source} /> : <CiteFigure cited={cited} release={release} />}
    </>
  );
}
