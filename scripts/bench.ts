/** Times the engine and prints medians and growth factors; `npm run bench -- --help` says how. */
import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { readExercises } from '../src/evidence/readExercises.ts';
import type { Arm } from '../src/evidence/schema.ts';
import { readArms } from '../src/evidence/table.ts';
import { analyse } from '../src/model/analyse.ts';
import { sweepChoices } from '../src/model/checks/sweep.ts';
import { makeCurve } from '../src/model/curve.ts';
import { analyseFatigue } from '../src/model/fatigue.ts';
import { analyseForPractice, analyseInFull } from '../src/model/full.ts';
import { fitModel } from '../src/model/mixed.ts';
import { defaultSettings } from '../src/model/settings.ts';
import { simulateTable } from '../src/model/simulation.ts';
import { makeRandom } from '../src/numerics/random.ts';
import { reportProgramme } from '../src/practice/programme/report.ts';
import { type Measurement, reportBench } from './measure/benchReport.ts';
import { TRUTH } from './measure/calibration.ts';
import { longProgramme } from './measure/longProgramme.ts';
import { runScript } from './terminal/call.ts';

function time(name: string, runs: number, bound: number | null, work: () => unknown): Measurement {
  // Two runs let the engine compile what it will repeat.
  for (let i = 0; i < Math.max(2, runs / 4); i++) work();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return { name, median: times[Math.floor(runs / 2)], bound };
}

/** For work too long to repeat. */
function timeOnce(name: string, bound: number, work: () => unknown): Measurement {
  const start = performance.now();
  work();
  return { name, median: performance.now() - start, bound };
}

/** A simulated table cut to exactly `rows` rows over at most `studies` studies. */
function tableOf(rows: number, studies: number) {
  const { observations, reserves } = simulateTable(TRUTH, studies * 2, makeRandom(rows));
  const named = observations.map((one, i) => ({
    ...one,
    study: `S${String(i % studies).padStart(5, '0')}`,
    cohort: `${one.study}${one.cohort}`,
  }));
  return { observations: named.slice(0, rows), reserves: reserves.slice(0, rows) };
}

function fitOf(rows: number, studies: number) {
  const { observations, reserves } = tableOf(rows, studies);
  if (observations.length !== rows) throw new Error(`expected ${rows} rows, simulated ${observations.length}`);
  // The design of the site's own curve.
  const { at, terms } = makeCurve(defaultSettings.curve, reserves);
  const rowsOfDesign = reserves.map(at);
  const columns = terms.map((_, j) => rowsOfDesign.map((row) => row[j]));
  return () => fitModel(observations, columns, { rho: 0.5, weighting: 'mixed' });
}

/** The shipped table and so many rows of growth more, all of them of one study. */
function withLargeStudy(text: string, rows: number): readonly Arm[] {
  const { data, meta } = Papa.parse<Record<string, string>>(text.trim(), { header: true });
  const growth = data.filter(({ outcome }) => outcome === 'growth');
  const large = Array.from({ length: rows }, (_, i) => {
    const row = growth[i % growth.length];
    const round = Math.floor(i / growth.length);
    const cohort = row.cohort && `${row.study} ${row.cohort} ${round}`;
    return { ...row, study: 'Large 2026', year: '2026', arm: `${row.study} ${row.arm} ${round}`, cohort };
  });
  const { arms } = readArms(Papa.unparse({ fields: meta.fields ?? [], data: [...data, ...large] }), 'large.csv');
  if (arms.length !== data.length + rows) throw new Error(`expected ${data.length + rows} rows, read ${arms.length}`);
  return arms;
}

/** A table repeated under new study names, to so many rows. */
function enlarge(text: string, rows: number): string {
  const [header, ...lines] = text.trim().split('\n');
  const copies = Array.from(
    { length: rows },
    (_, i) => `Copy ${Math.floor(i / lines.length)} ${lines[i % lines.length]}`,
  );
  return [header, ...copies].join('\n');
}

function sweep(arms: readonly Arm[]): void {
  for (const _ of sweepChoices(arms, defaultSettings));
}

const HELP = `usage: npm run bench

Times the engine and prints medians. Bounds are those of the project's design for one core. Figures on a
busy machine wander by half, so compare ratios of one run. Takes some minutes.

Exit code 0: every figure is within its bound. 1: some are above, and marked. 2: wrong call.`;

runScript({ help: HELP }, () => {
  const text = readFileSync(new URL('../data/arms.csv', import.meta.url), 'utf8');
  const { arms } = readArms(text, 'arms.csv');

  /** About 25 MB. */
  const large = enlarge(text, 100_000);
  /** 1,000 studies: the shipped ones again and again, as many as the rows of that many copies are. */
  const manyArms = readArms(
    enlarge(text, Math.round((1000 / new Set(arms.map(({ study }) => study)).size) * arms.length)),
    'many.csv',
  ).arms;

  const exercises = readExercises(
    readFileSync(new URL('../data/exercises.csv', import.meta.url), 'utf8'),
    'exercises.csv',
  ).rows;
  const practice = analyseForPractice(arms, defaultSettings);
  const programme = longProgramme(exercises, 500, 1);
  const block = longProgramme(exercises, 480, 12);
  const calendar = { status: 'trained', sessionHour: 19, event: { day: 27, hour: 10 } } as const;
  /** A fresh copy of the analysis each time, so that nothing is remembered from the run before. */
  const check = (first: string) => () =>
    reportProgramme(structuredClone(practice), { first, second: null, exercises, calendar });

  const small = time('one fit, 200 rows in 36 studies', 200, 3, fitOf(200, 36));
  const middle = time('one fit, 2,000 rows in 400 studies', 20, null, fitOf(2000, 400));
  const big = time('one fit, 20,000 rows in 4,000 studies', 5, 400, fitOf(20_000, 4000));
  const largeRows = { few: 500, many: 5000 } as const;
  const [few, many] = [largeRows.few, largeRows.many].map((rows) => {
    const table = withLargeStudy(text, rows);
    const bound = rows === largeRows.many ? 2000 : null;
    return time(`analysis with one study of ${rows} rows`, 4, bound, () => analyse(table, defaultSettings));
  });
  const analysis = time('analysis of the shipped table', 20, 100, () => analyse(arms, defaultSettings));
  const programmeCheck = time('check of a programme of 500 lines', 10, 200, check(programme));
  const blockCheck = time('check of 12 weeks of 40 lines', 10, 200, check(block));
  const measurements = [
    few,
    many,
    small,
    middle,
    big,
    analysis,
    time('fatigue of the shipped table', 20, 150, () => analyseFatigue(arms, defaultSettings)),
    time('sweep of 1,440 combinations', 2, 3000, () => sweep(arms)),
    programmeCheck,
    blockCheck,
    time('read and validate 100,000 rows', 3, 2000, () => readArms(large, 'large.csv')),
    // A build of 1,000 studies may take 120 s, of which bundling and 1,000 pages take some 20.
    timeOnce('all that a build computes, 1,000 studies', 100_000, () => {
      analyseInFull(manyArms, defaultSettings);
      sweep(manyArms);
    }),
  ];
  const { lines, isWithin } = reportBench(measurements, [
    { name: 'time per row, 2,000 to 20,000 rows', value: big.median / 10 / middle.median, bound: 1.3 },
    {
      name: 'time per row of one study, 500 to 5,000 rows',
      value: (many.median / few.median) * (largeRows.few / largeRows.many),
      bound: 1.5,
    },
    // In analyses of the shipped table, of which one takes some 15 ms on a quiet machine: half the bound of 200 ms.
    { name: 'check of 500 lines in analyses', value: programmeCheck.median / analysis.median, bound: 6 },
    { name: 'check of 12 weeks in those of 500 lines', value: blockCheck.median / programmeCheck.median, bound: 2 },
  ]);
  for (const line of lines) console.log(line);
  if (!isWithin) process.exitCode = 1;
});
