/** Words for the columns: every one has its own, and messages of the table's rules are told in them. */
import { describe, expect, it } from 'vitest';
import { nameChoice } from '../../src/evidence/choiceWords.ts';
import type { Column } from '../../src/evidence/column.ts';
import { COLUMN_WORDS, nameColumns } from '../../src/evidence/columnWords.ts';
import { formatExpectation } from '../../src/evidence/problem.ts';
import { ARM_COLUMNS, type ArmColumn } from '../../src/evidence/schema.ts';
import { readArms } from '../../src/evidence/table.ts';
import { makeTable } from '../support/tables.ts';

const NAMES = Object.keys(ARM_COLUMNS) as ArmColumn[];

describe('words of columns', () => {
  it('differ from each other, and none is a column’s name', () => {
    const labels = NAMES.map((name) => COLUMN_WORDS[name].label);
    expect(new Set(labels).size).toBe(NAMES.length);
    for (const label of labels) expect(label).toMatch(/^[A-Ztp][^_]*$/u);
    for (const name of NAMES) expect(COLUMN_WORDS[name].help, name).toMatch(/\.$/u);
  });

  it('of choices differ inside a column', () => {
    for (const name of NAMES) {
      const { field }: Column<unknown> = ARM_COLUMNS[name];
      const words = Array.isArray(field.constraints.enum) ? field.constraints.enum : [];
      expect(new Set(words.map((word) => nameChoice(name, word))).size).toBe(words.length);
    }
    expect(nameChoice('design', 'within-person')).toBe('limbs of the same people');
    expect([nameChoice('design', 'other'), nameChoice('study', 'constructor')]).toEqual(['other', 'constructor']);
  });

  it('stand in messages in the place of names, and other quoted words stay', () => {
    const { problems } = readArms(makeTable([{ reserve_reps: '2' }]), '');
    expect(nameColumns(formatExpectation(problems[0]))).toBe(
      'expected 0, since “Tried until one failed” is yes, received “2”. A set to failure has nothing in reserve; correct one of the two.',
    );
    expect(nameColumns('`shoe_size` and `constructor`')).toBe('`shoe_size` and `constructor`');
  });
});
