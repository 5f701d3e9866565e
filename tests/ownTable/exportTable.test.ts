/** An own table as a file again. Proven: what was opened comes back byte for byte in every encoding, and what was changed is said. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Encoding, encodeText } from '../../src/evidence/opening/encoding.ts';
import { answer, askAbout, openArms } from '../../src/evidence/opening/openTable.ts';
import { nameExport, writeExport } from '../../src/ownTable/exportTable.ts';
import type { KeptTable } from '../../src/ownTable/keptTables.ts';

const KEPT: KeptTable = {
  version: 'a'.repeat(64),
  name: 'Our arms (2).csv',
  rows: 2,
  studies: 1,
  demonstration: false,
  bytes: 100,
  opened: 0,
};
const ODD = 'year;study;"note"\r\n2012;"Müller ""A""";  zwei \r\n\r\n"2013";b;\n';

describe('a table that nobody changed', () => {
  it.each<readonly [Encoding, string]>([
    ['utf-8', ''],
    ['utf-8', '\ufeff'],
    ['utf-16le', '\ufeff'],
    ['utf-16be', ''],
    ['windows-1252', ''],
  ])('in %s is the file that was opened, by its name', async (encoding, mark) => {
    const bytes = encodeText(mark + ODD, encoding) ?? new Uint8Array();
    const { opened, text } = await openArms(bytes, KEPT.name);
    const exported = writeExport({ ...KEPT, encoding: opened.encoding }, text);
    expect(exported.bytes).toEqual(bytes);
    expect([exported.name, exported.said]).toEqual([KEPT.name, 'Our arms (2).csv is as it was opened, byte for byte.']);
  });

  it('is the shipped one, byte for byte, though its numbers could be written shorter', async () => {
    const bytes = new Uint8Array(readFileSync(new URL('../../data/arms.csv', import.meta.url)));
    const { text } = await openArms(bytes, 'arms.csv');
    expect(writeExport(KEPT, text).bytes).toEqual(bytes);
  });
});

describe('a table that was changed', () => {
  it('has only those cells exchanged, and says so', async () => {
    const bytes = new TextEncoder().encode('study;year;baseline_sd;note\r\n"a";2012;6,5;"3,5"\r\n');
    const draft = answer(await openArms(bytes, KEPT.name), { of: 'commas', isYes: true });
    const { bytes: written, said } = writeExport({ ...KEPT, changes: draft.changes }, draft.text);
    expect(new TextDecoder().decode(written)).toBe('study;year;baseline_sd;note\r\n"a";2012;6.5;"3,5"\r\n');
    expect(said).toBe(
      'Our arms (2).csv is as it was opened, but for this: 1 cell with a decimal comma now has a point.',
    );
    expect(askAbout(draft).commas).toBeNull();
  });

  it('is UTF-8 where its encoding has no place for a letter, and says so', () => {
    const { bytes, said } = writeExport({ ...KEPT, encoding: 'windows-1252', changes: ['one row was added'] }, 'ł');
    expect(new TextDecoder().decode(bytes)).toBe('ł');
    expect(said).toMatch(
      /One row was added\. Windows-1252 has no place for some of its letters, so that it is UTF-8 now\.$/u,
    );
  });

  it('from a sheet is CSV named after file and sheet', () => {
    const sheet = { ...KEPT, name: 'Our arms.xlsx', sheet: 'Arms / final' };
    expect(nameExport(sheet)).toBe('Our-arms-Arms-final.csv');
    expect(writeExport(sheet, '').said).toBe(
      'Our-arms-Arms-final.csv was made from the sheet “Arms / final” of Our arms.xlsx.',
    );
  });
});
