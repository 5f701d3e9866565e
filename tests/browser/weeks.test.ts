/** A block of weeks as a coach would: written, copied, moved, undone, sent to an athlete, printed. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { countPages, focused, linesOf, textOf } from './programmePage.ts';
import { findViolations, openPage, type ServedSite, serveSite } from './site.ts';

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());
const done = (page: Page) => textOf(page, '#done');
const press = (page: Page, name: string) => page.getByRole('button', { name }).first().click();
/** Weeks and days as they head the lines. */
const heads = (page: Page) => page.locator('.lines').first().locator('h3, h4').allTextContents();

const BLOCK = `Week 1
Mon leg press 3x10 70% 2 RIR spotter
Thu RDL 3x8 70% RPE 8
W2 Mon leg press 3x10 72.5% 0 RIR spotter`;

/** Opens the page with the block in it. */
async function openBlock(options: Parameters<typeof openPage>[2] = {}, block = BLOCK) {
  const opened = await openPage(site, 'programme/', options);
  const { page } = opened;
  await press(page, 'Paste or open');
  await page.locator('#pasted').fill(block);
  await expect.poll(() => textOf(page, '.understood')).toMatch(/day Monday of week 2/u);
  await press(page, 'Replace version one');
  await expect.poll(() => textOf(page, '.by-week h2')).toBe('Growth and recovery by week');
  return opened;
}

describe('A block', () => {
  it('stands by week and day; its weeks are copied, moved, deleted and added by keys, and all of it undone', async () => {
    const { page, complaints, close } = await openBlock();
    const before = await heads(page);
    expect(before).toEqual(['Week 1', 'Monday', 'Thursday', 'Week 2', 'Monday']);
    await page.getByRole('button', { name: 'Copy as week 3, week 1' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => done(page)).toBe('Week 1 was copied as week 3: 2 lines, as they are.');
    await expect.poll(() => focused(page)).toBe('first-week-3');
    expect((await heads(page)).slice(-3)).toEqual(['Week 3', 'Monday', 'Thursday']);
    expect(await linesOf(page, 'The programme').nth(4).locator('.cell.load input').inputValue()).toBe('70');
    await press(page, 'Earlier, week 3');
    await expect.poll(() => done(page)).toBe('Week 3 is now week 2, and week 2 is now week 3.');
    expect(await linesOf(page, 'The programme').nth(4).locator('.cell.load input').inputValue()).toBe('72.5');
    await press(page, 'Delete week 2');
    await expect.poll(() => done(page)).toMatch(/Week 2 was deleted, 2 lines\. The weeks after it stay/u);
    await expect.poll(() => textOf(page, '.by-week figcaption')).toMatch(/Week 2 has no sets/u);
    await press(page, 'Close the gap: week 2 has no lines');
    await expect.poll(() => heads(page)).toEqual(before);
    await press(page, 'Add week 3');
    await expect.poll(() => focused(page)).toMatch(/^first-\d+-exercise$/u);
    for (let i = 0; i < 5; i++) await page.keyboard.press('Control+z');
    await expect.poll(() => done(page)).toBe('Undone: copy week 1 as week 3.');
    expect(await heads(page)).toEqual(before);
    expect(await linesOf(page, 'The programme').count()).toBe(3);
    await page.reload();
    await expect.poll(() => heads(page)).toEqual(before);
    expect(complaints).toEqual([]);
    await close();
  });

  it('has an event in any of its weeks, and none of its own accord', async () => {
    const { page, close } = await openBlock();
    expect(await page.locator('#event-day').inputValue()).toBe('none');
    await page.locator('#event-day').selectOption('6');
    await expect.poll(() => page.locator('#event-week').inputValue()).toBe('2');
    await expect
      .poll(() => textOf(page, '.sums figcaption'))
      .toMatch(/Drawn are the sessions of week 2\..*at the event/u);
    await page.locator('#event-week').selectOption('12');
    await expect.poll(() => page.locator('.by-week figure svg').textContent()).toMatch(/12.*event/u);
    await close();
  });

  it('takes a note, a week and facts among the details of a line, and keeps what was taken for other cells', async () => {
    const { page, close } = await openBlock();
    const line = linesOf(page, 'The programme').nth(1);
    await expect.poll(() => line.innerText()).toMatch(/rating of 8 out of ten/u);
    await page.getByRole('button', { name: 'More of line 2' }).click();
    await line.getByRole('textbox', { name: 'Note' }).fill('pause below');
    await line.locator('.cell.sets input').fill('6-8');
    await expect.poll(() => line.innerText()).toMatch(/rating of 8 out of ten[\s\S]*Note: pause below/u);
    expect(await line.locator('.cell.sets input').getAttribute('inputmode')).toBe('text');
    await line.getByLabel('Can pin the lifter').selectOption('yes');
    await expect.poll(() => line.innerText()).toMatch(/Can pin the lifter: yes/u);
    await line.getByRole('combobox', { name: 'Week' }).selectOption('2');
    await expect.poll(() => focused(page)).toMatch(/-week$/u);
    await press(page, 'Put them in order');
    await expect.poll(() => heads(page)).toEqual(['Week 1', 'Monday', 'Week 2', 'Monday', 'Thursday']);
    await close();
  });

  it('keeps what applying the advice did through a reload, until that is closed', async () => {
    const { page, close } = await openBlock();
    await press(page, 'Apply the advice to all');
    await expect.poll(() => textOf(page, '.applied')).toMatch(/leg press on Monday of week 2, 72\.5/u);
    const said = await textOf(page, '.applied');
    await page.reload();
    await expect.poll(() => textOf(page, '.applied')).toBe(said);
    await press(page, 'Close this list');
    await expect.poll(() => page.locator('.applied').count()).toBe(0);
    await page.reload();
    await expect.poll(() => linesOf(page, 'Version two').count()).toBe(3);
    expect(await page.locator('.applied').count()).toBe(0);
    await close();
  });

  it('is sent to an athlete: copied by one press, saved as text, and as a file that opens the same elsewhere', async () => {
    const { page, complaints, close } = await openBlock({
      permissions: ['clipboard-read', 'clipboard-write'],
      viewport: { width: 360, height: 800 },
    });
    await press(page, 'Send the programme to an athlete');
    await expect.poll(() => textOf(page, '.sharing')).toMatch(/Copied: 2 lines of week 1/u);
    await expect.poll(() => focused(page)).toBe('sharing-first');
    const copied = () => page.evaluate('navigator.clipboard.readText()') as Promise<string>;
    expect(await copied()).toMatch(
      /MONDAY\n- leg press: 3 × 10 at 70\u00a0% of 1RM, with a spotter\. Leave 2 in reserve\./u,
    );
    await page.getByLabel('Weeks of the message').selectOption('all');
    await press(page, 'Copy the message');
    await expect.poll(() => textOf(page, '.sharing')).toMatch(/Copied: 3 lines/u);
    const whole = await copied();
    expect(whole).toMatch(/WEEK 2\n\nMONDAY\n- leg press/u);
    expect(whole).not.toMatch(/growth|interval|study/iu);
    const folder = mkdtempSync(join(tmpdir(), 'weeks-'));
    const save = async (name: string) => {
      const [download] = await Promise.all([page.waitForEvent('download'), press(page, name)]);
      const file = join(folder, download.suggestedFilename());
      await download.saveAs(file);
      return file;
    };
    expect(readFileSync(await save('Save it as a text file'), 'utf8')).toBe(whole);
    const file = await save('Save the file');
    expect(await findViolations(page)).toEqual([]);
    expect(complaints).toEqual([]);
    const other = await openPage(site, 'programme/');
    await press(other.page, 'Paste or open');
    await other.page.locator('#opened').setInputFiles(file);
    await expect.poll(() => heads(other.page)).toEqual(await heads(page));
    await press(other.page, 'Send the programme to an athlete');
    await other.page.getByLabel('Weeks of the message').selectOption('all');
    await expect.poll(() => other.page.getByRole('textbox', { name: 'The message' }).inputValue()).toBe(whole);
    await other.close();
    rmSync(folder, { recursive: true });
    await close();
  });

  it('is handed to the browser’s own sharing where there is one, and says so where that was put away', async () => {
    const { page, close } = await openBlock();
    await page.evaluate(`Object.defineProperties(navigator, {
      canShare: { value: () => true },
      share: { value: async ({ text }) => { window.shared = text; if (window.refuse) throw new DOMException('', 'AbortError'); } },
    })`);
    await press(page, 'Send the programme to an athlete');
    await expect.poll(() => textOf(page, '.sharing')).toMatch(/Shared: 2 lines of week 1\./u);
    expect(await page.evaluate('window.shared')).toMatch(/^Your training/u);
    await page.evaluate('window.refuse = true');
    await press(page, 'Share the message');
    await expect.poll(() => textOf(page, '.sharing')).toMatch(/Not shared\./u);
    await close();
  });

  it('prints its sums and then its weeks, and a picture of both versions', async () => {
    const { page, close } = await openBlock({}, `${BLOCK}\nW4 Mon squat 3x5 80% 2 RIR spotter`);
    expect(countPages(await page.pdf({ format: 'A4' }))).toBeLessThanOrEqual(2);
    await press(page, 'Apply the advice to all');
    await expect.poll(() => linesOf(page, 'Version two').count()).toBe(4);
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => page.locator('.sheet.of-week').count()).toBe(6);
    expect(await page.locator('.sheet.of-week caption').allTextContents()).toEqual(
      ['one', 'two'].flatMap((name) =>
        [1, 2, 4].map((week) => expect.stringMatching(new RegExp(`^Version ${name}, week ${week}:`, 'u'))),
      ),
    );
    const order = await page.evaluate(
      `[document.querySelector('.by-week'), document.querySelector('.sheet')].map((one) => one.getBoundingClientRect().top)`,
    );
    expect((order as number[])[0]).toBeLessThan((order as number[])[1]);
    expect(await page.locator('.by-week figure svg').count()).toBe(1);
    expect(countPages(await page.pdf({ format: 'A4' }))).toBe(3);
    await close();
  });

  it.each([
    [320, 'light'],
    [360, 'dark'],
  ] as const)(
    '%i pixels wide, %s, has nothing for axe to find and no sideways scrolling',
    async (width, colorScheme) => {
      const { page, close } = await openBlock({ colorScheme, viewport: { width, height: 800 } });
      await press(page, 'More of line 1');
      await press(page, 'Apply the advice to all');
      await expect
        .poll(() => textOf(page, '.by-week figcaption'))
        .toMatch(/hollow points and right bars version two’s/u);
      expect(await findViolations(page)).toEqual([]);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
      await close();
    },
  );
});
