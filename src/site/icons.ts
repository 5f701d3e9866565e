/** The site's icon as pictures, for places that take no SVG. */
import { Resvg } from '@resvg/resvg-js';
import { readSource } from './sources.ts';

const favicon = readSource('src/assets/public/favicon.svg', 'icon of the site');

/** Icons of the web app manifest: `any` is the icon as it is; of a `maskable` one systems cut off what lies outside a circle. */
export const ICONS = [
  { name: 'icon-192', size: 192, purpose: 'any' },
  { name: 'icon-512', size: 512, purpose: 'any' },
  { name: 'maskable-512', size: 512, purpose: 'maskable' },
] as const;

/** Part of a maskable icon's width that is never cut off: a circle of this diameter (Web Application Manifest, W3C, “safe zone”). */
const SAFE = 0.8;

/** PNG of an icon, `size` pixels wide and high. */
export function drawIcon({ size, purpose }: (typeof ICONS)[number]): Buffer {
  const svg = purpose === 'any' ? favicon : fillSquare(favicon);
  return new Resvg(svg, { fitTo: { mode: 'width', value: size }, font: { loadSystemFonts: false } }).render().asPng();
}

/** The icon within the safe part of a square of its own ground. */
function fillSquare(svg: string): string {
  const [, ground] = /<rect[^>]* fill="([^"]+)"/u.exec(svg) ?? [];
  const [, side] = /viewBox="0 0 (\d+) \1"/u.exec(svg) ?? [];
  if (!ground || !side) throw new Error('favicon.svg: expected a square with a filled rectangle as its ground');
  const margin = (100 * (1 - SAFE)) / 2;
  const inner = svg.replace('<svg ', `<svg x="${margin}" y="${margin}" width="${100 * SAFE}" height="${100 * SAFE}" `);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100"><rect width="100" height="100" fill="${ground}"/>${inner}</svg>`;
}
