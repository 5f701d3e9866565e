/**
 * An own table whose every answer differs from the site's, and then every page, the card, print and what is downloaded:
 * none shows a number of the site's table. The same looks without it find those numbers, so that they look at something.
 */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { formatHours, formatShare, formatTarget } from '../../src/figures/format.ts';
import { listBands } from '../../src/model/bands.ts';
import { analyseForPractice } from '../../src/model/full.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { stateHeadline } from '../../src/practice/answer.ts';
import { keptAt } from '../../src/practice/kept.ts';
import { wholeHours } from '../../src/practice/recovery.ts';
import { listTargets } from '../../src/practice/targetTable.ts';
import { openPage, type ServedSite, serveSite } from './site.ts';

const shipped = readFileSync('data/arms.csv', 'utf8');
const [header, ...lines] = shipped.trim().split('\n');
const HOURS = header.split(',').indexOf('hours_after');
/** A third fewer studies, and all that was measured after a session measured twice as late: every number below comes out another. */
const OWN = [header, ...lines.filter((line) => !/^[F-M]/u.test(line)).map(doubleHours)].join('\n');
function doubleHours(line: string): string {
  const cells = line.split(',');
  // No cell before it is quoted.
  return cells.map((cell, i) => (i === HOURS && cell !== '' ? String(2 * Number(cell)) : cell)).join(',');
}

/** Numbers of a table as pages and files write them, each long enough to be met by chance nowhere else. */
function numbersOf(text: string) {
  const { arms } = readArms(text, '');
  const analysis = analyseForPractice(arms, settingsSchema.parse({}));
  const bands = listBands(analysis.bands);
  const intervals = bands.map(([, { target }]) => formatTarget(target).replace(/^[^(]*\(|\)$/gu, ''));
  return {
    counts: [`${arms.length} rows`, `${new Set(arms.map(({ study }) => study)).size} studies`],
    headline: [stateHeadline(analysis)],
    targets: listTargets(analysis).map(({ target }) => formatTarget(target)),
    intervals: [...intervals, ...intervals.map((one) => one.replace(/^(.*) to (.*)$/u, 'between $1 and $2'))],
    kept: [40, 85].flatMap((load) =>
      [1, 2, 3, 4, 5].map((reserve) => {
        const { share, reason } = keptAt(analysis, load, reserve);
        return share ? formatShare(share) : (reason ?? '');
      }),
    ),
    hours: analysis.fatigue.byStatus.flatMap(({ recovery }) =>
      recovery.map(({ hours, low, high }) => `${wholeHours(hours)} h (${formatHours(low, high)})`),
    ),
    /** Of files, where numbers stand with their digits. */
    digits: bands.flatMap(([, { target }]) =>
      [target.point, target.low, target.high].flatMap((one) => (one ? [String(one).slice(0, 8)] : [])),
    ),
  };
}
const SITE = numbersOf(shipped);
const MINE = numbersOf(OWN);
const literally = (text: string) => text.replace(/[.*+?^$()[\]\\{}|]/gu, '\\$&');
const all = (numbers: ReturnType<typeof numbersOf>) => Object.values(numbers).flat();
const siteOnly = all(SITE);

/** Numbers of the site's table in a text, each with what stands around it. */
const findSites = (text: string) => {
  const plain = text.replace(/\s+/gu, ' ');
  return siteOnly.flatMap((number) => {
    const at = plain.search(new RegExp(`(?<![\\d.])${literally(number.replace(/\s+/gu, ' '))}`, 'u'));
    return at < 0 ? [] : [`${number}, in “${plain.slice(Math.max(0, at - 60), at + number.length + 30)}”`];
  });
};

/** Estimates with their intervals, “93 % (80 to 105 %)”, whatever they are of. */
const findEstimates = (text: string) =>
  new Set(text.replace(/\s+/gu, ' ').match(/[−+-]?\d[\d.]*(?: %| h)? \([^()]*\d to [^()]*\d[^()]*\)/gu) ?? []);

const SEEN = `[document.title, document.body.innerText,
  ...[...document.querySelectorAll('svg, figure, img')].filter((one) => one.checkVisibility())
    .flatMap((one) => [one.getAttribute('aria-label'), one.getAttribute('alt'), one.textContent])].join('\\n')`;
const seen = (page: Page) => page.evaluate(SEEN) as Promise<string>;
const settle = async (page: Page) => {
  await page.waitForSelector('astro-island[ssr]', { state: 'detached' });
  await expect.poll(() => page.locator('[aria-busy="true"]:visible').count()).toBe(0);
};

/** A reader's browser, whose pages are opened one after another. */
interface Reader {
  readonly page: Page;
  readonly visit: (path: string) => Promise<void>;
}

let site: ServedSite;
/** One who has the table open, and one who has none. */
let readers: Readonly<Record<'own' | 'site', Reader>>;
beforeAll(async () => {
  site = await serveSite();
  readers = { own: await openReader(), site: await openReader() };
  const { page } = readers.own;
  await page.locator('#own-file').setInputFiles({ name: 'own.csv', mimeType: 'text/csv', buffer: Buffer.from(OWN) });
  await page.locator('.your-table', { hasText: /own\.csv was taken/u }).waitFor();
});
afterAll(() => site?.close());

async function openReader(): Promise<Reader> {
  const { page } = await openPage(site, 'table/');
  const visit = async (path: string) => {
    await page.emulateMedia({ media: 'screen' });
    await page.goto(`${site.address}/${path}`, { waitUntil: 'load' });
    await settle(page);
  };
  return { page, visit };
}

describe('An own table whose every answer differs', () => {
  it('is such a table', () => {
    for (const [name, numbers] of Object.entries(SITE)) {
      const own = MINE[name as keyof typeof MINE];
      expect(numbers.length, name).toBeGreaterThan(0);
      expect(
        numbers.filter((number) => own.includes(number)),
        name,
      ).toEqual([]);
    }
  });

  it.each([
    ['', /may stay in reserve/u, true],
    ['evidence/', /in reserve keep 90/u, true],
    ['target/', /Targets for common shares/u, true],
    ['target/?load=85&exercise=squat&company=spotter&hours=30', /Targets for common shares/u, true],
    ['programme/', /change growth by/u, true],
    ['studies/', /studies/u, true],
    ['plan/', /Growth at|Share of the growth/iu, true],
    ['plan/?a=parallel+heavy_0_20+heavy_3_20&place=parallel_2_40_heavy', /The best of/u, true],
    ['table/', /own\.csv/u, false],
  ])('shows on /%s none of the site’s numbers, on the screen or on paper', async (path, words, isShownBySite) => {
    const { page, visit } = readers.own;
    await visit(path);
    await expect.poll(() => seen(page)).toMatch(words);
    await settle(page);
    const screen = await seen(page);
    expect(findSites(screen), 'screen').toEqual([]);
    await page.emulateMedia({ media: 'print' });
    const print = await seen(page);
    expect(findSites(print), 'print').toEqual([]);
    await readers.site.visit(path);
    const shown = await seen(readers.site.page);
    const estimates = findEstimates(shown);
    if (isShownBySite) {
      expect(findSites(shown).length + estimates.size, 'without an own table').toBeGreaterThan(0);
    }
    const own = findEstimates(`${screen}\n${print}`);
    expect(
      [...estimates].filter((one) => own.has(one)),
      'estimates of both',
    ).toEqual([]);
  });

  it('gives to Evidence and its figures files without any of the site’s numbers', async () => {
    const take = async (page: Page, names: readonly RegExp[]) => {
      const texts: string[] = [];
      for (const name of names) {
        const [download] = await Promise.all([
          page.waitForEvent('download'),
          page.locator('main').getByRole('button', { name }).first().click(),
        ]);
        texts.push(readFileSync(await download.path(), 'utf8'));
      }
      return texts;
    };
    const files = async (table: 'own' | 'site') => {
      const { page, visit } = readers[table];
      await visit('evidence/');
      const taken = await take(page, [/JSON/u, /CSV/u]);
      await page.getByRole('link', { name: 'Make this a figure' }).click();
      await page.waitForURL(/figures\/live/u);
      await expect.poll(() => page.locator('main figure svg').count()).toBeGreaterThan(0);
      await settle(page);
      const screen = await seen(page);
      taken.push(screen, ...(await take(page, [/^SVG/u, /^CSV/u, /^JSON/u])));
      return taken;
    };
    const own = await files('own');
    expect(own).toHaveLength(6);
    for (const text of own) expect(findSites(text), text.slice(0, 60)).toEqual([]);
    const shown = (await files('site')).map((text) => findSites(text).length);
    // The CSV of rows and that of points hold no answer; the others do, and would be caught.
    expect(shown.filter((count) => count > 0).length).toBeGreaterThanOrEqual(4);
  });
});
