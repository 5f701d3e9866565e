/** As a coach would: phone in hand, by keyboard, on paper, with wrong entries, with a shared address. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { countPages, focused, linesOf, textOf, writeLine } from './programmePage.ts';
import { findViolations, openPage, type ServedSite, serveSite } from './site.ts';

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());

const PHONE = { viewport: { width: 390, height: 800 } } as const;

describe('Target', () => {
  it('by keyboard on a phone goes from purpose to event and answers at every step', async () => {
    const { page, complaints, close } = await openPage(site, 'target/', PHONE);
    await page.locator('#purpose').focus();
    await page.keyboard.type('staying');
    await page.keyboard.press('Tab');
    await page.keyboard.type('leg press');
    await expect.poll(() => page.locator('#exercise').inputValue()).toBe('leg press');
    await page.locator('#hours').focus();
    await page.keyboard.type('20');
    await page.keyboard.press('Tab');
    await expect.poll(() => textOf(page, '#event')).toMatch(/recovered before the event/iu);
    await expect.poll(() => new URL(page.url()).search).toBe('?purpose=staying+fresh&exercise=leg+press&hours=20');
    await expect.poll(() => page.locator('.answer figure svg').count()).toBe(2);
    expect(complaints).toEqual([]);
    await close();
  });

  it('opens a shared address as it was shared', async () => {
    const address =
      'target/?purpose=strength%2C+main+lift&exercise=another&load=80&planned=9&stops=yes&company=spotter&status=untrained&hours=30';
    const { page, close } = await openPage(site, address);
    await expect.poll(() => page.locator('#planned').inputValue()).toBe('9');
    expect(await page.locator('#status').inputValue()).toBe('untrained');
    expect(await textOf(page, '.answer .saying')).toMatch(/Do 8 repetitions at this load/u);
    expect(await textOf(page, '.answer')).toMatch(/Heavier loads bring more/u);
    expect(await page.locator('fieldset.facts input:checked').count()).toBe(2);
    await close();
  });

  it('asks an exercise of one’s own for its facts and guards it by them', async () => {
    const { page, close } = await openPage(site, 'target/?exercise=another&load=30&keep=99');
    await expect.poll(() => textOf(page, '#reserve')).toMatch(/^1\s+in reserve/u);
    await page.getByLabel('It can pin the lifter').uncheck();
    await expect.poll(() => textOf(page, '#reserve')).toMatch(/^0\s+in reserve/u);
    await page.getByLabel('It can pin the lifter').check();
    await expect.poll(() => textOf(page, '.cautions')).toMatch(/collars off/u);
    await close();
  });

  it('lowers what is said for a lifter who stops early, and says what is really left', async () => {
    const { page, close } = await openPage(site, 'target/?load=80&company=spotter');
    const exact = await textOf(page, '#reserve');
    await page.locator('#judgement').selectOption('as most people');
    await expect.poll(() => textOf(page, '#reserve')).not.toBe(exact);
    expect(await textOf(page, '#trained')).toMatch(/for about two people in three/u);
    await close();
  });

  it('takes test sets by keys on a phone, says how sure they are, and forgets one again', async () => {
    const { page, complaints, close } = await openPage(site, 'target/?load=80&company=spotter', PHONE);
    await page.locator('#judgement').selectOption('own test sets');
    await expect.poll(() => textOf(page, '.test-sets')).toMatch(/No test set yet: 0\.95 more done than said/u);
    const add = async (said: string, done: string) => {
      await page.locator('#test-said').fill(said);
      await page.locator('#test-done').fill(done);
      await page.locator('#test-done').press('Enter');
    };
    await add('2', '4.5');
    await expect.poll(() => textOf(page, '#test-status')).toMatch(/whole repetitions from 0 to 30 in “Then done/u);
    for (const done of ['4', '5', '4']) await add('2', done);
    await expect.poll(() => page.locator('.test-sets li').count()).toBe(3);
    expect(await page.evaluate('document.activeElement.id')).toBe('test-said');
    expect(await textOf(page, '.test-sets')).toMatch(/3 test sets: 2\.3 more .*That they stop early is fairly sure/u);
    expect(await textOf(page, '#judged')).toMatch(/are moved by that/u);
    expect(await textOf(page, 'h2:has-text("Targets for common shares") ~ * caption')).toMatch(
      /Repetitions to say to this lifter/u,
    );
    await expect.poll(() => new URL(page.url()).searchParams.get('sets')).toBe('2-4 2-5 2-4');
    await page.getByRole('button', { name: 'Remove said 2, did 5' }).click();
    await expect.poll(() => textOf(page, '#test-status')).toBe('Removed: said 2, did 5. Now 2 test sets.');
    expect(await page.evaluate('document.activeElement.id')).toBe('test-said');
    expect(await findViolations(page)).toEqual([]);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(390);
    expect(complaints).toEqual([]);
    await close();
  });

  it('keeps the focus at as many test sets as are kept, by keys and by taps, and says what was done', async () => {
    const { page, complaints, close } = await openPage(site, 'target/?judgement=own+test+sets', PHONE);
    const sets = page.locator('.test-sets li');
    const add = page.getByRole('button', { name: 'Add this set' });
    const status = () => textOf(page, '#test-status');
    const write = async (by: 'key' | 'tap') => {
      await page.locator('#test-said').fill('2');
      await page.locator('#test-done').fill('4');
      await (by === 'key' ? page.keyboard.press('Enter') : add.click());
    };
    for (let i = 1; i <= 20; i++) {
      await write('key');
      await expect.poll(status).toMatch(new RegExp(`^Added: said 2, did 4\\. Now ${i} test sets?\\.`, 'u'));
    }
    const FULL = /20 test sets are as many as are kept: remove one to add another\.$/u;
    await expect.poll(status).toMatch(FULL);
    expect(await focused(page)).toBe('test-said');
    expect(await page.locator('#test-said').getAttribute('readonly')).not.toBeNull();
    await page.keyboard.type('7');
    expect(await page.locator('#test-said').inputValue()).toBe('');
    await page.keyboard.press('Enter');
    await expect.poll(status).toMatch(/^Nothing was added\. 20 test sets/u);
    expect(await findViolations(page)).toEqual([]);
    await sets.last().getByRole('button').focus();
    await page.keyboard.press('Enter');
    await expect.poll(status).toBe('Removed: said 2, did 4. Now 19 test sets.');
    expect([await sets.count(), await focused(page)]).toEqual([19, 'test-said']);
    await write('tap');
    await expect.poll(status).toMatch(/^Added: .* Now 20 test sets\. 20 test sets are/u);
    expect([await sets.count(), await focused(page)]).toEqual([20, 'test-said']);
    // It is told as disabled and takes the tap all the same.
    await add.click({ force: true });
    await expect.poll(status).toMatch(/^Nothing was added\./u);
    expect([await sets.count(), await add.evaluate((one) => one === document.activeElement)]).toEqual([20, true]);
    expect(complaints).toEqual([]);
    await close();
  });

  it('keeps the situations asked about last, each a link, until they are forgotten', async () => {
    const { page, complaints, close } = await openPage(site, 'target/?exercise=squat&load=80&company=spotter');
    await page.goto(`${site.address}/target/?exercise=leg+press&load=70`);
    const link = page.getByRole('link', { name: /squat at 80/u });
    await expect.poll(() => link.innerText()).toMatch(/^squat at 80\u00a0% of 1RM, for growth, spotter$/u);
    await link.click();
    await expect.poll(() => page.locator('#exercise').inputValue()).toBe('squat');
    await expect.poll(() => textOf(page, '.recent')).toMatch(/leg press at 70/u);
    await page.getByRole('button', { name: 'Forget them' }).click();
    await expect.poll(() => page.locator('.recent').count()).toBe(0);
    expect(await page.evaluate('Object.keys(localStorage)')).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });

  it('says beside the entry where so many repetitions are not published for the exercise, until something is changed', async () => {
    const { page, complaints, close } = await openPage(site, 'target/?exercise=leg+press&load=70');
    const entry = page.getByLabel('Or: repetitions possible in a set');
    await entry.fill('11');
    await entry.press('Enter');
    await expect.poll(() => page.locator('#load').inputValue()).toBe('80');
    const help = () => textOf(page, '#repetitions-help');
    expect(await help()).toMatch(/^No fewer than about 13 possible .* 80\u00a0%, stands for 11\. From 3 to 100/u);
    expect(await entry.inputValue()).toBe('13');
    await entry.fill('15');
    await entry.press('Enter');
    await expect.poll(help).toMatch(/^From 3 to 100/u);
    expect(await entry.inputValue()).toBe('15');
    expect(complaints).toEqual([]);
    await close();
  });

  it('claims no spread between people where none is published', async () => {
    const path = (load: number) => `target/?purpose=strength%2C+main+lift&load=${load}&planned=1&company=spotter`;
    const { page, close } = await openPage(site, path(95));
    await expect
      .poll(() => textOf(page, '#trained'))
      .toBe('1.6 on average from the repetitions planned; the spread between people is not published for this load');
    await page.goto(`${site.address}/${path(85)}`);
    await expect
      .poll(() => textOf(page, '#trained'))
      .toMatch(/^5\.2 on average from the repetitions planned; \d\.\d to \d\.\d for about two people in three$/u);
    await close();
  });

  it('does without recent situations where the browser keeps nothing', async () => {
    const { page, complaints, close } = await openPage(site, 'methods/');
    await page.addInitScript(
      `Object.defineProperty(self, 'localStorage', { get() { throw new DOMException('denied'); } })`,
    );
    for (const load of [70, 80]) {
      await page.goto(`${site.address}/target/?load=${load}`);
      await expect.poll(() => page.locator('#load').inputValue()).toBe(String(load));
    }
    expect(await page.locator('.recent').count()).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });

  it.each([
    ['hours', '-3', /from 0 to 336, received “-3”; no event is planned for/u],
    ['repetitions', '2', /from 3 to 100, received “2”; the load stays at 75\u00a0%/u],
    ['repetitions', '1,000', /from 3 to 100, received “1,000”; the load stays at 75\u00a0%/u],
    ['hours', 'one day', /from 0 to 336, received “one day”; no event is planned for/u],
  ])('refuses %s of %s and says what stays', async (control, written, expected) => {
    const { page, close } = await openPage(site, 'target/');
    await page.locator(`#${control}`).fill(written);
    await page.locator(`#${control}`).press('Tab');
    await expect.poll(() => textOf(page, 'form')).toMatch(expected);
    expect(await page.locator(`#${control}`).getAttribute('aria-invalid')).toBe('true');
    await close();
  });

  it('takes a decimal comma for what it is, whatever the language of the browser', async () => {
    const { page, close } = await openPage(site, 'target/');
    await page.locator('#hours').click();
    await page.keyboard.type('30,5');
    await page.keyboard.press('Tab');
    await expect.poll(() => page.url()).toMatch(/[?&]hours=30\.5(?:&|$)/u);
    expect(await page.locator('#hours').inputValue()).toBe('30.5');
    await close();
  });

  it('prints a card of one page with the number, the cautions and the notice', async () => {
    const { page, close } = await openPage(site, 'target/?exercise=squat&hours=30');
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => textOf(page, '.gym-card')).toMatch(/squat, 75\u00a0% of 1RM/u);
    const card = await textOf(page, '.gym-card');
    expect(card).toMatch(/in reserve/u);
    expect(card).toMatch(/spotter/u);
    expect(card).toMatch(/invented/u);
    expect(await page.locator('.masthead').isVisible()).toBe(false);
    expect(await page.locator('.controls').isVisible()).toBe(false);
    for (const format of ['A4', 'A5', 'Letter']) expect(countPages(await page.pdf({ format })), format).toBe(1);
    await close();
  });
});

describe('Programme', () => {
  const HEADER = 'day;exercise;sets;repetitions;load;reserve;company';

  it('shows the worked example whole without JavaScript', async () => {
    const { page, complaints, close } = await openPage(site, 'programme/', { javaScriptEnabled: false });
    expect(await textOf(page, '#finding')).toMatch(/change growth by .* less fatigue/u);
    expect(await textOf(page, 'section[aria-label="Version one"]')).toMatch(
      /Not safe as written.*barbell back squat on Friday/u,
    );
    expect(await textOf(page, '.cautions')).toMatch(/collars off/u);
    expect(complaints).toEqual([]);
    await close();
  });

  /** Opens the second view of a version. */
  const openText = (page: Page, name = 'Version one') =>
    page.getByText(`${name} as text`, { exact: true }).first().click();
  const paste = async (page: Page, text: string) => {
    await page.getByRole('button', { name: 'Paste or open' }).click();
    await page.locator('#pasted').fill(text);
  };

  it('checks what is written as text, semicolons and capitals and all, on a phone', async () => {
    const { page, complaints, close } = await openPage(site, 'programme/', PHONE);
    await openText(page, 'Version two');
    await page.locator('#text-second').fill(`${HEADER}\nmon;squat;3;6;75;4;spotter\n`);
    await openText(page);
    await page.locator('#text-first').fill(`${HEADER.toUpperCase()}\nmon;Squat;3;8;75;2;Spotter\n`);
    await expect.poll(() => linesOf(page, 'Version one').first().textContent()).toMatch(/as advised/iu);
    await expect.poll(() => textOf(page, '#finding')).toMatch(/growth by −/u);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(390);
    expect(complaints).toEqual([]);
    await close();
  });

  it('is written from nothing by the keys alone: searched by synonyms, moved, copied, deleted, undone', async () => {
    const { page, complaints, close } = await openPage(site, 'programme/');
    const { keyboard } = page;
    await page.locator('.bar button').first().focus();
    await keyboard.press('Enter');
    await expect.poll(() => focused(page)).toMatch(/^first-\d+-exercise$/u);
    expect(await page.locator('#event-day').inputValue()).toBe('none');
    await writeLine(page, 'rdl', ['3', '8', '75', '', '2']);
    await expect
      .poll(() => linesOf(page, 'The programme').first().textContent())
      .toMatch(/as advised[\s\S]*Keeps \d/iu);
    await keyboard.press('Control+Enter');
    await expect.poll(() => textOf(page, '#done')).toMatch(/Line 2 was added/u);
    await writeLine(page, 'rfess', ['3', '10', '70', '', '8']);
    const second = linesOf(page, 'The programme').nth(1);
    await expect.poll(() => second.textContent()).toMatch(/further from failure/iu);
    await keyboard.press('Alt+ArrowUp');
    await expect.poll(() => textOf(page, '#done')).toMatch(/Line 2 is now line 1/u);
    await expect.poll(() => focused(page)).toMatch(/-reserve$/u);
    const names = () =>
      page.locator('.cell.exercise input').evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value));
    expect(await names()).toEqual(['Bulgarian split squat', 'Romanian deadlift']);
    await page.getByRole('button', { name: 'Copy line 1' }).focus();
    await keyboard.press('Enter');
    await expect.poll(() => focused(page)).toMatch(/-exercise$/u);
    expect((await names()).slice(0, 2)).toEqual(['Bulgarian split squat', 'Bulgarian split squat']);
    await page.getByRole('button', { name: 'Delete line 3' }).focus();
    await keyboard.press('Enter');
    await expect.poll(() => focused(page)).toMatch(/-delete$/u);
    expect(await names()).toHaveLength(2);
    await keyboard.press('Control+z');
    await keyboard.press('Control+z');
    await expect.poll(names).toEqual(['Bulgarian split squat', 'Romanian deadlift']);
    await keyboard.press('Control+Shift+z');
    await expect.poll(names).toHaveLength(3);
    await expect.poll(() => textOf(page, '#done')).toMatch(/Done again: copy line 1/u);
    expect(complaints).toEqual([]);
    await close();
  });

  it('shows how a paste was understood, takes a suggestion, replaces, and undoes that and the example', async () => {
    const { page, complaints, close } = await openPage(site, 'programme/', PHONE);
    await paste(page, 'Winter\nMon squats 4x6 80% RPE 8\nTue bech press 3x8 72,5% 2 RIR spotter\n');
    const understood = page.locator('.understood');
    await expect.poll(() => understood.innerText()).toMatch(/2 lines of sets; 1 entry not read; 1 note/u);
    expect(await understood.innerText()).toMatch(
      /exercise squat \(from “squats”\)[\s\S]*in reserve 2 \(from “RPE 8”\)/u,
    );
    expect(await linesOf(page, 'Version one').count()).toBe(11);
    await page.getByRole('button', { name: 'Take “bench press”' }).click();
    await expect.poll(() => understood.innerText()).toMatch(/“bech press” was taken as bench press, as you chose/u);
    await page.getByRole('button', { name: 'Replace version one' }).click();
    const lines = linesOf(page, 'The programme');
    await expect.poll(() => lines.count()).toBe(2);
    await expect.poll(() => focused(page)).toBe('version-first');
    // The example's Saturday goes with it, and is asked for.
    expect(await page.locator('#event-day').inputValue()).toBe('none');
    await expect.poll(() => textOf(page, '.ask-event')).toMatch(/No event is set/u);
    await expect.poll(() => lines.first().textContent()).toMatch(/rating of 8 out of ten is taken as/u);
    await page.reload();
    await expect.poll(() => lines.first().textContent()).toMatch(/rating of 8 out of ten is taken as/u);
    await lines.first().locator('.cell.reserve input').fill('3');
    await expect.poll(() => lines.first().textContent()).not.toMatch(/rating of 8/u);
    await page.getByRole('button', { name: 'Show the worked example' }).click();
    await expect.poll(() => page.locator('#event-day').inputValue()).toBe('6');
    await page.getByRole('button', { name: /^Undo/u }).click();
    await expect.poll(() => lines.count()).toBe(2);
    expect(await lines.first().locator('.cell.reserve input').inputValue()).toBe('3');
    await page.getByRole('button', { name: /^Undo/u }).click();
    await expect.poll(() => lines.first().locator('.cell.reserve input').inputValue()).toBe('2');
    await paste(page, 'Fri arm curl 3x10 70% 2 RIR');
    await expect.poll(() => understood.innerText()).toMatch(/1 line of sets/u);
    await page.getByRole('button', { name: 'Add below' }).click();
    await expect.poll(() => lines.count()).toBe(3);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(390);
    expect(complaints).toEqual([]);
    await close();
  });

  it('applies the advice to one line and to all, says each change, and what was left', async () => {
    const { page, complaints, close } = await openPage(site, 'programme/');
    await paste(
      page,
      'Mon squat 4x8 80% 0 RIR alone\nMon leg press 3x8 75% 6 RIR spotter\nTue squat 1x1 100% 0 RIR alone',
    );
    await page.getByRole('button', { name: 'Replace version one' }).click();
    const two = (place: number, cell: string) =>
      linesOf(page, 'Version two').nth(place).locator(`.cell.${cell} input`).inputValue();
    await page.getByRole('button', { name: 'Apply the advice to line 2, in version two' }).click();
    await expect
      .poll(() => textOf(page, '.applied'))
      .toMatch(/1 line changed in version two[\s\S]*leg press[\s\S]*14 together, as before/u);
    expect(await two(0, 'reserve')).toBe('0');
    expect(Number(await two(1, 'reserve')) + Number(await two(1, 'repetitions'))).toBe(14);
    await page.getByRole('button', { name: 'Apply the advice to all' }).click();
    await expect
      .poll(() => textOf(page, '.applied'))
      .toMatch(/2 lines changed[\s\S]*Left as written[\s\S]*Line 3, squat on Tuesday[\s\S]*Not safe as written/u);
    await expect.poll(() => two(0, 'reserve')).not.toBe('0');
    await expect.poll(() => textOf(page, '#finding')).toMatch(/Over all sets version two/u);
    await page.keyboard.press('Control+z');
    await expect.poll(() => two(0, 'reserve')).toBe('0');
    expect(await page.locator('.applied').count()).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });

  it.each(['light', 'dark'] as const)(
    'has nothing for axe to find, whatever is open, in %s colours',
    async (colorScheme) => {
      const { page, close } = await openPage(site, 'programme/', {
        colorScheme,
        viewport: { width: 360, height: 800 },
      });
      await page.getByRole('button', { name: 'Apply the advice to all' }).click();
      await expect.poll(() => page.locator('.applied').count()).toBe(1);
      await openText(page);
      await paste(page, 'Title\nMon squats 4x6 80% RPE 8\nTue bech press 3x8 60kg');
      await expect.poll(() => page.locator('.understood').innerText()).toMatch(/2 lines of sets/u);
      await linesOf(page, 'Version one').first().locator('.cell.exercise input').fill('sq');
      await expect.poll(() => page.locator('[role=option]').count()).toBeGreaterThan(1);
      expect(await findViolations(page)).toEqual([]);
      await close();
    },
  );

  it.each([320, 390])('shows lines and muscles %i pixels wide without scrolling sideways', async (width) => {
    const { page, close } = await openPage(site, 'programme/', { viewport: { width, height: 800 } });
    await paste(page, 'Mon squats 4x6 80% RPE 8\nTue bech press 3x8 60kg');
    await expect.poll(() => page.locator('.understood').innerText()).toMatch(/2 lines of sets/u);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
    const tooWide = await page.evaluate(
      `[...document.querySelectorAll('.programme *')].filter((one) => one.getBoundingClientRect().right > ${width} + 1 && !one.closest('.unseen, svg, .scroll')).map((one) => one.outerHTML.slice(0, 80))`,
    );
    expect(tooWide).toEqual([]);
    // A verdict has room for more than a word a line.
    const narrowest = await page
      .locator('.line-said')
      .evaluateAll((all) => Math.min(...all.map((one) => one.clientWidth)));
    expect(narrowest).toBeGreaterThan(0.8 * (width - 32));
    await close();
  });

  it('prints a usual week on one page, and two versions on two', async () => {
    const { page, close } = await openPage(site, 'programme/');
    const pages = async () => countPages(await page.pdf({ format: 'A4' }));
    expect(await pages()).toBeLessThanOrEqual(2);
    await page.getByRole('button', { name: 'Drop version two' }).click();
    await expect.poll(pages).toBe(1);
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => textOf(page, '.sheet')).toMatch(/barbell back squat[\s\S]*unsafe: alone/u);
    await close();
  });

  it('lists a mistake at its line, asks about an unknown exercise, and goes on once it is answered', async () => {
    const { page, complaints, close } = await openPage(site, 'programme/');
    await page.getByRole('button', { name: 'Drop version two' }).click();
    await openText(page, 'The programme');
    const text = page.locator('#text-first');
    const bad = '<img src=x onerror=alert(1)>';
    await text.fill(`${HEADER}\nMon;squat;three;8;75;2;spotter\nTue;${bad};3;8;75;2;alone\n`);
    const version = page.locator('section[aria-label="The programme"]');
    const lines = linesOf(page, 'The programme');
    await expect.poll(() => lines.first().textContent()).toMatch(/sets: expected .* received “three”/u);
    expect(await lines.first().locator('.cell.sets input').getAttribute('aria-invalid')).toBe('true');
    await expect.poll(() => version.innerText()).toMatch(/Sums wait until lines? 1/u);
    await text.fill(`${HEADER}\nMon;sled drag;3;8;75;2;alone\nTue;squat;3;8;75;2;spotter\n`);
    await expect.poll(() => version.innerText()).toMatch(/What is “sled drag”\? Line 1 waits/u);
    expect(await version.innerText()).toMatch(/Sums wait until “sled drag” is described/u);
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => version.innerText()).toMatch(/neither checked nor below: line 1\.[\s\S]*squat/u);
    await page.emulateMedia({ media: 'screen' });
    await page.getByRole('button', { name: /Use this for/u }).click();
    await expect.poll(() => version.innerText()).toMatch(/Expected at least one muscle/u);
    await page.getByLabel('Muscles it trains').fill('quadriceps; calves');
    await page.getByRole('button', { name: /Use this for/u }).click();
    await expect.poll(() => version.innerText()).toMatch(/calves/u);
    expect(await version.innerText()).not.toMatch(/What is “sled drag”/u);
    expect(complaints).toEqual([]);
    await close();
  });

  it('saves all to a file, opens it again, and refuses another with a reason', async () => {
    const { page, close } = await openPage(site, 'programme/');
    await openText(page);
    await page.locator('#text-first').fill(`${HEADER}\nMon;squat;3;8;75;2;spotter\n`);
    // The example has gone, and its Saturday with it.
    await expect.poll(() => page.locator('#event-day').inputValue()).toBe('none');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save all to a file' }).click(),
    ]);
    const folder = mkdtempSync(join(tmpdir(), 'programme-'));
    const file = join(folder, download.suggestedFilename());
    await download.saveAs(file);
    expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({ kind: 'programme', calendar: { event: null } });
    await page.getByRole('button', { name: 'Show the worked example' }).click();
    await expect.poll(() => page.locator('#event-day').inputValue()).toBe('6');
    await page.getByRole('button', { name: 'Paste or open' }).click();
    const input = page.locator('#opened');
    await input.setInputFiles(file);
    await expect.poll(() => page.locator('#event-day').inputValue()).toBe('none');
    expect(await linesOf(page, 'The programme').first().locator('.cell.exercise input').inputValue()).toBe('squat');
    await page.getByRole('button', { name: 'Paste or open' }).click();
    const wrong = join(folder, 'wrong.json');
    writeFileSync(wrong, '{"kind":"diary"}');
    await input.setInputFiles(wrong);
    await expect.poll(() => textOf(page, '.pasting')).toMatch(/wrong\.json: expected a programme saved by this page/u);
    const sets = join(folder, 'sets.csv');
    writeFileSync(sets, `${HEADER}\nFri;arm curl;3;8;75;2;alone\n`);
    await input.setInputFiles(sets);
    await expect.poll(() => textOf(page, '.pasting')).toMatch(/exercise arm curl/u);
    rmSync(folder, { recursive: true });
    await close();
  });

  it('keeps what was typed through a reload of the tab, the last key too, and opens what it kept before', async () => {
    const { page, close } = await openPage(site, 'programme/');
    const exercise = linesOf(page, 'Version one').first().locator('.cell.exercise input');
    await exercise.fill('arm curl');
    await page.reload();
    await expect.poll(() => exercise.inputValue()).toBe('arm curl');
    await expect.poll(() => linesOf(page, 'Version one').first().textContent()).toMatch(/Advised:/u);
    // The form of the version before, which held texts.
    const older = {
      kind: 'programme',
      version: 1,
      first: `${HEADER}\nFri;lunge;3;8;75;2;alone\n`,
      second: null,
      exercises: [],
      calendar: { status: 'trained', sessionHour: 19, event: null },
    };
    const other = await openPage(site, 'methods/');
    await other.page.evaluate(
      (text) => sessionStorage.setItem('shy-of-failure programme', text),
      JSON.stringify(older),
    );
    await other.page.goto(`${site.address}/programme/`);
    await expect
      .poll(() => linesOf(other.page, 'The programme').first().locator('.cell.exercise input').inputValue())
      .toBe('lunge');
    await other.close();
    await close();
  });
});
