/** Tables of every kind on the command line: spreadsheets, decimal commas, other names, many problems of one kind. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { run, useFolder } from '../support/runScript.ts';
import { odsRows, writeOds } from '../support/spreadsheets.ts';
import { makeTable } from '../support/tables.ts';

const { folder, file } = useFolder('table-files');
const shipped = readFileSync('data/arms.csv', 'utf8');
const cells = Papa.parse<string[]>(shipped.trimEnd()).data;
const COMMAS = Papa.unparse(
  cells.map((row) => row.map((cell) => (/^-?\d+\.\d+(?:e-?\d+)?$/u.test(cell) ? cell.replace('.', ',') : cell))),
  { delimiter: ';' },
);

describe('a spreadsheet', () => {
  it('is checked, fitted as its CSV is, compared, and written as CSV; never over a file', async () => {
    const sheet = file('arms.ods', await writeOds([{ name: 'Arms', rows: odsRows(cells) }]));
    const { status, stdout } = run('check', sheet, '--write', join(folder, 'made.csv'));
    expect([status, stdout]).toEqual([
      0,
      expect.stringMatching(/^note: arms\.ods: The sheet “Arms” was read\.\nwritten to .*made\.csv\n.*no problem/u),
    ]);
    expect(Papa.parse(readFileSync(join(folder, 'made.csv'), 'utf8').trimEnd()).data).toEqual(cells);
    expect(run('fit', sheet, '--json').stdout).toBe(run('fit', 'data/arms.csv', '--json').stdout);
    expect(run('compare', 'data/arms.csv', sheet).stdout).toMatch(/every study has the same rows/u);
    expect(run('check', sheet, '--write', join(folder, 'no', 'made.csv')).stderr).toMatch(
      /^cannot write the table .*made\.csv: expected a folder for it, found none at \/.*no\n$/u,
    );
    expect(run('check', sheet, '--write', join(folder, 'made.csv'))).toMatchObject({
      status: 2,
      stderr: expect.stringMatching(/^expected a new file for --write, found one at .*made\.csv\n$/u),
    });
  });

  it('of old is answered in one sentence', () => {
    const old = file('old.xls', Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1));
    expect(run('check', old, '--write', join(folder, 'none.csv'))).toMatchObject({
      status: 1,
      stderr: expect.stringMatching(
        /^old\.xls: file: expected a table .* received “an old binary file .*\n1 problem\(s\) in /u,
      ),
    });
    expect(existsSync(join(folder, 'none.csv'))).toBe(false);
  });
});

describe('a table with decimal commas', () => {
  it('is told in one line, with the option that reads it', () => {
    const path = file('komma.csv', COMMAS);
    const { status, stderr } = run('check', path);
    expect(status).toBe(1);
    const lines = stderr.trimEnd().split('\n');
    expect(lines).toHaveLength(3);
    expect(lines[0]).toMatch(
      /^komma\.csv: [\d,]+ cells with a decimal comma, such as “\d+,\d+” \(.*\): are these decimal commas\? Then give --decimal-comma\./u,
    );
    expect(lines[1]).toMatch(
      /^komma\.csv: [\d,]+ problems would go with that \(--all lists all as it stands\); none stays$/u,
    );
    expect(run('check', path, '--all').stderr.split('\n').length).toBeGreaterThan(2000);
    expect(run('fit', path, '--decimal-comma', '--json').stdout).toBe(run('fit', 'data/arms.csv', '--json').stdout);
  });
});

describe('a table with a column by another name', () => {
  it('is told which it may be, and what stays if it is', () => {
    const text = makeTable([{ sex: 'f' }, { arm: 'b' }]).replace(',followup_mean,', ',post,');
    const { status, stderr } = run('check', file('names.csv', text));
    expect(status).toBe(1);
    expect(stderr.split('\n').slice(0, 3)).toEqual([
      'names.csv: column `post` (43, 43): is this `followup_mean` (Mean after.)? Then rename it.',
      expect.stringMatching(
        /^names\.csv: \d problems would go with that \(--all lists all as it stands\); these stay:$/u,
      ),
      'names.csv: line 2, `sex`: expected one of female, male, mixed, received “f”.',
    ]);
  });

  it('that it can do without is warned of', () => {
    const text = makeTable([{}]).replace(',weeks,', ',duration,');
    expect(run('check', file('optional.csv', text))).toMatchObject({
      status: 0,
      stdout: expect.stringMatching(
        /^warning: optional\.csv: column `duration`: is this `weeks` \(Length of the training up to [^)]*\)\? Then rename it\./u,
      ),
    });
  });
});

describe('many problems of one kind', () => {
  it('are one line with a count, and with --all a line each', () => {
    const path = file('many.csv', makeTable(Array.from({ length: 40 }, (_, i) => ({ arm: `a${i}`, year: '' }))));
    const lines = (...options: string[]) =>
      run('check', path, ...options)
        .stderr.trimEnd()
        .split('\n');
    expect(lines()).toContain('many.csv: 40 lines (2, 3, 4, …), `year`: expected a value, received nothing.');
    expect(
      lines('--all').filter((line) => /line \d+, `year`: expected a value, received nothing\.$/u.test(line)),
    ).toHaveLength(40);
  });
});
