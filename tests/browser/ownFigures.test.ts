/** Figures with a reader's own settings in a real Chromium: cited, opened elsewhere, of a table that changed, of an own table. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPage, type ServedSite, serveSite } from './site.ts';

const index = JSON.parse(readFileSync('dist/figures.json', 'utf8'));
const PLACE = 'figures/live/?v=2&curve=log&split=50#growth-heavy';

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());

/** Path below the site of the address that the page gives for citing. */
async function citedPath(page: Page): Promise<string> {
  const address = (await page.locator('#address').textContent()) ?? '';
  expect(address.startsWith(`${site.address}/`)).toBe(true);
  return address.slice(site.address.length + 1);
}

const save = async (page: Page, button: string) => {
  const waiting = page.waitForEvent('download');
  await page.getByRole('button', { name: button, exact: true }).click();
  const download = await waiting;
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
};

/** A browser that lets pages keep nothing. */
const WITHOUT_STORAGE = `for (const name of ['localStorage', 'sessionStorage', 'indexedDB'])
  Object.defineProperty(window, name, { get() { throw new DOMException('no storage', 'SecurityError'); } });`;

describe('a figure of a reader’s settings', () => {
  it('has files of its own name, references in five forms with the whole address, and a frame', async () => {
    const { page, complaints, close } = await openPage(site, PLACE);
    const path = await citedPath(page);
    expect(path).toMatch(
      /^figures\/live\/\?v=2&curve=log&split=50&table=[\da-f]{8}&then=h[\d._]+\*n\d+_\d+#growth-heavy$/u,
    );
    const whole = `${site.address}/${path}`;
    for (const id of ['apa', 'vancouver', 'bibtex', 'ris', 'csl'])
      expect(await page.locator(`#${id}`).textContent(), id).toContain(id === 'csl' ? JSON.stringify(whole) : whole);
    expect(await page.locator('#apa').textContent()).toMatch(
      /\[Figure of invented studies, data version [\da-f]{8}, settings [\da-f]{10}\]/u,
    );
    const stem = /^demonstration-growth-heavy-[\da-f]{8}-[\da-f]{10}/u;
    for (const [button, ending, content] of [
      ['SVG', '.svg', '<svg'],
      ['CSV of the plotted numbers', '.csv', 'layer'],
      ['JSON of the analysis', '.json', '"settingsMark"'],
      ['BibTeX', '.bib', '@misc{'],
      ['RIS', '.ris', 'TY  - FIGURE'],
      ['CSL-JSON', '.csl.json', '"type": "figure"'],
    ]) {
      const { name, text } = await save(page, button);
      expect(name).toMatch(stem);
      expect(name.endsWith(ending)).toBe(true);
      expect(text).toContain(content);
      // Nothing of a long address runs out of the picture: it is cut into lines.
      if (ending === '.svg')
        for (const [, line] of text.matchAll(/<text x="16"[^>]*>([^<]*)</gu))
          expect(line.replaceAll('&amp;', '&').length).toBeLessThan(95);
    }
    expect(await page.locator('#frame').textContent()).toContain('/figures/live/embed/?v=2&amp;curve=log');
    expect(complaints).toEqual([]);
    await close();
  });

  it('is shown at its address on a phone that keeps nothing, as it was cited', async () => {
    const there = await openPage(site, PLACE);
    const path = await citedPath(there.page);
    const title = await there.page.locator('.alone .figure-title').innerText();
    const caption = await there.page.locator('.alone figcaption').innerText();
    await there.close();
    const context = await site.browser.newContext({
      viewport: { width: 360, height: 740 },
      isMobile: true,
      hasTouch: true,
    });
    await context.addInitScript(WITHOUT_STORAGE);
    const page = await context.newPage();
    await page.goto(`${site.address}/${path}`);
    await expect.poll(() => page.locator('.alone figcaption').innerText()).toBe(caption);
    expect(await page.locator('.alone .figure-title').innerText()).toBe(title);
    expect(await page.locator('[data-cited=same]').innerText()).toMatch(/still the one that this address cites/u);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
    // Laid out for a phone, not a wide picture made small.
    const type =
      'Math.min(...[...document.querySelectorAll(".alone svg text")].map((text) => text.getBoundingClientRect().height).filter((high) => high > 0))';
    expect(await page.evaluate(type)).toBeGreaterThan(11);
    await context.close();
  });

  it('says when the table has changed since, what it was then and what it is now; no more once another figure is chosen', async () => {
    const { page, complaints, close } = await openPage(
      site,
      'figures/live/?v=2&curve=log&table=0123abcd&then=h9.9_8.8_*n12_3#growth-heavy',
    );
    const notice = page.locator('[data-cited=changed]');
    expect(await notice.innerText()).toMatch(
      /has changed since this was cited[\s\S]*0123abcd[\s\S]*When this was cited, as the address says: heavy loads: target 9\.9 \(at least 8\.8\) in reserve; 12 rows of 3 studies\.\s+Now: heavy loads: target \d/u,
    );
    await page.locator('#live-figure').selectOption('growth-light');
    await expect.poll(() => page.url()).toMatch(/table=0123abcd#growth-light$/u);
    expect(await notice.innerText()).not.toMatch(/9\.9/u);
    expect(complaints).toEqual([]);
    await close();
  });

  it('with the site’s own settings is cited as the site’s figure, at the address of that', async () => {
    const { page, close } = await openPage(site, 'figures/live/#evidence-map');
    expect(await citedPath(page)).toBe('figures/evidence-map/');
    expect(await page.locator('main').innerText()).toMatch(/that of the site’s figure, which is drawn anew/u);
    const built = await openPage(site, 'figures/evidence-map/');
    for (const id of ['apa', 'vancouver', 'bibtex', 'ris', 'csl'])
      expect(await page.locator(`#${id}`).textContent(), id).toBe(await built.page.locator(`#${id}`).textContent());
    // The files of the site's figure have the whole address too, wherever it was built for.
    for (const [name, id] of [
      ['BibTeX', 'bibtex'],
      ['RIS', 'ris'],
      ['CSL-JSON', 'csl'],
    ]) {
      const waiting = built.page.waitForEvent('download');
      await built.page.getByRole('link', { name, exact: true }).click();
      const text = readFileSync(await (await waiting).path(), 'utf8');
      expect(text.replaceAll('\r\n', '\n').trim()).toBe(await built.page.locator(`#${id}`).textContent());
    }
    await built.close();
    await close();
  });

  it('of an address of the first version is the figure that it was', async () => {
    const { page, close } = await openPage(site, 'figures/live/?v=1&split=50#growth-light');
    expect(await page.locator('main').innerText()).toMatch(/straight line was the default/u);
    expect(await citedPath(page)).toContain('?v=2&curve=line&split=50&table=');
    await close();
  });
});

describe('with a table of the reader’s own in use', () => {
  /** Opens a table of one's own and puts it in use. */
  async function openOwn(page: Page): Promise<void> {
    const rows = readFileSync('data/arms.csv', 'utf8').split('\n');
    const text = rows.filter((row) => !row.startsWith('Plover 1996')).join('\n');
    await page.goto(`${site.address}/table/`);
    await page.waitForSelector('astro-island[ssr]', { state: 'detached' });
    await page
      .locator('input[type=file]')
      .first()
      .setInputFiles({ name: 'mine.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
    await page.locator('[data-own-table]:visible, .notice.own:visible').first().waitFor();
  }

  it('its figure is said to be of it, has no reference, and its address shows nothing else in its place elsewhere', async () => {
    const { page, complaints, close } = await openPage(site, 'table/');
    await openOwn(page);
    await page.goto(`${site.address}/${PLACE}`);
    await expect.poll(() => page.locator('main').innerText()).toMatch(/From your own table, version/u);
    expect(await page.locator('#apa, #bibtex, #frame').count()).toBe(0);
    expect(await page.locator('main').innerText()).toMatch(
      /never leaves this browser, so no address shows this figure to others/u,
    );
    const { name, text } = await save(page, 'SVG');
    expect(name).toMatch(/^own-table-demonstration-growth-heavy-/u);
    expect(text).toContain('from a table of the author’s own');
    const address = page.url();
    expect(address).toMatch(/table=own-[\da-f]{8}#growth-heavy$/u);

    const elsewhere = await openPage(site, address.slice(site.address.length + 1));
    expect(await elsewhere.page.locator('[data-elsewhere]').innerText()).toMatch(/cannot be shown here/u);
    expect(await elsewhere.page.locator('.alone').count()).toBe(0);
    await elsewhere.page.getByRole('button', { name: /Draw the site’s figure/u }).click();
    await expect.poll(() => elsewhere.page.locator('main').innerText()).toMatch(/From the site’s table, version/u);
    expect(elsewhere.page.url()).not.toMatch(/own-/u);
    await elsewhere.close();

    // An address that cites the site's figure shows the site's, and says so.
    await page.goto(`${site.address}/figures/live/?v=2&curve=log&table=${index.dataVersion}#growth-heavy`);
    await expect.poll(() => page.locator('main').innerText()).toMatch(/From the site’s table, version/u);
    expect(await page.locator('.notice.own').innerText()).toMatch(/shows the site’s own table, not yours/u);
    // One that names no version is of the table in use, as the notice says; on other pages it says nothing of the table.
    for (const path of [
      'figures/live/?v=2&curve=log&table=none#growth-heavy',
      `evidence/?table=${index.dataVersion}`,
    ]) {
      await page.goto(`${site.address}/${path}`);
      await expect.poll(() => page.locator('.notice.own').innerText()).toMatch(/reads your own table/u);
    }
    await page.goto(`${site.address}/figures/live/embed/?v=2&curve=log#growth-heavy`);
    await expect.poll(() => page.locator('figcaption').innerText()).toContain(index.dataVersion);
    expect(complaints).toEqual([]);
    await close();
  });
});
