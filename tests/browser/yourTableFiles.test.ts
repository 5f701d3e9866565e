/** Files of every kind at the door of “Your table”: spreadsheets, encodings, decimal commas, other names; and the way out. */
import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readsNumbers } from '../../src/evidence/opening/decimalComma.ts';
import { encodeText } from '../../src/evidence/opening/encoding.ts';
import { ARM_COLUMNS, type ArmColumn } from '../../src/evidence/schema.ts';
import { odsRows, writeOds, writeXlsx, xlsxRows } from '../support/spreadsheets.ts';
import { findViolations, openPage, type ServedSite, serveSite } from './site.ts';

const shipped = readFileSync('data/arms.csv', 'utf8');
const cells = Papa.parse<string[]>(shipped.trimEnd()).data;
const ROWS = cells.length - 1;
const isNumber = (name: string) => readsNumbers(ARM_COLUMNS[name as ArmColumn]);
const COMMAS = `${Papa.unparse(
  cells.map((row, i) => row.map((cell, j) => (i > 0 && isNumber(cells[0][j]) ? cell.replace('.', ',') : cell))),
  { delimiter: ';' },
)}\r\n`;

let site: ServedSite;
beforeAll(async () => {
  site = await serveSite();
});
afterAll(() => site?.close());

const said = (page: Page) => page.locator('.your-table').innerText();
async function choose(page: Page, name: string, bytes: Uint8Array | string) {
  await page.locator('#own-file').setInputFiles({ name, mimeType: '', buffer: Buffer.from(bytes) });
}
const until = (page: Page, pattern: RegExp) => expect.poll(() => said(page)).toMatch(pattern);
async function exported(page: Page) {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Export as CSV' }).first().click(),
  ]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

describe('a spreadsheet', () => {
  it.each([
    [
      'xlsx',
      () =>
        writeXlsx([
          { name: 'Read me', rows: '' },
          { name: 'Arms', rows: xlsxRows(cells) },
        ]),
    ],
    ['ods', () => writeOds([{ name: 'Arms', rows: odsRows(cells) }])],
  ])(
    'as .%s is taken whatever it is called, says which sheet, and goes out as CSV of that name',
    async (_kind, write) => {
      const { page, complaints, close } = await openPage(site, 'table/');
      await choose(page, 'review.data', await write());
      await until(
        page,
        new RegExp(`review\\.data was taken: ${ROWS} rows of 48 studies\\.[\\s\\S]*The sheet “Arms” was read\\.`, 'u'),
      );
      const { name, bytes } = await exported(page);
      expect(name).toBe('review-Arms.csv');
      expect(Papa.parse<string[]>(bytes.toString().trimEnd()).data[0]).toEqual(cells[0]);
      await until(page, /review-Arms\.csv was made from the sheet “Arms” of review\.data\./u);
      expect(complaints).toEqual([]);
      await close();
    },
  );

  it('of old, and one that is cut short, are answered in one sentence', async () => {
    const { page, complaints, close } = await openPage(site, 'table/');
    await choose(page, 'old.xls', Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0));
    await until(
      page,
      /old\.xls was not taken: 1 problem\.[\s\S]*an old binary file \(\.xls or \.doc\)”\. Open it in a spreadsheet/u,
    );
    const whole = await writeXlsx([{ name: 'Arms', rows: xlsxRows(cells) }]);
    await choose(page, 'short.xlsx', whole.subarray(0, whole.length / 2));
    await until(page, /short\.xlsx was not taken: 1 problem\.[\s\S]*damaged or cut short/u);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('a table with decimal commas', () => {
  it('is asked about once, read after yes, and goes out with nothing else changed', async () => {
    const { page, complaints, close } = await openPage(site, 'table/');
    await choose(page, 'komma.csv', COMMAS);
    await until(
      page,
      /komma\.csv waits for 1 answer\.[\s\S]*2,110 cells have a decimal comma, such as “\d+,\d+”: read them as decimal points\?/u,
    );
    expect(await findViolations(page)).toEqual([]);
    await page.getByText('problems as it stands').click();
    await until(page, /lines \(2, 3, 4, …\), `age_mean_years`: expected a number .* Use a decimal point\./u);
    await page.getByRole('button', { name: 'Yes, as decimal points' }).click();
    await until(
      page,
      new RegExp(
        `komma\\.csv was taken: ${ROWS} rows[\\s\\S]*2,110 cells with a decimal comma now have a point\\.`,
        'u',
      ),
    );
    const { name, bytes } = await exported(page);
    expect(name).toBe('komma.csv');
    expect(bytes.toString()).toBe(`${Papa.unparse(cells, { delimiter: ';' })}\r\n`);
    await until(page, /komma\.csv is as it was opened, but for this: 2,110 cells/u);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('a table with columns by other names', () => {
  it('is asked about each once, in place of their problems, by keyboard too', async () => {
    const { page, complaints, close } = await openPage(site, 'table/');
    await choose(
      page,
      'names.csv',
      shipped.replace(',followup_mean,', ',post,').replace(',note\n', ',colour\n').replace(',n,', ',Sample size,'),
    );
    await until(page, /names\.csv waits for 2 answers\./u);
    expect(await page.locator('.questions legend').allInnerTexts()).toEqual([
      'Sample size: is this n?',
      'post: is this followup_mean?',
    ]);
    await until(page, /post: is this followup_mean\?\s+It holds “45\.96”, [\s\S]*Mean after\./u);
    expect(await findViolations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Yes, it is n' }).press('Enter');
    await until(page, /names\.csv waits for 1 answer\./u);
    const focused = () => page.evaluate(() => document.activeElement?.id);
    await expect.poll(focused).toBe('questions');
    await page.getByRole('button', { name: 'Yes, it is followup_mean' }).click();
    await until(page, /names\.csv was taken[\s\S]*The column post is now followup_mean\./u);
    await expect.poll(focused).toBe('own-findings');
    expect((await exported(page)).bytes.toString().split('\n')[0]).toMatch(/,n,.*,followup_mean,.*,colour$/u);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('a table that nobody changed', () => {
  it('in Windows-1252 goes out byte for byte as it came', async () => {
    const { page, complaints, close } = await openPage(site, 'table/');
    const bytes = Buffer.from(
      encodeText(shipped.replace('Plover 1996', 'Plöver 1996').replace('\n', '\r\n'), 'windows-1252') ?? '',
    );
    await choose(page, 'Unsere Tabelle (1).csv', bytes);
    await until(
      page,
      /\(1\)\.csv was taken[\s\S]*not UTF-8 and was read as Windows-1252: look whether these are right: ö/u,
    );
    const out = await exported(page);
    expect(out.name).toBe('Unsere Tabelle (1).csv');
    expect(out.bytes.equals(bytes)).toBe(true);
    await until(page, /is as it was opened, byte for byte\./u);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('a thousand problems of one kind', () => {
  it('are one that unfolds to its lines', async () => {
    const { page, close } = await openPage(site, 'table/');
    await choose(page, 'wrong.csv', shipped.replaceAll(',growth,', ',size,'));
    await until(page, /wrong\.csv was not taken: \d+ problems\./u);
    const fold = page.locator('.problem summary').first();
    expect(await fold.innerText()).toMatch(
      /^\d+ lines \(2, 3, \d+, …\), `outcome`: expected one of growth, strength, fatigue, received “size”\.$/u,
    );
    const lines = page.getByText('“size”: lines 2, 3, ');
    expect(await lines.isVisible()).toBe(false);
    await fold.click();
    await expect.poll(() => lines.isVisible()).toBe(true);
    expect(await findViolations(page)).toEqual([]);
    await close();
  });
});
