/** Draws a figure to SVG text at build time: Plot on a document without a browser. */
import type { PlotOptions } from '@observablehq/plot';
import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';
import type { Figure } from '../figures/figure.ts';
import { makePlain, stripNames } from '../ui/plainSvg.ts';

/** @param width pixels, where not the figure's own; the picture is laid out anew for it */
export function drawPlot({ plot, alternative }: Pick<Figure, 'plot' | 'alternative'>, width?: number): string {
  const svg = draw(width === undefined ? plot : { ...plot, width });
  makePlain(svg, alternative);
  return svg.outerHTML;
}

/** The picture with Plot's own styles and without words of its own, for a file that stands alone. */
export function drawBare(plot: PlotOptions): string {
  const svg = draw(plot);
  stripNames(svg);
  svg.removeAttribute('width');
  svg.removeAttribute('height');
  return svg.outerHTML;
}

function draw(plot: PlotOptions) {
  const { document } = parseHTML('<!doctype html><html><body></body></html>');
  return Plot.plot({ ...plot, document, ariaLabel: null });
}
