/** Problems as a file for a spreadsheet: complete, in order, and harmless whatever the table held. */
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { explainColumns, explainColumnsAsCsv } from '../../src/evidence/dictionary.ts';
import { ARM_COLUMNS, STUDY_COLUMNS } from '../../src/evidence/schema.ts';
import { readArms } from '../../src/evidence/table.ts';
import { problemsToCsv } from '../../src/evidence/writeProblems.ts';
import { makeTable } from '../support/tables.ts';
import { second, WRONG_FILES } from './wrongFiles.ts';

/** Lines of the file as objects. */
const linesOf = (csv: string) => Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true }).data;

describe('the problems of a table', () => {
  it('are one line each with place, value, expectation and remedy, then the warnings', () => {
    const { problems, warnings } = readArms(
      makeTable([
        { reserve_reps: '3-1', attempted_failure: '' },
        { arm: 'b', n: '1' },
        { arm: 'c', baseline_mean: '4', followup_mean: '5', change_mean: '3' },
      ]),
      'wrong.csv',
    );
    expect(linesOf(problemsToCsv(problems, warnings))).toEqual([
      {
        what: 'problem',
        line: '2',
        column: 'reserve_reps',
        value: '“3-1”',
        expected: 'a number from 0 to 30, or a range such as 8-12',
        remedy: 'Write the smaller number first.',
      },
      {
        what: 'problem',
        line: '3',
        column: 'n',
        value: '“1”',
        expected: 'a whole number from 2 to 100000',
        remedy: '',
      },
      {
        what: 'warning',
        line: '4',
        column: 'change_mean',
        value: '“3”',
        expected: 'a change of 1, the mean after minus the mean before',
        remedy: 'Means are used before the mean change; correct one of the three, or say in the note why they differ.',
      },
    ]);
  });

  it('are the header alone where there are none', () => {
    expect(problemsToCsv([])).toBe('what,line,column,value,expected,remedy\n');
  });

  it('keep a bound readable and write out what would be a tag, a formula or unseen', () => {
    const value = (text: string) => linesOf(problemsToCsv(readArms(second({ note: text }), 'w.csv').problems))[0].value;
    expect(linesOf(problemsToCsv(readArms(second({ baseline_sd: '<0.05' }), 'w.csv').problems))[0].value).toBe(
      '“<0.05”',
    );
    expect(value('<img src=x>')).toBe('“\\u003cimg src=x>”');
    expect(value('=1+1')).toBe('“=1+1”');
    expect(value('a;=1+1')).toBe('“a;\\u003d1+1”');
    expect(value('a\u202eb')).toBe('“a\\u202eb”');
    expect(value('x'.repeat(600))).toBe(`“${'x'.repeat(60)}… (600 characters)”`);
  });

  it.each(WRONG_FILES)('with $kind are told without formula, markup or unseen characters', ({ text }) => {
    const { problems, warnings } = readArms(text, 'wrong.csv');
    const csv = problemsToCsv(problems, warnings);
    const lines = linesOf(csv);
    expect(lines).toHaveLength(problems.length + warnings.length);
    for (const cell of lines.flatMap((line) => Object.values(line))) expect(cell).not.toMatch(/(?:^|;)[=+\-@]/u);
    expect(csv).not.toMatch(/<[a-z/!?]/iu);
    expect(csv.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
  });
});

describe('the explanation of the columns', () => {
  it('has every column of the template in its order, each with meaning, kind and example', () => {
    expect(explainColumns().map(({ name }) => name)).toEqual(Object.keys(ARM_COLUMNS));
    expect(explainColumns(STUDY_COLUMNS).map(({ name }) => name)).toEqual(Object.keys(STUDY_COLUMNS));
    expect(explainColumns().find(({ name }) => name === 'load_pct_1rm')).toEqual({
      name: 'load_pct_1rm',
      group: 'training',
      required: false,
      cell: 'a number above 0 and up to 100, or a range such as 8-12 (% of 1RM)',
      meaning:
        'Mean load in per cent of one-repetition maximum, or the range printed. Empty: estimated from `load_rm` where that is given, else the row serves no analysis by load.',
      example: '75',
    });
  });

  it('as a file has a line a column and nothing that a spreadsheet would calculate', () => {
    const lines = linesOf(explainColumnsAsCsv());
    expect(lines.map(({ column }) => column)).toEqual(Object.keys(ARM_COLUMNS));
    expect(lines.filter(({ required }) => required === 'yes').length).toBeGreaterThan(5);
    for (const cell of lines.flatMap((line) => Object.values(line))) {
      expect(cell).not.toBe('');
      expect(cell).not.toMatch(/(?:^|;)[=+\-@]/u);
    }
  });
});
