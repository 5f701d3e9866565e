/** A figure with its title, its caption and its numbers; the build and the browser each put their picture into it. */
import type { ComponentChildren, RefObject } from 'preact';
import type { Figure } from '../figures/figure.ts';
import { FigureTable } from './FigureTable.tsx';
import { Scroll } from './Scroll.tsx';

interface Props {
  readonly figure: Figure;
  /** The picture. */
  readonly children?: ComponentChildren;
  /** What holds the picture, for who draws it anew. */
  readonly frame?: RefObject<HTMLDivElement>;
  /** Level of the title among the page's headings. */
  readonly heading?: 'h2' | 'h3' | 'h4';
}

export function FigureFrame({ figure, children, frame, heading: Title = 'h2' }: Props) {
  return (
    <figure class={figure.isRinged ? 'figure ringed' : 'figure'}>
      <Title class="figure-title">{figure.title}</Title>
      <div {...(frame ? { ref: frame } : {})}>{children}</div>
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
