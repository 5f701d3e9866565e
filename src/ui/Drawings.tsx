/** A figure drawn in the browser for wide and for narrow frames, as the build draws it; the style sheet shows one of them. */
import * as Plot from '@observablehq/plot';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { NARROW_DRAWING, WIDE_DRAWING } from '../figures/drawingWidths.ts';
import type { Figure } from '../figures/figure.ts';
import { makePlain } from './plainSvg.ts';

export function Drawings({ figure }: { readonly figure: Figure }) {
  const [wide, narrow] = [useDrawing(figure, WIDE_DRAWING), useDrawing(figure, NARROW_DRAWING)];
  return (
    <>
      <div class="drawn wide-drawing" ref={wide} />
      <div class="drawn narrow-drawing" ref={narrow} />
    </>
  );
}

function useDrawing({ plot, alternative }: Figure, width: number) {
  const frame = useRef<HTMLDivElement>(null);
  // Before the page is painted: a figure that came after its caption would push it down.
  useLayoutEffect(() => {
    const svg = Plot.plot({ ...plot, width, ariaLabel: null });
    makePlain(svg, alternative);
    frame.current?.replaceChildren(svg);
  }, [plot, alternative, width]);
  return frame;
}
