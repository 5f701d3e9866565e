/**
 * Without a network, in both browsers: loaded once, the site works with the server gone; a newer version is told, taken
 * when asked, and shown whole, while pages of the older one keep what they need until they are left.
 */
import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { describeBuild } from '../../scripts/build/serviceWorker.ts';
import { readArms } from '../../src/evidence/table.ts';
import { analyse } from '../../src/model/analyse.ts';
import { type SettingsInput, settingsSchema } from '../../src/model/settings.ts';
import { dist } from '../support/builtSite.ts';
import { hasFirefox } from '../support/firefox.ts';
import { servePages } from './site.ts';
import { type BrowserName, openProfile, type Profile, type Tab } from './tabs.ts';

/** “2.4 to 5.6”: the interval of the target at heavy loads, as figures say it. */
function heavyRange(text: string, settings: SettingsInput = {}) {
  const { bands } = analyse(readArms(text, '').arms, settingsSchema.parse(settings));
  if (!('heavy' in bands)) throw new Error('expected a fit apart of heavy loads');
  const { low, high } = bands.heavy.target.shown ?? {};
  return `${low?.toFixed(1)} to ${high?.toFixed(1)}`;
}
const SPLINE = { curve: 'spline' } as const;
const shipped = readFileSync('data/arms.csv', 'utf8');
const [header, ...lines] = shipped.trim().split('\n');
const own = [header, ...lines.filter((line) => !/^[P-T]/u.test(line))].join('\n');

/** The name at the head of a page, as the newer version has it. */
const NEWER = 'Shy of Failure, anew';
/** The worker of Evidence; in the newer version it has another name, as every script has. */
const WORKER = /^evidenceWorker-[\w-]{8}\.js$/u;

/** Another build, as it would be with another text and other scripts; and the name of a script in the older one. */
function makeNewer(folder: string): string {
  cpSync(dist, folder, { recursive: true });
  const scripts = readdirSync(join(folder, '_astro')).filter((name) => name.endsWith('.js'));
  const rename = (name: string) =>
    name.replace(/[\w-]{8}(?=\.js$)/u, (hash) => `${[...hash.slice(1)].reverse().join('')}_`);
  const names = new RegExp(scripts.map((name) => name.replaceAll('.', '\\.')).join('|'), 'gu');
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
    if (!/\.(?:html|js)$/u.test(name)) continue;
    const text = readFileSync(join(folder, name), 'utf8');
    const changed = text.replace(names, rename).replace(/(<a class="wordmark"[^>]*>)[^<]*/u, `$1${NEWER}`);
    if (changed !== text) writeFileSync(join(folder, name), changed);
  }
  for (const name of scripts) renameSync(join(folder, '_astro', name), join(folder, '_astro', rename(name)));
  const script = readFileSync(join(dist, 'sw.js'), 'utf8');
  const newer = script.replace(JSON.stringify(describeBuild(dist)), () => JSON.stringify(describeBuild(folder)));
  expect(newer).not.toBe(script);
  writeFileSync(join(folder, 'sw.js'), newer);
  return scripts.find((name) => WORKER.test(name)) ?? '';
}

const SEEN_TEXT = (selector: string) =>
  `[...document.querySelectorAll(${JSON.stringify(selector)})].filter((one) => one.checkVisibility())
    .map((one) => one.innerText).join('\\n')`;
const read = async (tab: Tab, selector = 'body') => String(await tab.run(SEEN_TEXT(selector)));
const shows = (tab: Tab, words: RegExp | string, selector = 'body') =>
  expect.poll(() => read(tab, selector)).toMatch(words);
const visit = async (tab: Tab, path: string) => {
  await tab.goto(path);
  await expect.poll(() => tab.run(`document.querySelector('astro-island[ssr]') === null`)).toBe(true);
};
/** Once it is there: what a page says of its version and of the connection comes after the page. */
const press = (tab: Tab, name: string) =>
  expect
    .poll(() =>
      tab.run(`((button) => { button?.click(); return button !== undefined; })(
        [...document.querySelectorAll('button')].find((one) => one.checkVisibility() && one.innerText === ${JSON.stringify(name)}))`),
    )
    .toBe(true);
const choose = (tab: Tab, selector: string, value: string) =>
  tab.run(`{ const entry = document.querySelector(${JSON.stringify(selector)});
    entry.value = ${JSON.stringify(value)};
    for (const name of ['input', 'change']) entry.dispatchEvent(new Event(name, { bubbles: true })); }`);
/** All that is kept, by the addresses of the stores' entries. */
const keptIn = (tab: Tab) =>
  tab.run(`(async () => {
    const entries = [];
    for (const name of await caches.keys())
      for (const { url } of await (await caches.open(name)).keys()) entries.push(name.split('-http')[0] + ' ' + url);
    return entries.sort().join('\\n');
  })()`);
/** Past what browsers keep by themselves. */
const STATUS = `((path) => fetch(path, { cache: 'reload' }).then(({ status }) => status))`;
const NOTICE = '.notice.kept';

const browsers: readonly BrowserName[] = hasFirefox ? ['Chromium', 'Firefox'] : ['Chromium'];

let folder: string;
let oldScript: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'offline-'));
  writeFileSync(join(folder, 'own.csv'), own);
  oldScript = makeNewer(join(folder, 'newer'));
  expect(oldScript).toMatch(WORKER);
  expect(new Set([heavyRange(shipped), heavyRange(own), heavyRange(own, SPLINE)]).size).toBe(3);
});
afterAll(() => rmSync(folder, { recursive: true }));

describe.each(browsers)('In %s', (name) => {
  let site: Awaited<ReturnType<typeof servePages>>;
  let profile: Profile;
  let tab: Tab;
  const port = () => Number(new URL(site.address).port);
  /** What is kept of a build, as `keptIn` lists it. */
  const expectedOf = (build: string) =>
    describeBuild(build)
      .files.map(({ url, revision }) => {
        const address = new URL(url, `${site.address}/`).href;
        return `shy-of-failure-precache-v2 ${address}${revision ? `?__WB_REVISION__=${revision}` : ''}`;
      })
      .sort()
      .join('\n');

  beforeAll(async () => {
    site = await servePages();
    profile = await openProfile(name, site.address, 'site too');
    tab = await profile.open();
  });
  afterAll(async () => {
    await profile?.close();
    await site?.close();
  });

  it('the first visit keeps every file that the build names, and says nothing', async () => {
    await visit(tab, '');
    await expect.poll(() => tab.run(`navigator.serviceWorker.controller?.state ?? 'none'`)).toBe('activated');
    const kept = String(await keptIn(tab)).split('\n');
    expect(kept.filter((entry) => entry.includes('precache')).join('\n')).toBe(expectedOf(dist));
    expect(await read(tab, NOTICE)).toBe('');
    // A figure's frame that was seen, to be there later; one that was not, not.
    await tab.goto('figures/growth-light/embed/');
    await expect.poll(() => keptIn(tab)).toMatch(/visited-\w+ .*figures\/growth-light\/embed\/$/mu);
  });

  it('with the server gone every page opens, works, and says what it is', async () => {
    await visit(tab, '');
    expect(await read(tab, NOTICE)).toBe('');
    await profile.setOffline(true);
    await site.close();
    // At once where the browser says so of itself; else by the next page, which asks for the site.
    if (name === 'Chromium') await shows(tab, /^Offline: pages come from what this browser keeps\.$/u, NOTICE);
    await visit(tab, '');
    await shows(tab, /in reserve with heavy loads/u, 'h1');
    const connection = /^(?:Offline|The site cannot be reached): pages come from what this browser keeps\.$/u;
    await shows(tab, connection, NOTICE);
    await visit(tab, 'target/?keep=80');
    await expect.poll(() => tab.run(`document.querySelector('#keep').value`)).toBe('80');
    await shows(tab, /^\d/u, '#point');
    await visit(tab, 'programme/');
    // A line is laid out where it is seen; its verdict is worked out anew offline.
    await tab.run(`document.querySelector('.line-said').scrollIntoView()`);
    await shows(tab, /further from failure than advised/iu, '.line-said');
    await tab.run(`document.querySelector('.line-said button').click()`);
    await shows(tab, /as advised/iu, '.line-said');
    // Two lifters, whose part of the page is loaded only now, and their sheets for paper.
    await tab.run('window.print = () => {}');
    await press(tab, 'Lifters and gym sheets');
    for (const [id, weight] of [
      [1, '142,5'],
      [2, '225 lb'],
    ] as const) {
      await expect.poll(() => tab.run(`document.querySelector('#lifter-name') !== null`)).toBe(true);
      await choose(tab, '#lifter-name', `Lifter ${id}`);
      await press(tab, 'Add the lifter');
      await expect.poll(() => tab.run(`document.querySelector('#lifter-${id}-unit') !== null`)).toBe(true);
      await choose(tab, `#lifter-${id}-1rm-barbell-back-squat`, weight);
    }
    await shows(tab, /barbell back squat[\s\S]*\d\skg/u, '.gym-sheet');
    await expect
      .poll(() => tab.run(`document.querySelector('.sheets-bar button + button').ariaDisabled`))
      .toBe('false');
    await press(tab, 'Print the sheets of all 2 lifters');
    await expect.poll(() => tab.run(`document.querySelectorAll('.on-paper .gym-sheet').length`)).toBe(2);
    await visit(tab, 'studies/');
    await shows(tab, /Plover 1996/u, '#studies');
    await visit(tab, 'studies/plover-1996/');
    await shows(tab, /Plover 1996/u, 'h1');
    await visit(tab, 'figures/growth-light/');
    await shows(tab, connection, NOTICE);
    await visit(tab, 'evidence/');
    await shows(tab, heavyRange(shipped), '.workbench figcaption');
    await choose(tab, '#evidence-curve', 'spline');
    await shows(tab, heavyRange(shipped, SPLINE), '.workbench figcaption');
  });

  it('a table of one’s own is opened, kept and read by the other pages', async () => {
    await visit(tab, 'table/');
    await tab.upload(join(folder, 'own.csv'));
    await shows(tab, /own\.csv was taken/u);
    await visit(tab, 'evidence/');
    await shows(tab, heavyRange(own), '.workbench figcaption');
  });

  it('an address that is not kept leads to the page that says so, one without its slash to its page', async () => {
    await tab.goto('figures/growth-light/embed/');
    await shows(tab, /growth, %/u);
    expect(
      await tab.run(`navigator.serviceWorker.controller !== null && document.querySelector('[data-service-worker]')`),
    ).toBeNull();
    await tab.goto('figures/growth-heavy/embed/');
    await shows(tab, 'This is not there offline', 'h1');
    await tab.goto('no/such/page/');
    await shows(tab, 'This is not there offline', 'h1');
    await tab.goto('evidence?v=2&curve=spline');
    await shows(tab, heavyRange(own, SPLINE), '.workbench figcaption');
    expect(await tab.run('location.pathname')).toBe('/evidence/');
  });

  it('a newer version is told, and what an older page needs stays until it is left', async () => {
    const before = await tab.run('JSON.stringify({ ...localStorage })');
    await visit(tab, 'evidence/');
    site = await servePages(undefined, join(folder, 'newer'), port());
    await profile.setOffline(false);
    const other = await profile.open();
    await visit(other, '');
    await shows(other, 'A newer version of this site is here.', NOTICE);
    expect(await read(other, '.wordmark')).toBe('Shy of Failure');
    await visit(other, '');
    expect(await read(other, '.wordmark')).toBe('Shy of Failure');

    await press(other, 'Show it');
    await shows(other, NEWER, '.wordmark');
    await expect.poll(() => read(other, NOTICE)).toBe('');

    await shows(tab, 'A newer version of this site is in use; this page is older.', NOTICE);
    expect(await tab.run(`${STATUS}('/_astro/${oldScript}')`)).toBe(200);
    await choose(tab, '#evidence-curve', 'spline');
    await shows(tab, heavyRange(own, SPLINE), '.workbench figcaption');
    expect(await keptIn(tab)).toContain(oldScript);
    expect(await read(tab, '.wordmark')).toBe('Shy of Failure');

    await expect.poll(() => tab.run('location.search')).toBe('?v=2&curve=spline');
    // A move just before it goes into the address first.
    await choose(tab, '#evidence-weighting', 'equal');
    await press(tab, 'Show it');
    await expect.poll(() => keptIn(other)).toBe(expectedOf(join(folder, 'newer')));
    expect(await read(tab, '.wordmark')).toBe(NEWER);
    expect(await tab.run(`${STATUS}('/_astro/${oldScript}')`)).toBe(404);
    expect(await tab.run('JSON.stringify({ ...localStorage })')).toBe(before);
    await shows(tab, heavyRange(own, { ...SPLINE, weighting: 'equal' }), '.workbench figcaption');
    expect(await tab.run('location.search')).toBe('?v=2&curve=spline&weights=equal');
  });

  it('a version of which a file is not the one that was built is never shown', async () => {
    const broken = join(folder, `broken-${name}`);
    cpSync(dist, broken, { recursive: true });
    writeFileSync(join(broken, 'index.html'), 'half a page');
    const kept = await keptIn(tab);
    await site.close();
    site = await servePages(undefined, broken, port());
    await visit(tab, '');
    const outcome = tab.run(`navigator.serviceWorker.ready.then((registration) => new Promise((resolve) => {
      const follow = ({ installing }) => installing?.addEventListener('statechange', ({ target }) => {
        if (['installed', 'redundant'].includes(target.state)) resolve(target.state);
      });
      follow(registration);
      registration.addEventListener('updatefound', () => follow(registration));
      registration.update();
    }))`);
    expect(await outcome).toBe('redundant');
    expect(await read(tab, NOTICE)).toBe('');
    await visit(tab, '');
    await shows(tab, NEWER, '.wordmark');
    expect(String(await keptIn(tab)).split('\n')).toEqual(expect.arrayContaining(String(kept).split('\n')));
  });
});

describe.each(browsers)('In %s, where the service worker cannot be had', (name) => {
  it('a page is as it was and says nothing of it', async () => {
    let isAskedFor = false;
    const site = await servePages((path) => {
      isAskedFor ||= path === '/sw.js';
      return path === '/sw.js';
    });
    const profile = await openProfile(name, site.address, 'site too');
    try {
      const tab = await profile.open();
      await visit(tab, 'target/');
      await expect.poll(() => isAskedFor).toBe(true);
      await shows(tab, /^\d/u, '#point');
      expect(await tab.run('navigator.serviceWorker.getRegistrations().then(({ length }) => length)')).toBe(0);
      expect(await read(tab, NOTICE)).toBe('');
    } finally {
      await profile.close();
      await site.close();
    }
  });
});
