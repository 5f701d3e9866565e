/**
 * A written table is the table that was read. Proven: on generated tables that reading what was
 * written gives the same rows and, bit for bit, the same analysis; by a reading of its own that the
 * text is RFC 4180 with marks only where needed; on the shipped table that no cell changes.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { ARM_COLUMNS, type ArmColumn } from '../../src/evidence/schema.ts';
import { readArms } from '../../src/evidence/table.ts';
import { writeArmCell, writeArms, writeCell } from '../../src/evidence/writeTable.ts';
import { analyse } from '../../src/model/analyse.ts';
import { defaultSettings } from '../../src/model/settings.ts';
import { validTable } from '../support/tableArbitrary.ts';
import { makeArms } from '../support/tables.ts';

const shipped = readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8');

describe('a generated table', () => {
  it('comes back with every row, every cell to the last bit, and every line', () => {
    let rows = 0;
    fc.assert(
      fc.property(validTable, (arms) => {
        const { arms: again, problems } = readArms(writeArms(arms), 'export.csv');
        expect(problems).toEqual([]);
        // toEqual tells −0 from 0.
        expect(again).toEqual(arms);
        rows += arms.length;
      }),
      { seed: 11, numRuns: 400 },
    );
    expect(rows).toBeGreaterThan(1000);
  });

  it('has the same analysis, bit for bit, after it was written and read', () => {
    let fitted = 0;
    const settings = { ...defaultSettings, split: null };
    fc.assert(
      fc.property(validTable, (arms) => {
        const before = analyse(arms, settings);
        expect(JSON.stringify(analyse(readArms(writeArms(arms), 'export.csv').arms, settings))).toBe(
          JSON.stringify(before),
        );
        fitted += before.rows.included;
      }),
      { seed: 12, numRuns: 60 },
    );
    expect(fitted).toBeGreaterThan(20);
  });

  it('is written with marks only round cells that hold a mark, a comma or a line break', () => {
    const cell = /^(?:"(?:[^"]|"")*"|[^",\n\r]*)$/u;
    fc.assert(
      fc.property(validTable, (arms) => {
        const text = writeArms(arms);
        expect(text).not.toMatch(/[\r\t]|\n\n/u);
        const [header, ...lines] = text.trimEnd().split('\n');
        expect(header).toBe(Object.keys(ARM_COLUMNS).join(','));
        lines.forEach((line, i) => {
          const written = line.match(/(?:"(?:[^"]|"")*"|[^,]*)(?:,|$)/gu)?.map((piece) => piece.replace(/,$/u, ''));
          const expected = Object.keys(ARM_COLUMNS).map((name) => {
            const plain = writeArmCell(arms[i], name as keyof typeof ARM_COLUMNS);
            return /[",]/u.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
          });
          expect(written?.slice(0, expected.length)).toEqual(expected);
          for (const one of expected) expect(one).toMatch(cell);
        });
      }),
      { seed: 13, numRuns: 100 },
    );
  });

  it('lets no spreadsheet calculate, whether it splits cells at commas or at semicolons', () => {
    const texts = (Object.keys(ARM_COLUMNS) as ArmColumn[]).filter((name) => ARM_COLUMNS[name].field.type === 'string');
    let semicolons = 0;
    fc.assert(
      fc.property(validTable, (arms) => {
        for (const arm of arms) for (const name of texts) expect(writeCell(arm[name])).not.toMatch(/^[=+\-@]/u);
        for (const line of writeArms(arms).split('\n')) {
          for (const piece of line.split(';').slice(1)) {
            expect(piece).not.toMatch(/^[=+\-@]/u);
            semicolons++;
          }
        }
      }),
      { seed: 14, numRuns: 200 },
    );
    expect(semicolons).toBeGreaterThan(50);
  });
});

describe('the shipped table', () => {
  it('is written as it stands, save zeros at the end of a number', () => {
    const shortest = shipped.replace(/(?<=,\d+)\.0+(?=,)|(?<=,\d+\.\d*[1-9])0+(?=,)/gu, '');
    // Columns that the shipped table does not have come back empty.
    const text = writeArms(readArms(shipped, 'arms.csv').arms).trimEnd();
    const written = Papa.parse<Record<string, string>>(text, { header: true });
    const columns = shortest.slice(0, shortest.indexOf('\n')).split(',');
    const others = Object.keys(ARM_COLUMNS).filter((name) => !columns.includes(name));
    for (const row of written.data) for (const name of others) expect(row[name] ?? '', name).toBe('');
    expect(`${Papa.unparse({ fields: columns, data: written.data }, { newline: '\n' })}\n`).toBe(shortest);
  });

  it('has the same analysis, bit for bit, after it was written and read', () => {
    const { arms } = readArms(shipped, 'arms.csv');
    const again = readArms(writeArms(arms), 'export.csv').arms;
    expect(JSON.stringify(analyse(again, defaultSettings))).toBe(JSON.stringify(analyse(arms, defaultSettings)));
  });
});

describe('a cell', () => {
  it.each([
    [null, ''],
    [true, 'yes'],
    [false, 'no'],
    [0.1 + 0.2, '0.30000000000000004'],
    [1e21, '1e+21'],
    [5e-324, '5e-324'],
    [-0, '-0'],
    ['a, "b"', 'a, "b"'],
  ])('of %s is written as %s', (value, expected) => {
    expect(writeCell(value)).toBe(expected);
  });
});

describe('a template', () => {
  it('is the header alone, which reading names as what is missing below', () => {
    const text = writeArms([]);
    expect(text).toBe(`${Object.keys(ARM_COLUMNS).join(',')}\n`);
    expect(readArms(text, 't.csv').problems.map(({ expected }) => expected)).toEqual([
      'at least one row of data below the header',
    ]);
  });

  it('is filled by adding lines', () => {
    const row = writeArms(makeArms([{}])).split('\n')[1];
    expect(readArms(`${writeArms([])}${row}\n`, 't.csv')).toMatchObject({ problems: [], arms: [{ line: 2 }] });
  });
});
