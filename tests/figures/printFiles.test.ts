/**
 * Files for print. What is proven of every figure at both widths: its size on paper, type of 7 points and more, words as
 * text in faces that are named, nothing beyond the edges (by resvg, in the face that PDF embeds), nothing fetched; of the
 * palettes: that light and heavy loads are apart in grey and for readers who see colours differently; of PDF: the same
 * bytes each time, faces embedded, words that can be searched.
 */
import { readFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { listFigures } from '../../src/figures/catalogue.ts';
import { COLUMN_WIDTHS, COLUMNS, PRINT_VALUES, pointsOf } from '../../src/figures/printLook.ts';
import { writeSvgFile } from '../../src/figures/svgFile.ts';
import { drawBare, FONT_FILES } from '../../src/site/drawFigure.ts';
import { drawPdf } from '../../src/site/drawPdf.ts';
import { makeEvidence, shippedArms } from '../support/shippedFigures.ts';

/** Points: what journals ask for at least (common practice, no source). */
const LEAST_TYPE = 7;

const { figures } = listFigures(makeEvidence(shippedArms, { swept: true }));
const fileOf = ({ figure }: (typeof figures)[number], width: (typeof COLUMN_WIDTHS)[number]) => {
  const plot = { ...figure.plot, width: COLUMNS[width].drawing };
  const words = { title: figure.title, alternative: figure.alternative, source: 'x', notice: 'invented' };
  return writeSvgFile(drawBare(plot), plot, words, COLUMNS[width]);
};

describe.each(COLUMN_WIDTHS)('a file for a column of %d mm', (width) => {
  const column = COLUMNS[width];

  it.each(figures.map((made) => [made.slug, made] as const))(
    'of %s is as wide on paper, in type that can be read, inside its edges',
    (_slug, made) => {
      const file = fileOf(made, width);
      const [, high] = new RegExp(`<svg [^>]*width="${width}mm" height="([\\d.]+)mm"`, 'u').exec(file.text) ?? [];
      expect(Number(high) / width).toBeCloseTo(file.height / file.width, 3);
      const sizes = [...file.text.matchAll(/font-size="([\d.]+)(?:px)?"/gu)].map(([, size]) => Number(size));
      expect(sizes.length).toBeGreaterThan(3);
      expect(pointsOf(Math.min(...sizes), column)).toBeGreaterThanOrEqual(LEAST_TYPE);
      expect(file.text).toMatch(/font-family="'Source Sans 3', [^"]*Arial, sans-serif"/u);
      expect(file.text.match(/<text\b/gu)?.length).toBeGreaterThan(5);
      expect(file.text).not.toMatch(/var\(|currentColor|<style|<image|href=/u);
      expect(file.text).not.toMatch(/#fbfaf6/u);
      const box = new Resvg(file.text.replace(/ width="[^"]*mm" height="[^"]*mm"/u, ''), {
        font: {
          loadSystemFonts: false,
          fontFiles: Object.values(FONT_FILES),
          defaultFontFamily: 'DejaVu Sans',
          sansSerifFamily: 'DejaVu Sans',
        },
      }).getBBox();
      expect(box?.x).toBeGreaterThanOrEqual(-0.5);
      expect((box?.x ?? 0) + (box?.width ?? Infinity)).toBeLessThanOrEqual(file.width + 0.5);
      expect((box?.y ?? 0) + (box?.height ?? Infinity)).toBeLessThanOrEqual(file.height + 0.5);
    },
  );
});

describe('the palettes', () => {
  const css = readFileSync('src/styles/tokens.css', 'utf8');
  const [light, dark, print] = css.split(/@media/u);
  const colour = (part: string, name: string) => new RegExp(`${name}: (#[\\da-f]{3,6});`, 'u').exec(part)?.[1] ?? '';

  const linear = (hex: string) =>
    (hex.match(/[\da-f]{2}/giu) ?? []).map((pair) => {
      const c = Number.parseInt(pair, 16) / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    });
  type Triple = readonly [number, number, number];
  const times = (rows: readonly Triple[], [r, g, b]: readonly number[]) =>
    rows.map(([x, y, z]) => Math.min(1, Math.max(0, x * r + y * g + z * b)));
  /** CIE 1976 L*a*b* of linear sRGB, D65 (CIE 15:2004). */
  const lab = (rgb: readonly number[]) => {
    const [r, g, b] = rgb;
    const f = (t: number) => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29);
    const [x, y, z] = [
      (0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505,
      0.2126 * r + 0.7152 * g + 0.0722 * b,
      (0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089,
    ].map(f);
    return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
  };
  /** Machado, Oliveira & Fernandes 2009, IEEE TVCG 15:1291, severity 1: what is seen without one kind of cone. */
  const SEEN: Readonly<Record<string, readonly Triple[]>> = {
    'without red cones': [
      [0.152286, 1.052583, -0.204868],
      [0.114503, 0.786281, 0.099216],
      [-0.003882, -0.048116, 1.051998],
    ],
    'without green cones': [
      [0.367322, 0.860646, -0.227968],
      [0.280085, 0.672501, 0.047413],
      [-0.01182, 0.04294, 0.968881],
    ],
    'without blue cones': [
      [1.255528, -0.076749, -0.178779],
      [-0.078411, 0.930809, 0.147602],
      [0.004733, 0.691367, 0.3039],
    ],
  };

  it.each([
    ['light', light],
    ['dark', dark],
    ['print', print],
  ])(
    'of %s mode has light and heavy loads apart in grey by 15 of lightness, and in colours as all eyes see them',
    (_name, part) => {
      const loads = ['--light-load', '--heavy-load'].map((name) => linear(colour(part, name)));
      const [a, b] = loads.map(lab);
      expect(Math.abs(a[0] - b[0])).toBeGreaterThan(15);
      for (const [eyes, matrix] of Object.entries(SEEN)) {
        const [c, d] = loads.map((rgb) => lab(times(matrix, rgb)));
        // Colours are told apart at a glance from some 10 on; twice that for thin lines.
        expect(Math.hypot(c[0] - d[0], c[1] - d[1], c[2] - d[2]), eyes).toBeGreaterThan(20);
      }
    },
  );

  it('of print is that of the style sheet', () => {
    for (const name of ['--light-load', '--heavy-load']) expect(PRINT_VALUES[name]).toBe(colour(print, name));
  });
});

describe('a PDF', () => {
  const [made] = figures;
  const words = { title: 'Growth ≥ 1 %', author: 'A', subject: 'S', date: '2026-01-02' };

  it('is the same each time, has its faces in it, and words that can be searched', async () => {
    const file = fileOf(made, 85);
    const first = Buffer.from(await drawPdf(file, 85, words));
    expect(Buffer.from(await drawPdf(file, 85, words)).equals(first)).toBe(true);
    const text = first.toString('latin1');
    expect(text.startsWith('%PDF-')).toBe(true);
    expect(text).toMatch(/\/FontFile2/u);
    expect(text).toMatch(/\/ToUnicode/u);
    expect(text).not.toMatch(/\/Subtype \/Image/u);
    const [, wide] = /\/MediaBox \[0 0 ([\d.]+) [\d.]+\]/u.exec(text) ?? [];
    expect(Number(wide)).toBeCloseTo((85 / 25.4) * 72, 2);
  });

  it('of a table in other scripts is made, and names no missing face', async () => {
    const plot = { width: 340, height: 60 };
    const drawn = '<svg><g paint-order="stroke" stroke="#fff" stroke-width="4"><text>Ж Ω 筋 😀 →</text></g></svg>';
    const file = writeSvgFile(
      drawn,
      plot,
      { title: '筋肥大', alternative: '', source: 'x', notice: null },
      COLUMNS[85],
    );
    await expect(drawPdf(file, 85, words)).resolves.toBeInstanceOf(Uint8Array);
  });
});
