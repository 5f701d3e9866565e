/** Lifters of a programme: their own loads, sheets for the gym on a phone and on paper, and what the browser keeps of them. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { countPages, focused, linesOf as linesOfVersion, textOf, writeLine } from './programmePage.ts';
import { findViolations, openPage, type ServedSite, serveSite } from './site.ts';

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());
/** Asks for nothing on paper; counts how often it was asked. */
const WITHOUT_PRINTER = 'window.asked = 0; window.print = () => { window.asked++; };';
const linesOf = (page: Page) => linesOfVersion(page, 'The programme');

async function addLifter(page: Page, name: string, maxima: Readonly<Record<string, string>>): Promise<number> {
  const id = (await page.locator('.lifter-list > li').count()) + 1;
  await page.locator('#lifter-name').fill(name);
  await page.locator('#lifter-name').press('Enter');
  await expect.poll(() => focused(page)).toBe(`lifter-${id}-unit`);
  for (const [exercise, weight] of Object.entries(maxima)) {
    await page.locator(`#lifter-${id}-1rm-${exercise.replaceAll(' ', '-')}`).fill(weight);
  }
  return id;
}

async function openLifters(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Lifters and gym sheets' }).click();
  await expect.poll(() => focused(page)).toBe('lifters');
}

async function replaceBy(page: Page, week: string): Promise<void> {
  await page.getByRole('button', { name: 'Paste or open', exact: true }).click();
  await page.locator('#pasted').fill(week);
  await page.getByRole('button', { name: 'Replace version one' }).click();
  await expect.poll(() => linesOf(page).count()).toBe(week.trim().split('\n').length);
}

describe('By the keys alone', () => {
  it('a week is written from nothing, the advice applied, two lifters added, and their sheets printed, a page each', async () => {
    const { page, complaints, close } = await openPage(site, 'programme/');
    await page.evaluate(WITHOUT_PRINTER);
    const { keyboard } = page;
    /** Presses Tab until the focus is on what is meant. */
    const tabTo = async (what: string) => {
      for (let i = 0; i < 150; i++) {
        if (await page.evaluate(`document.activeElement.matches(${JSON.stringify(what)})`)) return;
        await keyboard.press('Tab');
      }
      throw new Error(`expected the focus to come to ${what}`);
    };
    await tabTo('.bar button');
    await keyboard.press('Enter');
    await expect.poll(() => focused(page)).toMatch(/^first-\d+-exercise$/u);
    await writeLine(page, 'rdl', ['3', '8', '75', '', '2']);
    await keyboard.press('Control+Enter');
    await expect.poll(() => linesOf(page).count()).toBe(2);
    await writeLine(page, 'ohp', ['3', '8', '78', '', '0']);
    await expect.poll(() => linesOf(page).nth(1).textContent()).toMatch(/unsafe/iu);
    await tabTo('#apply-all');
    await keyboard.press('Enter');
    await expect.poll(() => focused(page)).toBe('applied');

    await tabTo('.lifters button');
    await keyboard.press('Enter');
    await expect.poll(() => focused(page)).toBe('lifters');
    for (const [id, name, weights] of [
      [1, 'Lifter A', ['102,5', '60']],
      [2, 'Lifter B', ['225 lb']],
    ] as const) {
      await tabTo('#lifter-name');
      await keyboard.type(name);
      await keyboard.press('Enter');
      await expect.poll(() => textOf(page, '#lifters-done')).toBe(`${name} was added.`);
      await expect.poll(() => focused(page)).toBe(`lifter-${id}-unit`);
      await tabTo(`#lifter-${id}-1rm-Romanian-deadlift`);
      for (const weight of weights) {
        await keyboard.type(weight);
        await keyboard.press('Tab');
        await keyboard.press('Tab');
      }
    }
    await expect.poll(() => textOf(page, '.sheets-bar')).toMatch(/Also for Lifter B/u);
    expect(await textOf(page, '.gym-sheets')).toMatch(
      /Romanian deadlift[\s\S]*75\u00a0kg[\s\S]*overhead press[\s\S]*45\u00a0kg/u,
    );
    await tabTo('.sheets-bar button + button');
    await keyboard.press('Enter');
    await expect.poll(() => page.evaluate('asked')).toBe(1);
    const sheets = page.locator('.gym-sheet');
    expect(await sheets.count()).toBe(2);
    // 225 lb are 102.06 kg; 75 % of them 76.5.
    expect(await sheets.nth(1).innerText()).toMatch(/Lifter B[\s\S]*75\u00a0kg[\s\S]*No 1RM of overhead press given/u);
    expect(await findViolations(page)).toEqual([]);
    expect(countPages(await page.pdf({ format: 'A4' }))).toBe(2);
    // What is printed next is the programme again.
    await expect.poll(() => sheets.count()).toBe(1);
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => page.locator('.sheet').first().isVisible()).toBe(true);
    expect(await sheets.first().isVisible()).toBe(false);
    expect(complaints).toEqual([]);
    await close();
  });

  it('lifters have an undo of their own, and that of the lines leaves them alone', async () => {
    const { page, close } = await openPage(site, 'programme/');
    await openLifters(page);
    await addLifter(page, 'Lifter A', { 'barbell back squat': '140' });
    const weight = page.locator('#lifter-1-1rm-barbell-back-squat');
    await page.keyboard.press('Control+z');
    await expect.poll(() => weight.inputValue()).toBe('');
    expect(await textOf(page, '#done')).toBe('');
    await page.keyboard.press('Control+Shift+z');
    await expect.poll(() => weight.inputValue()).toBe('140');
    const sets = page.locator('section[aria-label="Version one"] .cell.sets input').first();
    await sets.fill('9');
    await sets.press('Control+z');
    await expect.poll(() => sets.inputValue()).not.toBe('9');
    expect(await weight.inputValue()).toBe('140');
    await close();
  });
});

describe('A line whose load is a weight', () => {
  it('is judged for each lifter, above a 1RM is never as advised, and without lifters is as it was', async () => {
    const { page, complaints, close } = await openPage(site, 'programme/');
    await replaceBy(page, 'Mon squat 4x6 75% 3 RIR spotter\nTue squat 4x6 75% 3 RIR spotter');
    const second = linesOf(page).nth(1);
    await second.locator('.cell.load input').fill('100 kg');
    const without = /load: expected a load in % of 1RM, received “100 kg”\. Say the 1RM of squat in kg/u;
    await expect.poll(() => second.innerText()).toMatch(without);
    await openLifters(page);
    await addLifter(page, 'Lifter A', { squat: '140' });
    await addLifter(page, 'Lifter B', { squat: '95' });
    await expect
      .poll(() => second.innerText())
      .toMatch(/Lifter A \(71\.4\u00a0% of 1RM\): as advised\.\s+Lifter B: above 1RM: it cannot be lifted once\./u);
    expect(await second.innerText()).not.toMatch(/Say the 1RM/u);
    expect(await second.locator('.cell.load input').getAttribute('aria-invalid')).toBe('false');
    expect(await page.locator('section[aria-label="The programme"]').innerText()).toMatch(
      /Sums wait until line 2 is whole/u,
    );
    await page.locator('#sheet-of').selectOption({ label: 'Lifter B' });
    await expect
      .poll(() => textOf(page, '.gym-sheets'))
      .toMatch(
        /100\u00a0kg is more than your 1RM, 95\u00a0kg\. Do not lift it[\s\S]*none[\s\S]*Ask your coach before this set/u,
      );
    await page.getByRole('button', { name: 'Forget all lifters', exact: true }).click();
    await expect.poll(() => second.innerText()).toMatch(without);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('What the browser keeps', () => {
  it('outlives a reload, follows other tabs, goes to a file that opens again, and is gone with one click', async () => {
    const { page, complaints, close } = await openPage(site, 'programme/');
    await openLifters(page);
    await addLifter(page, 'Lifter A', { 'barbell back squat': '142,5' });
    await addLifter(page, 'רופא "B" <3 & Co', { 'leg press': '500 lb' });
    await page.locator('#lifter-name').fill('lifter  a');
    await page.locator('#lifter-name').press('Enter');
    await expect
      .poll(() => textOf(page, '#lifter-name-refused'))
      .toMatch(/Lifter 1 of the list has it; two sheets with one name/u);
    await page.reload();
    // Kept lifters are there without being asked for.
    await expect.poll(() => page.locator('.lifter-list > li').count()).toBe(2);
    expect(await textOf(page, '.lifter-list')).toContain('רופא "B" <3 & Co');

    const other = await page.context().newPage();
    await other.goto(`${site.address}/programme/`);
    await expect.poll(() => other.locator('.lifter-list > li').count()).toBe(2);
    await addLifter(other, 'Lifter C', {});
    await expect.poll(() => page.locator('.lifter-list > li').count()).toBe(3);
    await other.close();

    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save lifters to a file' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('lifters.csv');
    const file = await download.path();
    expect(readFileSync(file, 'utf8')).toContain('Lifter A,barbell back squat,142.5,kg,\n');
    const kept = () => page.evaluate('localStorage.getItem("shy-of-failure lifters")');
    const before = await kept();
    await page.getByRole('button', { name: 'Forget all lifters', exact: true }).click();
    await expect.poll(() => page.locator('.lifter-list > li').count()).toBe(0);
    expect(await page.evaluate('JSON.stringify({ ...localStorage })')).not.toMatch(/Lifter/u);
    await page.getByRole('button', { name: 'Undo for the lifters' }).click();
    await expect.poll(kept).toBe(before);
    await page.getByRole('button', { name: 'Forget all lifters', exact: true }).click();

    await page.getByRole('button', { name: 'Paste or open lifters' }).click();
    await page.locator('#lifters-opened').setInputFiles(file);
    await expect.poll(() => textOf(page, '.lifters .understood')).toMatch(/3 lifters with 2 1RMs; 0 entries not read/u);
    await page.getByRole('button', { name: 'Replace all lifters' }).click();
    await expect.poll(() => page.locator('.lifter-list > li').count()).toBe(3);
    await page.getByRole('button', { name: 'Paste or open lifters' }).click();
    await page.locator('#lifters-pasted').fill('Name;squat;leg press\nLifter D;abc;200\n');
    await expect
      .poll(() => textOf(page, '.lifters .understood'))
      .toMatch(
        /1 lifter with 1 1RM; 1 entry not read[\s\S]*line 2, `one_rm`: expected a weight .* of squat, received “abc”/u,
      );
    await page.getByRole('button', { name: 'Add to the lifters' }).click();
    await expect.poll(() => page.locator('.lifter-list > li').count()).toBe(4);
    expect(complaints).toEqual([]);
    await close();
  });

  it('and cannot be read, stays until it is removed; where it keeps nothing, it says so', async () => {
    const { page, close } = await openPage(site, 'methods/');
    await page.evaluate(`localStorage.setItem('shy-of-failure lifters', '{"kind":"lifters","ver')`);
    await page.goto(`${site.address}/programme/`);
    await expect.poll(() => textOf(page, '.lifters [role=alert]')).toMatch(/cannot be read: .*no JSON/u);
    await page.getByRole('button', { name: 'Remove it' }).click();
    await expect.poll(() => page.locator('.lifters [role=alert]').count()).toBe(0);
    expect(await page.evaluate('localStorage.length')).toBe(0);
    await page.addInitScript(
      `Object.defineProperty(self, 'localStorage', { get() { throw new DOMException('denied', 'SecurityError'); } })`,
    );
    await page.reload();
    await openLifters(page);
    await addLifter(page, 'Lifter A', {});
    await expect
      .poll(() => textOf(page, '.lifters [role=alert]'))
      .toMatch(/gone once this page is left: this browser lets this site keep nothing/u);
    await close();
  });
});

describe('On a phone', () => {
  it.each([
    [320, 'dark'],
    [390, 'light'],
  ] as const)(
    '%i pixels wide, in %s colours, nothing scrolls sideways, long names too; axe finds nothing',
    async (width, colorScheme) => {
      const { page, complaints, close } = await openPage(site, 'programme/', {
        viewport: { width, height: 800 },
        colorScheme,
      });
      await replaceBy(
        page,
        'Mon barbell back squat 4x6 80% 0 RIR\nTue leg press 3x10 75% 2 RIR\nWed bench pull 3x8 75% 2 RIR',
      );
      await openLifters(page);
      await addLifter(page, 'x'.repeat(450), { 'barbell back squat': 'abc', 'leg press': '315' });
      await addLifter(page, `${'رافع '.repeat(20)}`, { 'bench pull': '225 lb' });
      await page.locator('#lifter-2-other').fill('pull');
      await expect.poll(() => page.locator('.lifters [role=option]').count()).toBeGreaterThan(1);
      await expect.poll(() => textOf(page, '.sheets-bar')).toMatch(/To look at/u);
      const tooWide = await page.evaluate(
        `[...document.querySelectorAll(':is(.lifters, .sheets-bar, .gym-sheets) *')].filter((one) => one.getBoundingClientRect().right > ${width} + 1 && !one.closest('.unseen, [role=listbox]')).map((one) => one.outerHTML.slice(0, 80))`,
      );
      expect(tooWide).toEqual([]);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
      // In light colours it looked at all of this above.
      if (colorScheme === 'dark') expect(await findViolations(page)).toEqual([]);
      expect(complaints).toEqual([]);
      await close();
    },
  );
});

describe('On paper', () => {
  it('a usual week is a page for each lifter, two weeks two pages, and the demonstration is called one', async () => {
    const { page, close } = await openPage(site, 'programme/');
    await page.evaluate(WITHOUT_PRINTER);
    await openLifters(page);
    const rows = Array.from({ length: 12 }, (_, i) => `Lifter ${i + 1},${100 + i},${60 + i},`);
    await page.getByRole('button', { name: 'Paste or open lifters' }).click();
    await page.locator('#lifters-pasted').fill(['lifter,barbell back squat,bench pull,seated row', ...rows].join('\n'));
    await page.getByRole('button', { name: 'Replace all lifters' }).click();
    const all = page.getByRole('button', { name: 'Print the sheets of all 12 lifters' });
    await expect.poll(() => all.getAttribute('aria-disabled')).toBe('false');
    await all.click();
    await expect.poll(() => page.evaluate('asked')).toBe(1);
    expect(countPages(await page.pdf({ format: 'A4' }))).toBe(12);
    await page
      .getByRole('button', { name: /^More of line/u })
      .last()
      .click();
    await page.locator('[data-part="week"]').last().selectOption('2');
    const one = page.getByRole('button', { name: 'Print this sheet' });
    await expect.poll(() => textOf(page, '.sheets-bar')).toMatch(/2 pages a lifter/u);
    await one.click();
    await expect.poll(() => page.locator('.gym-sheets.on-paper .gym-sheet').count()).toBe(2);
    expect(await textOf(page, '.gym-sheets')).toMatch(/studies behind this site are invented/u);
    expect(countPages(await page.pdf({ format: 'A4' }))).toBe(2);
    await close();
  });

  it('a press before the last change is judged prints the sheet that has it, and none that has not', async () => {
    const { page, close } = await openPage(site, 'programme/');
    await page.evaluate(WITHOUT_PRINTER);
    await openLifters(page);
    const id = await addLifter(page, 'Lifter A', { 'barbell back squat': '100' });
    await expect.poll(() => textOf(page, '.gym-sheets')).toMatch(/barbell back squat[\s\S]*80\u00a0kg/u);
    const print =
      '[...document.querySelectorAll(".sheets-bar button")].find((one) => /this sheet/u.test(one.textContent))';
    const shown = `document.querySelector('.gym-sheets').innerText`;
    /** Key and press in one go, before anything can be judged; what is then shown and printed. */
    const [sheet, asked] = (await page.evaluate(`new Promise((resolve) => {
      const weight = document.getElementById('lifter-${id}-1rm-barbell-back-squat');
      weight.value = '200';
      weight.dispatchEvent(new InputEvent('input', { bubbles: true }));
      ${print}.click();
      queueMicrotask(() => resolve([${shown}, asked]));
    })`)) as [string, number];
    expect(asked).toBe(0);
    expect(sheet).toMatch(/80\u00a0kg/u);
    await page.evaluate(`window.print = () => { window.asked++; window.printed = ${shown}; }`);
    await expect.poll(() => page.evaluate('asked')).toBe(1);
    expect(await page.evaluate('printed')).toMatch(/160\u00a0kg/u);
    expect(await page.evaluate(`${print}.ariaDisabled`)).toBe('false');
    await close();
  });
});
