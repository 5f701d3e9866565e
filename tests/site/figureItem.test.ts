/**
 * References of a figure and CITATION.cff. What is proven: BibTeX and RIS read back with Citation.js to the
 * fields they were made from; the two styles against references written by hand; the citation file against
 * the package.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readBibtex } from '../../scripts/references/readBibtex.ts';
import { readRis } from '../../scripts/references/readRis.ts';
import { type CitedFigure, toFigureItem } from '../../src/site/figureItem.ts';
import { referTo } from '../../src/site/references.ts';
import { release } from '../../src/site/release.ts';

const cited: CitedFigure = {
  slug: 'growth-light',
  title: 'Light loads: less growth with more in reserve',
  authors: 'Shy of Failure contributors',
  site: 'Shy of Failure',
  dataVersion: '0a1b2c3d',
  year: 2026,
  address: 'https://example.org/~me/figures_1/growth-light/',
  demonstration: false,
};

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
    for (const { entries, problems } of [readBibtex(bibtex, 'x.bib'), readRis(ris, 'x.ris')]) {
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
