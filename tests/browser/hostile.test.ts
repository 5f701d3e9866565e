/**
 * Hostile addresses and tables: markup, formulas, prototype keys, huge numbers, control and
 * bidirectional characters. Nothing executes, nothing breaks, text shows as text.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { readSettings } from '../../src/islands/analysis/settingsAddress.ts';
import { DEFAULT_CHOICES, readChoices } from '../../src/islands/target/situationAddress.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { makeTable } from '../support/tables.ts';
import { openPage, type ServedSite, serveSite } from './site.ts';

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());

/** What must never reach a page as anything but text. */
const VENOM: readonly string[] = [
  '<img src=x onerror="window.struck=1">',
  '<script>window.struck=1</script>',
  '"><svg onload="window.struck=1">',
  "'-window.struck=1-'",
  'javascript:window.struck=1',
  '=HYPERLINK("http://example.com","x")',
  '@SUM(1+1)*cmd|x!A0',
  '-2+3',
  '__proto__',
  'constructor',
  'prototype.polluted',
  'hasOwnProperty',
  '1e308',
  '1e999',
  '-0',
  '9'.repeat(400),
  'NaN',
  'Infinity',
  '\u202egnisrever',
  '\u2066\u2067\u2068isolates',
  '\u0000nothing',
  '\u0007bell',
  '\ufffd\ud800',
  '%00%0a%0d',
  '{{constructor.constructor("window.struck=1")()}}',
  '${window.struck=1}',
  '../../../etc/passwd',
  '//example.com/x',
  'a'.repeat(5000),
  '👨‍👩‍👧‍👦',
];

const struck = (page: Page) => page.evaluate('window.struck ?? Object.prototype.polluted ?? null');

describe('hostile addresses', () => {
  /** Names that each page reads, in its query or after its #, and how many times the texts go round on it. */
  const PAGES = [
    { path: 'evidence/', names: ['curve', 'split', 'keep', 'muscle', 'without', 'r'], rounds: 1 },
    { path: 'target/', names: ['load', 'exercise', 'company', 'hours', 'purpose'], rounds: 2 },
    { path: 'studies/', names: ['study', '__proto__'], rounds: 2 },
    { path: 'figures/live/', names: ['curve', 'muscle'], rounds: 2 },
  ] as const;
  const addresses = PAGES.flatMap(({ path, names, rounds }) =>
    Array.from({ length: rounds }, (_, round) =>
      VENOM.map((text, i) => {
        const value = encodeURIComponent(text.replace(/[\ud800-\udfff]/gu, ''));
        const name = names[(i + round) % names.length];
        return {
          path,
          query: `?v=2&${name}=${value}&${value}=1`,
          hash: i % 2 === 0 ? `#${value}` : `#${name}=${value}`,
        };
      }),
    ).flat(),
  );

  it('are read without a throw into settings and choices that hold', () => {
    expect(addresses.length).toBeGreaterThanOrEqual(200);
    for (const { query } of addresses) {
      expect(settingsSchema.safeParse(readSettings(query).settings).success, query).toBe(true);
      const { values } = readChoices(query, ['bench press']);
      expect(
        Object.keys(values).every((name) => Object.hasOwn(DEFAULT_CHOICES, name)),
        query,
      ).toBe(true);
    }
    expect(Object.keys(Object.prototype)).toEqual([]);
  });

  // Each page loads in a browser with half of them, the other half of the texts a round later; all are read above.
  it('execute nothing, break nothing and leave the page with its answer', async () => {
    const { page, complaints, close } = await openPage(site, '');
    const chosen = addresses.flatMap((address, i) => {
      const [round, text] = [Math.floor(i / VENOM.length), i % VENOM.length];
      return (text + round) % 2 === 0 ? [{ ...address, text }] : [];
    });
    expect(new Set(chosen.map(({ text }) => text)).size).toBe(VENOM.length);
    expect(new Set(chosen.map(({ path }) => path)).size).toBe(PAGES.length);
    for (const { path, query, hash } of chosen) {
      const address = `${path}${query}${hash}`;
      await page.goto(`${site.address}/${address}`, { waitUntil: 'load' });
      await page.waitForSelector('astro-island[ssr]', { state: 'detached' });
      expect(await struck(page), address).toBeNull();
      expect(await page.locator('main h1').count(), address).toBe(1);
    }
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('hostile tables', () => {
  const COLUMNS = ['study', 'arm', 'muscle', 'measure', 'note', 'load_pct_1rm', 'baseline_mean'] as const;
  const quote = (text: string) => `"${text.replaceAll('"', '""')}"`;
  /** Tables whose cell, or whose header, is the text. */
  const tables = VENOM.flatMap((text) => [
    ...COLUMNS.map((column) => makeTable([{}, { arm: 'other', [column]: quote(text) }])),
    makeTable([{}]).replace('study', quote(text)),
  ]);

  it('are each refused with the place, or hold nothing that a page or spreadsheet would take for more than text', () => {
    expect(tables.length).toBeGreaterThanOrEqual(200);
    const taken = tables.filter((table) => readArms(table, 'hostile.csv').problems.length === 0);
    // A note may be “constructor”; markup, formulas and unseen characters may stand nowhere.
    expect(taken.length).toBeGreaterThan(20);
    expect(taken.length).toBeLessThan(tables.length - 60);
    for (const table of tables) {
      const { arms, problems } = readArms(table, 'hostile.csv');
      expect(
        arms.every((arm) => !/<[a-z/!?]|^[=+@]/imu.test(`${arm.study}\n${arm.arm}\n${arm.muscle}\n${arm.note}`)),
      ).toBe(true);
      for (const { line } of problems) expect(line === 1 || line === 3, String(line)).toBe(true);
    }
    expect(Object.keys(Object.prototype)).toEqual([]);
  });

  it('open in a browser with all their texts shown as text, and nothing executes', async () => {
    const { page, complaints, close } = await openPage(site, 'table/');
    // One file a column has all texts, a row each; every refused one is listed in the page.
    const files = [
      ...COLUMNS.map((column) => makeTable(VENOM.map((text, i) => ({ arm: `arm ${i}`, [column]: quote(text) })))),
      ...VENOM.filter((_, i) => i % 3 === 0).map((text) => makeTable([{}]).replace('study', quote(text))),
    ];
    for (const [i, table] of files.entries()) {
      const name = `hostile-${i}.csv`;
      await page.locator('#own-file').setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(table, 'utf8') });
      const found = page.locator('section[aria-label="What was found"]');
      await expect.poll(() => found.innerText()).toContain(name);
      const { problems } = readArms(table.replace(/[\ud800-\udfff](?![\udc00-\udfff])/gu, '\ufffd'), name);
      const listed = await found.locator('li').count();
      if (problems.length > 0) expect(listed, name).toBeGreaterThan(0);
    }
    expect(await struck(page)).toBeNull();
    expect(await page.locator('.your-table img, .your-table svg, .your-table script').count()).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });

  it('by a hostile name of the file, or stored by someone else, are shown as text or not at all', async () => {
    const { page, complaints, close } = await openPage(site, 'table/');
    await page.locator('#own-file').setInputFiles({
      name: '<img src=x onerror=window.struck=1>.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(makeTable([{}])),
    });
    await expect.poll(() => page.locator('.your-table').innerText()).toMatch(/<img src=x.*\.csv was taken/u);
    for (const stored of [
      '{"__proto__":{"polluted":1}}',
      '{"name":5}',
      'null',
      '[]',
      '"x"',
      '{',
      '{"name":"<svg onload=window.struck=1>","rows":1,"studies":1,"demonstration":false}',
    ]) {
      await page.evaluate(
        ([text]) => {
          localStorage.setItem('shy-of-failure own table', text);
          sessionStorage.setItem('shy-of-failure programme', text);
        },
        [stored] as const,
      );
      for (const path of ['', 'target/', 'programme/']) {
        await page.goto(`${site.address}/${path}`, { waitUntil: 'load' });
        await page.waitForSelector('astro-island[ssr]', { state: 'detached' });
        expect(await struck(page), stored).toBeNull();
        await expect.poll(() => page.locator('main h1:visible').count()).toBe(1);
      }
    }
    expect(complaints).toEqual([]);
    await close();
  });
});
