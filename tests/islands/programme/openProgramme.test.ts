/** Files as programmes: text in any encoding, the sheet of a spreadsheet, and what cannot be read. */
import { describe, expect, it } from 'vitest';
import { encodeText } from '../../../src/evidence/opening/encoding.ts';
import { openProgramme } from '../../../src/islands/programme/openProgramme.ts';
import { odsRows, writeOds, writeXlsx, xlsxRows } from '../../support/spreadsheets.ts';

const WEEK = [
  ['day', 'exercise', 'sets', 'repetitions', 'load', 'reserve'],
  ['Monday', 'squat', '3', '8', '75', '2'],
];

describe('a programme', () => {
  it('is the text of the sheet whose header fits, which is said', async () => {
    const bytes = await writeOds([
      { name: 'Notes', rows: odsRows([['Our winter']]) },
      { name: 'Week 1', rows: odsRows(WEEK) },
    ]);
    expect(await openProgramme(bytes, 'winter.ods')).toEqual({
      text: 'day,exercise,sets,repetitions,load,reserve\nMonday,squat,3,8,75,2\n',
      refused: null,
      said: 'winter.ods: The sheet “Week 1” was read.',
    });
  });

  it('has a cell told that the spreadsheet made a date of', async () => {
    const rows = xlsxRows(WEEK).replace('<c r="D2"><v>8</v></c>', '<c r="D2" t="d"><v>2026-08-12</v></c>');
    const { said } = await openProgramme(await writeXlsx([{ name: 'Week', rows }]), 'winter.xlsx');
    expect(said).toMatch(/line 2, `repetitions`: expected what was typed, which the spreadsheet turned into a date/u);
  });

  it('in UTF-16 is read, and a PDF is answered in a sentence', async () => {
    const text = WEEK.map((row) => row.join('\t')).join('\n');
    const read = await openProgramme(encodeText(text, 'utf-16le') ?? new Uint8Array(), 'week.txt');
    expect([read.text, read.said]).toEqual([text, 'week.txt: The file was read as UTF-16 (little-endian).']);
    expect((await openProgramme(new TextEncoder().encode('%PDF-1.4'), 'week.pdf')).refused).toMatch(
      /^week\.pdf: file: expected a table as CSV text or as a spreadsheet file \(\.xlsx or \.ods\), received “a PDF”\./u,
    );
  });
});
