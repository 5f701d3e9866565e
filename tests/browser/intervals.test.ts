/** The page of intervals in a real Chromium: tables drawn as asked, the lesson through and again, by keyboard and without JavaScript. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEFAULT_EXPERIMENT, type Experiment } from '../../src/islands/intervals/experiment.ts';
import { LESSON } from '../../src/islands/intervals/lesson.state.ts';
import { resultOf } from '../../src/islands/intervals/results.ts';
import { makeWholeRun } from '../../src/islands/intervals/wholeRun.ts';
import { findViolations, openPage, type ServedSite, serveSite } from './site.ts';

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());

const results = new Map<string, ReturnType<typeof resultOf>>();

/** What the engine counts, “45 of 200”, for a curve. */
function countOf(part: Partial<Experiment>, curve: 'line' | 'flexible'): string {
  const key = JSON.stringify(part);
  const result = results.get(key) ?? resultOf(makeWholeRun({ ...DEFAULT_EXPERIMENT, ...part }));
  results.set(key, result);
  const { held, given } = result[curve] ?? { held: 0, given: 0 };
  return `${held} of ${given}`;
}

type Opened = Awaited<ReturnType<typeof openPage>>;
const settled = ({ page }: Opened) => expect.poll(() => page.locator('[aria-busy=true]').count()).toBe(0);
const titles = ({ page }: Opened) => page.locator('.workbench .figure-title').allInnerTexts();

describe('Intervals', () => {
  it('draws what is chosen to the engine’s counts, keeps it in the address, and the address brings it back', async () => {
    const opened = await openPage(site, 'intervals/');
    const { page, complaints, close } = opened;
    expect((await titles(opened)).join()).toContain(`Straight line: ${countOf({}, 'line')}`);
    await page.locator('#truth').selectOption('plateau');
    await page.locator('#studies').selectOption('15');
    await settled(opened);
    const part = { truth: 'plateau', studies: 15 } as const;
    await expect.poll(async () => (await titles(opened)).join()).toContain(`Straight line: ${countOf(part, 'line')}`);
    expect((await titles(opened)).join()).toContain(`Flexible curve: ${countOf(part, 'flexible')}`);
    expect(new URL(page.url()).search).toBe('?truth=plateau&studies=15');
    await page.getByRole('button', { name: /^Draw 200 other tables/u }).click();
    await settled(opened);
    const other = { ...part, seed: 2 } as const;
    await expect.poll(async () => (await titles(opened)).join()).toContain(`Straight line: ${countOf(other, 'line')}`);
    const again = await openPage(site, `intervals/${new URL(page.url()).search}`);
    await settled(again);
    await expect.poll(() => titles(again)).toEqual(await titles(opened));
    expect([...complaints, ...again.complaints]).toEqual([]);
    await again.close();
    await close();
  });

  it('names what of an address it did not take', async () => {
    const { page, complaints, close } = await openPage(site, 'intervals/?truth=<img src=x onerror=alert(1)>&studies=3');
    await expect.poll(() => page.locator('.problem').innerText()).toMatch(/truth, studies/u);
    expect(complaints).toEqual([]);
    await close();
  });

  it('leads through seven questions by the keyboard alone, survives a reload, and sums up the reader’s own counts', async () => {
    const opened = await openPage(site, 'intervals/');
    const { page, complaints, close } = opened;
    const press = async (name: RegExp) => {
      await page.getByRole('button', { name }).first().focus();
      await page.keyboard.press('Enter');
    };
    await press(/^Begin: 7/u);
    for (let step = 1; step <= 7; step++) {
      await expect.poll(() => page.locator('.guide .place').innerText()).toBe(`Step ${step} of 7`);
      await expect.poll(() => page.evaluate('document.activeElement?.tagName')).toBe('H2');
      expect(await page.locator('.guide .finding').count()).toBe(0);
      // Where it looks is ringed on a figure.
      await expect.poll(() => page.locator('.workbench svg[aria-label*="Ringed"]').count()).toBeGreaterThan(0);
      if (step === 4) {
        await page.reload({ waitUntil: 'load' });
        await expect.poll(() => page.locator('.guide .place').innerText()).toBe('Step 4 of 7');
      }
      const choices = page.locator('.guide .choices button');
      await (step % 2 === 0 ? choices.last() : choices.first()).press('Enter');
      await settled(opened);
      await expect.poll(() => page.locator('.guide .finding').innerText()).not.toMatch(/Being worked out/u);
      await press(step < 7 ? /^Next$/u : /^What you saw$/u);
    }
    const summary = await page.locator('.guide').innerText();
    expect(summary).toContain(`The line’s interval held the truth in ${countOf({}, 'line')}`);
    expect(summary).toContain(`With 30 studies the line’s held it in ${countOf({ studies: 30 }, 'line')}`);
    expect(
      await page
        .locator('.guide button')
        .evaluateAll((all) => all.filter((one) => (one as HTMLButtonElement).disabled).length),
    ).toBe(0);
    expect(await findViolations(page)).toEqual([]);
    await press(/^Leave$/u);
    await expect.poll(() => page.evaluate('document.activeElement?.textContent')).toMatch(/^Begin/u);
    await expect.poll(async () => (await titles(opened)).join()).toContain(`Straight line: ${countOf({}, 'line')}`);
    expect(complaints).toEqual([]);
    await close();
  });

  it('keeps question and figure in sight together on a phone', async () => {
    const { page, close } = await openPage(site, 'intervals/', { viewport: { width: 360, height: 760 } });
    await page.getByRole('button', { name: /^Begin: 7/u }).click();
    // Both at one moment: the figure is drawn anew, in another element, while tables come in.
    const heights = () =>
      page.evaluate(`['.ringed svg', '.guide'].flatMap((one) => {
        const { top, bottom } = document.querySelector(one)?.getBoundingClientRect() ?? {};
        return [top, bottom];
      })`) as Promise<number[]>;
    await expect
      .poll(async () => {
        const [figureTop, figureEnd, sheetTop, sheetEnd] = await heights();
        return 0 <= figureTop && figureTop < figureEnd && figureEnd <= sheetTop + 1 && sheetEnd <= 760;
      })
      .toBe(true);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
    // The fifth answer is ringed on a figure that comes with it, below the first.
    await page.evaluate(`{
      const kept = JSON.parse(sessionStorage.getItem('${LESSON}'));
      sessionStorage.setItem('${LESSON}', JSON.stringify({ ...kept, step: 4 }));
    }`);
    await page.reload({ waitUntil: 'load' });
    await page.locator('.guide .choices button').last().click();
    await expect.poll(() => page.locator('.guide .finding').innerText()).toMatch(/^The flexible curve’s hold it/u);
    await expect.poll(async () => (await heights())[0]).toBeLessThan(300);
    expect((await heights())[0]).toBeGreaterThanOrEqual(0);
    await close();
  });

  it('can be stopped while it draws', async () => {
    const opened = await openPage(site, 'intervals/?studies=60', {}, 'started');
    await opened.page.getByRole('button', { name: 'Stop' }).click();
    await expect.poll(() => opened.page.locator('.workbench').innerText()).toMatch(/Stopped after \d+ of 200 tables/u);
    await opened.page.getByRole('button', { name: 'Draw them' }).click();
    await settled(opened);
    await expect
      .poll(async () => (await titles(opened)).join())
      .toContain(`Straight line: ${countOf({ studies: 60 }, 'line')}`);
    await opened.close();
  });

  it('reads without JavaScript: the first tables, and what each question comes to', async () => {
    const { page, complaints, close } = await openPage(site, 'intervals/', { javaScriptEnabled: false });
    expect(await page.locator('.workbench figure svg[role="img"]').count()).toBe(4);
    await page.locator('#measured summary').click();
    const text = await page.locator('#measured').innerText();
    expect(text).toMatch(/held the truth in 491 of 2000/u);
    expect(await page.locator('#measured li').count()).toBe(7);
    expect(await page.locator('.problem').first().innerText()).toMatch(/need JavaScript/u);
    expect(complaints).toEqual([]);
    await close();
  });
});
