/** The page that plans a study in a real Chromium: to the engine's numbers, in its address, by keyboard, on paper and without a script. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { formatExpected } from '../../src/figures/plan/planWords.ts';
import { readPlan } from '../../src/islands/analysis/plannedStudyAddress.ts';
import { answerPlan } from '../../src/model/plan/planAnswer.ts';
import { openPlanning } from '../../src/model/plan/planningBase.ts';
import type { BandName } from '../../src/model/result.ts';
import { type SettingsInput, settingsSchema } from '../../src/model/settings.ts';
import { findViolations, openPage, type ServedSite, serveSite } from './site.ts';

const { arms } = readArms(readFileSync('data/arms.csv', 'utf8'), 'arms.csv');

/** “0.36 (0.20 to 0.95)”: what the engine expects of a plan, as it is written in an address. */
function expected(text: string, band: BandName, settings: SettingsInput = {}): string {
  const plan = readPlan(text);
  if (!plan) throw new Error(`no plan: ${text}`);
  const { expectation } = answerPlan(openPlanning(arms, settingsSchema.parse(settings)), plan);
  const after = expectation.bands.find((one) => one.band === band)?.after;
  if (!after) throw new Error(`nothing expected of ${text}`);
  return formatExpected(after);
}

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());

const card = (page: Page, name: string) => page.locator(`section[aria-labelledby="plan-${name}"]`);
const result = (page: Page, name: string) => card(page, name).locator('.plan-result').innerText();
const settled = (page: Page) => expect.poll(() => page.locator('[aria-busy=true]').count()).toBe(0);

describe('Plan a study', () => {
  it('answers by keyboard with the engine’s interval, announces it, and its address brings all plans back', async () => {
    const { page, complaints, close } = await openPage(site, 'plan/');
    expect(await result(page, 'A')).toContain(expected('parallel light_0_20 light_2_20', 'light'));
    await page.locator('#A-1-reserve').focus();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('4');
    await page.keyboard.press('Enter');
    const four = expected('parallel light_0_20 light_4_20', 'light');
    await expect.poll(() => result(page, 'A')).toContain(four);
    await expect.poll(() => page.locator('[aria-live] p.unseen').innerText()).toContain(`expected ${four}`);
    await page.getByRole('button', { name: /^Compare with a plan B/u }).press('Enter');
    await expect.poll(() => page.evaluate('document.activeElement?.id')).toBe('B-design');
    await page.locator('#B-design').selectOption('within-person');
    await page.locator('#B-0-load').selectOption('own');
    const b = expected('within-person 75_0_20 light_4_20', 'heavy');
    await expect.poll(() => result(page, 'B')).toContain(b);
    await settled(page);
    const query = '?a=parallel+light_0_20+light_4_20&b=within-person+75_0_20+light_4_20';
    await expect.poll(() => new URL(page.url()).search).toBe(query);
    await page.reload({ waitUntil: 'load' });
    await settled(page);
    await expect.poll(() => result(page, 'A')).toContain(four);
    expect(await result(page, 'B')).toContain(b);
    expect(await page.locator('.planning figure svg').count()).toBe(2);
    expect(await findViolations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Copy B to A' }).click();
    await expect.poll(() => result(page, 'A')).toContain(b);
    await expect.poll(() => new URL(page.url()).search).not.toBe(query);
    await page.goBack();
    await expect.poll(() => result(page, 'A')).toContain(four);
    expect(complaints).toEqual([]);
    await close();
  });

  it('finds people and places, lets a found plan be used, and checks by simulation', async () => {
    const { page, complaints, close } = await openPage(site, 'plan/?need=a_light_0.7&place=parallel_2_40_light');
    const people = page.locator('.panel', { hasText: 'How many people' });
    await expect.poll(() => people.innerText()).toMatch(/from \d+ people in each arm, \d+ people in all/u);
    await page.locator('#need-width').fill('0.1');
    await page.locator('#need-width').press('Enter');
    await expect
      .poll(() => people.innerText())
      .toMatch(/does not reach.*even without end it leaves it about \d\.\d\d wide/u);
    await expect.poll(() => page.locator('.placements li').count()).toBe(3);
    const best = (await page.locator('.placements strong').first().innerText()).toLowerCase();
    await page
      .getByRole('button', { name: /^Use as plan B/u })
      .first()
      .click();
    // At once, before the address is written: a link within the page takes nothing back.
    await page.getByRole('link', { name: 'see it' }).click();
    await expect.poll(() => result(page, 'B')).toMatch(/Expected/u);
    await expect.poll(() => new URL(page.url()).search).toMatch(/&b=parallel/u);
    expect(new URL(page.url()).hash).toBe('#plan-B');
    const reserves = await card(page, 'B')
      .locator('input[id$=reserve]')
      .evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value));
    expect(best).toBe(`${reserves.join(' and ')} in reserve with light loads`);
    const check = page.locator('.panel', { hasText: 'Check it by simulation' });
    await check.getByRole('button', { name: 'Check plan A' }).click();
    await check.getByRole('button', { name: 'Stop' }).press('Enter');
    await expect.poll(() => page.evaluate('document.activeElement?.id')).toBe('check-A');
    await check.getByRole('button', { name: 'Check plan A' }).click();
    await expect
      .poll(() => check.innerText())
      .toMatch(
        /Light loads, plan A: expected 0\.\d+ wide, simulated 0\.\d+ \(give or take 0\.\d+\): they (?:agree within 1|differ by \d)\s%/u,
      );
    expect(complaints).toEqual([]);
    await close();
  });

  it('says where more people widen an interval again, and what is assumed of covariates', async () => {
    const { page, complaints, close } = await openPage(
      site,
      'plan/?a=parallel+light_5_20+light_10_20&need=a_light_0.905',
    );
    const people = page.locator('.panel', { hasText: 'How many people' });
    await expect.poll(() => people.innerText()).toMatch(/is expected with 3 people in each arm/u);
    expect(await people.innerText()).toContain('More people may widen it again (with people without end: 0.94 wide)');
    expect(await result(page, 'A')).toContain('0.94 wide, wider than with these people');
    expect(await page.locator('.planning').innerText()).not.toContain('One study narrows it only so far');
    await page.goto(`${site.address}/plan/?a=parallel+heavy_0_20+heavy_10_20&v=2&adjust=training-status`);
    await settled(page);
    const assumed = card(page, 'A').locator('details', { hasText: 'What is assumed' });
    await assumed.locator('summary').click();
    await expect.poll(() => assumed.innerText()).toMatch(/taken to have: training status “(?:not )?trained before”/u);
    expect(complaints).toEqual([]);
    await close();
  });

  it('gives text, JSON, CSV and scripts that say what was assumed and that the studies are invented', async () => {
    const { page, complaints, close } = await openPage(site, 'plan/?a=parallel+heavy_0_20+heavy_3_25&v=2&keep=0.85');
    await settled(page);
    const heavy = expected('parallel heavy_0_20 heavy_3_25', 'heavy', { keptShare: 0.85 });
    const files = [
      ['Text for a protocol', /\.txt$/u],
      ['Plans as JSON', /\.json$/u],
      ['Plans as CSV', /\.csv$/u],
      ['Script for R', /\.R$/u],
      ['Script for Python', /\.py$/u],
    ] as const;
    for (const [name, ending] of files) {
      const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name }).click()]);
      expect(download.suggestedFilename()).toMatch(/^demonstration-plans-[\da-f]{8}\./u);
      expect(download.suggestedFilename()).toMatch(ending);
      const text = readFileSync(await download.path(), 'utf8');
      expect(text, name).toMatch(/invented/u);
      if (name.startsWith('Text')) expect(text).toContain(heavy);
      if (name.startsWith('Script')) expect(text.replaceAll(/\n# +/gu, ' ')).toContain(page.url());
    }
    await page.getByText('Text for a protocol, plan A').click();
    await expect.poll(() => page.locator('.protocol').innerText()).toContain(heavy);
    await expect.poll(() => page.locator('.planning .doubt').innerText()).toMatch(/Growth to keep: 85\s%/u);
    await page.getByRole('button', { name: 'Take the site’s choices' }).click();
    await expect.poll(() => result(page, 'A')).toContain(expected('parallel heavy_0_20 heavy_3_25', 'heavy'));
    expect(complaints).toEqual([]);
    await close();
  });

  it('says what of an address it could not read, and what is wrong with a plan, and executes nothing of it', async () => {
    const query = '?a=parallel+light_0_2+all_1_20&b=<img src=x onerror=alert(1)>&place=2';
    const { page, complaints, close } = await openPage(site, `plan/${query}`);
    await expect
      .poll(() => page.locator('.planning > [aria-live] .problem').innerText())
      .toMatch(/left out: b, place/u);
    await expect
      .poll(() => card(page, 'A').locator('.problem').innerText())
      .toMatch(/arm 1: expected a whole number of people from 3.*\n.*arm 2: expected one of the bands/u);
    await page.locator('#A-0-people').fill('1');
    await page.locator('#A-0-people').press('Enter');
    await expect
      .poll(() => card(page, 'A').innerText())
      .toMatch(/Expected a whole number from 3 to 100000, received “1”/u);
    expect(complaints).toEqual([]);
    await close();
  });

  it('stacks three plans on a narrow phone without sideways scrolling, and prints what is read', async () => {
    const three =
      'plan/?a=parallel+light_0_20+light_2_20&b=within-person+heavy_0_15+heavy_3_15&c=parallel+75_0_30+60.5_4_30';
    const { page, complaints, close } = await openPage(site, three, { viewport: { width: 320, height: 640 } });
    await settled(page);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
    const boxes = await Promise.all(['A', 'B', 'C'].map((name) => card(page, name).boundingBox()));
    boxes.slice(1).forEach((box, i) => {
      expect(box?.y).toBeGreaterThanOrEqual((boxes[i]?.y ?? 0) + (boxes[i]?.height ?? 0));
    });
    expect(await findViolations(page)).toEqual([]);
    await page.setViewportSize({ width: 1280, height: 900 });
    const wide = await Promise.all(['A', 'B', 'C'].map((name) => card(page, name).boundingBox()));
    expect(new Set(wide.map((box) => box?.y)).size).toBe(1);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.planning form').first().isVisible()).toBe(false);
    // Without its fields a plan is still said.
    expect(await card(page, 'C').innerText()).toMatch(/75\s% of 1RM at 0 in reserve, 30 people/u);
    expect(complaints).toEqual([]);
    await close();
  });

  it('reads without JavaScript: what it does, an example, the best places, and the cautions', async () => {
    const { page, complaints, close } = await openPage(site, 'plan/', { javaScriptEnabled: false });
    expect(await page.locator('.problem').first().innerText()).toMatch(/need JavaScript/u);
    expect(await result(page, 'A')).toContain(expected('parallel light_0_20 light_2_20', 'light'));
    expect(await page.locator('.planning figure svg[role="img"]').count()).toBe(1);
    expect(await page.locator('.placements li').count()).toBe(3);
    expect(await page.locator('.cautions').innerText()).toMatch(/judges ethics or safety/u);
    expect(complaints).toEqual([]);
    await close();
  });
});
