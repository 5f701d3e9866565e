/** Curating a study in the browser: by keyboard, with wrong entries, to a file and to one's own table. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { computeEffect } from '../../src/evidence/effects.ts';
import { readArms } from '../../src/evidence/table.ts';
import { toShown } from '../../src/figures/format.ts';
import { defaultSettings } from '../../src/model/settings.ts';
import { findViolations, openPage, type ServedSite, serveSite } from './site.ts';

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
}, 60_000);
afterAll(() => site?.close());

const PATH = 'table/curate/';
const CHOSEN = { design: 'parallel', training_status: 'trained', outcome: 'growth' } as const;
const TYPED = {
  study: 'Stilt 2024',
  year: '2024',
  arm: 'near failure',
  n: '14',
  exercise: 'leg press',
  muscle: 'quadriceps',
  load_pct_1rm: '75',
  reps_per_set: '9',
  measure: 'muscle thickness',
  unit: 'mm',
  baseline_mean: '42.1',
  baseline_sd: '6.3',
  followup_mean: '45.2',
  followup_sd: '6.5',
} as const;

const entry = (page: Page, name: string) => page.locator(`#curate-${name}`);
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
const status = (page: Page) => page.locator('#curate-status').innerText();
const followsFrom = (page: Page) => page.locator('aside.answer').innerText();
const rowsMade = (page: Page) => page.locator('section[aria-labelledby="curate-rows"] tbody tr').count();

async function fillRow(page: Page, changes: Readonly<Record<string, string>> = {}): Promise<void> {
  for (const [name, text] of Object.entries({ ...TYPED, ...changes })) await entry(page, name).fill(text);
  for (const [name, word] of Object.entries(CHOSEN)) await entry(page, name).selectOption(word);
}

async function download(page: Page): Promise<string> {
  const [file] = await Promise.all([page.waitForEvent('download'), press(page, 'Download curated-arms.csv')]);
  return readFileSync(await file.path(), 'utf8');
}

describe('Curating', () => {
  it('by keyboard alone goes from an empty form to a row, with what follows from it beside', async () => {
    const { page, complaints, close } = await openPage(site, PATH);
    expect(await status(page)).toMatch(/Nothing entered yet/u);
    await entry(page, 'study').focus();
    const wanted: Readonly<Record<string, string>> = { ...TYPED, ...CHOSEN };
    const visited: string[] = [];
    for (let step = 0; step < 90 && visited.at(-1) !== 'note'; step++) {
      const name = await page.evaluate<string>('document.activeElement.id.replace("curate-", "")');
      if (wanted[name] !== undefined) await page.keyboard.type(wanted[name]);
      visited.push(name);
      await page.keyboard.press('Tab');
    }
    expect(visited).toEqual(expect.arrayContaining(Object.keys(wanted)));
    expect(await status(page)).toMatch(/^No problem/u);
    const change = await page.locator('#curate-log-ratio strong').innerText();
    await page.keyboard.press('Enter');
    expect(await status(page)).toMatch(/Added as line 2\. The form is ready for the next arm of Stilt 2024/u);
    await expect.poll(() => page.evaluate('document.activeElement.id')).toBe('curate-arm');
    const [arm] = readArms(await download(page), '').arms;
    const effect = computeEffect(arm, {
      metric: 'log-ratio',
      assumedCorrelation: defaultSettings.assumedCorrelation.growth,
    });
    if (typeof effect === 'string') throw new Error(effect);
    expect(change).toMatch(new RegExp(`^${toShown(effect.y, 'log-ratio').toFixed(1)}\\u00a0%`, 'u'));
    expect(complaints).toEqual([]);
    await close();
  });

  it('names a wrong entry where it stands and in the list, and takes the reader there', async () => {
    const { page, complaints, close } = await openPage(site, PATH);
    await fillRow(page, { baseline_sd: '6,3', arm: '<img src=x onerror=alert(1)>' });
    expect(await page.locator('#curate-baseline_sd-problem').innerText()).toBe(
      'Expected a number above 0, received “6,3”. Use a decimal point.',
    );
    expect(await entry(page, 'baseline_sd').getAttribute('aria-invalid')).toBe('true');
    expect(await entry(page, 'baseline_sd').getAttribute('aria-describedby')).toMatch(/baseline_sd-problem/u);
    expect(await followsFrom(page)).toMatch(/as soon as baseline_sd can be read/u);
    expect(await followsFrom(page)).toMatch(/line 2, `arm`: expected plain text .*It looks like markup/u);
    await press(page, 'Go to baseline_sd');
    await expect.poll(() => page.evaluate('document.activeElement.id')).toBe('curate-baseline_sd');
    await press(page, 'Add the row');
    expect(await rowsMade(page)).toBe(0);
    await expect.poll(() => page.evaluate('document.activeElement.id')).toBe('curate-arm');
    expect(complaints).toEqual([]);
    await close();
  });

  it('recovers the SD of a change from its p as it is typed, with formula and source', async () => {
    const { page, close } = await openPage(site, PATH);
    await page.getByLabel('Mean and SD after').uncheck();
    await page.getByLabel('Mean change', { exact: true }).check();
    await page.getByLabel('p of the change').check();
    const { followup_mean: _m, followup_sd: _s, ...typed } = TYPED;
    for (const [name, text] of Object.entries({ ...typed, n: '46', change_mean: '3.8', change_p: '0.008' })) {
      await entry(page, name).fill(text);
    }
    await entry(page, 'outcome').selectOption('growth');
    // 9.29 = 1.37 √46: the Cochrane Handbook's example has a standard error of 1.37.
    await expect
      .poll(() => page.locator('table.numbers').innerText())
      .toMatch(/SD of the change\s+9\.2\d+\s+p: \|change\| \/ t\(p\) × √n[^\n]*\s+Cochrane Handbook/u);
    await page.getByLabel('Mean and SD after').check();
    await entry(page, 'followup_mean').fill('45.9');
    await entry(page, 'followup_sd').fill('1.2');
    expect(await followsFrom(page)).toMatch(/expected SDs that imply a correlation from 0 to 1, not -/u);
    await close();
  });

  it('fills in a reserve from load and repetitions, and one from a share of the maximum', async () => {
    const { page, close } = await openPage(site, PATH);
    await fillRow(page);
    await page.getByText('Estimate a reserve that the paper does not report').click();
    await press(page, 'Use it: reserve from load and repetitions');
    // Nuzzo et al. 2024: 11.51 repetitions in the bench press at 75 % of 1RM, 9 done.
    expect(await entry(page, 'reserve_reps').inputValue()).toBe('2.51');
    expect(await entry(page, 'reserve_basis').inputValue()).toBe('load-table');
    await page.locator('#reserve-share_pct').fill('60');
    await page.locator('#reserve-maximum').fill('20');
    await page.locator('#reserve-maximum_sd').fill('2');
    await press(page, 'Use it: reserve from a share of the maximum');
    expect(await entry(page, 'reserve_reps').inputValue()).toBe('8');
    expect(await entry(page, 'reserve_sd').inputValue()).toBe('0.8');
    expect(await entry(page, 'reserve_basis').inputValue()).toBe('share-of-maximum');
    expect(await status(page)).toMatch(/No problem.*are filled in/u);
    await close();
  });

  it('gives rows to copy and to download that `npm run check` accepts, and keeps all of it through a reload', async () => {
    const { page, complaints, close } = await openPage(site, PATH, {
      permissions: ['clipboard-read', 'clipboard-write'],
    });
    await fillRow(page);
    await press(page, 'Add the row');
    expect(await entry(page, 'study').inputValue()).toBe('Stilt 2024');
    expect(await entry(page, 'baseline_mean').inputValue()).toBe('');
    await fillRow(page, { arm: 'to failure', reps_per_set: '11.5', followup_mean: '45.9' });
    await press(page, 'Add the row');
    await press(page, 'Next measure after line 3');
    await entry(page, 'measure').fill('cross-sectional area');
    const csv = await download(page);
    const folder = mkdtempSync(join(tmpdir(), 'curated-'));
    const file = join(folder, 'arms.csv');
    writeFileSync(file, csv);
    const { status: code, stdout } = spawnSync(process.execPath, ['scripts/check.ts', file], { encoding: 'utf8' });
    rmSync(folder, { recursive: true });
    expect(stdout).toMatch(/2 rows of 2 arms in 1 studies/u);
    expect(code).toBe(0);
    const copied = async () => {
      await press(page, 'Copy as CSV');
      await expect.poll(() => page.locator('section[aria-labelledby="curate-rows"]').innerText()).toMatch(/Copied/u);
      return page.evaluate<string>('navigator.clipboard.readText()');
    };
    expect(await copied()).toBe(csv);
    await page.getByLabel('with the header row').uncheck();
    expect(await copied()).toBe(csv.slice(csv.indexOf('\n') + 1));
    await page.reload();
    await expect.poll(() => rowsMade(page)).toBe(2);
    expect(await entry(page, 'measure').inputValue()).toBe('cross-sectional area');
    expect(await entry(page, 'arm').inputValue()).toBe('to failure');
    await press(page, 'Remove line 2');
    expect(await rowsMade(page)).toBe(1);
    await press(page, 'Take back');
    expect(await rowsMade(page)).toBe(2);
    expect(complaints).toEqual([]);
    await close();
  });

  it('says what it cannot read of an earlier visit and goes on', async () => {
    const { page, close } = await openPage(site, PATH);
    await page.evaluate('localStorage.setItem("shy-of-failure curating", "{\\"rows\\": 3}")');
    await page.reload();
    await expect.poll(() => page.locator('[role="alert"]').innerText()).toMatch(/could not be read \(rows: /u);
    await entry(page, 'study').fill('Stilt 2024');
    await page.reload();
    await expect.poll(() => entry(page, 'study').inputValue()).toBe('Stilt 2024');
    expect(await page.locator('[role="alert"]').count()).toBe(0);
    await close();
  });

  it('moves no button away from under a click where only the entry in hand is explained', async () => {
    const { page, close } = await openPage(site, PATH);
    await page.getByLabel('Explain every entry, not only the one in hand').uncheck();
    await fillRow(page);
    expect(await page.locator('form .help:visible').count()).toBe(1);
    await press(page, 'Add the row');
    expect(await rowsMade(page)).toBe(1);
    await close();
  });
});

describe('Adding to the own table', () => {
  /** What the site's other pages would find. */
  const readOwn = (page: Page) =>
    page.evaluate<{
      name: string;
      text: string;
      studies: number;
      rows: number;
    } | null>(`new Promise((resolve, reject) => {
      const opened = indexedDB.open('shy-of-failure');
      opened.onerror = () => reject(opened.error);
      opened.onsuccess = () => {
        const version = localStorage.getItem('shy-of-failure table in use');
        const kept = opened.result.transaction('tables').objectStore('tables');
        const about = kept.get('about ' + version);
        const text = kept.get('text ' + version);
        text.onsuccess = () => resolve(about.result ? { ...about.result, text: text.result } : null);
        text.onerror = () => reject(text.error);
      };
    })`);
  const adding = (page: Page) => page.locator('section[aria-labelledby="add-to-table"]').innerText();

  it('asks what to start it with, stores it whole, adds to it later and refuses the same row twice', async () => {
    const { page, complaints, close } = await openPage(site, PATH);
    await fillRow(page);
    await press(page, 'Add the row');
    await press(page, 'Add the rows to your table');
    await expect.poll(() => adding(page)).toMatch(/no table of yours in this browser yet/u);
    await press(page, 'with these rows alone');
    await expect.poll(() => adding(page)).toMatch(/Added 1 row: own-arms\.csv now has 1 row of 1 study/u);
    const first = await readOwn(page);
    expect(first).toMatchObject({ name: 'own-arms.csv', studies: 1, rows: 1 });
    expect(first?.text).toBe(await download(page));
    await press(page, 'Add the rows to your table');
    await expect
      .poll(() => adding(page))
      .toMatch(/Nothing was added: .*line 3[\s\S]*a measurement that line 2 does not have/u);
    expect(await readOwn(page)).toEqual(first);
    await press(page, 'Remove all rows');
    await fillRow(page, { arm: 'to failure', reps_per_set: '11.5' });
    await press(page, 'Add the row');
    await press(page, 'Add the rows to your table');
    await expect.poll(() => adding(page)).toMatch(/now has 2 rows of 1 study/u);
    const second = await readOwn(page);
    const { arms, problems } = readArms(second?.text ?? '', 'own');
    expect(problems).toEqual([]);
    expect(arms.map(({ arm }) => arm)).toEqual(['near failure', 'to failure']);
    expect(complaints).toEqual([]);
    await close();
  });

  it('puts nothing in the place of a table that was opened since, says so, and adds to that one', async () => {
    const { page, close } = await openPage(site, PATH);
    await fillRow(page);
    await press(page, 'Add the row');
    await press(page, 'Add the rows to your table');
    await expect.poll(() => adding(page)).toMatch(/no table of yours in this browser yet/u);
    const other = await page.context().newPage();
    await other.goto(`${site.address}/table/`, { waitUntil: 'load' });
    await other.locator('#own-file').setInputFiles('data/arms.csv');
    await expect.poll(() => other.locator('.your-table').innerText()).toMatch(/arms\.csv was taken/u);
    await press(page, 'with these rows alone');
    await expect.poll(() => adding(page)).toMatch(/Nothing was added yet: since you began, arms\.csv was taken up/u);
    const shipped = readFileSync('data/arms.csv', 'utf8');
    expect((await readOwn(page))?.text).toBe(shipped);
    await press(page, 'Add the rows to arms.csv');
    await expect.poll(() => adding(page), { timeout: 20_000 }).toMatch(/Added 1 row: arms\.csv now has/u);
    expect((await readOwn(page))?.rows).toBe(readArms(shipped, '').arms.length + 1);
    await close();
  });

  it('starts from a copy of the site’s table where that is asked for, and says that it stays a demonstration', async () => {
    const { page, complaints, close } = await openPage(site, PATH);
    await fillRow(page);
    await press(page, 'Add the row');
    await press(page, 'Add the rows to your table');
    await expect.poll(() => adding(page)).toMatch(/invented for demonstration/u);
    await page.getByRole('button', { name: /with a copy of the site’s/u }).click();
    await expect.poll(() => adding(page), { timeout: 20_000 }).toMatch(/Added 1 row/u);
    const shipped = readArms(readFileSync('data/arms.csv', 'utf8'), 'arms.csv').arms;
    const own = await readOwn(page);
    const { arms } = readArms(own?.text ?? '', 'own');
    expect(arms.slice(0, -1)).toEqual(shipped);
    expect(arms.at(-1)?.study).toBe('Stilt 2024');
    expect(own?.rows).toBe(shipped.length + 1);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('Curating without JavaScript', () => {
  it('says so, explains every column and links to the empty table', async () => {
    const { page, complaints, close } = await openPage(site, PATH, { javaScriptEnabled: false });
    expect(await page.locator('noscript, .problem').first().innerText()).toMatch(/The form needs JavaScript/u);
    expect(await page.locator('form').isVisible()).toBe(false);
    const names = await page.locator('main details th[scope="row"] code').allTextContents();
    const template = await page.request.get(`${site.address}/data/template.csv`);
    expect(`${names.join(',')}\n`).toBe(await template.text());
    expect(await page.getByRole('link', { name: 'empty table' }).first().getAttribute('href')).toBe(
      '/data/template.csv',
    );
    const columns = await (await page.request.get(`${site.address}/data/columns.csv`)).text();
    for (const name of names) expect(columns).toContain(`\n${name},`);
    expect(complaints).toEqual([]);
    await close();
  });
});

it('a form with long words and all of its parts open does not scroll sideways at 320 px', async () => {
  const { page, close } = await openPage(site, PATH, { viewport: { width: 320, height: 700 } });
  await fillRow(page, { study: 'W'.repeat(120), baseline_sd: `${'9'.repeat(40)},` });
  for (const summary of await page.locator('summary').all()) await summary.click();
  expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
  await entry(page, 'baseline_sd').fill('6.3');
  await press(page, 'Add the row');
  await press(page, 'Add the rows to your table');
  expect(await rowsMade(page)).toBe(1);
  expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
  await close();
});

it.each(['light', 'dark'] as const)(
  'in %s with problems, rows and questions shown has no accessibility violation',
  async (colorScheme) => {
    const { page, close } = await openPage(site, PATH, { colorScheme });
    await fillRow(page);
    await press(page, 'Add the row');
    await press(page, 'Add the rows to your table');
    await fillRow(page, { arm: 'another', baseline_sd: '6,3', year: '' });
    for (const summary of await page.locator('summary').all()) await summary.click();
    expect(await status(page)).toMatch(/1 to mend, 1 still needed/u);
    expect(await findViolations(page)).toEqual([]);
    await close();
  },
);
