/**
 * Own tables where things go wrong, in both browsers: two tabs, a store that is full, denied or half of what it says,
 * a worker that does not load. No page ever shows two tables' numbers, and nothing that was kept is lost.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { analyse } from '../../src/model/analyse.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { hasFirefox } from '../support/firefox.ts';
import { servePages } from './site.ts';
import { type BrowserName, openProfile, type Profile, type Tab } from './tabs.ts';

const shipped = readFileSync('data/arms.csv', 'utf8');
const [header, ...lines] = shipped.trim().split('\n');
const without = (names: RegExp) => [header, ...lines.filter((line) => !names.test(line))].join('\n');
const TEXTS = { 'first.csv': without(/^(?:Magpie 2024|Siskin)/u), 'second.csv': without(/^[P-T]/u) } as const;

/** “2.4 to 5.6”: the interval of the target at heavy loads, as figures say it. */
function heavyRange(text: string, keptShare = 0.9) {
  const { bands } = analyse(readArms(text, '').arms, settingsSchema.parse({ keptShare }));
  if (!('heavy' in bands)) throw new Error('expected a fit apart of heavy loads');
  const { point, low, high } = bands.heavy.target.shown ?? {};
  return { point: point?.toFixed(1) ?? '', range: `${low?.toFixed(1)} to ${high?.toFixed(1)}` };
}
const RANGES = {
  site: heavyRange(shipped).range,
  'first.csv': heavyRange(TEXTS['first.csv']).range,
  'second.csv': heavyRange(TEXTS['second.csv']).range,
};

let isRefusing = false;
let site: Awaited<ReturnType<typeof servePages>>;
let folder: string;
beforeAll(async () => {
  expect(new Set(Object.values(RANGES)).size).toBe(3);
  site = await servePages((path) => isRefusing && /Worker/u.test(path));
  folder = mkdtempSync(join(tmpdir(), 'own-tables-'));
  for (const [name, text] of Object.entries(TEXTS)) writeFileSync(join(folder, name), text);
});
afterAll(async () => {
  rmSync(folder, { recursive: true });
  await site?.close();
});

const SEEN_TEXT = (selector: string) =>
  `[...document.querySelectorAll(${JSON.stringify(selector)})].filter((one) => one.checkVisibility())
    .map((one) => one.innerText).join('\\n')`;
const read = async (tab: Tab, selector = 'body') => String(await tab.run(SEEN_TEXT(selector)));
const settle = (tab: Tab) =>
  expect.poll(() => tab.run(`document.querySelector('astro-island[ssr]') === null`)).toBe(true);
const visit = async (tab: Tab, path: string) => {
  await tab.goto(path);
  await settle(tab);
};
const shows = (tab: Tab, words: RegExp | string, selector = 'body') =>
  expect.poll(() => read(tab, selector)).toMatch(words);
const press = (tab: Tab, name: string) =>
  tab.run(
    `[...document.querySelectorAll('button')].find((one) => !one.hidden && one.innerText === ${JSON.stringify(name)}).click()`,
  );
const take = async (tab: Tab, name: keyof typeof TEXTS) => {
  await visit(tab, 'table/');
  await tab.upload(join(folder, name));
  await shows(tab, `${name} was taken`);
};

/** Has a page write down, at every change of it, which table it names and which target it shows. */
const WATCH = `window.states = new Set();
const look = () => window.states.add(document.querySelector('[data-own-table]').innerText + ' | ' +
  [...document.querySelectorAll('.workbench figcaption')].filter((one) => one.checkVisibility())
    .map((one) => one.innerText).join(' '));
// In a task of its own: what stands between two steps of a script is never painted.
new MutationObserver(() => setTimeout(look)).observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
look();`;

const browsers: readonly BrowserName[] = hasFirefox ? ['Chromium', 'Firefox'] : ['Chromium'];

describe.each(browsers)('In %s', (name) => {
  let profile: Profile;
  beforeAll(async () => {
    profile = await openProfile(name, site.address);
  });
  afterAll(async () => {
    isRefusing = false;
    await profile?.close();
  });

  // The first in its profile: nothing of the worker is in the browser yet.
  it('a worker that does not load leaves no old advice, says so, and is tried again', async () => {
    const tab = await profile.open();
    await visit(tab, 'target/');
    isRefusing = true;
    await tab.run(`(() => { const keep = document.querySelector('#keep'); keep.value = '80';
      keep.dispatchEvent(new Event('input', { bubbles: true })); })()`);
    await shows(tab, /could not be worked out: the calculation could not be loaded or started/u, '.answer');
    expect(await read(tab, '#point')).toBe('');
    isRefusing = false;
    await press(tab, 'Try again');
    await expect.poll(() => read(tab, '#point')).toBe(heavyRange(shipped, 0.8).point);
    expect(await read(tab, '.answer')).not.toMatch(/could not/u);
  });

  it('two tabs read one table at a time, each page all of it, and both tables stay', async () => {
    const [one, other] = [await profile.open(), await profile.open()];
    await take(one, 'first.csv');
    await visit(one, 'evidence/');
    await shows(one, RANGES['first.csv'], '.workbench figcaption');
    await one.run(WATCH);
    await take(other, 'second.csv');
    await shows(one, RANGES['second.csv'], '.workbench figcaption');
    await shows(one, /The table was changed\. This page reads your own table, second\.csv/u, '[data-own-table]');
    await shows(other, /second\.csv the site reads this one[\s\S]*first\.csv/u, '.kept-tables');
    await press(other, 'Go back to the site’s table');
    await shows(one, RANGES.site, '.workbench figcaption');
    await shows(one, /Your table was put away: this page shows the site’s own table/u, '[data-own-table]');
    await shows(other, /second\.csv[\s\S]*first\.csv/u, '.kept-tables');
    // The timers of a tab that is not looked at come late.
    await expect.poll(() => one.run('window.states.size')).toBeGreaterThan(1);
    const states = (await one.run('[...window.states]')) as string[];
    for (const state of states) {
      const [said, shown] = state.split(' | ');
      const named = /first|second/u.exec(said)?.[0];
      const isOther = Object.entries(RANGES).some(
        ([table, range]) => table !== (named ? `${named}.csv` : 'site') && shown.includes(`(${range})`),
      );
      expect(isOther, state).toBe(false);
    }
    // Deleting asks first, and takes the table from a page that reads it.
    await press(other, 'Read this one');
    await shows(one, /reads your own table, second\.csv/u, '[data-own-table]');
    await press(other, 'Delete …');
    await shows(other, /Delete second\.csv for good/u);
    await press(other, 'Delete it');
    await shows(one, RANGES.site, '.workbench figcaption');
    await shows(other, /^first\.csv/u, '.kept-tables');
  });

  it('a mark without its table, and a table from before there could be several, are what they are', async () => {
    const tab = await profile.open();
    await visit(tab, 'target/');
    const point = await read(tab, '#point');
    await tab.run(`localStorage.setItem('shy-of-failure table in use', 'a'.repeat(64))`);
    await visit(tab, 'target/');
    await shows(
      tab,
      /cannot be read: this browser no longer keeps it\. This page shows the site’s/u,
      '[data-own-table]',
    );
    expect(await read(tab, '#point')).toBe(point);
    await press(tab, 'Go back to the site’s table');
    const old = { name: 'old.csv', studies: 1, rows: 2, demonstration: false, text: TEXTS['first.csv'] };
    await tab.run(`new Promise((resolve, reject) => {
      localStorage.setItem('shy-of-failure own table', '{"name":"old.csv","studies":1,"rows":2,"demonstration":false}');
      const opened = indexedDB.open('shy-of-failure');
      opened.onsuccess = () => {
        const change = opened.result.transaction('tables', 'readwrite');
        change.objectStore('tables').put(${JSON.stringify(old)}, 'arms');
        change.oncomplete = resolve;
        change.onabort = reject;
      };
    })`);
    await visit(tab, '');
    await shows(tab, /reads your own table, old\.csv/u, '[data-own-table]');
    await shows(tab, RANGES['first.csv'], '#own-answer figcaption');
    await visit(tab, 'table/');
    await shows(tab, /old\.csv the site reads this one/u, '.kept-tables');
    await press(tab, 'Go back to the site’s table');
  });

  // What Firefox is driven by keeps its own functions from those of the page, so that there the store cannot be replaced.
  if (name === 'Chromium')
    it('a table that is kept but cannot be marked is said to be just that', async () => {
      const tab = await profile.open();
      await visit(tab, 'table/');
      await tab.run(`Storage.prototype.setItem = () => { throw new DOMException('', 'QuotaExceededError'); }`);
      await tab.upload(join(folder, 'second.csv'));
      await shows(tab, /second\.csv is kept below, but cannot be taken up: this browser has no room left/u);
      expect(await read(tab)).not.toMatch(/was taken|reads your own table/u);
      await visit(tab, 'table/');
      await shows(tab, /^second\.csv/u, '.kept-tables');
      await press(tab, 'Read this one');
      await shows(tab, /reads your own table, second\.csv/u, '[data-own-table]');
    });

  it.each([
    ['denied', /could not be done: \S/u],
    ['full', /could not be done: this browser has no room left for this site/u],
  ] as const)('a store that is %s is a failure, said once, and the site’s table stays', async (storage, words) => {
    const own = await openProfile(name, site.address, storage);
    const tab = await own.open();
    await visit(tab, 'table/');
    await tab.upload(join(folder, 'first.csv'));
    await shows(tab, words);
    expect(await read(tab)).not.toMatch(/was taken|reads your own table/u);
    await visit(tab, 'target/');
    expect(await read(tab)).not.toMatch(/your own|Your table is/u);
    expect(await read(tab, '#point')).toMatch(/^\d/u);
    await own.close();
  });
});
