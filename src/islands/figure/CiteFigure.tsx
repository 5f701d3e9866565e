/** References of a figure with a reader's settings in five forms, and its frame; or why there are none. */
import { useState } from 'preact/hooks';
import type { Release } from '../../figures/citing/figureItem.ts';
import { UNKNOWN_VERSION } from '../../ownTable/shownVersion.ts';
import { CopyText } from '../../ui/CopyText.tsx';
import { copyElement } from '../../ui/copyElement.ts';
import { SITE_NAME } from '../../ui/siteName.ts';
import type { FigureSource } from '../analysis/figureSource.ts';
import { addressOf, frameOf, referenceOf } from './citation.ts';
import { markOf } from './citedAddress.ts';

interface Props {
  readonly cited: Parameters<typeof addressOf>[0];
  readonly release: Release;
}

export function CiteFigure({ cited, release }: Props) {
  const [said, setSaid] = useState('');
  const copy = (id: string) => void copyElement(id).then(setSaid);
  const isOfSite = markOf(cited.settings) === null;
  const { apa, vancouver, bibtex, ris, cslJson } = referenceOf(cited, release);
  return (
    <>
      <h2>Reference</h2>
      <p>
        {isOfSite
          ? 'These are the site’s own settings, so the address in it is that of the site’s figure, which is drawn anew when the table changes. The version of the table stands in the reference.'
          : 'The address in it holds the figure, the settings, the version of the table and what was found. Whoever opens it sees this figure, and is told if the table has changed since.'}
      </p>
      <p class="small unseen" id="copy-status" role="status">
        {said}
      </p>
      <CopyText id="address" name="Address" text={addressOf(cited)} onCopy={copy} />
      <CopyText id="apa" name="APA" text={apa} onCopy={copy} />
      <CopyText id="vancouver" name="Vancouver" text={vancouver} onCopy={copy} />
      <CopyText folded id="bibtex" name="BibTeX" text={bibtex.trim()} onCopy={copy} />
      <CopyText folded id="ris" name="RIS" text={ris.replaceAll('\r\n', '\n').trim()} onCopy={copy} />
      <CopyText folded id="csl" name="CSL-JSON" text={cslJson.trim()} onCopy={copy} />
      <h2>In another page</h2>
      <p>
        The frame draws the figure in the browser of whoever reads that page, follows light and dark mode and is as high
        as it needs to be. This site is made of files alone and cannot answer for every choice of settings, so pages
        that ask by oEmbed get the <a href="../">figures of the site’s own settings</a>; for this one, paste the frame.
      </p>
      <CopyText id="frame" name="Frame" text={frameOf(cited)} onCopy={copy} />
    </>
  );
}

/** Instead of references, of a figure that no address can show. */
export function CiteOwnTable({ source }: { readonly source: FigureSource }) {
  return (
    <>
      <h2>To cite it</h2>
      <p>
        Your table never leaves this browser, so no address shows this figure to others, and it is not the site’s.
        Publish your table with the figure’s files, and cite those. The files say that it was drawn with {SITE_NAME}{' '}
        from a table of your own
        {source.dataVersion === UNKNOWN_VERSION ? (
          '. They name no version of it: this page did not come over a safe connection (https), and browsers work one out on no other'
        ) : (
          <>
            , version <code>{source.dataVersion}</code>: the start of the SHA-256 of its file
          </>
        )}
        .
      </p>
    </>
  );
}
