/**
 * A drawn figure as an SVG file that stands alone: title above, picture, source and notice below, all
 * colours and faces written out, no style sheet, no script, nothing fetched. Text to text, so that the
 * build and a browser make the same file.
 */
import type { PlotOptions } from '@observablehq/plot';
import { WIDE_DRAWING } from './drawingWidths.ts';

/** What the style sheet's variables are in light mode and on paper; a file has no style sheet. */
export const FILE_VALUES: Readonly<Record<string, string>> = {
  '--paper': '#fbfaf6',
  '--ink': '#1f2125',
  '--quiet': '#565a61',
  '--light-load': '#9a5b00',
  '--heavy-load': '#104570',
  '--sans': "'Source Sans 3', 'Avenir Next', Avenir, 'Segoe UI', 'Helvetica Neue', Arial, sans-serif",
};

/** Width of the picture in a file, pixels at 1×: the wide drawing of the page. */
export const FILE_WIDTH = WIDE_DRAWING;

/** How a file looks: colours, faces and sizes, in pixels of the drawing. */
export interface FileLook {
  /** What the style sheet's variables are in it. */
  readonly values: Readonly<Record<string, string>>;
  readonly margin: number;
  readonly title: { readonly size: number; readonly line: number };
  readonly foot: { readonly size: number; readonly line: number };
  /** Width on paper, millimetres; null where a pixel of the drawing is one of the screen. */
  readonly paperWidth: number | null;
}

export const SCREEN_LOOK: FileLook = {
  values: FILE_VALUES,
  margin: 16,
  title: { size: 17, line: 23 },
  foot: { size: 12, line: 17 },
  paperWidth: null,
};

/** Mean width of a character in em: wider than in any face of the list, so that lines never run out of the picture. */
const CHARACTER = 0.58;

export interface SvgFileWords {
  readonly title: string;
  /** What the picture shows, in words. */
  readonly alternative: string;
  /** Where it comes from: site, data version, address. */
  readonly source: string;
  /** Said inside the picture where the data are invented. */
  readonly notice: string | null;
}

export interface SvgFile {
  readonly text: string;
  readonly width: number;
  readonly height: number;
}

/**
 * @param drawn one `<svg>` element as Plot draws it, without attributes that hold text
 * @param plot the options it was drawn with, for its size and style
 * @throws where the text is no SVG element, or names a variable that is not known
 */
export function writeSvgFile(
  drawn: string,
  plot: Pick<PlotOptions, 'width' | 'height' | 'style'>,
  { title, alternative, source, notice }: SvgFileWords,
  look: FileLook = SCREEN_LOOK,
): SvgFile {
  const { margin, foot } = look;
  const inside = /^<svg\b[^>]*>([\s\S]*)<\/svg>\s*$/u.exec(drawn)?.[1];
  if (inside === undefined) throw new Error(`invalid drawing; not one SVG element: ${drawn.slice(0, 60)}`);
  const width = (plot.width ?? FILE_WIDTH) + 2 * margin;
  const titleLines = wrap(title, width - 2 * margin, look.title.size);
  const [noticeLines, sourceLines] = [notice ?? '', source].map((text) => wrap(text, width - 2 * margin, foot.size));
  const top = margin + look.title.line * titleLines.length + 8;
  const bottom = top + (plot.height ?? 0) + 12;
  const height = bottom + foot.line * (noticeLines.length + sourceLines.length) + margin / 2;
  const fontSize =
    typeof plot.style === 'object' && plot.style !== null ? String(plot.style.fontSize ?? '14px') : '14px';
  const lines = (texts: readonly string[], from: number, step: number, size: number) =>
    texts.map((text, i) => `<text x="${margin}" y="${from + step * i + size}">${escapeXml(text)}</text>`).join('');
  const text = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" ${sizeOf(width, height, look)} viewBox="0 0 ${width} ${height}" role="img" aria-labelledby="title description" font-family="var(--sans)" fill="currentColor">`,
    `<title id="title">${escapeXml(title)}</title>`,
    `<desc id="description">${escapeXml([notice, alternative].filter(Boolean).join(' '))}</desc>`,
    `<rect width="${width}" height="${height}" fill="var(--paper)"/>`,
    `<g font-size="${look.title.size}" font-weight="600">${lines(titleLines, margin, look.title.line, look.title.size)}</g>`,
    `<g transform="translate(${margin},${top})" font-size="${Number.parseFloat(fontSize)}" text-anchor="middle">${inside.replace(/<style\b[^>]*>[\s\S]*?<\/style>/gu, '')}</g>`,
    `<g font-size="${foot.size}" font-weight="600">${lines(noticeLines, bottom, foot.line, foot.size)}</g>`,
    `<g font-size="${foot.size}" fill="var(--quiet)">${lines(sourceLines, bottom + foot.line * noticeLines.length, foot.line, foot.size)}</g>`,
    '</svg>',
    '',
  ].join('\n');
  return { text: settleTags(text, look.values), width, height };
}

/** In pixels, or as wide on paper as it is meant to be printed. */
function sizeOf(width: number, height: number, { paperWidth }: FileLook): string {
  if (paperWidth === null) return `width="${width}" height="${height}"`;
  return `width="${paperWidth}mm" height="${((paperWidth * height) / width).toFixed(2)}mm"`;
}

/** What stands between the tags is words, whatever they look like, and stays as it is. */
function settleTags(text: string, values: FileLook['values']): string {
  const clips = new Map<string, string>();
  return text.replace(/<[^>]*>/gu, (tag) => roundPlaces(settleIds(writeOutValues(tag, values), clips)));
}

/** Variables and the current colour as they are in the file. */
function writeOutValues(tag: string, values: FileLook['values']): string {
  return tag
    .replace(/var\((--[a-z-]+)\)/gu, (whole, name) => {
      const value = values[name];
      if (value === undefined) throw new Error(`invalid drawing; it uses a variable without a value: ${whole}`);
      return value;
    })
    .replace(/"currentColor"/gu, `"${values['--ink']}"`);
}

/** Plot numbers its clip paths as it draws; numbered from 1 in the file, the same figure is the same file. */
function settleIds(tag: string, seen: Map<string, string>): string {
  return tag.replace(/plot-clip-\d+/gu, (id) => {
    const settled = seen.get(id) ?? `clip-${seen.size + 1}`;
    seen.set(id, settled);
    return settled;
  });
}

/** Places to a thousandth of a pixel: what is beyond differs between machines and is seen on none. */
function roundPlaces(tag: string): string {
  return tag.replace(/ [\w-]+="[^"]*\d\.\d{4}[^"]*"/gu, (attribute) =>
    attribute.replace(/-?\d+\.\d{4,}/gu, (place) => String(Number(Number(place).toFixed(3)))),
  );
}

function wrap(text: string, width: number, size: number): readonly string[] {
  const longest = Math.floor(width / (CHARACTER * size));
  const lines: string[] = [];
  // A word longer than a line, as an address is, is cut.
  const words = text.split(' ').flatMap((word) => word.match(new RegExp(`.{1,${longest}}`, 'gsu')) ?? []);
  for (const word of words) {
    const last = lines.at(-1);
    if (last === undefined || last.length + 1 + word.length > longest) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}

function escapeXml(text: string): string {
  return (
    text
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll('>', '&gt;')
      // Characters that XML 1.0 cannot hold, not even escaped.
      .replace(/[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu, '\u{FFFD}')
  );
}
