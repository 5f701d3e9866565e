/**
 * The main paths in Firefox, as it is installed: driven over WebDriver BiDi, which it speaks itself.
 * Where none is installed they are left out with a notice; in CI that is a failure.
 */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { formatExpected } from '../../src/figures/plan/planWords.ts';
import { readPlan } from '../../src/islands/analysis/plannedStudyAddress.ts';
import { DEFAULT_EXPERIMENT } from '../../src/islands/intervals/experiment.ts';
import { resultOf } from '../../src/islands/intervals/results.ts';
import { makeWholeRun } from '../../src/islands/intervals/wholeRun.ts';
import { analyse } from '../../src/model/analyse.ts';
import { answerPlan } from '../../src/model/plan/planAnswer.ts';
import { openPlanning } from '../../src/model/plan/planningBase.ts';
import { type SettingsInput, settingsSchema } from '../../src/model/settings.ts';
import { hasFirefox, launchFirefox } from '../support/firefox.ts';
import { servePages } from './site.ts';

const { arms } = readArms(readFileSync('data/arms.csv', 'utf8'), 'arms.csv');

/** Target at heavy loads, as the engine gives it. */
function heavyTarget(settings: SettingsInput) {
  const { bands } = analyse(arms, settingsSchema.parse(settings));
  if (!('heavy' in bands)) throw new Error('expected a fit apart of heavy loads');
  const { point, low, high } = bands.heavy.target.shown ?? {};
  return { point: point?.toFixed(1), range: `${low?.toFixed(1)} to ${high?.toFixed(1)}` };
}

describe.skipIf(!hasFirefox)('In Firefox', () => {
  let site: Awaited<ReturnType<typeof servePages>>;
  let browser: Browser;
  beforeAll(async () => {
    site = await servePages();
    browser = await launchFirefox();
    expect(await browser.version()).toMatch(/^firefox\//iu);
  });
  afterAll(async () => {
    await browser?.close();
    await site?.close();
  });

  /** Opens a page, does something there, and expects that Firefox had nothing to say and sent nothing elsewhere. */
  async function visit(path: string, act: (page: Page) => Promise<void>): Promise<void> {
    const page = await browser.newPage();
    const complaints: string[] = [];
    page.on('console', (message) => complaints.push(`console ${message.type()}: ${message.text()}`));
    page.on('pageerror', (error) => complaints.push(`page error: ${error}`));
    page.on('request', (request) => {
      const isHere = request.url().startsWith(`${site.address}/`) || request.url().startsWith('data:');
      if (!isHere) complaints.push(`request to another origin: ${request.url()}`);
    });
    page.on('response', (response) => {
      if (response.status() >= 400) complaints.push(`${response.status()} at ${response.url()}`);
    });
    await page.setViewport({ width: 1280, height: 900 });
    await page.goto(`${site.address}/${path}`, { waitUntil: 'load' });
    await settle(page);
    await act(page);
    expect(complaints).toEqual([]);
    await page.close();
  }

  /** Waits until every island has started and none is at work. */
  const settle = (page: Page) => page.waitForFunction('!document.querySelector("astro-island[ssr], [aria-busy=true]")');
  /** Text of the first element that a selector finds, as it is seen. */
  const textOf = (page: Page, selector: string) =>
    page.evaluate(`document.querySelector(${JSON.stringify(selector)})?.innerText ?? ''`) as Promise<string>;
  const addressOf = (page: Page) => new URL(page.url()).search;

  it('Answer reads: sentence, figures with words, targets, cautions, without sideways scroll on a phone', async () => {
    await visit('', async (page) => {
      expect(await textOf(page, 'h1')).toMatch(/repetition.* may stay in reserve with heavy loads, .*light ones\.$/u);
      const figures = (await page.evaluate(
        `[...document.querySelectorAll('figure svg[role="img"]')].map((svg) =>
          [svg.getAttribute('aria-label'), svg.getBoundingClientRect().height])`,
      )) as [string, number][];
      expect(figures.length).toBeGreaterThanOrEqual(4);
      for (const [label, height] of figures) {
        expect(label).toMatch(/studies/u);
        expect(height).toBeGreaterThan(150);
      }
      expect(await textOf(page, 'table.wide')).toMatch(/10 to 20/u);
      expect(await textOf(page, '.cautions')).toMatch(/collars off/u);
      await page.setViewport({ width: 320, height: 800 });
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
    });
  });

  it('Target answers a move with the engine’s number, and its address brings it back', async () => {
    const { point } = heavyTarget({ keptShare: 0.8 });
    await visit('target/', async (page) => {
      await page.locator('#keep').fill('80');
      await expect.poll(() => textOf(page, '#point')).toBe(point);
      await page.select('#company', 'spotter');
      await expect.poll(() => addressOf(page)).toBe('?company=spotter&keep=80');
      await page.reload({ waitUntil: 'load' });
      await settle(page);
      await expect.poll(() => textOf(page, '#point')).toBe(point);
      expect(await page.evaluate(`document.querySelector('#company').value`)).toBe('spotter');
    });
  });

  it('Evidence fits again after a move, to what the engine gives, and goes back', async () => {
    const captions = (page: Page) =>
      page.evaluate(
        `[...document.querySelectorAll('.workbench figcaption')].map((caption) => caption.innerText).join('\\n')`,
      ) as Promise<string>;
    expect(heavyTarget({ curve: 'spline' }).range).not.toBe(heavyTarget({}).range);
    await visit('evidence/', async (page) => {
      await page.select('#evidence-curve', 'spline');
      await expect.poll(() => captions(page)).toContain(heavyTarget({ curve: 'spline' }).range);
      await expect.poll(() => addressOf(page)).toBe('?v=2&curve=spline');
      await page.goBack();
      await expect.poll(() => captions(page)).toContain(heavyTarget({}).range);
    });
  });

  it('Plan a study answers a move with the engine’s interval, and its address brings it back', async () => {
    const plan = readPlan('parallel light_0_20 light_4_20');
    if (!plan) throw new Error('expected a plan');
    const { bands } = answerPlan(openPlanning(arms, settingsSchema.parse({})), plan).expectation;
    const after = bands.find(({ band }) => band === 'light')?.after;
    if (!after) throw new Error('expected an interval');
    await visit('plan/', async (page) => {
      await page.locator('#A-1-reserve').fill('4');
      await page.keyboard.press('Tab');
      await expect.poll(() => textOf(page, '.plan-result')).toContain(formatExpected(after));
      await expect.poll(() => addressOf(page)).toBe('?a=parallel+light_0_20+light_4_20');
      await page.reload({ waitUntil: 'load' });
      await settle(page);
      await expect.poll(() => textOf(page, '.plan-result')).toContain(formatExpected(after));
      await page.setViewport({ width: 320, height: 800 });
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
    });
  });

  it('Evidence asks before it changes one thing, answers by its own fits, and goes on after a reload', async () => {
    await visit('evidence/', async (page) => {
      const place = () => textOf(page, '.guide .place');
      const finding = () => textOf(page, '.guide .finding');
      await page.locator('.workbench .picture > p > button').click();
      await expect.poll(place).toBe('Step 1 of 8');
      await page.locator('.guide .choices button').click();
      await expect.poll(finding).toContain(`to ${heavyTarget({ weighting: 'equal' }).point} (`);
      await page.reload({ waitUntil: 'load' });
      await settle(page);
      await expect.poll(place).toBe('Step 1 of 8');
      expect(await finding()).toContain(`to ${heavyTarget({ weighting: 'equal' }).point} (`);
      await page.locator('.guide .onward').click();
      await expect.poll(place).toBe('Step 2 of 8');
    });
  });

  it('Learn draws its tables to the engine’s counts, asks before it answers, and survives a reload', async () => {
    const { held, given } = resultOf(makeWholeRun({ ...DEFAULT_EXPERIMENT, against: 'none' })).line ?? {};
    await visit('intervals/', async (page) => {
      const place = () => textOf(page, '.guide .place');
      await page.locator('.workbench .onward').click();
      for (let step = 1; step <= 3; step++) {
        await expect.poll(place).toBe(`Step ${step} of 7`);
        expect(await textOf(page, '.guide .finding')).toBe('');
        await page.locator('.guide .choices button').click();
        if (step < 3) await page.locator('.guide .onward').click();
      }
      const finding = () => textOf(page, '.guide .finding');
      await expect.poll(finding).toContain(`${held} of ${given}`);
      await page.reload({ waitUntil: 'load' });
      await settle(page);
      await expect.poll(place).toBe('Step 3 of 7');
      await expect.poll(finding).toContain(`${held} of ${given}`);
    });
  });

  it('Programme takes a week written by the keys alone, line by line, and undoes it', async () => {
    await visit('programme/', async (page) => {
      const focused = () => page.evaluate('document.activeElement.id') as Promise<string>;
      const first = 'section[aria-label="The programme"]';
      await page.locator('.bar button').click();
      await expect.poll(focused).toMatch(/^first-\d+-exercise$/u);
      await page.keyboard.type('rfess');
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('Enter');
      for (const cell of ['3', '8', '75', '', '2']) {
        await page.keyboard.press('Tab');
        await page.keyboard.type(cell);
      }
      await expect.poll(() => textOf(page, first)).toMatch(/as advised[\s\S]*Advised: \d/iu);
      const line = await focused();
      await page.keyboard.down('Control');
      await page.keyboard.press('Enter');
      await page.keyboard.up('Control');
      await expect.poll(focused).not.toBe(line);
      expect(await focused()).toMatch(/-exercise$/u);
      await page.keyboard.type('squat');
      await page.keyboard.down('Control');
      await page.keyboard.press('z');
      await page.keyboard.press('z');
      await page.keyboard.up('Control');
      await expect.poll(() => page.evaluate('document.querySelectorAll(".lines > li").length')).toBe(1);
      await expect
        .poll(() => page.evaluate('document.querySelector(".cell.exercise input").value'))
        .toBe('Bulgarian split squat');
    });
  });

  it('Programme takes a block of weeks, copies one, undoes that, and writes the message for an athlete', async () => {
    await visit('programme/', async (page) => {
      const press = (name: string) => page.locator(`::-p-aria([name="${name}"][role="button"])`).click();
      const heads = () => page.evaluate('[...document.querySelectorAll(".lines h3")].map((one) => one.textContent)');
      await press('Paste or open');
      await page.locator('#pasted').fill('W1 Mon leg press 3x10 70% 2 RIR spotter\nWk 2 Tue RDL 3x8 70% 3 RIR');
      await expect.poll(() => textOf(page, '.understood')).toMatch(/day Tuesday of week 2/u);
      await press('Replace version one');
      await expect.poll(heads).toEqual(['Week 1', 'Week 2']);
      await press('Copy week 2 as week 3');
      await expect.poll(heads).toEqual(['Week 1', 'Week 2', 'Week 3']);
      const drawn = () => page.evaluate('document.querySelector(".by-week figure svg")?.textContent');
      await expect.poll(drawn).toMatch(/week of the programme/u);
      await page.locator('.going-back button').click();
      await expect.poll(heads).toEqual(['Week 1', 'Week 2']);
      await press('Send the programme to an athlete');
      await expect
        .poll(() => page.evaluate('document.querySelector(".sharing textarea")?.value'))
        .toMatch(/WEEK 1\n\nMONDAY\n- leg press: 3 × 10 at 70.% of 1RM, with a spotter\. Leave 2 in reserve\./u);
    });
  });

  it('Programme shows how a paste was understood before it takes it', async () => {
    await visit('programme/', async (page) => {
      await page.evaluate(
        '[...document.querySelectorAll(".bar button")].find((b) => b.innerText === "Paste or open").click()',
      );
      await page.locator('#pasted').fill('Mon squats 4x6 80% 2 RIR spotter');
      await expect.poll(() => textOf(page, '.understood')).toMatch(/exercise squat \(from “squats”\)/u);
      await page.evaluate(
        '[...document.querySelectorAll(".pasting button")].find((b) => b.innerText.startsWith("Replace")).click()',
      );
      await expect.poll(() => page.evaluate('document.querySelectorAll(".lines > li").length')).toBe(1);
      await expect.poll(() => textOf(page, 'section[aria-label="The programme"]')).toMatch(/as advised/iu);
    });
  });

  it('Programme gives two lifters their loads by the keys alone, with the advice applied, and prints a page each', async () => {
    await visit('programme/', async (page) => {
      const { keyboard } = page;
      await page.evaluate('window.asked = 0; window.print = () => { window.asked++; }');
      const focused = () => page.evaluate('document.activeElement.id') as Promise<string>;
      const tabTo = async (what: string) => {
        for (let i = 0; i < 150; i++) {
          if (await page.evaluate(`document.activeElement.matches(${JSON.stringify(what)})`)) return;
          await keyboard.press('Tab');
        }
        throw new Error(`expected the focus to come to ${what}`);
      };
      await tabTo('.bar button');
      await keyboard.press('Enter');
      await expect.poll(focused).toMatch(/^first-\d+-exercise$/u);
      await keyboard.type('ohp');
      await keyboard.press('ArrowDown');
      await keyboard.press('Enter');
      for (const cell of ['3', '8', '75', '', '0']) {
        await keyboard.press('Tab');
        await keyboard.type(cell);
      }
      await expect.poll(() => textOf(page, 'section[aria-label="The programme"]')).toMatch(/unsafe/iu);
      await tabTo('#apply-all');
      await keyboard.press('Enter');
      await expect.poll(focused).toBe('applied');
      await tabTo('.lifters button');
      await keyboard.press('Enter');
      await expect.poll(focused).toBe('lifters');
      for (const [id, weight] of [
        [1, '62,5'],
        [2, '135 lb'],
      ] as const) {
        await tabTo('#lifter-name');
        await keyboard.type(`Lifter ${id}`);
        await keyboard.press('Enter');
        await expect.poll(focused).toBe(`lifter-${id}-unit`);
        await tabTo(`#lifter-${id}-1rm-overhead-press`);
        await keyboard.type(weight);
      }
      // It comes once both are judged. Tab pressed past the end of the page would go into the browser's own bars, from where
      // keys reach the page and activate nothing.
      await expect
        .poll(() => page.evaluate('document.querySelector(".sheets-bar button + button")?.ariaDisabled'))
        .toBe('false');
      await tabTo('.sheets-bar button + button');
      await expect.poll(() => page.evaluate(`document.activeElement.ariaDisabled`)).toBe('false');
      await keyboard.press('Enter');
      await expect.poll(() => page.evaluate('asked')).toBe(1);
      // 75 % of 62.5 kg, and of 61.2.
      expect(await textOf(page, '.gym-sheets')).toMatch(/Lifter 1[\s\S]*45\u00a0kg[\s\S]*Lifter 2[\s\S]*45\u00a0kg/u);
      expect(await page.evaluate('document.querySelectorAll(".on-paper > .gym-sheet").length')).toBe(2);
    });
  });

  it('Studies sorts by a column, rising and falling', async () => {
    const people = (page: Page) =>
      page.evaluate(
        `[...document.querySelectorAll('#studies tbody tr:not([hidden]) > :nth-child(6)')].map((cell) => Number(cell.innerText))`,
      ) as Promise<number[]>;
    await visit('studies/', async (page) => {
      const button = await page.waitForSelector('#studies th[data-column="5"] button');
      await button?.click();
      const rising = await people(page);
      expect(new Set(rising).size).toBeGreaterThan(5);
      expect(rising).toEqual([...rising].sort((a, b) => a - b));
      await button?.press('Enter');
      await expect.poll(() => people(page)).toEqual([...rising].sort((a, b) => b - a));
    });
  });

  it('Studies shades the map anew for other people', async () => {
    await visit('studies/', async (page) => {
      const shades = () => page.evaluate(`document.querySelectorAll('svg rect[fill^="var(--gain-"]').length`);
      const first = (await shades()) as number;
      expect(first).toBeGreaterThan(3);
      await (await page.waitForSelector('#gain-people'))?.press('End');
      await expect
        .poll(() => textOf(page, '.gain-map [role=status]'))
        .toMatch(/^With 200 people: light loads, today \d/u);
      expect(await shades()).toBeGreaterThan(first);
    });
  });

  it('Your table unpacks a spreadsheet and says which sheet it read', async () => {
    const ods = readFileSync('tests/evidence/opening/libreOffice.ods').toString('base64');
    await visit('table/', async (page) => {
      await page.evaluate(`{
        const bytes = Uint8Array.from(atob(${JSON.stringify(ods)}), (one) => one.charCodeAt(0));
        const files = new DataTransfer();
        files.items.add(new File([bytes], 'arms.ods'));
        const input = document.querySelector('#own-file');
        input.files = files.files;
        input.dispatchEvent(new Event('change', { bubbles: true }));
      }`);
      await expect
        .poll(() => textOf(page, '.your-table'))
        .toMatch(/arms\.ods was taken: 12 rows of \d studies\.[\s\S]*The sheet “arms” was read\./u);
      await page.evaluate(
        `[...document.querySelectorAll('button')].find((one) => one.textContent === 'Go back to the site’s table').click()`,
      );
      await expect.poll(() => textOf(page, '[data-own-table]')).toMatch(/put away/u);
    });
  });
});
