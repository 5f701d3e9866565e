/**
 * Decimal commas as one question. Proven: the shipped table with commas reads, once that is accepted, as with points,
 * to the last bit of its analysis; no cell but those is touched; and every table in which a comma may mean something else
 * is left alone.
 */
import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { convertDecimalCommas, findDecimalCommas, readsNumbers } from '../../../src/evidence/opening/decimalComma.ts';
import { answer, askAbout, openArms, readDraftNow } from '../../../src/evidence/opening/openTable.ts';
import { formatProblem } from '../../../src/evidence/problem.ts';
import { ARM_COLUMNS, type ArmColumn } from '../../../src/evidence/schema.ts';
import { readArms } from '../../../src/evidence/table.ts';
import { analyse } from '../../../src/model/analyse.ts';
import { defaultSettings } from '../../../src/model/settings.ts';
import { type Cells, makeTable } from '../../support/tables.ts';

const shipped = readFileSync(new URL('../../../data/arms.csv', import.meta.url), 'utf8');
const isNumber = (name: string) => readsNumbers(ARM_COLUMNS[name as ArmColumn]);
/** A table whose numbers have decimal commas, parted by another sign. */
function withCommas(csv: string, delimiter: string, newline = '\n'): string {
  const { data, meta } = Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true });
  const rows = data.map((row) =>
    Object.fromEntries(
      Object.entries(row).map(([name, cell]) => [name, isNumber(name) ? cell.replace('.', ',') : cell]),
    ),
  );
  return `${Papa.unparse({ fields: meta.fields ?? [], data: rows }, { delimiter, newline })}${newline}`;
}
/** Whole numbers alone, but for what is changed. */
const semicolons = (changes: readonly Cells[]) => {
  const table = makeTable(changes.map((cells) => ({ followup_sd: '', correlation: '', ...cells })));
  return Papa.unparse(Papa.parse<string[]>(table).data, { delimiter: ';' });
};
const commas = (changes: readonly Cells[]) => Papa.unparse(Papa.parse<string[]>(semicolons(changes)).data);
const find = (text: string) => findDecimalCommas(text, 'own.csv', ARM_COLUMNS);
const open = (text: string) => openArms(new TextEncoder().encode(text), 'own.csv');

describe('a table with decimal commas', () => {
  it.each([
    ['semicolons', ';', '\n'],
    ['tabs and the line breaks of Windows', '\t', '\r\n'],
    ['commas between its cells, as some programs export it, each number in quotation marks', ',', '\n'],
  ])('and %s is asked about once, and then read as its twin with points', async (_what, delimiter, newline) => {
    const text = withCommas(shipped, delimiter, newline);
    const draft = await open(text);
    const { commas, columns } = askAbout(draft);
    expect(columns).toEqual([]);
    const { data } = Papa.parse<Record<string, string>>(shipped, { header: true, skipEmptyLines: true });
    const cells = data.flatMap((row) =>
      Object.keys(row).filter((name) => isNumber(name) && row[name].includes('.')),
    ).length;
    expect(cells).toBeGreaterThan(1000);
    expect(commas?.cells).toBe(cells);
    expect(readDraftNow(draft).problems.length).toBeGreaterThanOrEqual(cells);
    const accepted = answer(draft, { of: 'commas', isYes: true });
    expect(askAbout(accepted).commas).toBeNull();
    const { arms, problems } = readDraftNow(accepted);
    expect(problems).toEqual([]);
    const twin = readArms(shipped, 'arms.csv').arms;
    expect(arms).toEqual(twin);
    expect(JSON.stringify(analyse(arms, defaultSettings))).toBe(JSON.stringify(analyse(twin, defaultSettings)));
    // Nothing else has changed, not a mark, not a line break.
    expect(accepted.text).toBe(
      Papa.unparse(Papa.parse(shipped.trimEnd()).data as string[][], { delimiter, newline }) + newline,
    );
    expect(accepted.changes).toEqual([`${cells.toLocaleString('en')} cells with a decimal comma now have a point`]);
  });

  it('stays as it is where the answer is no, and is not asked again', async () => {
    const draft = answer(await open(semicolons([{ baseline_sd: '6,25' }])), { of: 'commas', isYes: false });
    expect(askAbout(draft).commas).toBeNull();
    expect(readDraftNow(draft).problems.map(formatProblem)).toEqual([
      'line 2, `baseline_sd`: expected a number above 0, received “6,25”. Use a decimal point.',
    ]);
  });

  it('has its words, its notes and its quoted cells left alone', () => {
    const text = semicolons([
      { baseline_sd: '6,25', note: 'between 3,5 and 4,5; read twice', arm: '2,5 sets', source_place: 'p. 1,2' },
    ]).replace(';6,25;', ';"6,25";');
    const found = find(text);
    expect(found).toMatchObject({ cells: 1, example: '6,25', columns: [{ name: 'baseline_sd' }] });
    expect(found && convertDecimalCommas(text, found)).toBe(text.replace('"6,25"', '6.25'));
  });

  it('gives ranges, bounds and spreads their points too, so that they are told as those of its twin', () => {
    const cells: Cells = {
      reserve_reps: '1,5-2,5',
      baseline_mean: '40,25 ± 6,5',
      change_p: '< 0,001',
      change_se: '1.234,5',
    };
    const found = find(semicolons([cells]));
    const read = readArms(found ? convertDecimalCommas(semicolons([cells]), found) : '', 'own.csv');
    expect(read.problems.map(({ value }) => value).sort()).toEqual(['40.25 ± 6.5']);
    expect(found?.cells).toBe(4);
  });
});

describe('a table in which a comma may mean something else', () => {
  it.each<readonly [what: string, text: string]>([
    [
      'commas part its cells, and one column could have thousands',
      commas([{ baseline_mean: '1,593', baseline_sd: '0,25' }]),
    ],
    ['commas part its cells, and every number could have thousands', commas([{ baseline_mean: '1,593' }])],
    ['some numbers have a point', semicolons([{ baseline_mean: '41,25' }, { arm: 'b', baseline_sd: '6.25' }])],
    [
      'a number with a point could be of thousands',
      semicolons([{ baseline_mean: '1.593' }, { arm: 'b', baseline_mean: '41,25' }]),
    ],
    [
      'every comma could part thousands',
      semicolons([{ baseline_mean: '1,593' }, { arm: 'b', baseline_mean: '2,104' }]),
    ],
    ['commas part millions', semicolons([{ baseline_mean: '1,593,204' }])],
    ['only words have commas', semicolons([{ note: '3,5' }])],
    ['a number of people has thousands', semicolons([{ n: '1,024' }])],
  ])('since %s is not asked about', (_what, text) => {
    expect(find(text)).toBeNull();
  });

  it('in one column has that column left as a problem, and the others asked about', () => {
    const text = semicolons([
      { baseline_mean: '1,593', baseline_sd: '6,25' },
      { arm: 'b', baseline_mean: '980', baseline_sd: '7,5' },
    ]);
    const found = find(text);
    expect(found).toMatchObject({ cells: 2, columns: [{ name: 'baseline_sd' }], couldBeThousands: [] });
    const { problems } = readArms(found ? convertDecimalCommas(text, found) : '', 'own.csv');
    expect(problems.map(formatProblem)).toEqual([
      'line 2, `baseline_mean`: expected a number above 0, received “1,593”. Write thousands without a comma, and decimals with a point.',
    ]);
  });

  it('by the column alone, but not by the table, is asked about with that column named', () => {
    const text = semicolons([{ baseline_mean: '1,593', baseline_sd: '0,25', followup_mean: '1,7' }]);
    expect(find(text)).toMatchObject({ cells: 3, couldBeThousands: [{ name: 'baseline_mean', cell: '1,593' }] });
    // Beside other decimals of the same size it is one of them.
    const beside = semicolons([{ baseline_mean: '1,593' }, { arm: 'b', baseline_mean: '1,6' }]);
    expect(find(beside)).toMatchObject({ cells: 2, couldBeThousands: [] });
  });
});
