/**
 * Spreadsheet files as tables. Proven on files written here part by part, and on two that LibreOffice 7.4 wrote from the
 * first lines of the shipped table: the same rows as the CSV, every odd cell told, and a message for every file that is
 * no table, however it was made.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { askAbout, openArms, readDraftNow } from '../../../src/evidence/opening/openTable.ts';
import { openParts } from '../../../src/evidence/opening/spreadsheet/parts.ts';
import { formatProblem } from '../../../src/evidence/problem.ts';
import { readArms } from '../../../src/evidence/table.ts';
import {
  nameCell,
  odsCell,
  odsRows,
  writeOds,
  writeXlsx,
  xlsxCell,
  xlsxRows,
  zip,
} from '../../support/spreadsheets.ts';
import { makeTable } from '../../support/tables.ts';

const TABLE = Papa.parse<string[]>(makeTable([{}, { arm: 'b' }, { arm: 'c' }])).data;
const HEADER = TABLE[0];
const column = (name: string) => HEADER.indexOf(name);

/** The table with some cells in other words, by column, in the first row of data. */
const xlsxWith = (cells: Readonly<Record<string, string>>, extra: Readonly<Record<string, string>> = {}, after = '') =>
  writeXlsx(
    [
      {
        name: 'Arms',
        rows: xlsxRows(TABLE, (text, row, at) => {
          const place = nameCell(row, at);
          const other = row === 1 ? cells[HEADER[at]] : undefined;
          return other === undefined ? xlsxCell(text, row, at) : `<c r="${place}" ${other}</c>`;
        }),
        after,
      },
    ],
    extra,
  );
const odsWith = (cells: Readonly<Record<string, string>>, wrap = (rows: readonly string[]) => rows.join('')) =>
  writeOds([
    {
      name: 'Arms',
      rows: wrap(
        TABLE.map((row, i) =>
          odsRows(
            [row.map((_text, at) => (i === 1 ? (cells[HEADER[at]] ?? odsCell(row[at])) : odsCell(row[at])))],
            (xml) => xml,
          ),
        ),
      ),
    },
  ]);
async function read(bytes: Uint8Array, name = 'own.xlsx') {
  const draft = await openArms(bytes, name);
  const { arms, problems, warnings } = readDraftNow(draft);
  return {
    draft,
    arms,
    said: draft.opened.said,
    problems: problems.map(formatProblem),
    warnings: warnings.map(formatProblem),
  };
}
const STYLES = `<styleSheet><numFmts count="1"><numFmt numFmtId="164" formatCode="[$-407]d&quot;. &quot;mmm"/></numFmts><cellXfs count="4"><xf numFmtId="0"/><xf numFmtId="16"/><xf numFmtId="164"/><xf numFmtId="10"/></cellXfs></styleSheet>`;

describe('a file that LibreOffice wrote', () => {
  const csv = readFileSync(new URL('../../../data/arms.csv', import.meta.url), 'utf8')
    .split('\n')
    .slice(0, 13);
  it.each(['xlsx', 'ods'])('as .%s reads as the CSV that it was made from', async (kind) => {
    const bytes = readFileSync(new URL(`./libreOffice.${kind}`, import.meta.url));
    const { arms, problems, warnings, said } = await read(new Uint8Array(bytes), `arms.${kind}`);
    expect([problems, warnings, said]).toEqual([[], [], ['The sheet “arms” was read.']]);
    expect(arms).toHaveLength(12);
    expect(arms).toEqual(readArms(csv.join('\n'), 'arms.csv').arms);
  });
});

describe('a workbook (.xlsx)', () => {
  it('keeps all digits of a number, whatever it shows, and the value that a formula had', async () => {
    const { arms, problems } = await read(
      await xlsxWith({ baseline_mean: '><v>41.249999999999993</v>', followup_mean: '><f>A1*2</f><v>45.96</v>' }),
    );
    expect(problems).toEqual([]);
    expect([arms[0].baseline_mean, arms[0].followup_mean]).toEqual([41.249999999999993, 45.96]);
  });

  it('gives the number that was typed where its double has more digits', async () => {
    const { draft } = await read(await xlsxWith({ baseline_mean: '><v>6.2000000000000002</v>' }));
    expect(draft.text).toMatch(/,6\.2,/u);
    expect(draft.text).not.toMatch(/6\.2000/u);
  });

  it('reads TRUE and FALSE as yes and no, and says so', async () => {
    const { arms, said } = await read(await xlsxWith({ attempted_failure: 't="b"><v>1</v>' }));
    expect(arms[0].attempted_failure).toBe(true);
    expect(said).toEqual(['The sheet “Arms” was read.', 'A cell with TRUE or FALSE was read as yes or no.']);
  });

  it.each([
    ['a format that every workbook has', 's="1"><v>46246</v>', '2026-08-12'],
    ['a format of its own', 's="2"><v>46246.5</v>', '2026-08-12 12:00'],
    ['the type', 't="d"><v>2026-08-12T00:00:00</v>', '2026-08-12'],
  ])('tells a date by %s as what it no longer is', async (_how, cell, shown) => {
    const { problems } = await read(await xlsxWith({ reps_per_set: cell }, { 'xl/styles.xml': STYLES }));
    expect(problems).toEqual([
      `line 2, \`reps_per_set\`: expected what was typed, which the spreadsheet turned into a date or a time, received “${shown}”. Format the cell as text, and type it again${shown.includes(':') ? '' : ' (perhaps 8-12, 12-8 or 12/8)'}.`,
    ]);
  });

  it('tells a date in a column of words, too, where it would be read as one', async () => {
    const { problems } = await read(await xlsxWith({ arm: 's="1"><v>46246</v>' }, { 'xl/styles.xml': STYLES }));
    expect(problems[0]).toMatch(/line 2, `arm`: .* turned into a date/u);
  });

  it('counts days from 1904 where the workbook does', async () => {
    const workbook = `<workbook xmlns:r="r"><workbookPr date1904="1"/><sheets><sheet name="Arms" r:id="rId1"/></sheets></workbook>`;
    const { problems } = await read(
      await xlsxWith({ weeks: 's="1"><v>44784</v>' }, { 'xl/styles.xml': STYLES, 'xl/workbook.xml': workbook }),
    );
    expect(problems[0]).toMatch(/“2026-08-12”/u);
  });

  it('shows a share as it is shown, 75 % for 0.75, which the column refuses with its reason', async () => {
    const { problems } = await read(await xlsxWith({ load_pct_1rm: 's="3"><v>0.57</v>' }, { 'xl/styles.xml': STYLES }));
    expect(problems).toEqual([
      'line 2, `load_pct_1rm`: expected a number above 0 and up to 100, or a range such as 8-12, received “57%”. Leave out the per cent sign; the unit is in the data dictionary.',
    ]);
  });

  it('tells a formula that could not be worked out', async () => {
    const { problems } = await read(await xlsxWith({ note: 't="e"><f>1/0</f><v>#DIV/0!</v>' }));
    expect(problems).toEqual([
      'line 2, `note`: expected what the formula comes to, received “#DIV/0!”. Mend the formula, or clear the cell.',
    ]);
  });

  it('tells merged cells of the table, and leaves those of a title alone', async () => {
    const at = nameCell(1, column('load_pct_1rm'));
    const below = nameCell(2, column('load_pct_1rm'));
    const { problems } = await read(
      await xlsxWith({}, {}, `<mergeCells><mergeCell ref="${at}:${below}"/></mergeCells>`),
    );
    expect(problems).toEqual([
      `line 2, \`load_pct_1rm\`: expected a cell for each row and column, received “merged cells ${at}:${below}”. Split the cells, and enter in each what it is to hold.`,
    ]);
    const title = [['Arms of our review'], [], ...TABLE];
    const titled = await read(
      await writeXlsx([
        { name: 'Arms', rows: xlsxRows(title), after: '<mergeCells><mergeCell ref="A1:F1"/></mergeCells>' },
      ]),
    );
    expect(titled.problems).toEqual([]);
    expect(titled.said).toContain('A row above the header was left out.');
    expect(titled.arms.map(({ line }) => line)).toEqual([4, 5, 6]);
  });

  it('reads texts that cells share, in pieces, with unseen characters, and without how they are spoken', async () => {
    const texts =
      '<sst><si><t>leg</t></si><si><r><t>to </t></r><r><rPr><b/></rPr><t>failure_x000D_</t></r><rPh sb="0" eb="1"><t>tu</t></rPh></si></sst>';
    const { arms } = await read(
      await xlsxWith({ arm: 't="s"><v>1</v>', exercise: 't="s"><v>0</v>' }, { 'xl/sharedStrings.xml': texts }),
    );
    expect([arms[0].arm, arms[0].exercise]).toEqual(['to failure', 'leg']);
  });

  it('reads rows and cells that do not say their place', async () => {
    const rows = xlsxRows(TABLE, (text, row, at) => xlsxCell(text, row, at) || '<c/>').replace(/ r="\w+"/gu, '');
    const { arms, problems } = await read(await writeXlsx([{ name: 'Arms', rows }]));
    expect(problems).toEqual([]);
    expect(arms).toEqual(readArms(makeTable([{}, { arm: 'b' }, { arm: 'c' }]), '').arms);
  });

  it('takes the sheet whose header fits, says which, and names others that would', async () => {
    const rows = xlsxRows(TABLE);
    const notes = { name: 'Read me', rows: xlsxRows([['What this is'], ['a study', 'in 2020']]) };
    const { arms, said } = await read(await writeXlsx([notes, { name: 'Arms 2', rows }, { name: 'Old arms', rows }]));
    expect(arms).toHaveLength(3);
    expect(said).toEqual([
      'The sheet “Arms 2” was read.',
      'Its header is also that of “Old arms”, which was not read.',
    ]);
    const empty = { name: 'Template', rows: xlsxRows([TABLE[0], ['', ' ']]) };
    const age = TABLE[0].indexOf('age_mean_years');
    const fewer = xlsxRows(TABLE.map((row) => row.filter((_, column) => column !== age)));
    const beside = await read(await writeXlsx([empty, { name: 'Arms', rows: fewer }]));
    expect(beside.arms).toHaveLength(3);
    expect(beside.said).toEqual([
      'The sheet “Arms” was read.',
      'Its header is also that of “Template”, which was not read.',
    ]);
    expect((await read(await writeXlsx([empty]))).problems).toEqual([
      'file: expected at least one row of data below the header, received nothing. The table has only a header.',
    ]);
    expect((await read(await writeXlsx([notes, { name: 'Empty', rows: '' }]))).problems).toEqual([
      'file: expected a sheet with the column names of the data dictionary in one of its first 20 rows, received “no sheet that has them”. Its sheets are “Read me”, “Empty” (empty). Write the names in a header as the data dictionary has them.',
    ]);
  });

  it('drops what is empty below and beside, and says which rows were hidden', async () => {
    const rows = `${xlsxRows(TABLE).replace('<row r="3">', '<row r="3" hidden="1">')}<row r="5"><c r="A5" s="1"/></row><row r="900000"><c r="ZZ900000"><v></v></c></row>`;
    const { draft, said, problems } = await read(await writeXlsx([{ name: 'Arms', rows }]));
    expect(problems).toEqual([]);
    expect(draft.text.split('\n')).toHaveLength(5);
    expect(said).toContain('A hidden row was read too.');
  });

  it('keeps line 5 line 5 where cells have line breaks, which become spaces', async () => {
    const { arms, said } = await read(await xlsxWith({ note: 't="inlineStr"><is><t>one\ntwo</t></is>' }));
    expect(arms.map(({ line, note }) => [line, note])).toEqual([
      [2, 'one two'],
      [3, null],
      [4, null],
    ]);
    expect(said).toContain('A line break inside a cell became a space.');
  });
});

describe('an OpenDocument spreadsheet (.ods)', () => {
  it('keeps all digits, knows truths, dates, shares and errors', async () => {
    const cell = (attributes: string, text: string) =>
      `<table:table-cell ${attributes}><text:p>${text}</text:p></table:table-cell>`;
    const { arms, problems } = await read(
      await odsWith({
        baseline_mean: cell('office:value-type="float" office:value="41.249999999999993"', '41.2'),
        attempted_failure: cell('office:value-type="boolean" office:boolean-value="false"', 'FALSE'),
        reserve_reps: cell('office:value-type="float" office:value="1.5" table:formula="of:=[.A1]"', '2'),
      }),
      'own.ods',
    );
    expect(problems).toEqual([]);
    expect(arms[0]).toMatchObject({ baseline_mean: 41.249999999999993, attempted_failure: false, reserve_reps: 1.5 });
    const odd = await read(
      await odsWith({
        reps_per_set: cell('office:value-type="date" office:date-value="2026-08-12"', '12. Aug'),
        load_pct_1rm: cell('office:value-type="percentage" office:value="0.75"', '75 %'),
        note: cell('office:value-type="string" office:string-value="" calcext:value-type="error"', '#N/A'),
      }),
      'own.ods',
    );
    expect(odd.problems.map((one) => one.replace(/: expected.*received/u, ':'))).toEqual([
      'line 2, `reps_per_set`: “2026-08-12”. Format the cell as text, and type it again (perhaps 8-12, 12-8 or 12/8).',
      'line 2, `note`: “#N/A”. Mend the formula, or clear the cell.',
      'line 2, `load_pct_1rm`: “75%”. Leave out the per cent sign; the unit is in the data dictionary.',
    ]);
  });

  it('loses no row to a header that repeats on every page, to groups, or to filters, and no cell to a remark', async () => {
    const remark = '<office:annotation><text:p>who wrote this?</text:p></office:annotation>';
    const { arms, said, problems } = await read(
      await odsWith(
        {
          note: `<table:table-cell office:value-type="string">${remark}<text:p>one</text:p>\n<text:p>two</text:p></table:table-cell>`,
        },
        ([header, first, second, third]) =>
          `<table:table-header-rows>${header}</table:table-header-rows><table:table-row-group>${first}<table:table-row-group>${second}</table:table-row-group></table:table-row-group>${third.replace('<table:table-row>', '<table:table-row table:visibility="filter">')}`,
      ),
      'own.ods',
    );
    expect(problems).toEqual([]);
    expect(arms.map(({ arm, note }) => [arm, note])).toEqual([
      ['to failure', 'one two'],
      ['b', null],
      ['c', null],
    ]);
    expect(said).toContain('A hidden row was read too.');
  });

  it('reads repeated cells and rows, and stops at no whole column that only has a format', async () => {
    const empty = `<table:table-row table:number-rows-repeated="1048000"><table:table-cell table:style-name="ce1" table:number-columns-repeated="16384"/></table:table-row>`;
    const twice = TABLE.map((row) => odsRows([row])).map((row, i) =>
      i === 3 ? row.replace('<table:table-row>', '<table:table-row table:number-rows-repeated="2">') : row,
    );
    const { arms, problems } = await read(await writeOds([{ name: 'Arms', rows: twice.join('') + empty }]), 'own.ods');
    expect(arms).toHaveLength(4);
    expect(problems.join()).toMatch(/^line 5: expected a measurement that line 4 does not have already/u);
  });

  it('tells merged cells', async () => {
    const { problems } = await read(
      await odsWith({
        study:
          '<table:table-cell table:number-rows-spanned="3" office:value-type="string"><text:p>Plover 2012</text:p></table:table-cell>',
      }),
      'own.ods',
    );
    expect(problems[0]).toMatch(/line 2, `study`: .*“merged cells A2:A4”/u);
  });
});

describe('a table from a spreadsheet', () => {
  it('is never offered decimal points for commas in its texts', async () => {
    const semicolons = {
      ...Object.fromEntries(
        ['baseline_mean', 'followup_mean'].map((name) => [name, 't="inlineStr"><is><t>41,25</t></is>']),
      ),
    };
    const { draft, problems } = await read(await xlsxWith(semicolons));
    expect(askAbout(draft).commas).toBeNull();
    expect(problems).toHaveLength(2);
  });

  it('asks about a column by a usual word, in a header that no exact name is in', async () => {
    const rows = xlsxRows([
      ['Author', 'Group', 'RIR', 'N'],
      ['A', 'b', '1', '12'],
    ]);
    const draft = await openArms(await writeXlsx([{ name: 'Data', rows }]), 'own.xlsx');
    expect(
      askAbout(draft).columns.map(({ written, candidates }) => [written, candidates.map(({ name }) => name)]),
    ).toEqual([
      ['Author', ['study']],
      ['Group', ['arm']],
      ['RIR', ['reserve_reps']],
      ['N', ['n']],
    ]);
  });
});

describe('a file that is no table', () => {
  const text = (value: string) => new TextEncoder().encode(value);
  it.each<readonly [what: string, bytes: () => Uint8Array | Promise<Uint8Array>, message: RegExp]>([
    ['a PDF', () => text('%PDF-1.7\n'), /received “a PDF”/u],
    ['a picture', () => Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10), /received “a picture”/u],
    ['a packed file', () => Uint8Array.of(0x1f, 0x8b, 8), /received “a packed file”.*Unpack it/u],
    ['a web page', () => text('\ufeff <!DOCTYPE html><table>'), /a web page or an XML document/u],
    [
      'an old workbook',
      () => Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0),
      /an old binary file \(\.xls or \.doc\)”\. Open it in a spreadsheet program, and save it as \.xlsx, \.ods or CSV\./u,
    ],
    [
      'a workbook with a password',
      () =>
        Uint8Array.of(
          0xd0,
          0xcf,
          0x11,
          0xe0,
          0xa1,
          0xb1,
          0x1a,
          0xe1,
          69,
          ...[...'EncryptedPackage'].flatMap((one) => [one.charCodeAt(0), 0]),
        ),
      /a file with a password”\. Save a copy without a password/u,
    ],
    ['another archive', () => zip({ 'a.txt': 'a' }), /a zip archive without a spreadsheet in it”\. Unpack it/u],
    ['a text document', () => zip({ 'word/document.xml': '<a/>' }), /a text of a word processor/u],
    ['a binary workbook', () => zip({ 'xl/workbook.bin': 'a' }), /a binary workbook \(\.xlsb\)/u],
    [
      'a drawing',
      () => zip({ mimetype: 'application/vnd.oasis.opendocument.graphics', 'content.xml': '<a/>' }),
      /an OpenDocument file of another kind \(graphics\)/u,
    ],
    [
      'an OpenDocument spreadsheet with a password',
      () => writeOds([], { 'META-INF/manifest.xml': '<m><e><encryption-data/></e></m>' }),
      /a file with a password/u,
    ],
    ['a workbook cut short', async () => (await xlsxWith({})).subarray(0, 900), /damaged or cut short/u],
    [
      'a workbook with a flipped bit',
      async () => {
        const bytes = await xlsxWith({});
        const name = new TextDecoder('latin1').decode(bytes).indexOf('xl/worksheets/sheet1.xml');
        return bytes.map((byte, i) => (i === name + 100 ? byte ^ 4 : byte));
      },
      /damaged or cut short/u,
    ],
    [
      'a sheet that is cut short',
      () => xlsxWith({}, { 'xl/worksheets/sheet1.xml': '<worksheet><sheetData><row>' }),
      /damaged or cut short/u,
    ],
    [
      'entities inside entities',
      () =>
        xlsxWith(
          {},
          {
            'xl/worksheets/sheet1.xml':
              '<!DOCTYPE a [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;">]><worksheet><sheetData><row><c t="inlineStr"><is><t>&b;</t></is></c></row></sheetData></worksheet>',
          },
        ),
      /damaged or cut short/u,
    ],
    [
      'a million columns',
      () =>
        xlsxWith(
          {},
          {
            'xl/worksheets/sheet1.xml':
              '<worksheet><sheetData><row><c r="BDWGO1"><v>1</v></c></row></sheetData></worksheet>',
          },
        ),
      /expected at most 1000 columns, received “a cell in column 1000001 in the sheet “Arms””\. Delete what stands beside/u,
    ],
    [
      'a row far below',
      () =>
        xlsxWith(
          {},
          {
            'xl/worksheets/sheet1.xml':
              '<worksheet><sheetData><row><c r="A99999999"><v>1</v></c></row></sheetData></worksheet>',
          },
        ),
      /expected at most 1048576 rows, received “a cell in row 99999999/u,
    ],
    [
      'a row above the first',
      () =>
        xlsxWith(
          {},
          {
            'xl/worksheets/sheet1.xml':
              '<worksheet><sheetData><row r="-4"><c><v>1</v></c></row></sheetData></worksheet>',
          },
        ),
      /damaged or cut short/u,
    ],
    [
      'a cell that is repeated without end',
      () =>
        writeOds([
          {
            name: 'Arms',
            rows: '<table:table-row table:number-rows-repeated="1000000000"><table:table-cell office:value-type="string" table:number-columns-repeated="900"><text:p>a</text:p></table:table-cell></table:table-row>',
          },
        ]),
      /at most 10000000 filled cells/u,
    ],
    [
      'an empty cell that is repeated without end',
      () =>
        writeOds([
          {
            name: 'Arms',
            rows: '<table:table-row table:number-rows-repeated="900000000000000"><table:table-cell office:value-type="string" table:number-columns-repeated="900000000000000"/></table:table-row>',
          },
        ]),
      /Its sheets are “Arms” \(empty\)/u,
    ],
  ])('%s is answered in one sentence', async (_what, bytes, message) => {
    const { problems, arms } = await read(await bytes(), 'own.xlsx');
    expect(arms).toEqual([]);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(message);
  });

  it.each([
    ['a text that its list does not have', { 'xl/sharedStrings.xml': '<sst/>' }, 't="s"><v>1</v>'],
    ['a part that is named and not there', { 'xl/worksheets/sheet1.xml': '' }, '><v>1</v>'],
  ])('a workbook with %s is damaged, not a table without it', async (_what, extra, cell) => {
    expect((await read(await xlsxWith({ arm: cell }, extra))).problems.join()).toMatch(/damaged or cut short/u);
  });

  it('a spreadsheet with some bytes exchanged is refused, or is read to the same rows', async () => {
    const whole = {
      xlsx: await xlsxWith(
        { weeks: 's="1"><v>8</v>' },
        { 'xl/styles.xml': STYLES.replace('numFmtId="16"', 'numFmtId="2"') },
      ),
      ods: await odsWith({}),
    };
    const rows = { xlsx: (await read(whole.xlsx)).arms, ods: (await read(whole.ods)).arms };
    const seen = { refused: 0, same: 0 };
    const change = fc.record({
      kind: fc.constantFrom('xlsx' as const, 'ods' as const),
      at: fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
      bit: fc.nat(7),
    });
    await fc.assert(
      fc.asyncProperty(change, async ({ kind, at, bit }) => {
        const place = Math.floor(at * whole[kind].length);
        const { arms, problems } = await read(whole[kind].map((byte, i) => (i === place ? byte ^ (1 << bit) : byte)));
        if (problems.length === 0) expect(arms).toEqual(rows[kind]);
        seen[problems.length === 0 ? 'same' : 'refused']++;
      }),
      { seed: 41, numRuns: 400 },
    );
    expect(rows.xlsx).toHaveLength(3);
    expect(seen.refused).toBeGreaterThan(200);
    expect(seen.same).toBeGreaterThan(5);
  });

  it('that unpacks to more than it may, in one part or in the same one many times, is not read to its end', async () => {
    const bytes = await zip({ 'a.xml': ' '.repeat(3_000_000) });
    expect(bytes.length).toBeLessThan(10_000);
    const parts = await openParts(bytes, 10_000_000);
    let taken = 0;
    const take = (text: string) => {
      taken += text.length;
    };
    const again = async () => {
      for (;;) await parts.read('a.xml', take);
    };
    await expect(again()).rejects.toMatchObject({ refused: { expected: 'at most 10 MB when unpacked' } });
    expect(taken).toBeGreaterThan(9_000_000);
    expect(taken).toBeLessThanOrEqual(10_000_000);
  });
});
