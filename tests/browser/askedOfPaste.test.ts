/** What a pasted week is asked about: beside the set that is meant, and taken for that set alone. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { focused, linesOf, textOf } from './programmePage.ts';
import { findViolations, openPage, type ServedSite, serveSite } from './site.ts';

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());

const PHONE = { viewport: { width: 360, height: 800 } } as const;

async function paste(page: Page, text: string): Promise<void> {
  await page.getByRole('button', { name: 'Paste or open' }).click();
  await page.locator('#pasted').fill(text);
}
/** Column of each line of the programme. */
const cellsOf = (page: Page, column: string) =>
  linesOf(page, 'The programme')
    .locator(`.cell.${column} :is(input, select)`)
    .evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value));

describe('A pasted week', () => {
  it('with two sets on a line asks about a name at its own set, and takes it there alone', async () => {
    const { page, complaints, close } = await openPage(site, 'programme/', PHONE);
    await paste(
      page,
      'Mon barbell back squat 4x6 80% 2 RIR spotter; paused bench press 3x5 75% 3 RIR spotter\nFri barbell back squat 3x5 75% 3 RIR spotter',
    );
    const cards = page.locator('.written-lines > li');
    const status = () => page.locator('.understood > [role=status]').innerText();
    await expect.poll(status).toMatch(/^3 lines of sets; 1 entry not read/u);
    expect(await cards.locator('.problem').count()).toBe(1);
    expect(await cards.nth(1).locator('.problem').innerText()).toMatch(/received “paused bench press”/u);
    expect(await findViolations(page)).toEqual([]);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
    await cards.nth(1).getByRole('button', { name: 'Take “bench press”' }).click();
    await expect.poll(status).toMatch(/0 entries not read/u);
    expect(await page.locator('.understood .problem').count()).toBe(0);
    expect(await focused(page)).toBe('understood');
    expect(await textOf(page, '#done')).toBe('“paused bench press” is taken as bench press.');
    const chosen = (await cards.allInnerTexts()).map((said) => /as you chose/u.test(said));
    expect(chosen).toEqual([false, true, false]);
    await page.getByRole('button', { name: 'Replace version one' }).click();
    await expect
      .poll(() => cellsOf(page, 'exercise'))
      .toEqual(['barbell back squat', 'bench press', 'barbell back squat']);
    // The example is gone, and what is said above it stays true, after a reload too.
    const lead = /At first an invented example is shown/u;
    expect(await textOf(page, '.lead')).toMatch(lead);
    await page.reload();
    await expect.poll(() => cellsOf(page, 'exercise')).toHaveLength(3);
    expect(await textOf(page, '.lead')).toMatch(lead);
    expect(complaints).toEqual([]);
    await close();
  });

  it('takes the day that is meant as the day', async () => {
    const { page, complaints, close } = await openPage(site, 'programme/', PHONE);
    await paste(page, 'day;exercise;sets;reps;load;rir\nMon;squat;3;6;75;3\nWenesday;leg press;3;8;75;2');
    const second = page.locator('.written-lines > li').nth(1);
    await second.getByRole('button', { name: 'Take “Wednesday”' }).click();
    await expect.poll(() => second.innerText()).toMatch(/day Wednesday \(from “Wenesday”\); exercise leg press/u);
    expect(await second.innerText()).toMatch(/“Wenesday” was taken as Wednesday, as you chose/u);
    await page.getByRole('button', { name: 'Replace version one' }).click();
    await expect.poll(() => cellsOf(page, 'exercise')).toEqual(['squat', 'leg press']);
    expect(await textOf(page, 'section[aria-label="The programme"]')).not.toMatch(/Wenesday.*expected/u);
    await expect.poll(() => linesOf(page, 'The programme').nth(1).innerText()).toMatch(/advised/iu);
    expect(complaints).toEqual([]);
    await close();
  });
});
