/** The Evidence page in a real Chromium: right, quick, in its address, and to take home. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { packByEnding } from '../support/takeHomeScripts.ts';
import { findViolations, openPage, type ServedSite, serveSite } from './site.ts';

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());

/** Caption of the heavy-load figure that the command line's analysis would have. */
function targetFromCommandLine(settings: object): string {
  const folder = mkdtempSync(join(tmpdir(), 'settings-'));
  const file = join(folder, 'settings.json');
  writeFileSync(file, JSON.stringify(settings));
  const { stdout } = spawnSync(process.execPath, ['scripts/fit.ts', 'data/arms.csv', '--settings', file, '--json'], {
    encoding: 'utf8',
  });
  rmSync(folder, { recursive: true });
  const { point, low, high } = JSON.parse(stdout).bands.heavy.target;
  return `${point.toFixed(1)} in reserve keep 90\u00a0% of it (${low.toFixed(1)} to ${high.toFixed(1)})`;
}

describe('Evidence', () => {
  it('refits on every move to what the command line gives, and writes it in the address', async () => {
    const { page, complaints, close } = await openPage(site, 'evidence/', {}, 'started');
    const caption = page.locator('.workbench figcaption').nth(1);
    const search = () => new URL(page.url()).search;
    await page.locator('#evidence-curve').selectOption('spline');
    // Moves in quick succession are one on the way back; these are two, however slow the machine.
    await expect.poll(search).toBe('?v=2&curve=spline');
    await page.locator('#evidence-split').fill('65');
    await expect.poll(() => caption.innerText()).toContain(targetFromCommandLine({ curve: 'spline', split: 65 }));
    await expect.poll(search).toBe('?v=2&curve=spline&split=65');
    await page.goBack();
    await expect.poll(search).toBe('?v=2&curve=spline');
    await page.goBack();
    await expect.poll(() => page.locator('#evidence-curve').inputValue()).toBe('flexible');
    await expect.poll(() => caption.innerText()).toContain(targetFromCommandLine({}));
    expect(complaints).toEqual([]);
    await close();
  });

  it('opens an address, filters included, and says what is left out', async () => {
    const { page, close } = await openPage(
      site,
      'evidence/?v=2&status=trained&weights=precision&split=none',
      {},
      'started',
    );
    await expect.poll(() => page.locator('#evidence-weighting').inputValue()).toBe('precision');
    await expect.poll(() => page.locator('.workbench figure').count()).toBeGreaterThan(0);
    await page.locator('#left-out').click();
    await expect
      .poll(() => page.locator('.workbench').innerText())
      .toMatch(/filtered out by training status: untrained/u);
    expect(await page.locator('.workbench h3').allInnerTexts()).toContain('All loads');
    await close();
  });

  it.each([
    ['an old version', '?v=0&curve=spline', /not of version 2/u],
    ['an address of the first version', '?v=1&split=65', /from when a straight line was the default/u],
    ['a bad part', '?v=2&curve=zigzag&split=65', /stand at their defaults: curve/u],
    ['an unknown part', '?v=2&colour=red', /colour/u],
    ['markup', '?v=2&muscle=<img src=x onerror=alert(1)>&rho=2', /rho/u],
  ])('with %s in the address says so and goes on', async (_what, query, message) => {
    const { page, complaints, close } = await openPage(site, `evidence/${query}`, {}, 'started');
    await expect.poll(() => page.locator('.problem').first().innerText()).toMatch(message);
    expect(complaints).toEqual([]);
    await close();
  });

  it('explains itself where nothing is left to fit', async () => {
    const { page, complaints, close } = await openPage(site, 'evidence/?v=2&from=2024&to=2024', {}, 'started');
    await expect
      .poll(() => page.locator('.workbench').innerText())
      .toMatch(/no row is left to fit|at least 2 are needed/u);
    expect(complaints).toEqual([]);
    await close();
  });

  it('shows every panel with its finding once the checks are made', async () => {
    const { page, close } = await openPage(site, 'evidence/');
    const text = await page.locator('.workbench').innerText();
    for (const finding of [
      /counts most/u,
      /lies furthest from the curve/u,
      /Without any one study/u,
      /Slope on the standard error/u,
      /target by year: \d\.\d in \d{4}/u,
      /times as steep/u,
      /resamples of whole studies/u,
    ]) {
      expect(text).toMatch(finding);
    }
    expect(await page.locator('.panel figure svg').count()).toBe(8);
    await close();
  });

  it('sweeps all combinations with progress, and can be stopped', async () => {
    const { page, close } = await openPage(site, 'evidence/');
    await page.getByRole('button', { name: 'Work them out' }).click();
    await page.locator('progress').waitFor();
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByRole('button', { name: 'Work them out' }).click();
    await expect.poll(() => page.locator('#sweep-finding').count()).toBe(1);
    expect(await page.locator('#sweep-finding').innerText()).toMatch(/over 1,440 combinations/u);
    await close();
  });

  it('guides through eight questions beside the figure, each answered by its own fits, through a reload, and back', async () => {
    const { page, complaints, close } = await openPage(site, 'evidence/?v=2&keep=0.85', {}, 'started');
    await page.getByRole('button', { name: /Learn by changing one thing/u }).click();
    const place = () => page.locator('.guide .place').innerText();
    const finding = () => page.locator('.guide .finding').innerText();
    const findings = new Set<string>();
    for (let step = 1; step <= 8; step++) {
      await expect.poll(place).toBe(`Step ${step} of 8`);
      await expect.poll(() => page.evaluate('document.activeElement?.tagName')).toBe('H2');
      await expect.poll(() => page.locator('.workbench svg[aria-label*="Ringed: "]').count()).toBe(1);
      expect(await page.locator('.guide .finding').count()).toBe(0);
      if (step === 2) {
        await page.reload({ waitUntil: 'load' });
        await expect.poll(place).toBe('Step 2 of 8');
      }
      await page.locator('.guide .choices button').first().press('Enter');
      await expect.poll(finding).toMatch(/^Light loads: .*Heavy loads: /u);
      findings.add(await finding());
      if (step === 5) {
        // What stood before the change is in the figure, pale.
        expect(await page.locator('.workbench figcaption').nth(1).innerText()).toMatch(
          /Pale and dashed: before the move/u,
        );
        expect(await findViolations(page)).toEqual([]);
      }
      await page.locator('.guide .onward').press('Enter');
    }
    expect(findings.size).toBe(8);
    expect(await page.locator('.guide').innerText()).toMatch(
      /What you saw[\s\S]*Heavy loads: target \d[\s\S]*The target moved most with/u,
    );
    expect(await page.locator('.guide button:disabled').count()).toBe(0);
    await page.getByRole('button', { name: 'Leave' }).click();
    await expect.poll(() => page.evaluate('document.activeElement?.textContent')).toMatch(/^Learn by changing/u);
    await expect.poll(() => page.locator('#evidence-weighting').inputValue()).toBe('mixed');
    await expect.poll(() => new URL(page.url()).search).toBe('?v=2&keep=0.85');
    expect(complaints).toEqual([]);
    await close();
  });

  it('keeps question and ringed figure in sight together on a phone, at every step', async () => {
    const { page, close } = await openPage(site, 'evidence/', { viewport: { width: 360, height: 760 } }, 'started');
    // At the site's own settings the figures are the build's until something is pointed out, and so again afterwards.
    const rings = () => page.locator('.workbench svg[aria-label*="Ringed: "]').count();
    const begin = () => page.getByRole('button', { name: /Learn by changing one thing/u }).click();
    await begin();
    await expect.poll(rings).toBe(1);
    await page.getByRole('button', { name: 'Leave' }).click();
    await expect.poll(rings).toBe(0);
    await begin();
    await expect.poll(rings).toBe(1);
    for (let step = 1; step <= 3; step++) {
      await expect.poll(() => page.locator('.ringed svg').count()).toBe(1);
      const boxes = async () => {
        const [sheet, figure] = [
          await page.locator('.guide').boundingBox(),
          await page.locator('.ringed svg').boundingBox(),
        ];
        if (!sheet || !figure) throw new Error('expected a sheet and a figure');
        return { top: figure.y, hidden: figure.y + figure.height - sheet.y, below: sheet.y + sheet.height - 760 };
      };
      await expect.poll(async () => (await boxes()).top).toBeGreaterThanOrEqual(0);
      expect((await boxes()).hidden).toBeLessThanOrEqual(1);
      expect((await boxes()).below).toBeLessThanOrEqual(0);
      await page.locator('.guide .choices button').last().click();
      await expect.poll(() => page.locator('.guide .finding').innerText()).toMatch(/loads: /u);
      await page.locator('.guide .onward').click();
    }
    await close();
  });

  it('says which of its steps say nothing of a table, and why', async () => {
    const { page, complaints, close } = await openPage(site, 'evidence/?v=2&split=none&basis=reported', {}, 'started');
    await page.getByRole('button', { name: /Learn by changing one thing/u }).click();
    const said: string[] = [];
    for (let step = 1; step <= 8; step++) {
      await expect.poll(() => page.locator('.guide .place').innerText()).toBe(`Step ${step} of 8`);
      await expect.poll(() => page.locator('.guide').innerText()).not.toMatch(/Being worked out/u);
      said.push(await page.locator('.guide').innerText());
      const choices = page.locator('.guide .choices button');
      if ((await choices.count()) > 0) await choices.last().click();
      await page.locator('.guide .onward').click();
    }
    expect(said[5]).toMatch(/there is no split to move/u);
    expect(said[7]).toMatch(/Only studies that measured reserve count already/u);
    expect(await page.locator('.guide').innerText()).toMatch(/there is no split to move/u);
    expect(complaints).toEqual([]);
    await close();
  });

  it('hands out the analysis as a file with the notice in its name', async () => {
    const { page, close } = await openPage(site, 'evidence/');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Analysis as JSON' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('demonstration-analysis.json');
    const analysis = JSON.parse(readFileSync(await download.path(), 'utf8'));
    expect(analysis.demonstration).toMatch(/invented/u);
    expect(analysis.bands.heavy.target.point).toBeGreaterThan(3);
    await close();
  });

  it('hands out scripts and a notebook that are whole, their steps fetched when they are asked for', async () => {
    const fetched: string[] = [];
    const { page, complaints, close } = await openPage(site, 'evidence/?v=2&curve=log');
    page.on('request', (request) => fetched.push(new URL(request.url()).pathname));
    const { arms } = readArms(readFileSync('data/arms.csv', 'utf8'), 'arms.csv');
    const files = packByEnding(arms, settingsSchema.parse({ curve: 'log' }));
    for (const [button, ending] of [
      ['Script for R', '.R'],
      ['Script for Python', '.py'],
      ['Notebook for Python', '.ipynb'],
    ]) {
      const waiting = page.waitForEvent('download');
      await page.getByRole('button', { name: button }).click();
      const download = await waiting;
      expect(download.suggestedFilename()).toBe(`demonstration-analysis${ending}`);
      // Machines and browsers differ in the last digits of a sine or logarithm.
      const settle = (text: string) => text.replace(/-?\d+\.\d{9,}(?:e-?\d+)?/gu, (one) => Number(one).toPrecision(8));
      expect(settle(readFileSync(await download.path(), 'utf8'))).toBe(settle(files.get(ending) ?? ''));
    }
    expect(fetched.filter((path) => /\/steps[.-][\w-]+\.(?:R|py)$/u.test(path)).length).toBeGreaterThanOrEqual(2);
    expect(complaints).toEqual([]);
    await close();
  });

  it('shows figures, coefficients and curve shapes without JavaScript', async () => {
    const { page, complaints, close } = await openPage(site, 'evidence/', { javaScriptEnabled: false });
    const pictures = page.locator('.workbench figure svg[role="img"]');
    expect(await pictures.count()).toBe(2);
    expect((await pictures.first().boundingBox())?.height).toBeGreaterThan(150);
    expect(await page.locator('.workbench').innerText()).toMatch(/ln\(after \/ before\) = .*Curve shapes compared/su);
    expect(await page.locator('.problem').first().innerText()).toMatch(/need JavaScript/u);
    expect(complaints).toEqual([]);
    await close();
  });

  it('has every setting and filter moved by the keyboard, each into the address, and the link shows the same elsewhere', async () => {
    const { page, complaints, close } = await openPage(site, 'evidence/');
    for (const summary of await page.locator('form[aria-label="Choices"] details:not([open]) > summary').all()) {
      await summary.focus();
      await page.keyboard.press('Enter');
    }
    const fields = await page.locator('form[aria-label="Choices"] :is(select, input[type="range"])').all();
    expect(fields.length).toBeGreaterThanOrEqual(12);
    for (const field of fields) {
      // Without a split there is no slider for it: light and heavy stay apart here, and growth the outcome.
      if (['evidence-separate', 'evidence-outcome'].includes((await field.getAttribute('id')) ?? '')) continue;
      const before = await field.inputValue();
      await field.focus();
      await page.keyboard.press(
        (await field.evaluate('(element) => element.tagName')) === 'SELECT' ? 'ArrowDown' : 'ArrowLeft',
      );
      if ((await field.inputValue()) === before) await page.keyboard.press('ArrowRight');
      expect(await field.inputValue(), `${await field.getAttribute('id')}`).not.toBe(before);
    }
    const filters = await page.locator('form[aria-label="Choices"] fieldset').all();
    expect(filters.length).toBe(10);
    for (const filter of filters) {
      const box = filter.locator('input').last();
      await box.focus();
      await page.keyboard.press('Space');
      await expect.poll(() => box.isChecked()).toBe(false);
    }
    const names =
      'curve weights split keep level metric rho r adjust from to status sex joints muscle measure concerns design failure basis';
    // The address follows when the reader rests.
    const missing = () => names.split(' ').filter((name) => !new URL(page.url()).searchParams.has(name));
    await expect.poll(missing).toEqual([]);
    const asked = new URL(page.url());
    expect(asked.searchParams.getAll('sex').length).toBe(2);
    const words = (one: typeof page) => one.locator('.workbench figcaption').first().innerText();
    const elsewhere = await openPage(site, `evidence/${asked.search}`);
    await expect.poll(() => words(elsewhere.page)).toBe(await words(page));
    expect([...complaints, ...elsewhere.complaints]).toEqual([]);
    await elsewhere.close();
    await close();
  });
});
