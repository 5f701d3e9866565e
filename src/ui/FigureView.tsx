/** A figure drawn in the browser: the same options that the build draws. */
import * as Plot from '@observablehq/plot';
import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Figure } from '../figures/figure.ts';
import { FigureTable } from './FigureTable.tsx';
import { makePlain } from './plainSvg.ts';
import { Scroll } from './Scroll.tsx';

interface Props {
  readonly figure: Figure;
  /** The same figure as the build drew it, shown until this browser draws. */
  readonly drawn?: ComponentChildren;
  /** Level of the title among the page's headings. */
  readonly heading?: 'h2' | 'h3' | 'h4';
}

export function FigureView({ figure, drawn, heading: Title = 'h2' }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  // Before the page is painted: a figure that came after its caption would push it down.
  useLayoutEffect(() => {
    const svg = Plot.plot({ ...figure.plot, ariaLabel: null });
    makePlain(svg, figure.alternative);
    frame.current?.replaceChildren(svg);
  }, [figure]);
  return (
    <figure class="figure">
      <Title class="figure-title">{figure.title}</Title>
      <div ref={frame}>{drawn}</div>
      <figcaption>{figure.caption}</figcaption>
      <details>
        <summary>The numbers of this figure</summary>
        <Scroll label={`Numbers of: ${figure.title}`}>
          <FigureTable table={figure.table} />
        </Scroll>
      </details>
    </figure>
  );
}
