/** Curating a study in the browser: by keyboard, with wrong entries, to a file and to one's own table. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { computeEffect } from '../../src/evidence/effects.ts';
import { readArms } from '../../src/evidence/table.ts';
import { toShown } from '../../src/figures/format.ts';
import { defaultSettings } from '../../src/model/settings.ts';
import { findViolations, openPage, type ServedSite, serveSite } from './site.ts';

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());

const PATH = 'table/curate/';

/** A study of two arms and one measure; other entries are not said. */
const STUDY = { study: 'Stilt 2024', year: '2024', design: 'parallel', training_status: 'trained' } as const;
const SHARED = { exercise: 'leg press', load_pct_1rm: '75' } as const;
const ARMS = [
  { arm: 'to failure', n: '14', reps_per_set: '11.5', reserve_reps: '0' },
  { arm: 'near failure', n: '15', reps_per_set: '8-10', reserve_reps: '1-3' },
] as const;
const MEASURE = { outcome: 'growth', measure: 'muscle thickness', muscle: 'quadriceps', unit: 'mm' } as const;
const RESULTS = [
  { baseline_mean: '42.1', baseline_sd: '6.3', followup_mean: '45.2', followup_sd: '6.5' },
  { baseline_mean: '41.8', baseline_sd: '6.1', followup_mean: '44.3', followup_sd: '6.4' },
] as const;

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
const status = (page: Page) => page.locator('#curate-status').innerText();
const followsFrom = (page: Page) => page.locator('aside.answer').innerText();
const made = (page: Page) => page.locator('section[aria-labelledby="curate-studies"]').innerText();
const focused = (page: Page) => page.evaluate<string>('document.activeElement.id');

const ofStudy = (page: Page, column: string) => page.locator(`#entry-${column}`);
/** The entry of a column for an arm or a measure, by its place from 0. */
const ofArm = (page: Page, column: string, arm: number) =>
  page.locator(`[id^="entry-arm-"][id$="-${column}"]`).nth(arm);
const ofMeasure = (page: Page, column: string, measure = 0) =>
  page.locator(`[id^="entry-measure-"][id$="-${column}"]`).nth(measure);
const ofResult = (page: Page, column: string, arm: number, measure = 0) =>
  page.locator('.numbers-grid').nth(measure).locator(`[id^="entry-result-"][id$="-${column}"]`).nth(arm);

async function put(entry: Locator, text: string): Promise<void> {
  if ((await entry.evaluate((element) => element.tagName)) === 'SELECT') await entry.selectOption(text);
  else await entry.fill(text);
}

async function fillStudy(page: Page, changes: Readonly<Record<string, string>> = {}): Promise<void> {
  for (const [column, text] of Object.entries({ ...STUDY, ...SHARED, ...changes }))
    await put(ofStudy(page, column), text);
  for (const [arm, texts] of ARMS.entries()) {
    for (const [column, text] of Object.entries(texts)) await put(ofArm(page, column, arm), text);
  }
  for (const [column, text] of Object.entries(MEASURE)) await put(ofMeasure(page, column), text);
  for (const [arm, texts] of RESULTS.entries()) {
    for (const [column, text] of Object.entries(texts)) await put(ofResult(page, column, arm), text);
  }
}

async function download(page: Page): Promise<string> {
  const [file] = await Promise.all([page.waitForEvent('download'), press(page, 'Download curated-arms.csv')]);
  return readFileSync(await file.path(), 'utf8');
}

/** Pastes as from a spreadsheet into the entry that has the focus. */
const paste = (page: Page, text: string) =>
  page.evaluate(`{
    const data = new DataTransfer();
    data.setData('text/plain', ${JSON.stringify(text)});
    const event = new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true });
    document.activeElement.dispatchEvent(event);
  }`);

/** Goes by Tab to the entry whose id ends so, and on from there. */
async function tabTo(page: Page, end: string): Promise<void> {
  for (let step = 0; step < 140; step++) {
    await page.keyboard.press('Tab');
    if ((await focused(page)).endsWith(end)) return;
  }
  throw new Error(`Tab never came to ${end}`);
}

describe('Curating', () => {
  it('by keyboard alone goes from an empty form to a study of 3 arms and 2 measures, with what follows beside', async () => {
    const { page, complaints, close } = await openPage(site, PATH);
    const { keyboard } = page;
    expect(await status(page)).toMatch(/Nothing entered yet/u);
    await ofStudy(page, 'study').focus();
    await keyboard.type('Stilt 2024');
    for (const [end, text] of [
      ['entry-year', '2024'],
      ['entry-design', 'diff'],
      ['entry-training_status', 'trained'],
    ]) {
      await tabTo(page, end);
      await keyboard.type(text);
    }
    await tabTo(page, 'add-arm');
    await keyboard.press('Enter');
    await expect.poll(() => focused(page)).toMatch(/^entry-arm-\d+-arm$/u);
    await keyboard.type('5 left');
    await keyboard.press('Shift+Tab');
    await keyboard.type('2 left');
    await keyboard.press('Shift+Tab');
    await keyboard.type('to failure');
    for (const [column, texts] of [
      ['n', ['14', '15', '13']],
      ['exercise', ['leg press']],
      ['load_pct_1rm', ['70-80']],
      ['reps_per_set', ['12', '10', '7']],
      ['reserve_reps', ['0', '1-3', '5']],
    ] as const) {
      await tabTo(page, `-${column}`);
      for (const [i, text] of texts.entries()) {
        if (i > 0) await keyboard.press('Tab');
        await keyboard.type(text);
      }
    }
    const enterMeasure = async (measure: string, unit: string, numbers: readonly (readonly string[])[]) => {
      for (const [column, text] of [
        ['measure', measure],
        ['muscle', 'quadriceps'],
        ['unit', unit],
      ]) {
        await tabTo(page, `-${column}`);
        await keyboard.type(text);
      }
      await tabTo(page, '-baseline_mean');
      // Down by Enter; from the last arm it goes to the top of the next column.
      const columns = numbers[0].map((_, column) => numbers.map((row) => row[column]));
      for (const [i, text] of columns.flat().entries()) {
        if (i > 0) await keyboard.press('Enter');
        await keyboard.type(text);
      }
    };
    await tabTo(page, '-outcome');
    await keyboard.type('growth');
    await enterMeasure('muscle thickness', 'mm', [
      ['42.1', '6.3', '45.2', '6.5'],
      ['41.8', '6.1', '44.6', '6.4'],
      ['42.6', '6.2', '44.9', '6.3'],
    ]);
    await tabTo(page, 'add-measure');
    await keyboard.press('Enter');
    await expect.poll(() => focused(page)).toMatch(/^entry-measure-\d+-outcome$/u);
    await keyboard.type('strength');
    await enterMeasure('1RM', 'kg', [
      ['120', '28', '141', '31'],
      ['118', '27', '139', '30'],
      ['121', '29', '138', '31'],
    ]);
    expect(await status(page)).toMatch(/^No problem/u);
    const change = await page.locator('#curate-log-ratio strong').innerText();
    const { arms, problems } = readArms(await download(page), '');
    expect(problems).toEqual([]);
    expect(arms.map(({ arm, outcome, cohort, n, baseline_mean: mean }) => [arm, outcome, cohort, n, mean])).toEqual([
      ['to failure', 'growth', 'a', 14, 42.1],
      ['to failure', 'strength', 'a', 14, 120],
      ['2 left', 'growth', 'b', 15, 41.8],
      ['2 left', 'strength', 'b', 15, 118],
      ['5 left', 'growth', 'c', 13, 42.6],
      ['5 left', 'strength', 'c', 13, 121],
    ]);
    expect(arms[2].ranges).toMatchObject({ reserve_reps: { low: 1, high: 3 }, load_pct_1rm: { low: 70, high: 80 } });
    const effect = computeEffect(arms[5], {
      metric: 'log-ratio',
      assumedCorrelation: defaultSettings.assumedCorrelation.strength,
    });
    if (typeof effect === 'string') throw new Error(effect);
    expect(change).toMatch(new RegExp(`^${toShown(effect.y, 'log-ratio').toFixed(1)}\\u00a0%`, 'u'));
    expect(complaints).toEqual([]);
    await close();
  });

  it('names a wrong entry in words where it stands and in the list, and takes the reader there', async () => {
    const { page, complaints, close } = await openPage(site, PATH);
    await fillStudy(page);
    await ofArm(page, 'arm', 1).fill('<img src=x onerror=alert(1)>');
    const wrong = ofResult(page, 'baseline_sd', 0);
    await wrong.fill('6,3');
    const id = await wrong.getAttribute('id');
    expect(await page.locator(`[id="${id}-problem"]`).innerText()).toBe(
      'SD before: Expected a number above 0, received “6,3”. Use a decimal point.',
    );
    expect(await wrong.getAttribute('aria-invalid')).toBe('true');
    expect(await wrong.getAttribute('aria-describedby')).toContain(`${id}-problem`);
    expect(await wrong.getAttribute('aria-label')).toBe('SD before, to failure');
    expect(await followsFrom(page)).toMatch(/as soon as “SD before” can be read/u);
    expect(await followsFrom(page)).toMatch(
      /Name of the arm, <img src=x.*: Expected plain text .*It looks like markup/u,
    );
    await press(page, 'Go there: SD before, to failure, muscle thickness, quadriceps');
    await expect.poll(() => focused(page)).toBe(id);
    await wrong.fill('6.3');
    expect(await followsFrom(page)).not.toMatch(/SD before/u);
    expect(complaints).toEqual([]);
    await close();
  });

  it('takes a block of a spreadsheet with decimal commas from the cell in hand on, and takes it back', async () => {
    const { page, complaints, close } = await openPage(site, PATH);
    await fillStudy(page);
    const before = await download(page);
    await ofResult(page, 'baseline_mean', 0).focus();
    await paste(page, '40,5\t6,1\t43,2\t6,2\r\n41,5\t6,3\t44,2\t6,4\tbeyond\r\n');
    expect(await status(page)).toMatch(/8 cells pasted\. 8 decimal commas written as points\. 1 cell left out/u);
    expect(await ofResult(page, 'followup_sd', 1).inputValue()).toBe('6.4');
    await press(page, 'Take back');
    expect(await download(page)).toBe(before);
    await ofArm(page, 'reps_per_set', 0).focus();
    await paste(page, '7,5\t6-8');
    expect(await ofArm(page, 'reps_per_set', 0).inputValue()).toBe('7.5');
    expect(await ofArm(page, 'reps_per_set', 1).inputValue()).toBe('6-8');
    expect(complaints).toEqual([]);
    await close();
  });

  it('recovers the SD of a change from its p as it is typed, with formula and source', async () => {
    const { page, close } = await openPage(site, PATH);
    await fillStudy(page);
    const kinds = (group: string) => page.getByRole('group', { name: group, exact: true });
    await kinds('Before and after').getByLabel('SDs', { exact: true }).uncheck();
    await kinds('The change').getByLabel('Mean', { exact: true }).check();
    await kinds('Tests and ready-made effects').getByLabel('p of the change').check();
    await ofResult(page, 'followup_mean', 0).fill('');
    await ofArm(page, 'n', 0).fill('46');
    await ofResult(page, 'change_mean', 0).fill('3.8');
    await ofResult(page, 'change_p', 0).fill('0.008');
    // 9.29 = 1.37 √46: the Cochrane Handbook's example has a standard error of 1.37.
    await expect
      .poll(() => page.locator('table.numbers').innerText())
      .toMatch(/SD of the change\s+9\.2\d+\s+p: \|change\| \/ t\(p\) × √n[^\n]*\s+Cochrane Handbook/u);
    await close();
  });

  it('fills in a reserve of an arm from load and repetitions, and one from a share of the maximum', async () => {
    const { page, close } = await openPage(site, PATH);
    await fillStudy(page);
    await ofArm(page, 'reps_per_set', 1).fill('9');
    await page.getByText('Estimate a reserve that the paper does not report').click();
    await page.locator('#reserve-arm').selectOption('near failure');
    await press(page, 'Use it for near failure: reserve from load and repetitions');
    // Nuzzo et al. 2024: 11.51 repetitions in the bench press at 75 % of 1RM, 9 done.
    expect(await ofArm(page, 'reserve_reps', 1).inputValue()).toBe('2.51');
    expect(await ofArm(page, 'reserve_basis', 1).inputValue()).toBe('load-table');
    await page.locator('#reserve-share_pct').fill('60');
    await page.locator('#reserve-maximum').fill('20');
    await page.locator('#reserve-maximum_sd').fill('2');
    await press(page, 'Use it for near failure: reserve from a share of the maximum');
    await expect.poll(() => ofArm(page, 'reserve_reps', 1).inputValue()).toBe('8');
    expect(await ofArm(page, 'reserve_sd', 1).inputValue()).toBe('0.8');
    expect(await ofArm(page, 'reserve_reps', 0).inputValue()).toBe('0');
    expect(await status(page)).toMatch(/No problem.*Filled in: Repetitions in reserve: 8/u);
    await close();
  });

  it('says which results make no row, and lets a fact differ between arms', async () => {
    const { page, close } = await openPage(site, PATH);
    await fillStudy(page);
    await page.locator('#add-measure').click();
    await put(ofMeasure(page, 'outcome', 1), 'strength');
    await ofMeasure(page, 'measure', 1).fill('1RM');
    await ofResult(page, 'baseline_mean', 0, 1).fill('120');
    await ofResult(page, 'baseline_sd', 0, 1).fill('20');
    await ofResult(page, 'followup_mean', 0, 1).fill('130');
    await expect
      .poll(() => page.locator('form').innerText())
      .toMatch(/The study makes 3 rows\. Nothing is entered, so that there is no row, for near failure in 1RM/u);
    await press(page, 'Load, % of 1RM: differs between arms');
    await expect.poll(() => ofArm(page, 'load_pct_1rm', 1).inputValue()).toBe('75');
    await ofArm(page, 'load_pct_1rm', 1).fill('30');
    await press(page, 'Load, % of 1RM: the same for all arms');
    await expect.poll(() => ofStudy(page, 'load_pct_1rm').inputValue()).toBe('75');
    await press(page, 'Take back');
    await expect.poll(() => ofArm(page, 'load_pct_1rm', 1).inputValue()).toBe('30');
    await close();
  });

  it('gives rows to copy and to download that `npm run check` accepts, and keeps all of it through a reload', async () => {
    const { page, complaints, close } = await openPage(site, PATH, {
      permissions: ['clipboard-read', 'clipboard-write'],
    });
    await fillStudy(page);
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
      await expect.poll(() => made(page)).toMatch(/Copied/u);
      return page.evaluate<string>('navigator.clipboard.readText()');
    };
    expect(await copied()).toBe(csv);
    await page.getByLabel('with the header row').uncheck();
    // “Copied” still stands there from the first time.
    await expect.poll(copied).toBe(csv.slice(csv.indexOf('\n') + 1));
    await press(page, 'Next study');
    await expect.poll(() => focused(page)).toBe('entry-study');
    await page.keyboard.type('Avocet 2025');
    await page.reload();
    await expect.poll(() => made(page)).toMatch(/Stilt 2024[\s\S]*Avocet 2025/u);
    expect(await ofStudy(page, 'study').inputValue()).toBe('Avocet 2025');
    await press(page, 'Remove Stilt 2024');
    await expect.poll(() => made(page)).not.toMatch(/Stilt/u);
    await press(page, 'Take back');
    await press(page, 'Open Stilt 2024');
    await expect.poll(() => ofResult(page, 'followup_sd', 1).inputValue()).toBe('6.4');
    expect(complaints).toEqual([]);
    await close();
  });

  it('takes over what the form before it kept, and says what it cannot read', async () => {
    const { page, close } = await openPage(site, PATH);
    await page.evaluate(`localStorage.setItem('shy-of-failure curating', JSON.stringify({
      rows: [{ study: 'Stilt 2024', arm: 'one', baseline_mean: '40' }, { study: 'Stilt 2024', arm: 'two', baseline_mean: '41' }],
      draft: {}, at: null, reports: ['before'], reserve: {}, isExplained: true,
    }))`);
    await page.reload();
    await expect.poll(() => page.locator('.curate').innerText()).toMatch(/was taken over: 2 rows as 1 study/u);
    expect(await ofResult(page, 'baseline_mean', 1).inputValue()).toBe('41');
    await page.evaluate('localStorage.setItem("shy-of-failure curating", "{\\"rows\\": 3}")');
    await page.reload();
    await expect.poll(() => page.locator('[role="alert"]').innerText()).toMatch(/could not be read \(studies: /u);
    await ofStudy(page, 'study').fill('Stilt 2025');
    await page.reload();
    await expect.poll(() => ofStudy(page, 'study').inputValue()).toBe('Stilt 2025');
    expect(await page.locator('[role="alert"]').count()).toBe(0);
    await close();
  });

  it('explains only the entry in hand, or every one, and moves no button away from under a click', async () => {
    const { page, close } = await openPage(site, PATH);
    await fillStudy(page);
    await ofArm(page, 'n', 0).focus();
    expect(await page.locator('form :is(.control, .fact) .help:visible').count()).toBe(1);
    await press(page, 'Sets in a session: differs between arms');
    await expect.poll(() => ofArm(page, 'sets', 1).isVisible()).toBe(true);
    await page.getByLabel('Explain every entry, not only the one in hand').check();
    expect(await page.locator('form :is(.control, .fact) .help:visible').count()).toBeGreaterThan(20);
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

  it('asks what to start it with, stores it whole, puts the study back at its place later and adds others', async () => {
    const { page, complaints, close } = await openPage(site, PATH);
    await fillStudy(page);
    await press(page, 'Add the rows to your table');
    await expect.poll(() => adding(page)).toMatch(/no table of yours in this browser yet/u);
    await press(page, 'with these rows alone');
    await expect.poll(() => adding(page)).toMatch(/Added 2 rows: own-arms\.csv now has 2 rows of 1 study/u);
    const first = await readOwn(page);
    expect(first).toMatchObject({ name: 'own-arms.csv', studies: 1, rows: 2 });
    expect(first?.text).toBe(await download(page));
    await ofResult(page, 'followup_mean', 0).fill('45.9');
    await press(page, 'Add the rows to your table');
    await expect.poll(() => adding(page)).toMatch(/Put back 2 rows: own-arms\.csv now has 2 rows/u);
    await press(page, 'Next study');
    await fillStudy(page, { study: 'Avocet 2025', year: '2025' });
    await press(page, 'Add the rows to your table');
    await expect.poll(() => adding(page)).toMatch(/Put back 2 rows and added 2 rows: .* 4 rows of 2 studies/u);
    const { arms, problems } = readArms((await readOwn(page))?.text ?? '', 'own');
    expect(problems).toEqual([]);
    expect(arms.map(({ study, followup_mean: mean }) => [study, mean])).toEqual([
      ['Stilt 2024', 45.9],
      ['Stilt 2024', 44.3],
      ['Avocet 2025', 45.2],
      ['Avocet 2025', 44.3],
    ]);
    expect(complaints).toEqual([]);
    await close();
  });

  it('takes up a study of an opened table, and puts it back corrected with all others as they were', async () => {
    const { page, complaints, close } = await openPage(site, 'table/');
    await page.locator('#own-file').setInputFiles('data/arms.csv');
    await expect.poll(() => page.locator('.your-table').innerText()).toMatch(/arms\.csv was taken/u);
    await page.goto(`${site.address}/${PATH}`, { waitUntil: 'load' });
    await page.waitForSelector('astro-island[ssr]', { state: 'detached' });
    await page.getByText('Take up a study of your table').click();
    await page.locator('#take-study').selectOption('Wren 2007');
    await press(page, 'Take it up');
    await expect.poll(() => status(page)).toMatch(/Wren 2007 of arms\.csv is in the form/u);
    expect(await ofStudy(page, 'design').inputValue()).toBe('within-person');
    await ofStudy(page, 'weeks').fill('9');
    await press(page, 'Add the rows to your table');
    await expect.poll(() => adding(page)).toMatch(/Put back 8 rows: arms\.csv now has/u);
    const shipped = readArms(readFileSync('data/arms.csv', 'utf8'), '').arms;
    const own = readArms((await readOwn(page))?.text ?? '', '').arms;
    expect(own).toEqual(shipped.map((arm) => (arm.study === 'Wren 2007' ? { ...arm, weeks: 9 } : arm)));
    expect(complaints).toEqual([]);
    await close();
  });

  it('refuses rows that are not finished, and says so', async () => {
    const { page, close } = await openPage(site, PATH);
    await fillStudy(page, { year: '' });
    await press(page, 'Add the rows to your table');
    await press(page, 'with these rows alone');
    await expect.poll(() => adding(page)).toMatch(/Nothing was added: the new rows have problems/u);
    expect(await page.evaluate('localStorage.getItem("shy-of-failure table in use")')).toBeNull();
    await close();
  });

  it('puts nothing in the place of a table that was opened since, says so, and adds to that one', async () => {
    const { page, close } = await openPage(site, PATH);
    await fillStudy(page);
    await press(page, 'Add the rows to your table');
    await expect.poll(() => adding(page)).toMatch(/no table of yours in this browser yet/u);
    const other = await page.context().newPage();
    await other.goto(`${site.address}/table/`, { waitUntil: 'load' });
    // At once, while the page is still being started.
    await other.locator('#own-file').setInputFiles('data/arms.csv');
    await expect.poll(() => other.locator('.your-table').innerText()).toMatch(/arms\.csv was taken/u);
    await press(page, 'with these rows alone');
    await expect.poll(() => adding(page)).toMatch(/Nothing was added yet: since you began, arms\.csv was taken up/u);
    const shipped = readFileSync('data/arms.csv', 'utf8');
    expect((await readOwn(page))?.text).toBe(shipped);
    await press(page, 'Add the rows to arms.csv');
    await expect.poll(() => adding(page)).toMatch(/Added 2 rows: arms\.csv now has/u);
    expect((await readOwn(page))?.rows).toBe(readArms(shipped, '').arms.length + 2);
    await close();
  });

  it('starts from a copy of the site’s table where that is asked for, and says that it stays a demonstration', async () => {
    const { page, complaints, close } = await openPage(site, PATH);
    await fillStudy(page);
    await press(page, 'Add the rows to your table');
    await expect.poll(() => adding(page)).toMatch(/invented for demonstration/u);
    await page.getByRole('button', { name: /with a copy of the site’s/u }).click();
    await expect.poll(() => adding(page)).toMatch(/Added 2 rows/u);
    const shipped = readArms(readFileSync('data/arms.csv', 'utf8'), 'arms.csv').arms;
    const own = await readOwn(page);
    const { arms } = readArms(own?.text ?? '', 'own');
    expect(arms.slice(0, -2)).toEqual(shipped);
    expect(arms.at(-1)?.study).toBe('Stilt 2024');
    expect(own?.rows).toBe(shipped.length + 2);
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

it.each([
  [
    'long words and all of its parts open',
    async (page: Page) => {
      await fillStudy(page, { study: 'W'.repeat(120) });
      await ofResult(page, 'baseline_sd', 0).fill(`${'9'.repeat(40)},`);
    },
  ],
  [
    'every kind of number',
    async (page: Page) => {
      await fillStudy(page);
      for (const box of await page.locator('.kinds input, .reports input').all()) await box.check();
    },
  ],
] as const)(
  'a form with %s does not scroll sideways at 320 px, and keeps the names of rows in sight',
  async (_what, prepare) => {
    const { page, close } = await openPage(site, PATH, { viewport: { width: 320, height: 700 } });
    await prepare(page);
    for (const summary of await page.locator('summary').all()) await summary.click();
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
    await ofResult(page, 'followup_sd', 1).focus();
    const name = await page.locator('.numbers-grid th[scope="row"]').last().boundingBox();
    const entry = await ofResult(page, 'followup_sd', 1).boundingBox();
    if (!name || !entry) throw new Error('the grid is not shown');
    expect(name.x).toBeGreaterThanOrEqual(0);
    // The entry in hand is not under the name of its row.
    expect(entry.x).toBeGreaterThanOrEqual(name.x + name.width - 1);
    expect(entry.x + entry.width).toBeLessThanOrEqual(320);
    await close();
  },
);

it('in light and in dark with problems, studies and questions shown has no accessibility violation', async () => {
  const { page, close } = await openPage(site, PATH, { colorScheme: 'light' });
  await fillStudy(page);
  await press(page, 'Add the rows to your table');
  await press(page, 'Next study');
  await fillStudy(page, { study: 'Avocet 2025', year: '' });
  await ofResult(page, 'baseline_sd', 0).fill('6,3');
  for (const summary of await page.locator('summary').all()) await summary.click();
  for (const box of await page.locator('.kinds input, .reports input').all()) await box.check();
  await expect.poll(() => status(page)).toMatch(/1 to mend, 1 still needed/u);
  expect(await findViolations(page), 'light').toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await findViolations(page), 'dark').toEqual([]);
  await close();
});
