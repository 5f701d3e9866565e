/**
 * The built site by its files: every address in it leads somewhere, pictures and anchors included, and
 * figures.json says what is there.
 */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';

const DIST = 'dist';
const pages = readdirSync(DIST, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.html'))
  .map((name) => {
    const { document } = parseHTML(readFileSync(join(DIST, name), 'utf8'));
    return { name, document, ids: new Set([...document.querySelectorAll('[id]')].map(({ id }) => id)) };
  });

/** Attributes that hold an address; of a meta element those that are one by their name. */
const ADDRESSES = [
  ['a, link', 'href'],
  ['img, script, iframe, source', 'src'],
  ['astro-island', 'component-url'],
  ['astro-island', 'renderer-url'],
  ['astro-island', 'before-hydration-url'],
  ['meta[property="og:image"], meta[property="og:url"]', 'content'],
] as const;

/** What is wrong with an address on a page; null where it leads somewhere. */
function problemOf(address: string, page: string): string | null {
  if (/^(?:https?:|mailto:|data:)/u.test(address)) return null;
  const { pathname, hash } = new URL(address, `http://site/${page.replace(/index\.html$/u, '')}`);
  const path = join(DIST, decodeURIComponent(pathname));
  const file = pathname.endsWith('/') ? join(path, 'index.html') : path;
  if (!existsSync(file) || !statSync(file).isFile()) return `no file ${file}`;
  if (hash === '' || !file.endsWith('.html')) return null;
  const target = pages.find(({ name }) => join(DIST, name) === file);
  return target?.ids.has(decodeURIComponent(hash.slice(1))) ? null : `no ${hash} in ${file}`;
}

it('every address on every page leads to a file or an element of the site', () => {
  let looked = 0;
  const problems = pages.flatMap(({ name, document }) =>
    ADDRESSES.flatMap(([selector, attribute]) =>
      [...document.querySelectorAll(selector)].flatMap((element) => {
        const address = element.getAttribute(attribute);
        if (address === null || address === '') return [];
        looked++;
        const problem = problemOf(address, name);
        return problem === null ? [] : [`${name}: ${address}: ${problem}`];
      }),
    ),
  );
  expect(problems).toEqual([]);
  expect(pages.length).toBeGreaterThan(70);
  expect(looked).toBeGreaterThan(1000);
});

it('every id that an element refers to is on its page, and no id is there twice', () => {
  for (const { name, document, ids } of pages) {
    for (const attribute of [
      'aria-labelledby',
      'aria-describedby',
      'aria-details',
      'aria-controls',
      'for',
      'data-copy',
    ]) {
      for (const element of document.querySelectorAll(`[${attribute}]`))
        for (const id of (element.getAttribute(attribute) ?? '').split(' '))
          expect(ids, `${name}: ${attribute}=${id}`).toContain(id);
    }
    const clips = [...readFileSync(join(DIST, name), 'utf8').matchAll(/url\(#([^)]+)\)/gu)].map(([, id]) => id);
    for (const id of clips) expect(ids, `${name}: url(#${id})`).toContain(id);
    expect(document.querySelectorAll('[id]').length, name).toBe(ids.size);
  }
});

it('a broken link, a broken anchor and a missing picture would be found', () => {
  expect(problemOf('/figures/no-such-figure/', 'index.html')).toMatch(/no file/u);
  expect(problemOf('#no-such-place', 'figures/index.html')).toMatch(/no #no-such-place/u);
  expect(problemOf('x.png', 'figures/index.html')).toMatch(/no file/u);
  expect(problemOf('#content', 'figures/index.html')).toBeNull();
});

describe('figures.json', () => {
  const index = JSON.parse(readFileSync(join(DIST, 'figures.json'), 'utf8'));

  it('lists every figure page with its addresses, and says of what data', () => {
    const slugs = readdirSync(join(DIST, 'figures'), { withFileTypes: true })
      // live/ draws figures of settings of one's own, whose frame has no file.
      .filter(({ name }) => name !== 'live' && existsSync(join(DIST, 'figures', name, 'embed')))
      .map(({ name }) => name);
    expect(index.figures.map(({ slug }: { slug: string }) => slug).sort()).toEqual(slugs.sort());
    expect(index.demonstration).toMatch(/invented/u);
    expect(index.dataVersion).toMatch(/^[\da-f]{8}$/u);
    for (const { page, embed, oembed } of index.figures)
      for (const address of [page, embed, oembed]) expect(problemOf(address, 'index.html')).toBeNull();
  });

  it('gives the SHA-256 of every file, whose name has figure and data version', () => {
    let looked = 0;
    for (const { slug, files } of index.figures) {
      for (const { address, sha256 } of Object.values(files) as { address: string; sha256: string }[]) {
        const bytes = readFileSync(join(DIST, address));
        expect(createHash('sha256').update(bytes).digest('hex'), address).toBe(sha256);
        expect(address).toContain(`demonstration-${slug}-${index.dataVersion}`);
        looked++;
      }
    }
    // SVG, PNG, CSV, JSON, the PNG of twice the size, and SVG and PDF for two widths of print.
    expect(looked).toBe(9 * index.figures.length);
  });

  it('has titles and sizes that the pages, the metadata and the oEmbed answers have too', () => {
    for (const { slug, title, page, files, width, height } of index.figures) {
      const { document } = parseHTML(readFileSync(join(DIST, page, 'index.html'), 'utf8'));
      expect(document.querySelector('h1')?.textContent).toBe(title);
      const metadata = JSON.parse(document.querySelector('script[type="application/ld+json"]')?.textContent ?? '');
      expect(metadata).toMatchObject({ '@type': 'ImageObject', name: title, contentUrl: files.png2x.address });
      expect(metadata.isBasedOn).toMatchObject({ '@type': 'Dataset', version: index.dataVersion });
      for (const { contentUrl } of metadata.isBasedOn.distribution)
        expect(problemOf(contentUrl, 'index.html')).toBeNull();
      const oembed = JSON.parse(readFileSync(join(DIST, 'figures', slug, 'oembed.json'), 'utf8'));
      expect(oembed).toMatchObject({
        version: '1.0',
        type: 'rich',
        title,
        thumbnail_width: width,
        thumbnail_height: height,
      });
      const frame = parseHTML(`<body>${oembed.html}</body>`).document.querySelector('iframe');
      expect(frame?.getAttribute('title')).toBe(title);
      expect(problemOf(frame?.getAttribute('src') ?? '', 'index.html')).toBeNull();
    }
  });
});
