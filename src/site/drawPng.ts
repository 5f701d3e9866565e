/** A figure's SVG file as PNG, at build time, with a face of the project's own so that every machine draws the same. */
import { createRequire } from 'node:module';
import { Resvg } from '@resvg/resvg-js';

/** Faces that have Latin, Greek and Cyrillic letters and the signs of the figures; regular and bold. */
const FACES = ['DejaVuSansCondensed.ttf', 'DejaVuSansCondensed-Bold.ttf'] as const;
const { resolve } = createRequire(import.meta.url);
const fontFiles = FACES.map((face) => resolve(`dejavu-fonts-ttf/ttf/${face}`));

/** @param scale pixels of the picture for each of the file */
export function drawPng(svg: string, scale: 1 | 2): Buffer {
  const family = 'DejaVu Sans';
  return new Resvg(svg, {
    fitTo: { mode: 'zoom', value: scale },
    font: { loadSystemFonts: false, fontFiles, defaultFontFamily: family, sansSerifFamily: family },
  })
    .render()
    .asPng();
}
