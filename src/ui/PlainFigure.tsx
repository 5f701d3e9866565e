/** A figure drawn in the browser for the width it has, with its title and what is said below it. */
import * as Plot from '@observablehq/plot';
import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Figure } from '../figures/figure.ts';
import { makePlain } from './plainSvg.ts';

/** Widths at which the build lays out its drawings, pixels; the style sheet shows one of them. */
const WIDTHS = { wide: 640, narrow: 340 } as const;

interface Props {
  readonly figure: Figure;
  readonly children: ComponentChildren;
}

export function PlainFigure({ figure, children }: Props) {
  const [wide, narrow] = [useDrawing(figure, WIDTHS.wide), useDrawing(figure, WIDTHS.narrow)];
  return (
    <figure class="figure">
      <h1 class="figure-title">{figure.title}</h1>
      <div class="drawn wide-drawing" ref={wide} />
      <div class="drawn narrow-drawing" ref={narrow} />
      <figcaption>{children}</figcaption>
    </figure>
  );
}

function useDrawing({ plot, alternative }: Figure, width: number) {
  const frame = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const svg = Plot.plot({ ...plot, width, ariaLabel: null });
    makePlain(svg, alternative);
    frame.current?.replaceChildren(svg);
  }, [plot, alternative, width]);
  return frame;
}
