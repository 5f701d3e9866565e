/** Moves on the Evidence page in real browsers: the trace, undo, the list, “back”, a pin, and where a new study would lie. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hasFirefox, launchFirefox } from '../support/firefox.ts';
import { findViolations, openPage, type ServedSite, serveSite } from './site.ts';

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());

const TRACE = 'g[stroke-dasharray="6,4"]';

describe('a move on Evidence', () => {
  it('leaves a trace and a line, is undone and made again, and “back” goes over them', async () => {
    const { page, complaints, close } = await openPage(site, 'evidence/', {}, 'started');
    const line = page.locator('.move-line');
    const query = () => new URL(page.url()).search;
    expect(await page.locator(`.picture ${TRACE}`).count()).toBe(0);
    await page.locator('#evidence-curve').selectOption('line');
    await expect
      .poll(() => line.innerText())
      .toMatch(/^Curve: from flexible curve to straight line\. Light loads: target/u);
    await expect.poll(() => page.locator(`.picture ${TRACE}`).count()).toBe(2);
    await expect.poll(() => page.locator('.moves [role=status]').textContent()).toBe(await line.innerText());
    await expect.poll(query).toBe('?v=2&curve=line');
    await page.locator('#evidence-split').fill('65');
    await expect.poll(query).toBe('?v=2&curve=line&split=65');
    await page.goBack();
    await expect.poll(() => page.locator('#evidence-split').inputValue()).toBe('60');
    await page.keyboard.press('Control+z');
    await expect.poll(query).toBe('');
    await expect.poll(() => line.innerText()).toMatch(/^Curve: from straight line to flexible curve\./u);
    await page.getByRole('button', { name: 'Redo' }).click();
    await expect.poll(query).toBe('?v=2&curve=line');
    await page.reload();
    await page.locator('.moves summary').click();
    const places = page.locator('.move-list button');
    expect(await places.allInnerTexts()).toEqual([
      'Where you came in',
      'Curve: from flexible curve to straight line',
      'Split: from 60\u00a0% of 1RM to 65\u00a0% of 1RM',
    ]);
    await places.last().press('Enter');
    await expect.poll(() => page.locator('#evidence-split').inputValue()).toBe('65');
    expect(await places.last().getAttribute('aria-current')).toBe('step');
    expect(complaints).toEqual([]);
    await close();
  });

  it('is told in sight of the control that was moved, on a phone too', async () => {
    const options = { viewport: { width: 360, height: 740 } };
    const { page, complaints, close } = await openPage(site, 'evidence/', options, 'started');
    const control = page.locator('#evidence-weighting');
    await control.evaluate((element) => element.scrollIntoView({ block: 'center' }));
    await control.selectOption('equal');
    await page.locator('.move-list').waitFor({ state: 'attached' });
    const [line, moved] = await Promise.all([page.locator('.move-line').boundingBox(), control.boundingBox()]);
    if (!line || !moved) throw new Error('expected a line and a control');
    expect(line.y).toBeGreaterThanOrEqual(0);
    expect(line.y + line.height).toBeLessThan(moved.y);
    expect(complaints).toEqual([]);
    await close();
  });

  it('by dragging is one, whatever it passes', async () => {
    const { page, close } = await openPage(site, 'evidence/', {}, 'started');
    const slider = page.locator('#evidence-split');
    await slider.scrollIntoViewIfNeeded();
    const box = await slider.boundingBox();
    if (!box) throw new Error('no slider to drag');
    const at = (share: number) => [box.x + box.width * share, box.y + box.height / 2] as const;
    await page.mouse.move(...at(0.545));
    await page.mouse.down();
    await page.mouse.move(...at(0.65), { steps: 6 });
    // Twice as long as a control rests, by the page's own timers, of which this is the last: it is held.
    await page.evaluate('new Promise((resolve) => setTimeout(resolve, 800))');
    expect(new URL(page.url()).search).toBe('');
    await page.mouse.move(...at(0.8), { steps: 6 });
    await page.mouse.up();
    await expect.poll(() => new URL(page.url()).search).toMatch(/^\?v=2&split=7\d$/u);
    await page.locator('.moves summary').click();
    await expect.poll(() => page.locator('.move-list button').count()).toBe(2);
    await close();
  });

  it('that is pinned stays beside what follows, at its address elsewhere too, on a phone without scrolling sideways', async () => {
    const { page, complaints, close } = await openPage(site, 'evidence/', {}, 'started');
    await page.getByRole('button', { name: 'Pin this' }).click();
    await page.locator('#evidence-curve').selectOption('line');
    await page.getByLabel('Show where a new study would lie').check();
    const compared = page.locator('.compared');
    await expect.poll(() => compared.locator('svg[role=img]').count()).toBe(4);
    const said = page.locator('.picture .move-line').last();
    await expect
      .poll(() => said.innerText())
      .toMatch(/^Against what is pinned\. Curve: from flexible .* Light loads: target from/u);
    await expect.poll(() => new URL(page.url()).search).toBe('?v=2&curve=line&pin=v%3D2&new=shown');
    expect(await findViolations(page)).toEqual([]);
    const elsewhere = await openPage(
      site,
      `evidence/${new URL(page.url()).search}`,
      { viewport: { width: 320, height: 640 }, colorScheme: 'dark' },
      'started',
    );
    const there = elsewhere.page;
    await expect.poll(() => there.locator('.picture .move-line').last().innerText()).toBe(await said.innerText());
    await expect.poll(() => there.locator('.compared g[stroke-dasharray="1,3"]').count()).toBe(8);
    const captions = (of: typeof page) => of.locator('.compared figcaption').allInnerTexts();
    expect((await captions(there)).map((one) => one.replace(/ Pale and dashed.*/u, ''))).toEqual(
      (await captions(page)).map((one) => one.replace(/ Pale and dashed.*/u, '')),
    );
    expect(await there.evaluate('document.documentElement.scrollWidth')).toBe(320);
    expect(await findViolations(there)).toEqual([]);
    await there.getByRole('button', { name: 'Unpin' }).click();
    await expect.poll(() => there.locator('.compared').count()).toBe(0);
    expect(new URL(there.url()).search).toBe('?v=2&curve=line&new=shown');
    expect([...complaints, ...elsewhere.complaints]).toEqual([]);
    await elsewhere.close();
    await close();
  });

  it('that leaves nothing to fit draws why, and the curve before as a trace', async () => {
    const { page, close } = await openPage(site, 'evidence/?v=2&muscle=none+of+these', {}, 'started');
    await expect.poll(() => page.locator('.picture svg').first().textContent()).toMatch(/Nothing to draw:/u);
    expect(await page.locator('.picture svg').first().textContent()).not.toMatch(/−0\.10/u);
    await page.getByRole('button', { name: 'Back to the defaults' }).click();
    await expect.poll(() => page.locator('.move-line').innerText()).toMatch(/before, there was no fit, since/u);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => page.locator(`.picture ${TRACE}`).count()).toBe(2);
    expect(await page.locator('.move-line').innerText()).toMatch(/no fit, since .*; before, target/u);
    await close();
  });
});

it.skipIf(!hasFirefox)('In Firefox a move leaves its trace, and is undone', async () => {
  const browser = await launchFirefox();
  const page = await browser.newPage();
  await page.goto(`${site.address}/evidence/`, { waitUntil: 'load' });
  await page.waitForFunction('!document.querySelector("astro-island[ssr]")');
  const read = (script: string) => page.evaluate(script);
  await page.select('#evidence-curve', 'line');
  await expect.poll(() => read('document.querySelector(".move-line").innerText')).toMatch(/^Curve: from flexible/u);
  await expect.poll(() => read(`document.querySelectorAll('.picture ${TRACE}').length`)).toBe(2);
  await expect.poll(() => read('location.search')).toBe('?v=2&curve=line');
  await read('[...document.querySelectorAll(".moves button")].find((one) => one.innerText === "Undo").click()');
  await expect.poll(() => read('location.search')).toBe('');
  await browser.close();
});
