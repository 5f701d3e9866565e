/** A figure drawn in the browser: the same options that the build draws. */
import * as Plot from '@observablehq/plot';
import type { ComponentProps } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { FigureFrame } from './FigureFrame.tsx';
import { takeTurn } from './inTurn.ts';
import { makePlain } from './plainSvg.ts';

interface Props extends Omit<ComponentProps<typeof FigureFrame>, 'frame'> {
  /** True where its children are this very figure, as the build drew it: it is not drawn again. */
  readonly isDrawn?: boolean;
}

/** Its children are the same figure as the build drew it, shown until this browser draws. */
export function FigureView({ figure, isDrawn = false, children, ...rest }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  // The library's own size where a figure names none.
  const { width = 640, height = 400 } = figure.plot;
  // One and the same for as long as the figure stands here: what is drawn takes its place behind the library's back.
  const first = useRef(children ?? <svg viewBox={`0 0 ${width} ${height}`} aria-busy="true" aria-hidden="true" />);
  /** True once this browser has drawn here: what stands then is no longer the build's. */
  const hasDrawn = useRef(false);
  // A drawing takes some 10 ms, so each has a task of its own; until then its place is kept, or the one before stays.
  useLayoutEffect(() => {
    if (isDrawn && !hasDrawn.current && frame.current?.querySelector('svg[role]')) return;
    return takeTurn(() => {
      hasDrawn.current = true;
      const svg = Plot.plot({ ...figure.plot, ariaLabel: null });
      makePlain(svg, figure.alternative);
      frame.current?.replaceChildren(svg);
    });
  }, [figure, isDrawn]);
  return (
    <FigureFrame figure={figure} frame={frame} {...rest}>
      {first.current}
    </FigureFrame>
  );
}
