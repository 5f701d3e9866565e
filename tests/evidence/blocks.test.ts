/**
 * A large text is read in blocks. Proven: blocks never change what is read, against a slow obvious
 * reading of RFC 4180 character by character; progress is told; 100,000 rows take seconds.
 */
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { openCsv, readBlocks } from '../../src/evidence/csv.ts';
import { readArms, readArmsInSteps } from '../../src/evidence/table.ts';
import { makeTable } from '../support/tables.ts';
import { timeRatio } from '../support/timeRatio.ts';

/** Records with their lines, one character at a time; for text that is well formed. */
function readSlowly(text: string): { line: number; cells: string[] }[] {
  const records: { line: number; cells: string[] }[] = [];
  let record = { line: 1, cells: [''] };
  let line = 1;
  let quoted = false;
  const add = (character: string) => {
    record.cells[record.cells.length - 1] += character;
  };
  for (let i = 0; i < text.length; i++) {
    const character = text.charAt(i);
    if (character === '\n') line++;
    if (quoted) {
      if (character !== '"') add(character);
      else if (text[i + 1] === '"') add(text.charAt(i++));
      else quoted = false;
    } else if (character === '"') quoted = true;
    else if (character === ',') record.cells.push('');
    else if (character === '\n') {
      records.push(record);
      record = { line, cells: [''] };
    } else add(character);
  }
  return [...records, record].filter(({ cells }) => cells.length > 1 || cells.join('').trim() !== '');
}

const quote = (cell: string) => `"${cell.replaceAll('"', '""')}"`;

/** Every study of the table under a new name again and again, until it has as many rows as asked for. */
function enlarge(table: string, rows: number): string {
  const [header = '', ...lines] = table.trim().split(/\r?\n/u);
  const copies = Array.from({ length: rows }, (_, i) => `Copy ${i} ${lines[i % lines.length]}`);
  return [header, ...copies].join('\n');
}

describe('a text of many blocks', () => {
  it('gives the records and lines of a reading character by character', () => {
    const plain = fc.stringMatching(/^[a-c ]{0,4}$/u);
    const cell = fc.oneof(plain, fc.stringMatching(/^[a-c",\n]{0,8}$/u).map(quote));
    const row = fc.array(cell, { minLength: 2, maxLength: 4 });
    fc.assert(
      fc.property(fc.array(row, { minLength: 20, maxLength: 40 }), (rows) => {
        // Repeated until there are several blocks, whose ends then fall anywhere in the pattern.
        const piece = `${rows.map((cells) => cells.join(',')).join('\n')}\n`;
        const text = piece.repeat(Math.ceil(350_000 / piece.length));
        const blocks = [...readBlocks(openCsv(text, 'any.csv', new Set()), 'any.csv')];
        expect(blocks.length).toBeGreaterThan(2);
        expect(blocks.flatMap(({ problems }) => problems)).toEqual([]);
        // As text: comparing tens of thousands of objects one by one takes a minute.
        expect(JSON.stringify(blocks.flatMap(({ records }) => records)) === JSON.stringify(readSlowly(text))).toBe(
          true,
        );
      }),
      { seed: 3, numRuns: 15 },
    );
  });

  it('tells progress that grows to the length of the text, and can be stopped between steps', () => {
    const text = enlarge(makeTable([{}]), 3000);
    const steps = [...readArmsInSteps(text, 'large.csv')];
    expect(steps.length).toBeGreaterThan(3);
    const done = steps.map((step) => step.done);
    expect(done).toEqual([...done].sort((a, b) => a - b));
    expect(steps.at(-1)).toEqual({ done: text.length, total: text.length });
    const stopped = readArmsInSteps(text, 'large.csv');
    stopped.next();
    stopped.return({ arms: [], problems: [], warnings: [] });
    expect(stopped.next().done).toBe(true);
  });

  it('keeps line numbers right far from the start', () => {
    const rows = enlarge(makeTable([{}]), 5000).split('\n');
    rows[4321] = (rows[4321] ?? '').replace(',2012,', ',twenty,');
    const { problems, arms } = readArms(rows.join('\n'), 'large.csv');
    expect(problems.map(({ line, column }) => [line, column])).toEqual([[4322, 'year']]);
    expect(arms).toHaveLength(4999);
    expect(arms.at(-1)?.line).toBe(5001);
  });
});

it('100,000 rows are read and validated in some times as long as they are only split, and as ten times 10,000', () => {
  const textOf = (rows: number) => enlarge(makeTable([{}]), rows);
  const [few, many] = [10_000, 100_000].map(textOf);
  const read = (text: string, rows: number) => () => expect(readArms(text, 'large.csv').arms).toHaveLength(rows);
  // Measured 12.4 to 12.7; how many seconds that is, the benchmark says.
  expect(timeRatio(read(many, 100_000), () => Papa.parse(many), 3)).toBeLessThan(20);
  // Measured 11.1 to 11.4; what is read again for each row would make it 100.
  expect(timeRatio(read(many, 100_000), read(few, 10_000), 3)).toBeLessThan(18);
});

describe('an ill-meaning text', () => {
  it('with a quotation mark that is never closed is read in a time in proportion to its length', () => {
    const textOf = (lines: number) => `${makeTable([{}])}\n"never closed\n${'a,b\n'.repeat(lines)}`;
    const read = (text: string) => () => readArms(text, 'endless.csv');
    const [short, long] = [10_000, 200_000].map(textOf);
    // Twenty times the lines inside the quotation; looking for its end anew at each of them takes 400 times as long.
    expect(timeRatio(read(long), read(short))).toBeLessThan(150);
    const { problems } = readArms(long, 'endless.csv');
    expect(problems.map(({ line, kind }) => [line, kind])).toContainEqual([3, 'ragged-line']);
  });

  it('with a name 200,000 times in its header has a problem for each, and nothing is thrown', () => {
    const { problems } = readArms(`${'study,'.repeat(200_000)}x\n1`, 'wide.csv');
    expect(problems.filter(({ expected }) => expected === 'every column once')).toHaveLength(199_999);
  });
});
