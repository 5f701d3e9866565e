/** A reader's own table: opened, refused, kept, read by the whole site, compared, exported and removed. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { openPage, type ServedSite, serveSite } from './site.ts';

const shipped = readFileSync('data/arms.csv', 'utf8');
const [header, ...lines] = shipped.trim().split('\n');
/** Some of the shipped studies under names of their own, no longer said to be invented; one value moved. */
const OWN = [header, ...lines.filter((line) => !/^(?:Magpie 2024|Siskin)/u.test(line))]
  .map((line) => line.replace(/^Plover 1996/u, 'Own Plover 1996').replace('invented for demonstration', ''))
  .join('\n');

let site: ServedSite;
let folder: string;
beforeAll(async () => {
  site = await serveSite();
  folder = mkdtempSync(join(tmpdir(), 'own-table-'));
});
afterAll(async () => {
  rmSync(folder, { recursive: true });
  await site?.close();
});

const textOf = (page: Page, selector: string) => page.locator(selector).innerText();
const choose = (page: Page, text: string, name = 'own.csv') =>
  page.locator('#own-file').setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
const openOwn = async (path = 'table/') => {
  const opened = await openPage(site, 'table/');
  await choose(opened.page, OWN);
  await expect.poll(() => textOf(opened.page, '.your-table')).toMatch(/own\.csv was taken/u);
  if (path !== 'table/') await opened.page.goto(`${site.address}/${path}`, { waitUntil: 'load' });
  return opened;
};
const fitOwn = () => {
  const file = join(folder, 'own.csv');
  writeFileSync(file, OWN);
  const { stdout } = spawnSync(process.execPath, ['scripts/fit.ts', file, '--json'], { encoding: 'utf8' });
  return JSON.parse(stdout).bands.heavy.target.shown as { point: number; low: number; high: number };
};

describe('Your table', () => {
  it('that holds is taken, kept through a reload, and read by Evidence, Target, Programme and Studies', async () => {
    const { page, complaints, close } = await openOwn();
    const { point, low, high } = fitOwn();
    await page.goto(`${site.address}/target/`);
    await expect.poll(() => textOf(page, '#point')).toBe(point.toFixed(1));
    expect(await textOf(page, '#interval')).toBe(`${low.toFixed(1)} to ${high.toFixed(1)}`);
    expect(await textOf(page, '[data-own-table]')).toMatch(/reads your own table, own\.csv: \d+ rows of 46 studies/u);
    expect(await page.locator('[data-demonstration]').isVisible()).toBe(false);
    await page.goto(`${site.address}/evidence/`);
    await expect
      .poll(() => textOf(page, '.picture'))
      .toMatch(new RegExp(`${low.toFixed(1)} to ${high.toFixed(1)}`, 'u'));
    await page.goto(`${site.address}/programme/`);
    await expect.poll(() => page.locator('.programme').getByText('Your table is being read').count()).toBe(0);
    await page.goto(`${site.address}/studies/`);
    await expect.poll(() => page.locator('#own-studies tbody tr').count()).toBe(46);
    expect(await page.locator('#site-studies').isVisible()).toBe(false);
    await page.getByRole('link', { name: 'Own Plover 1996' }).click();
    await expect
      .poll(() => textOf(page, 'main'))
      .toMatch(/What the answer is without it[\s\S]*How each number was obtained/u);
    await page.goto(`${site.address}/`);
    await expect
      .poll(() => textOf(page, 'main'))
      .toMatch(
        new RegExp(
          `heavy loads \\(from 60.%\\) ${point.toFixed(1)}, between ${low.toFixed(1)} and ${high.toFixed(1)}`,
          'u',
        ),
      );
    expect(await page.locator('#site-answer').isVisible()).toBe(false);
    expect(await page.locator('[data-demonstration]').isVisible()).toBe(false);
    await expect.poll(() => textOf(page, '#own-answer')).toMatch(/One study: [\s\S]*The curve: /u);
    await page.goto(`${site.address}/figures/growth-light/`);
    await expect.poll(() => textOf(page, '[data-own-table]')).toMatch(/the site’s own table, not yours, own\.csv/u);
    expect(await page.locator('[data-site-numbers]').first().innerText()).toMatch(/From the site’s table, not yours/u);
    expect(await page.locator('[data-demonstration]').isVisible()).toBe(true);
    await page.getByRole('link', { name: 'Draw this figure from your own' }).click();
    await expect.poll(() => page.locator('figure svg:visible').count()).toBe(1);
    expect(await textOf(page, '[data-own-table]')).toMatch(/reads your own table/u);
    expect(complaints).toEqual([]);
    await close();
  });

  it('is put away with one click, from any page, and taken up again', async () => {
    const { page, close } = await openOwn('target/');
    await expect.poll(() => page.locator('[data-own-table]').isVisible()).toBe(true);
    const own = fitOwn().point.toFixed(1);
    await page.locator('[data-own-table] button').click();
    await expect.poll(() => textOf(page, '[data-own-table]')).toMatch(/Your table was put away/u);
    expect(await textOf(page, '#point')).not.toBe(own);
    await page.goto(`${site.address}/table/`);
    await page.getByRole('button', { name: 'Read this one' }).click();
    await page.goto(`${site.address}/target/`);
    await expect.poll(() => textOf(page, '#point')).toBe(own);
    await close();
  });

  it('with problems is refused with all of them by line, the cell as text, and as CSV; the table before it stays', async () => {
    const { page, complaints, close } = await openOwn();
    const bad = OWN.split('\n');
    bad[4] = bad[4].replace(/^[^,]*/u, '<img src=x onerror=alert(1)>');
    bad[9] = bad[9].replace(',growth,', ',grwoth,').replace(',strength,', ',grwoth,');
    await choose(page, bad.join('\n'), 'bad.csv');
    await expect.poll(() => textOf(page, '.your-table')).toMatch(/bad\.csv was not taken/u);
    const said = await textOf(page, '.your-table');
    expect(said).toMatch(/line 5, `study`: expected plain text .* received “<img src=x/u);
    expect(said).toMatch(/line 10, `outcome`: expected one of growth, strength, fatigue, received “grwoth”/u);
    expect(said).toMatch(/own\.csv the site reads this one/u);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'All of them as CSV' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('bad-problems.csv');
    const file = join(folder, 'problems.csv');
    await download.saveAs(file);
    expect(readFileSync(file, 'utf8')).toMatch(/grwoth/u);
    expect(complaints).toEqual([]);
    await close();
  });

  it('is exported so that it reads the same, and compared with the site’s', async () => {
    const { page, complaints, close } = await openOwn();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Export as CSV' }).click(),
    ]);
    const file = join(folder, 'export.csv');
    await download.saveAs(file);
    const { arms, problems } = readArms(readFileSync(file, 'utf8'), 'export.csv');
    expect(problems).toEqual([]);
    expect(arms).toEqual(readArms(OWN, 'own.csv').arms);
    await page.getByRole('button', { name: 'changes against the site' }).click();
    await expect.poll(() => textOf(page, '.your-table')).toMatch(/What each change moved/u);
    const said = await textOf(page, '.your-table');
    expect(said).toMatch(/Removed: 3\s+Magpie 2024, Plover 1996, Siskin 2022/u);
    expect(said).toMatch(/Magpie 2024 \(removed\): the target by [+−]\d/u);
    expect(complaints).toEqual([]);
    await close();
  });

  it('that is no table of arms is refused, and an empty one too', async () => {
    const { page, close } = await openPage(site, 'table/');
    await choose(page, 'just,some,words\n1,2,3\n', 'words.csv');
    await expect
      .poll(() => textOf(page, '.your-table'))
      .toMatch(/words\.csv was not taken[\s\S]*column names of the data dictionary/u);
    await choose(page, '', 'empty.csv');
    await expect.poll(() => textOf(page, '.your-table')).toMatch(/empty\.csv was not taken[\s\S]*file is empty/u);
    expect(await page.locator('.kept-tables li').count()).toBe(0);
    await close();
  });
});
