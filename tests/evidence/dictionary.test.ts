/** The data dictionary is what the schema says now, and the shipped tables are valid. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { DESCRIBED_ARM_COLUMNS } from '../../src/evidence/columnMeanings.ts';
import { makePackage, writeDictionary } from '../../src/evidence/dictionary.ts';
import { STUDY_COLUMNS } from '../../src/evidence/schema.ts';
import { readArms, readStudies } from '../../src/evidence/table.ts';

const read = (name: string) => readFileSync(new URL(`../../data/${name}`, import.meta.url), 'utf8');

it('data/README.md is fresh (else: npm run dictionary)', () => {
  expect(read('README.md')).toBe(writeDictionary());
});

it('data/datapackage.json is fresh (else: npm run dictionary)', () => {
  expect(JSON.parse(read('datapackage.json'))).toEqual(makePackage());
});

it('every column has an example that its own schema accepts', () => {
  const columns = [...Object.entries(DESCRIBED_ARM_COLUMNS), ...Object.entries(STUDY_COLUMNS)];
  expect(columns.length).toBeGreaterThan(50);
  for (const [name, { cell, example }] of columns) expect(cell.safeParse(example).success, name).toBe(true);
});

it('the shipped tables have no problem, and every study of one stands in the other', () => {
  const arms = readArms(read('arms.csv'), 'arms.csv');
  const studies = readStudies(read('studies.csv'), 'studies.csv');
  expect([...arms.problems, ...studies.problems, ...arms.warnings, ...studies.warnings]).toEqual([]);
  const names = (rows: readonly { study: string }[]) => [...new Set(rows.map(({ study }) => study))].sort();
  expect(names(arms.arms)).toEqual(names(studies.studies));
});
