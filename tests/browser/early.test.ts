/**
 * What is done to a page before it answers, in both browsers: over a slow line its scripts come seconds after it can be
 * seen. Each act is then done as it would have been later, or not at all; never is a field left with what nothing has read.
 */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { hasFirefox } from '../support/firefox.ts';
import { makeTable } from '../support/tables.ts';
import { servePages } from './site.ts';
import { type BrowserName, openProfile, type Profile, type Tab } from './tabs.ts';

const TABLE = makeTable([{}]);

/** Lets the scripts of the page that is being loaded come; until then none does. */
let release = () => {};
let isHeld = Promise.resolve();
function hold(): void {
  isHeld = new Promise((resolve) => {
    release = resolve;
  });
}

const ALL = 'astro-island :is(input, select, textarea)';
const FIELDS = `[...document.querySelectorAll('${ALL}')].map((field) =>
  (field.id || field.labels?.[0]?.innerText) + ': ' + (/radio|checkbox/.test(field.type) ? field.checked : field.value)).join('\\n')`;
/** Each field as it is shown, and what the page answers: alike in both, two pages have read the same. */
const READ = `${FIELDS} + [...document.querySelectorAll('figcaption, #reserve, #interval, .line-said, aside.answer > :not([role=status])')]
  .map((answer) => '\\n' + answer.innerText).join('')`;
/** All that may still move. */
const SHOWN = `${FIELDS} + document.querySelector('main').innerText`;
const MARK = `document.querySelectorAll('${ALL}').forEach((field, at) => field.setAttribute('data-at', at))`;
const COUNT = `document.querySelectorAll('${ALL}').length`;
const EVENTS = `for (const name of ['focusin', 'input', 'change']) field.dispatchEvent(new Event(name, { bubbles: true }));`;
/** Gives a field another value, as a reader would. */
const change = (at: number) => `(() => {
  const field = document.querySelector('[data-at="${at}"]');
  if (!field || field.disabled || field.type === 'file' || (field.type === 'radio' && field.checked)) return;
  if (/radio|checkbox/.test(field.type)) field.checked = !field.checked;
  else if (field.options) field.selectedIndex = (field.selectedIndex + 1) % field.options.length;
  else if (field.type === 'range') field.stepUp();
  else field.value = field.value === '' ? '7' : field.value + '1';
  ${EVENTS}
})()`;
const enter = (selector: string, value: string) =>
  `(() => { const field = document.querySelector(${JSON.stringify(selector)}); field.value = ${JSON.stringify(value)}; ${EVENTS} })()`;
const press = (name: string) =>
  `[...document.querySelectorAll('button')].find((one) => one.innerText.trim().startsWith(${JSON.stringify(name)})).click()`;
const shownIn = (selector: string) => `document.querySelector(${JSON.stringify(selector)})?.value`;

const isTrue = (tab: Tab, script: string) => expect.poll(() => tab.run(`String(Boolean(${script}))`)).toBe('true');
const IS_SETTLED = '!document.querySelector("astro-island[ssr], [aria-busy=true]")';

/** Waits until nothing has moved for half a second: some answers are given a moment after the act. */
async function settle(tab: Tab): Promise<string> {
  let before = '';
  let shown = String(await tab.run(SHOWN));
  while (shown !== before) {
    await isTrue(tab, IS_SETTLED);
    before = shown;
    await new Promise((resolve) => setTimeout(resolve, 500));
    shown = String(await tab.run(SHOWN));
  }
  return String(await tab.run(READ));
}

/**
 * Opens a page whose scripts do not come before `release`. The one before is left first: a script that it asks for late
 * would be held as well, and six of them take all connections that a browser makes to one host.
 */
async function openHeld(tab: Tab, path: string): Promise<void> {
  await tab.leave();
  hold();
  // It ends loading with its scripts only.
  void tab.goto(path);
  await isTrue(tab, `document.querySelector('astro-island[ssr]') && document.querySelector('footer.colophon')`);
}

/** As at a first visit: pages keep what is entered. */
async function forget(tab: Tab): Promise<void> {
  await tab.goto('offline/');
  await tab.run('sessionStorage.clear(); localStorage.clear()');
}

/** What a page shows after each of its fields was changed: before its scripts come, and once it answers; and untouched. */
async function changeAll(tab: Tab, path: string): Promise<{ early: string; late: string; untouched: string }> {
  await openHeld(tab, path);
  await tab.run(MARK);
  const count = Number(await tab.run(COUNT));
  expect(count).toBeGreaterThan(4);
  const acts = Array.from({ length: count }, (_, at) => change(at));
  for (const act of acts) await tab.run(act);
  release();
  const early = await settle(tab);
  await forget(tab);
  await tab.goto(path);
  const untouched = await settle(tab);
  await tab.run(MARK);
  for (const act of acts) await tab.run(act);
  return { early, late: await settle(tab), untouched };
}

const BROWSERS: readonly BrowserName[] = hasFirefox ? ['Chromium', 'Firefox'] : ['Chromium'];
/** Pages that are tried with every field at once; in the second browser those of most fields are left out. */
const PAGES: Readonly<Record<BrowserName, readonly string[]>> = {
  Chromium: ['evidence/', 'target/', 'table/curate/', 'programme/'],
  Firefox: ['target/'],
};

describe.each(BROWSERS)('Before a page has started, in %s', (name) => {
  let site: Awaited<ReturnType<typeof servePages>>;
  let profile: Profile;
  let tab: Tab;
  beforeAll(async () => {
    const waits = async (path: string) => {
      if (path.endsWith('.js')) await isHeld;
      return false;
    };
    site = await servePages(waits, undefined, 0, false);
    profile = await openProfile(name, site.address);
    tab = await profile.open();
  });
  // What one test has held does not hold the next.
  afterEach(() => release());
  afterAll(async () => {
    await profile?.close();
    await site?.close();
  });

  it.each(PAGES[name])('on /%s every field is read that was changed, as if it had been changed later', async (path) => {
    await forget(tab);
    const { early, late, untouched } = await changeAll(tab, path);
    expect(early).toBe(late);
    expect(early).not.toBe(untouched);
  });

  it('a file is taken that was chosen before', async () => {
    await forget(tab);
    await openHeld(tab, 'table/');
    await tab.upload('data/arms.csv');
    release();
    await isTrue(tab, '/arms\\.csv was taken/u.test(document.querySelector(".your-table").innerText)');
    expect(await tab.run(shownIn('#own-file'))).toBe('');
    await forget(tab);
  });

  it('a file is taken that was dropped before', async () => {
    await openHeld(tab, 'table/');
    const isLeft = await tab.run(`(() => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([${JSON.stringify(TABLE)}], 'dropped.csv'));
      return ['dragover', 'drop'].map((name) => document.querySelector('.drop label')
        .dispatchEvent(new DragEvent(name, { dataTransfer, bubbles: true, cancelable: true }))).join();
    })()`);
    expect(isLeft).toBe('false,false');
    release();
    await isTrue(tab, '/dropped\\.csv was taken/u.test(document.querySelector(".your-table").innerText)');
    await forget(tab);
  });

  it('a button is pressed that was pressed before, after the fields that were changed before it', async () => {
    await openHeld(tab, 'programme/');
    await tab.run(press('Start a week of your own'));
    await tab.run(enter('#first-1-sets', '5'));
    await tab.run(press('Start a week of your own'));
    release();
    await isTrue(tab, 'document.querySelectorAll("section[aria-label=\\"The programme\\"] .lines > li").length === 1');
    await settle(tab);
    await tab.run(press('Undo'));
    await isTrue(tab, `${shownIn('#first-1-sets')} === '5'`);
  });

  it('a fold that was opened before shows what is in it', async () => {
    await forget(tab);
    const open = (selector: string) => `document.querySelector('${selector} > summary').click()`;
    await openHeld(tab, 'programme/');
    await tab.run(open('.programme details.entry'));
    release();
    await isTrue(tab, '/barbell back squat/u.test(document.querySelector("details.entry[open] textarea")?.value)');
    await openHeld(tab, 'table/curate/');
    await tab.run(open('.curate details'));
    release();
    await isTrue(tab, '/No table of yours/u.test(document.querySelector(".curate details[open]").innerText)');
  });

  it('nothing is done to other lines than those that were seen: what was kept stands as it was', async () => {
    await forget(tab);
    await tab.goto('programme/');
    await settle(tab);
    await tab.run(enter('#first-1-exercise', 'arm curl'));
    await tab.run(enter('#first-2-sets', '9'));
    await settle(tab);
    const kept = await tab.run(FIELDS);
    await openHeld(tab, 'programme/');
    await tab.run(enter('#first-1-sets', '2'));
    await tab.run(enter('#first-2-sets', '2'));
    await tab.run(press('Start a week of your own'));
    release();
    await settle(tab);
    expect(await tab.run(FIELDS)).toBe(kept);
  });

  it('what is done just as it answers is kept, whatever its address asks for', async () => {
    await forget(tab);
    await openHeld(tab, 'target/?load=80&company=spotter');
    await tab.run(`new MutationObserver((_, observer) => {
      observer.disconnect();
      ${enter('#judgement', 'own test sets')}
    }).observe(document.querySelector('astro-island[ssr]'), { attributeFilter: ['ssr'] })`);
    release();
    await isTrue(tab, 'document.querySelector(".test-sets")');
    await settle(tab);
    expect(await tab.run('document.querySelector(".test-sets") !== null && location.search')).toBe(
      '?load=80&company=spotter&judgement=own+test+sets',
    );
  });

  it('a field that the browser has filled in by itself shows what is read', async () => {
    await forget(tab);
    await openHeld(tab, 'target/');
    const repetitions = await tab.run(shownIn('#repetitions'));
    await tab.run(`document.querySelector('#repetitions').value = '1'`);
    release();
    await settle(tab);
    expect(repetitions).toMatch(/^\d+$/u);
    expect(await tab.run(shownIn('#repetitions'))).toBe(repetitions);
  });
});
