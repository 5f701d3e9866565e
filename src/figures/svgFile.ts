/**
 * A drawn figure as an SVG file that stands alone: title above, picture, source and notice below, all
 * colours and faces written out, no style sheet, no script, nothing fetched. Text to text, so that the
 * build and a browser make the same file.
 */
import type { PlotOptions } from '@observablehq/plot';

/** What the style sheet's variables are in light mode and on paper; a file has no style sheet. */
export const FILE_VALUES: Readonly<Record<string, string>> = {
  '--paper': '#fbfaf6',
  '--ink': '#1f2125',
  '--quiet': '#565a61',
  '--light-load': '#8f5300',
  '--heavy-load': '#17527f',
  '--sans': "'Source Sans 3', 'Avenir Next', Avenir, 'Segoe UI', 'Helvetica Neue', Arial, sans-serif",
};

/** Width of the picture in a file, pixels at 1×. */
export const FILE_WIDTH = 640;

const MARGIN = 16;
const TITLE = { size: 17, line: 23 } as const;
const FOOT = { size: 12, line: 17 } as const;
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
): SvgFile {
  const inside = /^<svg\b[^>]*>([\s\S]*)<\/svg>\s*$/u.exec(drawn)?.[1];
  if (inside === undefined) throw new Error(`invalid drawing; not one SVG element: ${drawn.slice(0, 60)}`);
  const width = (plot.width ?? FILE_WIDTH) + 2 * MARGIN;
  const titleLines = wrap(title, width - 2 * MARGIN, TITLE.size);
  const footLines = [...(notice === null ? [] : [notice]), source].flatMap((text) =>
    wrap(text, width - 2 * MARGIN, FOOT.size),
  );
  const noticeLines = notice === null ? 0 : wrap(notice, width - 2 * MARGIN, FOOT.size).length;
  const top = MARGIN + TITLE.line * titleLines.length + 8;
  const bottom = top + (plot.height ?? 0) + 12;
  const height = bottom + FOOT.line * footLines.length + MARGIN / 2;
  const fontSize =
    typeof plot.style === 'object' && plot.style !== null ? String(plot.style.fontSize ?? '14px') : '14px';
  const lines = (texts: readonly string[], from: number, step: number, size: number) =>
    texts.map((text, i) => `<text x="${MARGIN}" y="${from + step * i + size}">${escapeXml(text)}</text>`).join('');
  const text = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" aria-labelledby="title description" font-family="var(--sans)" fill="currentColor">`,
    `<title id="title">${escapeXml(title)}</title>`,
    `<desc id="description">${escapeXml([notice, alternative].filter(Boolean).join(' '))}</desc>`,
    `<rect width="${width}" height="${height}" fill="var(--paper)"/>`,
    `<g font-size="${TITLE.size}" font-weight="600">${lines(titleLines, MARGIN, TITLE.line, TITLE.size)}</g>`,
    `<g transform="translate(${MARGIN},${top})" font-size="${Number.parseFloat(fontSize)}" text-anchor="middle">${inside.replace(/<style\b[^>]*>[\s\S]*?<\/style>/gu, '')}</g>`,
    `<g font-size="${FOOT.size}" font-weight="600">${lines(footLines.slice(0, noticeLines), bottom, FOOT.line, FOOT.size)}</g>`,
    `<g font-size="${FOOT.size}" fill="var(--quiet)">${lines(footLines.slice(noticeLines), bottom + FOOT.line * noticeLines, FOOT.line, FOOT.size)}</g>`,
    '</svg>',
    '',
  ].join('\n');
  return { text: roundPlaces(settleIds(writeOutValues(text))), width, height };
}

/** Variables and the current colour as they are in light mode. */
function writeOutValues(text: string): string {
  return text
    .replace(/var\((--[a-z-]+)\)/gu, (whole, name) => {
      const value = FILE_VALUES[name];
      if (value === undefined) throw new Error(`invalid drawing; it uses a variable without a value: ${whole}`);
      return value;
    })
    .replace(/"currentColor"/gu, `"${FILE_VALUES['--ink']}"`);
}

/** Plot numbers its clip paths as it draws; numbered from 1 in the file, the same figure is the same file. */
function settleIds(text: string): string {
  const seen = new Map<string, string>();
  return text.replace(/plot-clip-\d+/gu, (id) => {
    const settled = seen.get(id) ?? `clip-${seen.size + 1}`;
    seen.set(id, settled);
    return settled;
  });
}

/** Places to a thousandth of a pixel: what is beyond differs between machines and is seen on none. */
function roundPlaces(text: string): string {
  return text.replace(/ [\w-]+="[^"]*\d\.\d{4}[^"]*"/gu, (attribute) =>
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
