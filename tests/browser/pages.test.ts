/** The built pages in a real Chromium: readable, reachable, quiet, and right. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findViolations, openPage, PATHS, type ServedSite, serveSite } from './site.ts';

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());

describe('Answer without JavaScript', () => {
  it('shows the sentence, all figures as pictures with words, the targets and the cautions', async () => {
    const { page, complaints, close } = await openPage(site, '', { javaScriptEnabled: false });
    expect(await page.locator('h1').innerText()).toMatch(
      /repetition.* may stay in reserve with heavy loads, .*light ones\.$/u,
    );
    const pictures = page.locator('figure svg[role="img"]');
    expect(await pictures.count()).toBe(4);
    for (const picture of await pictures.all()) {
      expect(await picture.getAttribute('aria-label')).toMatch(/studies/u);
      expect((await picture.boundingBox())?.height).toBeGreaterThan(150);
    }
    expect(await page.locator('table.wide').innerText()).toMatch(/10 to 20/u);
    expect(await page.locator('.cautions').innerText()).toMatch(/collars off/u);
    expect(await page.locator('.notice[data-demonstration]').innerText()).toMatch(/invented/u);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('Target', () => {
  /** The target that the command line gives for heavy loads. */
  const askCommandLine = (keptShare: number) => {
    const folder = mkdtempSync(join(tmpdir(), 'settings-'));
    const file = join(folder, 'settings.json');
    writeFileSync(file, JSON.stringify({ keptShare }));
    const { stdout } = spawnSync(process.execPath, ['scripts/fit.ts', 'data/arms.csv', '--settings', file, '--json'], {
      encoding: 'utf8',
    });
    rmSync(folder, { recursive: true });
    return JSON.parse(stdout).bands.heavy.target.shown as { point: number; low: number; high: number | null };
  };

  it.each([80, 93, 95])('with %d % of growth to keep shows what the command line gives', async (keep) => {
    const { page, complaints, close } = await openPage(site, 'target/');
    await page.locator('#keep').fill(String(keep));
    const { point, low, high } = askCommandLine(keep / 100);
    await expect.poll(() => page.locator('#point').innerText()).toBe(point.toFixed(1));
    expect(await page.locator('#interval').innerText()).toBe(
      high === null ? `at least ${low.toFixed(1)}` : `${low.toFixed(1)} to ${high.toFixed(1)}`,
    );
    expect(complaints).toEqual([]);
    await close();
  });

  it('keeps its state in the address and reads it again', async () => {
    const first = await openPage(site, 'target/');
    await first.page.locator('#keep').fill('80');
    await first.page.locator('#company').selectOption('spotter');
    await expect.poll(() => new URL(first.page.url()).search).toBe('?company=spotter&keep=80');
    await first.close();
    const again = await openPage(site, 'target/?company=spotter&keep=80');
    await expect.poll(() => again.page.locator('#company').inputValue()).toBe('spotter');
    expect(await again.page.locator('#keep').inputValue()).toBe('80');
    await again.close();
  });

  it('says which parts of a bad address it did not take, and executes nothing of it', async () => {
    const { page, complaints, close } = await openPage(site, 'target/?keep=<img src=x onerror=alert(1)>&load=abc');
    expect(await page.locator('.problem').innerText()).toMatch(/load, keep/u);
    expect(complaints).toEqual([]);
    await close();
  });

  it('says which repetitions it does not take and keeps the load', async () => {
    const { page, close } = await openPage(site, 'target/');
    const load = await page.locator('#load').inputValue();
    await page.locator('#repetitions').fill('150');
    await page.locator('#repetitions').press('Tab');
    await expect.poll(() => page.locator('form').innerText()).toMatch(/from 3 to 100, received “150”/u);
    expect(await page.locator('#load').inputValue()).toBe(load);
    await page.locator('#repetitions').fill('30');
    await page.locator('#repetitions').press('Tab');
    await expect.poll(() => page.locator('form').innerText()).not.toMatch(/received/u);
    expect(await page.locator('#load').inputValue()).not.toBe(load);
    await close();
  });

  it('leaves what is being typed alone, whatever comes in meanwhile', async () => {
    const { page, close } = await openPage(site, 'target/');
    const repetitions = page.locator('#repetitions');
    await repetitions.press('Control+A');
    await repetitions.pressSequentially('15');
    // A move of the load lays all of the form out anew, and would enter other repetitions.
    await page.evaluate(`(() => {
      const load = document.getElementById('load');
      load.value = '60';
      load.dispatchEvent(new Event('input', { bubbles: true }));
    })()`);
    await expect.poll(() => page.locator('#load').getAttribute('aria-valuetext')).toMatch(/^60/u);
    expect(await repetitions.inputValue()).toBe('15');
    await repetitions.blur();
    await expect.poll(() => page.locator('#load').inputValue()).not.toBe('60');
    expect(await repetitions.inputValue()).toBe('15');
    await close();
  });

  it('on a phone keeps the number in sight while a control moves', async () => {
    const { page, close } = await openPage(site, 'target/', { viewport: { width: 390, height: 800 } });
    await page.locator('#keep').scrollIntoViewIfNeeded();
    await page.locator('#keep').fill('80');
    const readback = page.locator('.readback');
    // Both are read at one moment, since both change when the new fit arrives.
    const sameNumber = `document.querySelector('.readback strong').textContent.trim() ===
      document.querySelector('#reserve').firstChild.textContent.trim()`;
    await expect.poll(() => page.evaluate(sameNumber)).toBe(true);
    const box = await readback.boundingBox();
    expect((box?.y ?? Infinity) + (box?.height ?? 0)).toBeLessThanOrEqual(800);
    await close();
  });

  it('never advises reserve 0 alone under a load that can pin, and says that safety raised it', async () => {
    const { page, close } = await openPage(site, 'target/?keep=99&load=30');
    await expect.poll(() => page.locator('#reserve').innerText()).toMatch(/^1\s+in reserve/u);
    await expect.poll(() => page.locator('.answer').innerText()).toMatch(/Raised for safety/u);
    await page.locator('#company').selectOption('safety arms');
    await expect.poll(() => page.locator('#reserve').innerText()).toMatch(/^0\s+in reserve/u);
    await close();
  });

  it('gives the targets of common shares without JavaScript', async () => {
    const { page, close } = await openPage(site, 'target/', { javaScriptEnabled: false });
    const { point } = askCommandLine(0.9);
    expect(await page.locator('.scroll[aria-label="Targets for common shares"]').innerText()).toContain(
      point.toFixed(1),
    );
    await close();
  });
});

/** Layout shift so far (Layout Instability, sum of the shifts without input). */
const SHIFTS =
  'new Promise((resolve) => { let sum = 0; new PerformanceObserver((list) => { for (const entry of list.getEntries()) if (!entry.hadRecentInput) sum += entry.value; }).observe({ type: "layout-shift", buffered: true }); setTimeout(() => resolve(sum), 400); })';

describe.each(PATHS)('/%s', (path) => {
  it('does not shift, fits every width, has no accessibility violation in light or dark, no console message and no request to another origin', async () => {
    const phone = { viewport: { width: 390, height: 800 }, colorScheme: 'light' } as const;
    const { page, complaints, close } = await openPage(site, path, phone);
    expect(await page.evaluate(SHIFTS)).toBeLessThan(0.02);
    expect(await findViolations(page), 'on a phone in light').toEqual([]);
    for (const width of [320, 390, 768]) {
      await page.setViewportSize({ width, height: 800 });
      expect(await page.evaluate('document.documentElement.scrollWidth'), `${width} px`).toBeLessThanOrEqual(width);
    }
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await findViolations(page), 'on a desktop in dark').toEqual([]);
    // What a window of 1280 by 1024 px shows at 400 %.
    await page.setViewportSize({ width: 320, height: 256 });
    await page.emulateMedia({ forcedColors: 'active', reducedMotion: 'reduce' });
    expect(await page.evaluate('document.documentElement.scrollWidth'), 'at 400 %').toBeLessThanOrEqual(320);
    expect(await page.locator('main h1').isVisible(), 'at 400 %').toBe(true);
    expect(complaints).toEqual([]);
    await close();
  });
});
