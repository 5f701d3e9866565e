/**
 * One table in every form that a file may have. Proven on generated tables with a fixed seed: as .xlsx, as .ods, in
 * UTF-16 with and without its mark, in Windows-1252, and with semicolons and decimal commas, it reads to the rows of the
 * plain CSV; and cells are exchanged in place without touching another character.
 */
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { readsNumbers } from '../../../src/evidence/opening/decimalComma.ts';
import { type Encoding, encodeText } from '../../../src/evidence/opening/encoding.ts';
import { answer, askAbout, openArms, readDraftNow } from '../../../src/evidence/opening/openTable.ts';
import { rewriteCells } from '../../../src/evidence/opening/rewriteCells.ts';
import { ARM_COLUMNS, type Arm, type ArmColumn } from '../../../src/evidence/schema.ts';
import { writeArms } from '../../../src/evidence/writeTable.ts';
import { odsRows, writeOds, writeXlsx, xlsxRows } from '../../support/spreadsheets.ts';
import { validTable } from '../../support/tableArbitrary.ts';

const encode = (text: string, encoding: Encoding) => encodeText(text, encoding) ?? new Uint8Array();
const isNumber = (name: string) => readsNumbers(ARM_COLUMNS[name as ArmColumn]);
const names = Object.keys(ARM_COLUMNS) as ArmColumn[];
const cellsOf = (arms: readonly Arm[]) => Papa.parse<string[]>(writeArms(arms).trimEnd()).data;
/** Words as any file can hold them: XML has no control characters and no halves of a pair, and all forms have these letters. */
const plain = (arms: readonly Arm[]) =>
  arms.map(
    (arm) =>
      Object.fromEntries(
        Object.entries(arm).map(([name, value]) => [
          name,
          typeof value === 'string' && ARM_COLUMNS[name as ArmColumn].field.constraints.enum === undefined
            ? `é${value.replace(/[^\p{ASCII}]|\p{Cc}/gu, 'ü')}`
            : value,
        ]),
      ) as unknown as Arm,
  );
async function reading(bytes: Uint8Array) {
  const { arms, problems } = readDraftNow(await openArms(bytes, 'own'));
  return { arms, problems };
}

const FORMS: Readonly<Record<string, (arms: readonly Arm[]) => Uint8Array | Promise<Uint8Array>>> = {
  'a workbook': (arms) => writeXlsx([{ name: 'Arms', rows: xlsxRows(cellsOf(arms)) }]),
  'an OpenDocument spreadsheet': (arms) => writeOds([{ name: 'Arms', rows: odsRows(cellsOf(arms)) }]),
  'UTF-16': (arms) => encode(writeArms(arms), 'utf-16le'),
  'UTF-16 with its mark, big-endian': (arms) => encode(`\ufeff${writeArms(arms)}`, 'utf-16be'),
  'Windows-1252': (arms) => encode(writeArms(arms), 'windows-1252'),
};

describe('a generated table', () => {
  it.each(Object.entries(FORMS))('as %s reads to the same rows', async (_form, write) => {
    let rows = 0;
    await fc.assert(
      fc.asyncProperty(validTable, async (drawn) => {
        const arms = plain(drawn);
        const expected = await reading(encode(writeArms(arms), 'utf-8'));
        expect(await reading(await write(arms))).toEqual(expected);
        rows += arms.length;
      }),
      { seed: 31, numRuns: 30 },
    );
    expect(rows).toBeGreaterThan(100);
  });

  it('with semicolons and decimal commas reads to the same rows once they are accepted', async () => {
    let converted = 0;
    await fc.assert(
      fc.asyncProperty(validTable, async (drawn) => {
        const arms = plain(drawn);
        // Three digits after a comma may be thousands, which is another test's.
        const isDoubtful = (cell: string) => /^[+-]?[1-9]\d{0,2}\.\d{3}$/u.test(cell);
        const [header, ...rows] = cellsOf(arms);
        if (rows.some((row) => row.some((cell, i) => isNumber(names[i]) && isDoubtful(cell)))) return;
        const comma = rows.map((row) => row.map((cell, i) => (isNumber(names[i]) ? cell.replace('.', ',') : cell)));
        const draft = await openArms(
          encode(`${Papa.unparse([header, ...comma], { delimiter: ';' })}\r\n`, 'utf-8'),
          'own',
        );
        const { commas } = askAbout(draft);
        const expected = await reading(encode(writeArms(arms), 'utf-8'));
        const accepted = commas ? answer(draft, { of: 'commas', isYes: true }) : draft;
        expect(readDraftNow(accepted).arms).toEqual(expected.arms);
        if (commas) converted++;
      }),
      { seed: 32, numRuns: 30 },
    );
    expect(converted).toBeGreaterThan(10);
  });
});

describe('cells exchanged in place', () => {
  const cell = fc.oneof(
    fc.constantFrom('', 'a', '1,5', '"', 'x\ny', ';', ' spaced ', '\t'),
    fc.string({ maxLength: 5 }),
  );
  const grid = fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 6 });
  const form = fc.record({
    delimiter: fc.constantFrom(',', ';', '\t'),
    newline: fc.constantFrom('\n', '\r\n'),
    mark: fc.constantFrom('', '\ufeff'),
    end: fc.boolean(),
    quotes: fc.boolean(),
  });

  it('leave all others as they were, and are the ones that were meant', () => {
    let exchanged = 0;
    fc.assert(
      fc.property(grid, form, ({ ...rows }, { delimiter, newline, mark, end, quotes }) => {
        const cells = Object.values(rows) as string[][];
        const body = Papa.unparse(cells, { delimiter, newline, quotes });
        const text = mark + body + (end ? newline : '');
        expect(rewriteCells(text, delimiter, () => null)).toBe(text);
        const seen: string[][] = [];
        const marked = rewriteCells(text, delimiter, (one, row, column) => {
          seen[row] ??= [];
          seen[row][column] = one;
          return (row + column) % 2 === 0 ? `<${one}>` : null;
        });
        expect(seen).toEqual(cells);
        const expected = cells.map((row, i) => row.map((one, j) => ((i + j) % 2 === 0 ? `<${one}>` : one)));
        expect(Papa.parse(marked.replace(/^\ufeff/u, ''), { delimiter, newline, skipEmptyLines: true }).data).toEqual(
          expected,
        );
        exchanged++;
      }),
      { seed: 33, numRuns: 400 },
    );
    expect(exchanged).toBe(400);
  });
});
