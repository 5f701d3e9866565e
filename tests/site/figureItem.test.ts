/**
 * References of a figure and CITATION.cff. What is proven: all five forms are what Citation.js and citeproc-js make of the
 * same item; BibTeX, RIS and CSL-JSON read back with Citation.js to the fields they were made from, for any title that a table could give; the files' form; the two styles against references written by hand; the citation file against
 * the package.
 */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BIBTEX } from '../../scripts/references/bibtex.ts';
import { CSL_JSON } from '../../scripts/references/cslJson.ts';
import { readExport } from '../../scripts/references/entry.ts';
import { RIS } from '../../scripts/references/ris.ts';
import { toStudyCells } from '../../scripts/references/studyCells.ts';
import { STUDY_COLUMNS } from '../../src/evidence/schema.ts';
import { listFigures } from '../../src/figures/catalogue.ts';
import { type CitedFigure, toFigureItem } from '../../src/figures/citing/figureItem.ts';
import { referTo } from '../../src/figures/citing/references.ts';
import { release } from '../../src/site/release.ts';
import { referByLibrary } from '../support/citationJsReferences.ts';
import { makeEvidence, shippedArms } from '../support/shippedFigures.ts';

const { figures } = listFigures(makeEvidence(shippedArms, { swept: true }));

const cited: CitedFigure = {
  slug: 'growth-light',
  title: 'Light loads: less growth with more in reserve',
  authors: 'Shy of Failure contributors',
  site: 'Shy of Failure',
  dataVersion: '0a1b2c3d',
  mark: null,
  year: 2026,
  address: 'https://example.org/~me/figures_1/growth-light/',
  demonstration: false,
};

/** Titles as a table could give them. */
const anyTitle = fc
  .string({
    unit: fc.oneof(
      fc.constantFrom(...'aA1 -\'`"{}\\&%$#_^~<>@,;:=é|'),
      fc.string({ unit: 'grapheme', minLength: 1, maxLength: 1 }),
    ),
    minLength: 1,
    maxLength: 40,
  })
  .map((text) => text.replace(/\s+/gu, ' ').trim().normalize('NFC'))
  .filter((text) => text !== '' && STUDY_COLUMNS.title.cell.safeParse(text).success);

/** The title of each machine's form of a reference, read back. */
function titlesOf(title: string): readonly string[] {
  const { bibtex, ris, cslJson } = referTo(toFigureItem({ ...cited, title }));
  const formats = [
    [BIBTEX, bibtex],
    [RIS, ris],
    [CSL_JSON, cslJson],
  ] as const;
  return formats.map(([format, text]) => {
    const { entries, problems } = readExport(format, text, 'x');
    expect(problems).toEqual([]);
    expect(entries).toHaveLength(1);
    return toStudyCells(entries[0].item).cells.title;
  });
}

describe('references of a figure', () => {
  it.each([
    ['an address with signs of TeX', cited],
    ['invented data', { ...cited, demonstration: true }],
    [
      'a per cent sign and numbers in its title',
      { ...cited, title: 'Growth: no arm has 55 to 65 % & {more} than −1.4 $' },
    ],
  ])('with %s read back from BibTeX and RIS to the same fields', (_what, figure) => {
    const made = toFigureItem(figure);
    const { bibtex, ris } = referTo(made);
    for (const { entries, problems } of [readExport(BIBTEX, bibtex, 'x.bib'), readExport(RIS, ris, 'x.ris')]) {
      expect(problems).toEqual([]);
      expect(entries).toHaveLength(1);
      const { title, URL: address, note, publisher, issued, author } = entries[0].item;
      expect({ title, address, note, publisher }).toEqual({
        title: figure.title,
        address: figure.address,
        note: made.note,
        publisher: figure.site,
      });
      expect(JSON.stringify(issued)).toContain('2026');
      const [name] = author ?? [];
      expect(name.literal ?? [name.given, name.family].filter(Boolean).join(' ')).toBe(figure.authors);
      expect(author).toHaveLength(1);
    }
  });

  it.each([
    ['accents', 'Étude de la fatigue à l’échec: ½ naïve façon'],
    ['other scripts', '筋肥大 and β-alanine at 10 µm² ≤ 5 😀'],
    ['braces', '{Braces} that {open and }close{'],
    ['ampersands and the other signs of TeX', 'R&D: 50 % of #1 costs $5_000 ~ x^2 \\alpha'],
    ['quotation marks and dashes in pairs', "The “best” ''worst'' ``way'' -- or --- \"so\" a--b-c"],
    ['signs of comparison', 'Effects with p <0.05 and d >1 < 2'],
    ['480 characters', 'Reserve and '.repeat(40).trim()],
    ['a title like a line of RIS', 'ER  - TY  - JOUR @article{x, title'],
    ['capitals', 'EMG, MRI and DXA in McArdle’s NASA cohort'],
  ])('with %s in the title read back to it', (_what, title) => {
    expect(titlesOf(title)).toEqual(Array(3).fill(title.replace(/\s+/gu, ' ').normalize('NFC')));
  });

  it('with any title that the schema accepts read back to it', () => {
    let tried = 0;
    fc.assert(
      fc.property(anyTitle, (title) => {
        tried++;
        expect(titlesOf(title)).toEqual([title, title, title]);
      }),
      { seed: 6, numRuns: 300 },
    );
    expect(tried).toBeGreaterThanOrEqual(300);
  });

  it('of RIS has a tag on every line and CRLF at each end', () => {
    const lines = referTo(toFigureItem(cited)).ris.split('\r\n');
    expect(lines[0]).toMatch(/^TY {2}- [A-Z]+$/u);
    expect(lines.slice(-2)).toEqual(['ER  - ', '']);
    expect(lines).toEqual(expect.arrayContaining(['AU  - Shy of Failure contributors', 'PY  - 2026']));
    for (const line of lines.slice(0, -1)) expect(line).toMatch(/^[A-Z][A-Z0-9] {2}- [^\r\n]*$/u);
  });

  it('of BibTeX has its braces closed in pairs, whatever title and address', () => {
    const { bibtex } = referTo(toFigureItem({ ...cited, title: '}}{ \\} {x', address: 'https://example.org/a}b{' }));
    let depth = 0;
    for (const character of bibtex) {
      if (character === '{') depth++;
      if (character === '}') depth--;
      expect(depth).toBeGreaterThanOrEqual(0);
    }
    expect(depth).toBe(0);
  });

  it('of one figure after another are of the one that was asked for, in plain text', () => {
    const other = referTo(toFigureItem({ ...cited, title: 'R&D with p <0.05' }));
    expect(other.apa).toContain('R&D with p <0.05');
    expect(other.apa).not.toContain('Light loads');
    expect(referTo(toFigureItem(cited))).toEqual(referTo(toFigureItem({ ...cited })));
  });

  // Written by hand: Publication Manual of the APA (7th edition), section 10; NLM, Citing Medicine (2nd edition), chapter 25.
  it('in APA and Vancouver style', () => {
    const { apa, vancouver } = referTo(toFigureItem(cited));
    expect(apa).toBe(
      'Shy of Failure contributors. (2026). Light loads: less growth with more in reserve [Figure, data version 0a1b2c3d]. Shy of Failure. https://example.org/~me/figures_1/growth-light/',
    );
    expect(vancouver).toBe(
      'Shy of Failure contributors. Light loads: less growth with more in reserve [Figure, data version 0a1b2c3d] [Internet]. Shy of Failure; 2026. Available from: https://example.org/~me/figures_1/growth-light/',
    );
  });

  it('say of a demonstration that its studies are invented, of others nothing of it', () => {
    const invented = referTo(toFigureItem({ ...cited, demonstration: true }));
    for (const text of Object.values(invented)) expect(text).toContain('invented');
    for (const text of Object.values(referTo(toFigureItem(cited)))) expect(text).not.toContain('invented');
  });

  it('have a key that says which figure of which data', () => {
    expect(referTo(toFigureItem(cited)).bibtex).toMatch(/^@misc\{ShyofFailuregrowthlight0a1b2c3d,/u);
  });

  it.each([false, true])(
    'of every figure are what Citation.js and citeproc-js make of it, byte for byte (invented: %s)',
    (demonstration) => {
      expect(figures.length).toBeGreaterThan(15);
      for (const { slug, figure } of figures) {
        const item = toFigureItem({
          ...cited,
          slug,
          title: figure.title,
          demonstration,
          mark: demonstration ? null : '0123456789',
        });
        expect(referTo(item)).toEqual(referByLibrary(item));
      }
    },
  );

  it('with any title that the schema accepts are what Citation.js makes of it, in BibTeX, RIS and CSL-JSON', () => {
    fc.assert(
      fc.property(anyTitle, (title) => {
        const item = toFigureItem({ ...cited, title });
        const { bibtex, ris, cslJson } = referTo(item);
        expect({ bibtex, ris, cslJson }).toMatchObject(
          (({ apa: _apa, vancouver: _vancouver, ...forms }) => forms)(referByLibrary(item)),
        );
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  it('as CSL-JSON are a list of the one item', () => {
    expect(JSON.parse(referTo(toFigureItem(cited)).cslJson)).toEqual([toFigureItem(cited)]);
  });
});

describe('CITATION.cff', () => {
  const text = readFileSync('CITATION.cff', 'utf8');
  const { version, license } = JSON.parse(readFileSync('package.json', 'utf8'));

  it('has the version and licence of the package', () => {
    expect(release.version).toBe(version);
    expect(/^license: (\S+)$/mu.exec(text)?.[1]).toBe(license);
  });

  it('has the keys that Citation File Format 1.2.0 requires, and the name of the site in its title', () => {
    const keys = [...text.matchAll(/^([a-z-]+):/gmu)].map(([, key]) => key);
    expect(keys).toEqual(expect.arrayContaining(['cff-version', 'message', 'title', 'authors']));
    expect(text).toMatch(/^cff-version: 1\.2\.0$/mu);
    expect(/^title: "([^"]+)"$/mu.exec(text)?.[1]).toMatch(/^Shy of Failure\b/u);
  });

  it('names the authors that the figures cite', () => {
    expect(release.authors).toBe('Shy of Failure contributors');
    expect(release.year).toBeGreaterThanOrEqual(2026);
  });
});

it('the libraries that read and style references are imported by no part of the site', () => {
  const importing = readdirSync('src', { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(?:ts|tsx|astro)$/u.test(name))
    .filter((name) => /from '@citation-js|import '@citation-js/u.test(readFileSync(`src/${name}`, 'utf8')));
  expect(importing).toEqual([]);
});
