/** The Figures pages in a real Chromium: complete without a script, legible at every width, to take along. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPage, type ServedSite, serveSite } from './site.ts';

const index = JSON.parse(readFileSync('dist/figures.json', 'utf8'));
const slugs: readonly string[] = index.figures.map(({ slug }: { slug: string }) => slug);

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());

/** Pairs of texts of the pictures in sight whose boxes overlap by more than a pixel each way, and texts cut off. */
const FIND_OVERLAPS = `(() => {
  const problems = [];
  let looked = 0;
  for (const svg of document.querySelectorAll('.drawn svg')) {
    const frame = svg.getBoundingClientRect();
    if (frame.width === 0) continue;
    const texts = [...svg.querySelectorAll('text')].map((text) => ({ words: text.textContent, box: text.getBoundingClientRect() }))
      .filter(({ words, box }) => words.trim() !== '' && box.width > 0);
    looked += texts.length;
    texts.forEach(({ words, box: a }, i) => {
      if (a.left < -1 || a.right > document.documentElement.clientWidth + 1) problems.push('out of the page: ' + words);
      for (const { words: other, box: b } of texts.slice(i + 1)) {
        const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        if (across > 1 && down > Math.min(a.height, b.height) * 0.25) problems.push(words + ' × ' + other);
      }
    });
  }
  return { problems, looked };
})()`;

describe.each(slugs)('%s', (slug) => {
  it('without JavaScript has finding, picture, words, numbers, files, references and frame', async () => {
    const { page, complaints, close } = await openPage(site, `figures/${slug}/`, { javaScriptEnabled: false });
    const { title, caption, alternative } = index.figures.find((one: { slug: string }) => one.slug === slug);
    expect(await page.locator('h1').innerText()).toBe(title);
    expect(await page.locator('figcaption').innerText()).toBe(caption);
    const picture = page.locator('.drawn svg:visible');
    expect(await picture.count()).toBe(1);
    expect(await picture.getAttribute('aria-label')).toBe(alternative);
    expect(await page.locator(`#${await picture.getAttribute('aria-details')} tbody tr`).count()).toBeGreaterThan(0);
    const main = await page.locator('main').innerText();
    for (const words of [/What is shown/u, /version [\da-f]{8}/u, /invented/u, /Flexible curve|flexible curve/u])
      expect(main).toMatch(words);
    expect(await page.locator('.downloads a').count()).toBe(12);
    for (const id of ['apa', 'vancouver', 'bibtex', 'ris', 'csl', 'frame'])
      expect(await page.locator(`#${id}`).textContent()).not.toBe('');
    expect(await page.locator('button:visible').count()).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });

  it('has no text over another and none out of the page at 320, 480, 768 and 1200 px', async () => {
    const { page, close } = await openPage(site, `figures/${slug}/`);
    for (const width of [320, 480, 768, 1200]) {
      await page.setViewportSize({ width, height: 900 });
      const { problems, looked } = (await page.evaluate(FIND_OVERLAPS)) as { problems: string[]; looked: number };
      expect(problems, `${width} px`).toEqual([]);
      expect(looked).toBeGreaterThan(4);
    }
    await close();
  });
});

it('downloads stand in rows by their kind, each on one line where there is room, at the same place below it on a phone', async () => {
  const { page, close } = await openPage(site, 'figures/growth-light/');
  const rows = () =>
    page.evaluate(`[...document.querySelectorAll('.downloads dt')].map((kind) => {
      const centre = (element) => { const { top, bottom } = element.getBoundingClientRect(); return (top + bottom) / 2; };
      const links = [...kind.nextElementSibling.querySelectorAll('a')];
      return { lines: new Set(links.map((link) => Math.round(centre(link)))).size, off: centre(links[0]) - centre(kind),
        left: Math.round(links[0].getBoundingClientRect().left), right: Math.max(...links.map((link) => link.getBoundingClientRect().right)) };
    })`) as Promise<{ lines: number; off: number; left: number; right: number }[]>;
  for (const width of [320, 360, 600, 768, 1200]) {
    await page.setViewportSize({ width, height: 900 });
    const found = await rows();
    expect(found).toHaveLength(4);
    expect(new Set(found.map(({ left }) => left)).size, `${width} px`).toBe(1);
    for (const { lines, off, right } of found) {
      expect(right, `${width} px`).toBeLessThanOrEqual(width);
      expect(lines, `${width} px`).toBeLessThanOrEqual(width < 600 ? 3 : 1);
      if (width >= 600) expect(Math.abs(off), `${width} px`).toBeLessThan(2);
      else expect(off, `${width} px`).toBeGreaterThan(10);
    }
  }
  await close();
});

it('every SVG file is XML to a browser, and is drawn by itself without a complaint', async () => {
  const { page, complaints, close } = await openPage(site, 'figures/');
  const files = readdirSync('dist/figures', { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.svg'),
  );
  // One for screens, one for each width of print.
  expect(files).toHaveLength(3 * slugs.length);
  const parse = (text: string) =>
    page.evaluate(
      `(() => { const { documentElement } = new DOMParser().parseFromString(${JSON.stringify(text)}, 'image/svg+xml'); return documentElement.querySelector('parsererror')?.textContent ?? documentElement.localName; })()`,
    );
  // In a file's own document: a page's policy would complain of the styles that a file has and a page has not.
  await page.goto(`${site.address}/figures/${files[0]}`);
  for (const file of files) expect(await parse(readFileSync(join('dist/figures', file), 'utf8')), file).toBe('svg');
  expect(await parse('<svg xmlns="http://www.w3.org/2000/svg"><g></svg>')).toMatch(/error/u);
  // For a file that is opened by itself a browser asks for /favicon.ico of its own accord.
  expect(complaints.filter((one) => !/Failed to load resource.*404|favicon\.ico/u.test(one))).toEqual([]);
  await close();
});

it('a reference is copied by keyboard, with the whole address where the build did not know it', async () => {
  const { page, complaints, close } = await openPage(site, 'figures/growth-light/', {
    permissions: ['clipboard-read', 'clipboard-write'],
  });
  const button = page.getByRole('button', { name: 'Copy APA' });
  await button.focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.locator('#copy-status').innerText()).toBe('Copied.');
  const copied = await page.evaluate('navigator.clipboard.readText()');
  expect(copied).toBe(await page.locator('#apa').textContent());
  expect(copied).toMatch(/^Shy of Failure contributors\. \(\d{4}\)\. .*http\S+\/figures\/growth-light\/$/u);
  expect(complaints).toEqual([]);
  await close();
});

it('a framed figure tells its height, follows dark mode and has no navigation', async () => {
  const { page, complaints, close } = await openPage(site, 'figures/growth-heavy/embed/', { colorScheme: 'dark' });
  expect(await page.locator('nav, header, footer').count()).toBe(0);
  expect(await page.locator('body').innerText()).toMatch(/invented/u);
  const paper = () => page.evaluate('getComputedStyle(document.body).backgroundColor');
  const dark = await paper();
  await page.emulateMedia({ colorScheme: 'light' });
  expect(await paper()).not.toBe(dark);
  // A document without the site's policy, as the page of another site is.
  await page.goto(`${site.address}/figures.json`);
  const heights = (await page.evaluate(`new Promise((resolve) => {
    const heights = [];
    addEventListener('message', ({ data }) => {
      if (data.type !== 'shy-of-failure-height') return;
      heights.push(data.height);
      if (heights.length === 1) frame.width = '320';
      else if (data.height !== heights[0]) resolve([heights[0], data.height]);
    });
    const frame = document.createElement('iframe');
    frame.width = '700';
    frame.src = '/figures/growth-heavy/embed/';
    document.body.append(frame);
  })`)) as number[];
  for (const height of heights) expect(height).toBeGreaterThan(200);
  expect(heights).toHaveLength(2);
  expect(complaints).toEqual([]);
  await close();
});

describe('a figure of a reader’s settings', () => {
  /** Bytes of the file that a click on a button of this name saves, and its name. */
  const save = async (page: Page, button: string) => {
    const waiting = page.waitForEvent('download');
    await page.getByRole('button', { name: button, exact: true }).click();
    const download = await waiting;
    return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
  };

  it('is opened from Evidence with the settings in its address, and is that of these settings', async () => {
    const { page, complaints, close } = await openPage(site, 'evidence/?v=2&curve=log&split=50');
    const caption = await page.locator('.workbench figcaption').first().innerText();
    await page.getByRole('link', { name: 'Make this a figure' }).click();
    await expect.poll(() => page.url()).toContain('/figures/live/?v=2&curve=log&split=50#growth-light');
    await expect.poll(() => page.locator('figcaption').innerText()).toBe(caption);
    await page.locator('#live-figure').selectOption('evidence-map');
    await expect.poll(() => page.locator('figcaption').innerText()).toContain('split at 50\u00a0% of 1RM');
    expect(new URL(page.url()).hash).toBe('#evidence-map');
    expect(complaints).toEqual([]);
    await close();
  });

  it('with the site’s settings has the files of the site', async () => {
    const { page, complaints, close } = await openPage(site, 'figures/live/#growth-heavy');
    const { files, width, height, title } = index.figures.find((one: { slug: string }) => one.slug === 'growth-heavy');
    const built = (file: { address: string }) => readFileSync(join('dist', file.address));
    const csv = await save(page, 'CSV of the plotted numbers');
    expect(csv.name).toBe(files.csv.address.split('/').at(-1));
    expect(csv.bytes.toString()).toBe(built(files.csv).toString());
    const json = await save(page, 'JSON of the analysis');
    // Machines and browsers differ in the last digits of a sine or logarithm.
    const settle = (text: string) =>
      JSON.parse(text, (key, value) =>
        key === 'address' ? '' : typeof value === 'number' ? Number(value.toPrecision(8)) : value,
      );
    expect(settle(json.bytes.toString())).toEqual(settle(built(files.json).toString()));
    const svg = await save(page, 'SVG');
    const places = (text: string) => text.match(/<(?:circle|path|line|text)\b/gu)?.length;
    expect(svg.bytes.toString()).toContain(`<title id="title">${title}</title>`);
    expect(places(svg.bytes.toString())).toBeGreaterThanOrEqual(places(built(files.svg).toString()) ?? Infinity);
    expect(svg.bytes.toString()).not.toMatch(/<script|<style|var\(|currentColor/u);
    for (const [scale, name] of ['PNG', 'PNG, twice the size'].map((button, i) => [i + 1, button] as const)) {
      const { bytes } = await save(page, name);
      // The line of the source holds the page's address, which may need a line more here.
      expect(bytes.readUInt32BE(16)).toBe(scale * width);
      expect(bytes.readUInt32BE(20)).toBeGreaterThanOrEqual(scale * height);
    }
    expect(complaints).toEqual([]);
    await close();
  });

  it('that its settings do not make, or that there is none of, is said to be none', async () => {
    const { page, close } = await openPage(site, 'figures/live/?v=2&split=none#growth-light');
    expect(await page.locator('main').innerText()).toContain('the analysis fits all loads together');
    await page.goto(`${site.address}/figures/live/#<img src=x onerror=alert(1)>`);
    await expect.poll(() => page.locator('.problem').innerText()).toMatch(/There is no figure “<img/u);
    await close();
  });

  it('is drawn for every name, those of the other choices once they are worked out', async () => {
    const { page, complaints, close } = await openPage(site, 'figures/live/');
    for (const { slug, caption } of index.figures as { slug: string; caption: string }[]) {
      await page.locator('#live-figure').selectOption(slug);
      await expect.poll(() => page.locator('figcaption').innerText()).toBe(caption);
      const shapes = page.locator('.alone svg').locator('circle, path, rect, line');
      expect(await shapes.count(), slug).toBeGreaterThan(5);
    }
    expect(complaints).toEqual([]);
    await close();
  });
});
