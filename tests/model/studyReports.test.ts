/** Reports of the studies: every row once, with its weight or the reason it has none, adding up to the analysis. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { analyseInFull } from '../../src/model/full.ts';
import type { Band } from '../../src/model/result.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { reportStudies } from '../../src/model/studyReports.ts';
import { expectWithin } from '../support/closeness.ts';
import { makeArms } from '../support/tables.ts';

const { arms } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const analysis = analyseInFull(arms, settingsSchema.parse({}));
const reports = reportStudies(arms, analysis);

describe('the reports of the shipped table', () => {
  it('have every row of it once, and each is either in a fit with a weight or left out with a reason', () => {
    const rows = reports.flatMap((report) => report.rows);
    expect(rows.map(({ arm }) => arm.line).sort((a, b) => a - b)).toEqual(arms.map(({ line }) => line));
    for (const { weight, leftOut, arm } of rows) expect(weight === null, `line ${arm.line}`).toBe(leftOut !== null);
    expect(rows.filter(({ leftOut }) => leftOut === null)).toHaveLength(analysis.rows.included);
  });

  it('have weights that add up to 1 in each band, and those that the influence check gives', () => {
    const bands = reports.flatMap((report) => report.bands);
    for (const [name, { rows }] of Object.entries<Band>({ ...analysis.bands })) {
      const own = bands.filter(({ band }) => band === name);
      expectWithin(
        own.reduce((sum, { weight }) => sum + weight, 0),
        1,
        1e-12,
        `weight of ${name}`,
      );
      expect(own.reduce((sum, one) => sum + one.rows, 0)).toBe(rows);
      for (const { weight, influence } of own)
        expectWithin(weight, influence?.weight ?? Number.NaN, 1e-12, `${name} ${influence?.study}`);
    }
  });

  it('show the 95 % interval of a row, 1.959964 standard errors to each side', () => {
    const row = reports[0].rows[0];
    const { y, v } = row.effect ?? { y: Number.NaN, v: Number.NaN };
    expectWithin(row.ciLow ?? Number.NaN, y - 1.959964 * Math.sqrt(v), 1e-7, 'low');
    expectWithin(row.ciHigh ?? Number.NaN, y + 1.959964 * Math.sqrt(v), 1e-7, 'high');
  });

  it('stand by year, and do not depend on the order of the rows', () => {
    const years = reports.map(({ year }) => year);
    expect(years).toEqual([...years].sort());
    const again = reportStudies([...arms].reverse(), analysis);
    expect(again.map(({ study, people }) => [study, people])).toEqual(
      reports.map(({ study, people }) => [study, people]),
    );
  });
});

describe('the arms of a study', () => {
  it('are its arms and exercises once each, by the row with most people', () => {
    const table = makeArms([
      { n: '11', muscle: 'quadriceps' },
      { n: '12', muscle: 'gluteus maximus' },
      { exercise: 'squat' },
      { arm: 'short of failure', attempted_failure: 'no', reserve_reps: '2' },
    ]);
    const [{ arms: own }] = reportStudies(table, analyseInFull(table, settingsSchema.parse({})));
    expect(own.map(({ arm, exercise, n }) => [arm, exercise, n])).toEqual([
      ['to failure', 'leg press', 12],
      ['to failure', 'squat', 12],
      ['short of failure', 'leg press', 12],
    ]);
  });
});

describe('a row of a band that could not be fitted', () => {
  it('is left out with the reason of that band', () => {
    const table = makeArms([{}, { study: 'Wren 2001', year: '2001', load_pct_1rm: '30' }]);
    const made = reportStudies(table, analyseInFull(table, settingsSchema.parse({})));
    expect(made.flatMap(({ rows }) => rows.map(({ leftOut }) => leftOut))).toEqual([
      expect.stringMatching(/^light loads could not be fitted: every row has reserve 0/u),
      expect.stringMatching(/^heavy loads could not be fitted: /u),
    ]);
    expect(made.map(({ bands }) => bands)).toEqual([[], []]);
  });
});
