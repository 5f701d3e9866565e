/**
 * Draws a figure at build time: as SVG text, Plot on a document without a browser, and as PNG, with a face of the
 * project's own so that every machine draws the same.
 */
import { createRequire } from 'node:module';
import type { PlotOptions } from '@observablehq/plot';
import * as Plot from '@observablehq/plot';
import { Resvg } from '@resvg/resvg-js';
import { parseHTML } from 'linkedom';
import type { Figure } from '../figures/figure.ts';
import { makePlain, stripNames } from '../ui/plainSvg.ts';

/** Faces that have Latin, Greek and Cyrillic letters and the signs of the figures; regular and bold. */
const FACES = ['DejaVuSansCondensed.ttf', 'DejaVuSansCondensed-Bold.ttf'] as const;
const { resolve } = createRequire(import.meta.url);
const fontFiles = FACES.map((face) => resolve(`dejavu-fonts-ttf/ttf/${face}`));
/** The same faces for other files with words in them. */
export const FONT_FILES = { regular: fontFiles[0], bold: fontFiles[1] } as const;

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

/**
 * The picture of an SVG file.
 *
 * @param scale pixels of the picture for each of the file
 */
export function drawPng(svg: string, scale: 1 | 2): Buffer {
  const family = 'DejaVu Sans';
  return new Resvg(svg, {
    fitTo: { mode: 'zoom', value: scale },
    font: { loadSystemFonts: false, fontFiles, defaultFontFamily: family, sansSerifFamily: family },
  })
    .render()
    .asPng();
}

/** @throws where the figure takes colours from a scheme: browsers have none, and would not draw it (colourSchemes.js) */
function draw(plot: PlotOptions) {
  const { document } = parseHTML('<!doctype html><html><body></body></html>');
  const svg = Plot.plot({ ...plot, document, ariaLabel: null });
  const { type = 'identity' } = svg.scale('color') ?? {};
  if (type !== 'identity') throw new Error(`invalid figure; its colours are not named but of a ${type} scale`);
  return svg;
}
