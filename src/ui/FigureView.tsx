/** A figure drawn in the browser: the same options that the build draws. */
import * as Plot from '@observablehq/plot';
import type { ComponentProps } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { FigureFrame } from './FigureFrame.tsx';
import { makePlain } from './plainSvg.ts';

/** Its children are the same figure as the build drew it, shown until this browser draws. */
export function FigureView({ figure, ...rest }: Omit<ComponentProps<typeof FigureFrame>, 'frame'>) {
  const frame = useRef<HTMLDivElement>(null);
  // Before the page is painted: a figure that came after its caption would push it down.
  useLayoutEffect(() => {
    const svg = Plot.plot({ ...figure.plot, ariaLabel: null });
    makePlain(svg, figure.alternative);
    frame.current?.replaceChildren(svg);
  }, [figure]);
  return <FigureFrame figure={figure} frame={frame} {...rest} />;
}
