/**
 * The SVG file of a figure. What is proven: it stands alone (no script, no style sheet, no variable,
 * nothing fetched), its colours are those of the style sheet, it holds title, words and notice, and its
 * PNGs have the size that is stated. That it is XML is for a browser to say: tests/browser/figures.test.ts.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { listFigures } from '../../src/figures/catalogue.ts';
import { PICTURE_NOTICE } from '../../src/figures/figureFiles.ts';
import { FILE_VALUES, FILE_WIDTH, writeSvgFile } from '../../src/figures/svgFile.ts';
import { drawBare, drawPng } from '../../src/site/drawFigure.ts';
import { makeEvidence, shippedArms } from '../support/shippedFigures.ts';

const { figures } = listFigures(makeEvidence(shippedArms, { swept: true }));
const draw = ({ figure }: (typeof figures)[number], notice: string | null = PICTURE_NOTICE) => {
  const plot = { ...figure.plot, width: FILE_WIDTH };
  const { title, alternative } = figure;
  return writeSvgFile(drawBare(plot), plot, { title, alternative, source: 'Shy of Failure', notice });
};

describe.each(figures)('$slug', (made) => {
  const { text, width, height } = draw(made);

  it('stands alone', () => {
    expect(text).not.toMatch(
      /<script|<foreignObject|<style|<image|<use|\bon\w+="|@import|var\(|currentColor|class="/iu,
    );
    // The only addresses are the name of the format and clip paths of the file itself.
    const addresses = [...text.matchAll(/(?:href|src)="([^"]*)"|url\(([^)]*)\)|https?:[^"\s<]*/gu)].map(
      ([whole]) => whole,
    );
    for (const address of addresses) expect(address).toMatch(/^url\(#clip-\d+\)$|^http:\/\/www\.w3\.org\/2000\/svg$/u);
    expect(addresses).toContain('http://www.w3.org/2000/svg');
    const ids = new Set([...text.matchAll(/ id="([^"]+)"/gu)].map(([, id]) => id));
    for (const [, id] of text.matchAll(/url\(#([^)]+)\)/gu)) expect(ids).toContain(id);
  });

  it('holds its title, its words and the notice, in the picture and for readers of the file', () => {
    expect(text).toContain(`<title id="title">${made.figure.title}</title>`);
    expect(/<desc id="description">([^<]*)</u.exec(text)?.[1]).toBe(`${PICTURE_NOTICE} ${made.figure.alternative}`);
    expect(text.replace(/<desc[\s\S]*?<\/desc>/u, '')).toContain(PICTURE_NOTICE);
    expect(draw(made, null).text).not.toMatch(/demonstration/iu);
  });

  it('is the same file each time', () => {
    expect(draw(made).text).toBe(text);
  });

  it.each([1, 2] as const)('has a PNG at %d× of the stated size', (scale) => {
    const png = drawPng(text, scale);
    expect([...png.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
    // IHDR: width and height as 32-bit numbers after the length and name of the first chunk.
    expect(png.toString('latin1', 12, 16)).toBe('IHDR');
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([scale * width, scale * height]);
  });
});

it('the colours and faces of a file are those of the style sheet in light mode', () => {
  const css = readFileSync('src/styles/tokens.css', 'utf8');
  const light = css.slice(0, css.indexOf('@media'));
  const names = Object.keys(FILE_VALUES);
  expect(names.length).toBeGreaterThan(4);
  for (const name of names) {
    const value = new RegExp(`${name}: ([^;]+);`, 'u').exec(light)?.[1].replaceAll('"', "'");
    expect(FILE_VALUES[name], name).toBe(value);
  }
});

it('what is light and what is heavy differ in lightness from paper and in the shape of their marks', () => {
  const lightness = (name: string) => {
    const [r, g, b] = (FILE_VALUES[name].match(/[\da-f]{2}/giu) ?? []).map((pair) => {
      const c = Number.parseInt(pair, 16) / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    });
    // Relative luminance (WCAG 2.2).
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (a: string, b: string) =>
    (Math.max(lightness(a), lightness(b)) + 0.05) / (Math.min(lightness(a), lightness(b)) + 0.05);
  for (const name of ['--light-load', '--heavy-load', '--ink', '--quiet'])
    expect(contrast(name, '--paper'), name).toBeGreaterThan(4.5);
  const shapes = (slug: string) => {
    const { text } = draw(listed(slug));
    return { circles: text.match(/<circle/gu)?.length ?? 0, paths: text.match(/<path/gu)?.length ?? 0 };
  };
  // One circle marks the target; diamonds are paths.
  expect(shapes('growth-light').circles).toBe(1);
  expect(shapes('growth-light').paths).toBeGreaterThan(20);
  expect(shapes('growth-heavy').circles).toBeGreaterThan(20);
  expect(shapes('forest-light').circles).toBe(0);
});

function listed(slug: string) {
  const made = figures.find((one) => one.slug === slug);
  if (!made) throw new Error(`expected a figure: ${slug}`);
  return made;
}

it('text from a table is text in the file, and what XML cannot hold is replaced', () => {
  const { text } = writeSvgFile(
    '<svg class="plot"><text>x</text></svg>',
    { width: 640, height: 100 },
    {
      title: '<script>alert(1)</script> & "more" \u0000\u0007',
      alternative: ']]><image href="https://example.org/x.png"/>',
      source: 'a < b',
      notice: null,
    },
  );
  expect(text).toContain('&lt;script&gt;alert(1)&lt;/script&gt; &amp; "more" \uFFFD\uFFFD');
  expect(text).not.toMatch(/<script|<image/u);
});

it('words that look like what is written out in tags stay words', () => {
  const words = 'var(--no-such) "currentColor" plot-clip-3 x="1.23456"';
  const { text } = writeSvgFile(
    `<svg><g fill="var(--ink)" x="1.23456"><text>${words}</text></g></svg>`,
    { width: 640, height: 100 },
    { title: words, alternative: words, source: words, notice: null },
  );
  expect(text.split(words)).toHaveLength(6);
  expect(text).toContain(`<g fill="${FILE_VALUES['--ink']}" x="1.235">`);
});

it('a drawing that is none, or uses a colour that is not known, is refused', () => {
  const words = { title: 'x', alternative: 'x', source: 'x', notice: null };
  expect(() => writeSvgFile('<p>no</p>', {}, words)).toThrow('invalid drawing; not one SVG element: <p>no</p>');
  expect(() => writeSvgFile('<svg><g fill="var(--no-such)"/></svg>', {}, words)).toThrow(
    /without a value: var\(--no-such\)/u,
  );
});

it('an address that is longer than a line is cut into lines, nothing of it lost, none of them out of the picture', () => {
  const address = `https://shy.example/figures/live/?v=2&${'muscle=quadriceps&'.repeat(30)}#growth-light`;
  const words = { title: 'x', alternative: 'x', source: `A, ${address}`, notice: null };
  const { text } = writeSvgFile('<svg><g/></svg>', { width: 640, height: 100 }, words);
  const lines = [...text.matchAll(/<text x="16"[^>]*>([^<]*)</gu)]
    .slice(1)
    .map(([, line]) => line.replaceAll('&amp;', '&'));
  expect(lines.length).toBeGreaterThan(5);
  expect(lines.join('').replace(/^A,/u, '')).toBe(address);
  // 640 pixels of letters 12 high, at 0.58 of that each.
  for (const line of lines) expect(line.length).toBeLessThanOrEqual(91);
});
