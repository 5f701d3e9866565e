/** The Studies pages in a real Chromium: the table sorted and filtered by keyboard, and all of it without a script. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { openPage, type ServedSite, serveSite } from './site.ts';

const { arms } = readArms(readFileSync('data/arms.csv', 'utf8'), 'arms.csv');
const names = [...new Set(arms.map(({ study }) => study))];

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());

/** Names of the studies that are seen, from the top. */
const seen = (page: Page) => page.locator('#studies tbody tr:not([hidden]) th').allInnerTexts();
/** Numbers of a column that are seen, from the top; null where the study has none. */
const column = async (page: Page, place: number) =>
  (await page.locator(`#studies tbody tr:not([hidden]) > :nth-child(${place + 1})`).allInnerTexts()).map((text) =>
    /\d/u.test(text) ? Number(text.replace('−', '-').replace(' %', '')) : null,
  );

describe('the table of studies', () => {
  it('is sorted by keyboard, rising and falling, and says so to those who do not see it', async () => {
    const { page, complaints, close } = await openPage(site, 'studies/');
    const people = page.locator('#studies th').filter({ hasText: 'People' });
    await people.getByRole('button').focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => people.getAttribute('aria-sort')).toBe('ascending');
    const rising = (await column(page, 5)) as number[];
    expect(rising).toEqual([...rising].sort((a, b) => a - b));
    expect(new Set(rising).size).toBeGreaterThan(5);
    await page.keyboard.press('Space');
    await expect.poll(() => people.getAttribute('aria-sort')).toBe('descending');
    expect(await column(page, 5)).toEqual([...rising].sort((a, b) => b - a));
    expect(await page.locator('.study-filter').getByRole('status').innerText()).toBe(
      `${names.length} of ${names.length} studies, by People, falling`,
    );
    expect(await page.locator('#studies th[aria-sort]').count()).toBe(1);
    await page.locator('#studies th button').first().press('Enter');
    await expect.poll(() => seen(page)).toEqual([...names].sort());
    expect(complaints).toEqual([]);
    await close();
  });

  it('is filtered by words and choices, and stands as at first again', async () => {
    const { page, close } = await openPage(site, 'studies/');
    const atFirst = await seen(page);
    const pressed = new Set(arms.filter(({ exercise }) => exercise === 'leg press').map(({ study }) => study));
    expect(pressed.size).toBeGreaterThan(1);
    await page.getByLabel('Find a study').fill('leg press');
    expect((await seen(page)).sort()).toEqual([...pressed].sort());
    expect(await page.locator('.study-filter').getByRole('status').innerText()).toBe(
      `${pressed.size} of ${names.length} studies`,
    );
    await page.getByLabel('Outcome').selectOption('strength');
    const strong = arms.filter(({ study, outcome }) => pressed.has(study) && outcome === 'strength');
    expect((await seen(page)).sort()).toEqual([...new Set(strong.map(({ study }) => study))].sort());
    await page.getByLabel('Find a study').fill('no such study');
    await expect
      .poll(() => page.locator('.study-filter').getByRole('status').innerText())
      .toBe(`0 of ${names.length} studies`);
    await page.getByRole('button', { name: 'Show all as at first' }).click();
    await expect.poll(() => seen(page)).toEqual(atFirst);
    expect(await page.getByLabel('Find a study').inputValue()).toBe('');
    await close();
  });

  it('sorted by a number that some studies lack puts these last in both directions', async () => {
    const { page, close } = await openPage(site, 'studies/');
    const head = page.locator('#studies th[data-column="13"] button');
    for (const direction of [1, -1]) {
      await head.click();
      const targets = await column(page, 13);
      const present = targets.filter((target) => target !== null);
      expect(present.length).toBeGreaterThan(5);
      expect(targets.slice(present.length).every((target) => target === null)).toBe(true);
      expect(present).toEqual([...present].sort((a, b) => direction * (a - b)));
    }
    await close();
  });

  it('without JavaScript shows all studies, the map with its empty regions, and a link to each', async () => {
    const { page, complaints, close } = await openPage(site, 'studies/', { javaScriptEnabled: false });
    expect((await seen(page)).sort()).toEqual([...names].sort());
    expect(await page.locator('form').count()).toBe(0);
    expect(await page.locator('figure svg[role="img"]').getAttribute('aria-label')).toMatch(/\(1\) No arm /u);
    await page.getByRole('link', { name: 'Plover 1996' }).click();
    await expect.poll(() => page.locator('h1').innerText()).toBe('Plover 1996');
    expect(complaints).toEqual([]);
    await close();
  });

  it('on a narrow screen scrolls inside its frame, the filter in reach', async () => {
    const { page, close } = await openPage(site, 'studies/', { viewport: { width: 320, height: 700 } });
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
    for (const field of await page.locator('.study-filter :is(input, select)').all()) {
      const box = await field.boundingBox();
      expect((box?.x ?? Infinity) + (box?.width ?? 0)).toBeLessThanOrEqual(320);
    }
    await close();
  });
});

describe('the page of a study', () => {
  it('without JavaScript shows each row with where its numbers come from, and slope and target without it', async () => {
    const { page, close } = await openPage(site, 'studies/plover-1996/', { javaScriptEnabled: false });
    const own = arms.filter(({ study }) => study === 'Plover 1996');
    expect(await page.locator('.study-rows tbody tr').count()).toBe(own.length);
    expect(await page.locator('.study-rows').innerText()).toMatch(
      /% of heavy loads[\s\S]*left out: measures strength/u,
    );
    expect(await page.locator('.reference').innerText()).toMatch(/Plover A, Plover B \(1996\)/u);
    const origins = page.locator('h3:has-text("How each number was obtained") ~ details');
    expect(await origins.count()).toBe(own.length);
    await origins.first().locator('summary').click();
    await expect.poll(() => origins.first().innerText()).toMatch(/ln\(m₂\/m₁\)/u);
    const influence = page.getByRole('region', { name: 'With and without this study' });
    expect(await influence.innerText()).toMatch(/heavy loads\s+6\s+\d\.\d\u00a0%/u);
    expect(await page.getByRole('link', { name: 'Studies', exact: true }).getAttribute('aria-current')).toBe('true');
    await close();
  });
});
