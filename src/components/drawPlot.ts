/** Draws a figure to SVG text at build time: Plot on a document without a browser. */
import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';
import type { Figure } from '../figures/figure.ts';

export function drawPlot({ plot, alternative }: Figure): string {
  const { document } = parseHTML('<!doctype html><html><body></body></html>');
  const svg = Plot.plot({ ...plot, document, ariaLabel: null });
  // The picture is one thing with one description; Plot names its parts for pictures that are not.
  for (const part of svg.querySelectorAll('[aria-label]')) part.removeAttribute('aria-label');
  svg.setAttribute('role', 'img');
  svg.setAttribute('aria-label', alternative);
  svg.removeAttribute('width');
  svg.removeAttribute('height');
  return svg.outerHTML;
}
