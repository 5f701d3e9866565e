/** As a coach would: phone in hand, by keyboard, on paper, with wrong entries, with a shared address. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findViolations, openPage, type ServedSite, serveSite } from './site.ts';

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
}, 60_000);
afterAll(() => site?.close());

const PHONE = { viewport: { width: 390, height: 800 } } as const;
/** Pages of a PDF. */
const countPages = (pdf: Buffer) => [...pdf.toString('latin1').matchAll(/\/Type\s*\/Page\b(?!s)/gu)].length;
const textOf = (page: Page, selector: string) => page.locator(selector).innerText();

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
    await expect.poll(() => textOf(page, '#test-status')).toBe('Removed: said 2, did 5.');
    expect(await page.evaluate('document.activeElement.id')).toBe('test-said');
    expect(await findViolations(page)).toEqual([]);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(390);
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
  ])('refuses %s of %s and says what stays', async (control, written, expected) => {
    const { page, close } = await openPage(site, 'target/');
    await page.locator(`#${control}`).fill(written);
    await page.locator(`#${control}`).press('Tab');
    await expect.poll(() => textOf(page, 'form')).toMatch(expected);
    expect(await page.locator(`#${control}`).getAttribute('aria-invalid')).toBe('true');
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

  it('checks what is pasted, semicolons and capitals and all, on a phone', async () => {
    const { page, complaints, close } = await openPage(site, 'programme/', PHONE);
    await page.locator('#text-first').fill(`${HEADER.toUpperCase()}\nmon;Squat;3;8;75;2;Spotter\n`);
    await page.locator('#text-second').fill(`${HEADER}\nmon;squat;3;6;75;4;spotter\n`);
    await expect.poll(() => textOf(page, 'section[aria-label="Version one"]')).toMatch(/as advised/u);
    await expect.poll(() => textOf(page, '#finding')).toMatch(/growth by −/u);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(390);
    expect(complaints).toEqual([]);
    await close();
  });

  it('lists every mistake by its line, asks about an unknown exercise, and goes on once it is answered', async () => {
    const { page, complaints, close } = await openPage(site, 'programme/');
    await page.getByRole('button', { name: 'Drop version two' }).click();
    const text = page.locator('#text-first');
    await text.fill(`${HEADER}\nMon;squat;three;8;75;2;spotter\nTue;<img src=x onerror=alert(1)>;3;8;75;2;alone\n`);
    const version = page.locator('section[aria-label="The programme"]');
    await expect
      .poll(() => version.innerText())
      .toMatch(/2 entries need mending[\s\S]*line 2, `sets`[\s\S]*line 3, `exercise`/u);
    await text.fill(`${HEADER}\nMon;sled drag;3;8;75;2;alone\nTue;squat;3;8;75;2;spotter\n`);
    await expect.poll(() => version.innerText()).toMatch(/What is “sled drag”\? Line 2 waits/u);
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
    await page.locator('#text-first').fill(`${HEADER}\nMon;squat;3;8;75;2;spotter\n`);
    await page.locator('#event-day').selectOption('none');
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
    const input = page.locator('input[type="file"]').first();
    await input.setInputFiles(file);
    await expect.poll(() => page.locator('#event-day').inputValue()).toBe('none');
    expect(await page.locator('#text-first').inputValue()).toMatch(/Mon;squat/u);
    const wrong = join(folder, 'wrong.json');
    writeFileSync(wrong, '{"kind":"diary"}');
    await input.setInputFiles(wrong);
    await expect.poll(() => textOf(page, '.entry')).toMatch(/wrong\.json: expected a programme saved by this page/u);
    const sets = join(folder, 'sets.csv');
    writeFileSync(sets, `${HEADER}\nFri;arm curl;3;8;75;2;alone\n`);
    await input.setInputFiles(sets);
    await expect.poll(() => page.locator('#text-first').inputValue()).toMatch(/arm curl/u);
    rmSync(folder, { recursive: true });
    await close();
  });

  it('keeps what was typed through a reload of the tab', async () => {
    const { page, close } = await openPage(site, 'programme/');
    await page.locator('#text-first').fill(`${HEADER}\nFri;arm curl;3;8;75;2;alone\n`);
    await expect.poll(() => textOf(page, 'section[aria-label="Version one"]')).toMatch(/arm curl/u);
    await page.reload();
    await expect.poll(() => page.locator('#text-first').inputValue()).toMatch(/arm curl/u);
    await expect.poll(() => textOf(page, 'section[aria-label="Version one"]')).toMatch(/arm curl/u);
    await close();
  });
});
