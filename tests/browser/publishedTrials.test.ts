/** The published trials, opened with one click: kept like a table of the reader's, read by the whole site, which says how they were read. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { stateTable } from '../../src/ownTable/stateTable.ts';
import { findViolations, openPage, type ServedSite, serveSite } from './site.ts';

const text = readFileSync('data/published/arms.csv', 'utf8');
const facts = stateTable('published-trials.csv', readArms(text, 'arms.csv').arms);
/** What every page says of them. */
const reading = facts.reading ?? 'nothing';

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());

const textOf = (page: Page, selector: string) => page.locator(selector).innerText();
const openTrials = async () => {
  const opened = await openPage(site, 'table/');
  await opened.page.getByRole('button', { name: 'Open the published trials' }).click();
  await expect.poll(() => textOf(opened.page, '.your-table')).toMatch(/published-trials\.csv was taken/u);
  return opened;
};

describe('The published trials', () => {
  it('are served as they stand in the file, with their references', async () => {
    const { page, close } = await openPage(site, 'table/');
    const served = await page.evaluate("fetch('/data/published/arms.csv').then((response) => response.text())");
    expect(served).toBe(text);
    const hrefs = await page
      .locator('section[aria-labelledby=published-trials] a')
      .evaluateAll((links) => links.map((link) => link.getAttribute('href')));
    expect(hrefs).toEqual(['/data/published/arms.csv', '/data/published/studies.csv']);
    expect(await textOf(page, 'section[aria-labelledby=published-trials]')).toContain(reading);
    await close();
  });

  it('are taken with one click, kept, and read by every page that reads an own table, each saying how they were read', async () => {
    const { page, complaints, close } = await openTrials();
    expect(await textOf(page, '.kept-tables')).toMatch(
      new RegExp(`published-trials\\.csv[\\s\\S]*${facts.rows} rows of ${facts.studies} studies`, 'u'),
    );
    expect(await findViolations(page)).toEqual([]);
    for (const path of [
      '',
      'evidence/',
      'target/',
      'programme/',
      'studies/',
      'studies/#study=Lasevicius+2022',
      'table/',
    ]) {
      await page.goto(`${site.address}/${path}`, { waitUntil: 'load' });
      await expect.poll(() => textOf(page, '[data-own-table]')).toContain(reading);
      expect(await page.locator('[data-demonstration]').isVisible()).toBe(false);
      await page.waitForSelector('[aria-busy=true]', { state: 'detached' });
      expect(await textOf(page, 'main')).not.toMatch(/NaN|undefined|Infinity/u);
    }
    expect(complaints).toEqual([]);
    await close();
  });

  it('give no number, and the answer says why and what it would take', async () => {
    const { page, close } = await openTrials();
    await page.goto(`${site.address}/`, { waitUntil: 'load' });
    await expect.poll(() => textOf(page, '#own-answer h1')).toMatch(/^This evidence gives no reserve that keeps/u);
    expect(await textOf(page, '#own-answer')).toMatch(
      /two or more known reserves\. A target takes at least 4 studies, to advise a lifter at least 5/u,
    );
    await page.goto(`${site.address}/studies/`, { waitUntil: 'load' });
    await expect.poll(() => page.locator('#own-studies tbody tr').count()).toBe(facts.studies);
    await page.goto(`${site.address}/figures/`, { waitUntil: 'load' });
    await expect.poll(() => textOf(page, '[data-own-table]')).toMatch(/not yours, published-trials\.csv/u);
    expect(await page.locator('[data-demonstration]').isVisible()).toBe(true);
    await close();
  });
});
