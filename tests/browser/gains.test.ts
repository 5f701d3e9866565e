/**
 * What one more study would do, in a real Chromium: the shaded map by keyboard, in words and numbers, of the site's table
 * and of own ones, with and without a script; and Answer's sentence of an own table.
 */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { stateGains, stateUnsaid } from '../../src/figures/gainWords.ts';
import { viewGains } from '../../src/islands/analysis/gainsView.ts';
import { findNextStudy } from '../../src/model/plan/nextStudy.ts';
import { openPlanning } from '../../src/model/plan/planningBase.ts';
import { defaultSettings } from '../../src/model/settings.ts';
import { stateNextStudy } from '../../src/practice/nextStudy.ts';
import { findViolations, openPage, type ServedSite, serveSite } from './site.ts';

const shipped = readFileSync('data/arms.csv', 'utf8');
const [header, ...lines] = shipped.trim().split('\n');
/** Studies of which an interval has no upper end, and gets wider by some. */
const ODD = [header, ...lines.filter((line) => /^[A-F]/u.test(line))].join('\n');
const PUBLISHED = readFileSync('data/published/arms.csv', 'utf8');
const planningOf = (text: string) => openPlanning(readArms(text, 'table.csv').arms, defaultSettings);

/** Shading of a table, in the engine's own words. */
function expected(text: string, people: number | null) {
  const steps = viewGains(planningOf(text), people);
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());

const visible = (page: Page) => page.locator('.gain-map:visible');
const shades = (page: Page) => visible(page).locator('svg rect[fill^="var(--gain-"]').count();
const status = (page: Page) => visible(page).getByRole('status').innerText();

/** A page of a reader's who has a table open. */
async function openOwn(text: string, path: string) {
  const opened = await openPage(site, 'table/');
  const file = { name: 'own.csv', mimeType: 'text/csv', buffer: Buffer.from(text) };
  await opened.page.locator('#own-file').setInputFiles(file);
  await expect.poll(() => opened.page.locator('.your-table').innerText()).toMatch(/own\.csv was taken/u);
  await opened.page.goto(`${site.address}/${path}`, { waitUntil: 'load' });
  return opened;
}

describe('the map of the site’s table', () => {
  it('is shaded at once, moves by keyboard, says so, and can be plain', async () => {
    const { page, complaints, close } = await openPage(site, 'studies/');
    const first = await shades(page);
    expect(first).toBeGreaterThan(3);
    const { people, tiles } = expected(shipped, null);
    expect(await status(page)).toBe(stateGains(people, tiles));
    const slider = page.getByRole('slider', { name: 'People of one more study' });
    await slider.focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('End');
    expect(await slider.getAttribute('aria-valuetext')).toBe('200 people');
    const most = expected(shipped, 200);
    await expect.poll(() => status(page)).toBe(stateGains(200, most.tiles));
    expect(await visible(page).getAttribute('aria-busy')).toBe('false');
    await expect.poll(() => shades(page)).toBeGreaterThan(first);
    const table = visible(page).locator('details table');
    await visible(page).locator('summary').click();
    const best = Math.max(...most.tiles.map(({ narrowing }) => narrowing ?? 0)).toFixed(2);
    expect(await table.innerText()).toContain(best);
    expect(await findViolations(page)).toEqual([]);
    await slider.focus();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    await expect.poll(() => shades(page)).toBe(0);
    await expect.poll(() => table.locator('th').count()).toBe(5);
    expect(await visible(page).locator('figcaption').innerText()).not.toMatch(/Shaded/u);
    await page.keyboard.press('Space');
    await expect.poll(() => table.locator('th').count()).toBe(7);
    expect(complaints).toEqual([]);
    await close();
  });

  it('goes on after a worker that could not be loaded, when asked to', async () => {
    const { page, close } = await openPage(site, 'studies/');
    await page.route('**/planningWorker*', (route) => route.abort());
    const slider = page.getByRole('slider', { name: 'People of one more study' });
    await slider.press('Home');
    await expect
      .poll(() => visible(page).locator('.problem').innerText())
      .toMatch(/^This could not be worked out: the calculation could not be loaded/u);
    await page.unroute('**/planningWorker*');
    await visible(page).getByRole('button', { name: 'Try again' }).click();
    await expect.poll(() => status(page)).toMatch(/^With 10 people: light loads, today/u);
    await close();
  });

  it('stands without JavaScript, with what its shades mean, on a narrow screen too', async () => {
    const { page, close } = await openPage(site, 'studies/', {
      javaScriptEnabled: false,
      viewport: { width: 320, height: 700 },
    });
    expect(await shades(page)).toBeGreaterThan(3);
    expect(await page.locator('.gain-legend li').count()).toBeGreaterThan(5);
    expect(await status(page)).toMatch(/^With \d+ people: light loads, today \d/u);
    expect(await page.getByRole('slider').isDisabled()).toBe(true);
    for (const part of await page.locator('.gain-map :is(svg, p, input, li)').all()) {
      const box = await part.boundingBox();
      if (box) expect(box.x + box.width).toBeLessThanOrEqual(320);
    }
    await close();
  });
});

describe('an own table', () => {
  it('is shaded by its own numbers, with signs where there is nothing to shade, and told on Answer', async () => {
    const { page, complaints, close } = await openOwn(ODD, 'studies/');
    const own = expected(ODD, null);
    await expect.poll(() => status(page)).toBe(stateGains(own.people, own.tiles));
    expect(await page.locator('.gain-map:visible').count()).toBe(1);
    const ids: string[] = await page.evaluate('[...document.querySelectorAll("main [id]")].map(({ id }) => id)');
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
    expect(await visible(page).locator('svg text', { hasText: '?' }).count()).toBeGreaterThan(5);
    expect(await visible(page).locator('.gain-legend').innerText()).toMatch(/no narrowing can be told/u);
    await page.goto(`${site.address}/`, { waitUntil: 'load' });
    await expect
      .poll(() => page.locator('#own-answer').innerText())
      .toContain(stateNextStudy(findNextStudy(planningOf(ODD))).words);
    // The study that is spoken of stands on the page that plans.
    await page.locator('#own-answer').getByRole('link', { name: 'Plan it, or another' }).click();
    const { arms } = stateNextStudy(findNextStudy(planningOf(ODD))).plans[0];
    const written = arms.map(({ load, reserve, people }) => [load, reserve, people].join('_')).join('+');
    expect(page.url()).toContain(`/plan/?a=parallel+${written}`);
    await page.waitForSelector('astro-island[ssr]', { state: 'detached' });
    expect(complaints).toEqual([]);
    await close();
  });

  it('without a curve says why the map is not shaded, and has no slider', async () => {
    const { page, close } = await openOwn(PUBLISHED, 'studies/');
    await expect.poll(() => visible(page).innerText()).toContain(stateUnsaid(expected(PUBLISHED, null).tiles));
    expect(await visible(page).getByRole('slider').count()).toBe(0);
    expect(await shades(page)).toBe(0);
    await expect.poll(() => page.locator('[aria-busy=true]:visible').count()).toBe(0);
    expect(await findViolations(page)).toEqual([]);
    await close();
  });
});
