/**
 * The published trials as coded: valid, with every printed number in its place, and described as they are. The numbers
 * of `PRINTED` were added up from the curator's own list of what the papers print, before it was coded, by another
 * program (Python's decimal arithmetic): a cell that is lost, doubled, moved to another column or mistyped shows here.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isDemonstration } from '../../src/evidence/demonstration.ts';
import { countReading } from '../../src/evidence/reading.ts';
import type { Arm, ArmColumn } from '../../src/evidence/schema.ts';
import { compareStudyLines } from '../../src/evidence/studyLines.ts';
import { readArms, readStudies } from '../../src/evidence/table.ts';
import { OUTCOMES } from '../../src/evidence/vocabulary.ts';

const read = (name: string) => readFileSync(`data/published/${name}`, 'utf8');
const readme = read('README.md');
const { arms, problems, warnings } = readArms(read('arms.csv'), 'arms.csv');
const studies = readStudies(read('studies.csv'), 'studies.csv');

/** Rows that print it, and the sum of what they print; a range counts by its middle, a bound by itself. */
const PRINTED: readonly (readonly [column: ArmColumn, rows: number, sum: number])[] = [
  ['n', 162, 2216],
  ['age_mean_years', 54, 1641.9],
  ['load_pct_1rm', 123, 7525.6],
  ['load_rm', 41, 574.5],
  ['reps_per_set', 111, 1305.2],
  ['sets', 140, 581],
  ['sessions_per_week', 156, 387],
  ['weeks', 216, 2013],
  ['velocity_loss_pct', 5, 80],
  ['hours_after', 24, 360.55],
  ['baseline_mean', 14, 1340.99],
  ['baseline_sd', 14, 396.89],
  ['followup_mean', 14, 1616.49],
  ['followup_sd', 14, 438.6],
  ['change_mean', 31, 162.183],
  ['change_sd', 19, 60.65],
  ['change_se', 2, 2],
  ['change_ci_low', 6, 11.334],
  ['change_ci_high', 6, 38.29],
  ['ci_level', 4, 380],
  ['percent_change', 201, 2302.92],
  ['percent_change_sd', 43, 427.6],
  ['percent_change_se', 11, 29.4],
  ['effect', 21, 15.69],
  // 9 exact ones and 106 bounds.
  ['change_p', 9 + 106, 1.23 + 3.4359],
];
/** Of rows whose reserve is given, or is repetitions possible minus repetitions done. */
const RESERVE = { rows: 130, sum: 69 } as const;

/** The number of a cell that is filled in the file; null where it is empty there, though it may be known from others. */
const printed = (arm: Arm, column: ArmColumn) =>
  arm.derived?.some((cell) => cell.column === column) ? null : (arm[column] as number | null);

describe('the table of published trials', () => {
  it('has no problem, and the three warnings that its page explains', () => {
    expect([...problems, ...studies.problems, ...studies.warnings]).toEqual([]);
    const lines = warnings.map(({ line }) => line);
    expect(lines).toHaveLength(3);
    for (const line of lines) expect(readme).toContain(`line ${line}, `);
  });

  it('has a line for every study and no other', () => {
    const found = compareStudyLines({ rows: arms, file: 'arms.csv' }, { rows: studies.studies, file: 'studies.csv' });
    expect(found).toEqual({ withoutLine: [], withoutArms: [] });
  });

  it('holds what its page counts', () => {
    const count = (values: readonly string[]) => new Set(values).size;
    const of = OUTCOMES.map((outcome) => arms.filter((arm) => arm.outcome === outcome).length);
    expect(readme).toContain(
      `Real results of ${count(arms.map(({ study }) => study))} published trials of resistance training: ${arms.length} rows of ${count(arms.map(({ study, arm }) => JSON.stringify([study, arm])))} arms, ${of[0]} of growth, ${of[1]} of strength and ${of[2]} of fatigue.`,
    );
    expect(readme).toContain(`**People of the arm** are printed in ${PRINTED[0][1]} rows.`);
    const reserves = arms.map(({ reserve_reps: reserve }) => reserve).filter((reserve) => reserve !== null);
    const above = reserves.filter((reserve) => reserve > 0).length;
    expect(readme).toContain(`${reserves.length} rows have one; all but ${above} of these are at 0.`);
  });

  it('is real, and was read from abstracts throughout', () => {
    expect(isDemonstration(arms)).toBe(false);
    const size = { rows: arms.length, studies: studies.studies.length };
    expect(countReading(arms)).toEqual({ table: size, notInFull: size, secondHand: 0 });
  });

  it('judges nothing that abstracts do not say', () => {
    expect(arms.filter(({ concerns, joints }) => concerns !== null || joints !== null)).toEqual([]);
  });
});

describe('every number that the papers print', () => {
  it.each(PRINTED)('stands in %s: %i rows with the sum of %f', (column, rows, sum) => {
    const values = arms.map((arm) => printed(arm, column)).filter((value) => value !== null);
    expect(values).toHaveLength(rows);
    // Sums of decimals in binary: far below the last digit printed.
    expect(values.reduce((total, value) => total + value, 0)).toBeCloseTo(sum, 9);
  });

  it('stands for a reserve, given or by repetitions', () => {
    const reserves = arms.map(({ reserve_reps: reserve }) => reserve).filter((reserve) => reserve !== null);
    expect(reserves).toHaveLength(RESERVE.rows);
    expect(reserves.reduce((total, value) => total + value, 0)).toBeCloseTo(RESERVE.sum, 9);
  });

  it('stands in one of these columns, so that none is there that was not added up', () => {
    const known = new Set<string>(PRINTED.map(([column]) => column));
    // Of the study and the arm, and of totals and repetitions that stand in the place of n and reserve.
    for (const name of ['line', 'year', 'n_total', 'n_total_arms', 'reps_possible', 'reserve_reps']) known.add(name);
    const others = arms.flatMap((arm) =>
      Object.entries(arm).filter(([name, value]) => typeof value === 'number' && !known.has(name)),
    );
    const derived = arms.flatMap(({ derived = [] }) => derived.map(({ column }) => column));
    expect(new Set(others.map(([name]) => name))).toEqual(new Set(derived.filter((name) => !known.has(name))));
  });

  it('is of the people behind the row, or of a total over arms that says over how many', () => {
    const both = arms.filter((arm) => printed(arm, 'n') !== null && arm.n_total !== null);
    const neither = arms.filter(({ n, n_total: total }) => n === null && total === null);
    expect(both).toEqual([]);
    expect(new Set(neither.map(({ study }) => study))).toEqual(
      new Set(['Mitchell 2012', 'Barcelos 2015', 'Stragier 2019']),
    );
  });
});
