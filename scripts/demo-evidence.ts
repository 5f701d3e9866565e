/**
 * Writes the demonstration evidence, `data/arms.csv` and `data/studies.csv`, and beside it the truth that it
 * was drawn from, `data/demonstration-truth.json`; `npm run demo -- --help` says how.
 *
 * The data are INVENTED. 48 studies named after birds and years are drawn from a known truth
 * (demo/truth.ts): growth 7.5 % at reserve 0, of which light loads lose a tenth with 1 repetition in
 * reserve and heavy ones with about 3, along curves that no shape of the engine is; strength moved by load
 * and not by reserve; fatigue larger nearer failure and down to 2 % after 48 h untrained and 24 h trained;
 * between-study SD 2 points, within-study 0.6.
 *
 * Seeded: the same bytes on every run. The seed is the first whole number above 0 and stayed so. The plan was
 * changed once after a first draw, whose interval for heavy loads missed the truth: more people, less spread between
 * rows, more arms beyond failure and of fatigue. Methods says so. An estimate may miss the truth, as 1 in 20 does.
 */
import { existsSync, writeFileSync } from 'node:fs';
import { randomLcg, randomNormal, randomUniform } from 'd3-random';
import Papa from 'papaparse';
import { DEMONSTRATION_NOTE } from '../src/evidence/demonstration.ts';
import { meanRepetitions } from '../src/evidence/repetitions.ts';
import { ARM_COLUMNS, type ArmColumn, STUDY_COLUMNS } from '../src/evidence/schema.ts';
import { type Dice, drawMeasured, SCALES, type Scale } from './demo/measures.ts';
import { findOwnLine } from './demo/ownRows.ts';
import { MOST_MISREPORTED, type PlannedArm, type PlannedStudy, planStudies } from './demo/plan.ts';
import { report } from './demo/statistics.ts';
import {
  BEYOND_FAILURE_GAIN,
  FATIGUE_SPREAD,
  GROWTH_SPREAD,
  SHARED_ERROR,
  STRENGTH_SPREAD,
  trueDrop,
  trueGrowth,
  trueStrength,
} from './demo/truth.ts';
import { stateTruth } from './demo/truthFile.ts';
import { CallError, readText, runScript } from './terminal/call.ts';

export const DEMO_SEED = 1;

type Cells = Record<string, string | number>;

/**
 * The two tables as CSV text, and the truth behind them as JSON.
 *
 * @param seed a whole number, or a number in [0, 1)
 */
export function generateDemo(seed: number): {
  readonly arms: string;
  readonly studies: string;
  readonly truth: string;
} {
  const source = randomLcg(seed);
  const normal = randomNormal.source(source)(0, 1);
  const uniform = randomUniform.source(source);
  const dice: Dice = { normal, between: (low, high) => uniform(low, high)() };
  const plan = planStudies();
  const rows = plan.flatMap((study) => drawStudy(study, dice));
  // Columns for what no invented paper reports would stand empty.
  const used = Object.keys(ARM_COLUMNS).filter((name) => rows.some((row) => (row[name as ArmColumn] ?? '') !== ''));
  const arms = toCsv(used, rows);
  return {
    arms,
    truth: `${JSON.stringify(stateTruth(plan, arms), null, 2)}\n`,
    studies: toCsv(Object.keys(STUDY_COLUMNS), plan.map(makeStudy)),
  };
}

function drawStudy(study: PlannedStudy, dice: Dice): Cells[] {
  const common: Cells = {
    study: study.name,
    year: study.year,
    design: study.design,
    concerns: study.concerns,
    training_status: study.status,
    sex: study.sex,
    age_mean_years: dice.between(19, 31).toFixed(1),
    exercise: study.exercise.name,
    joints: study.exercise.joints,
    sets: 2 + Math.floor(dice.between(0, 3)),
    sessions_per_week: study.growth ? 2 + Math.floor(dice.between(0, 2)) : 1,
    weeks: study.growth ? 6 + 2 * Math.floor(dice.between(0, 4)) : '',
    failure_definition: study.definition,
    reserve_basis: study.basis,
    note: DEMONSTRATION_NOTE,
  };
  const people = 16 + Math.floor(dice.between(0, 25));
  const shift = { growth: dice.normal(), strength: dice.normal(), fatigue: dice.normal() };
  const cohortErrors = new Map<string, number>();
  return study.arms.flatMap((arm, index) => {
    const cohort = study.design === 'parallel' ? String.fromCharCode(97 + index) : 'a';
    const shared = cohortErrors.get(cohort) ?? dice.normal();
    cohortErrors.set(cohort, shared);
    const cells: Cells = { ...common, ...makeArm(arm, study, dice), cohort, n: people };
    return measureArm(study, arm, shift, shared, people, dice).map((measured) => ({ ...cells, ...measured }));
  });
}

/** The arm as a paper describes it, by the reserve that it reports: the true one, with its error unless it was prescribed. */
function makeArm({ load, reserve, beyond }: PlannedArm, study: PlannedStudy, dice: Dice): Cells {
  const sd = Number((0.3 + 0.1 * reserve).toFixed(1));
  const error = Math.max(-MOST_MISREPORTED, Math.min(MOST_MISREPORTED, sd * dice.normal()));
  const isExact = reserve === 0 || study.basis === 'prescribed';
  const reported = isExact ? reserve : Math.max(0.5, Math.min(10, Math.round(2 * (reserve + error)) / 2));
  const possible = meanRepetitions(load) ?? Number.NaN;
  const name =
    beyond === 'none'
      ? reserve === 0
        ? `${load} % to failure`
        : `${load} % with ${reported} left`
      : `${load} % with ${beyond}`;
  // Prescribed reserves come without a spread, as they often do.
  const knowsSpread = reserve > 0 && study.basis !== 'prescribed';
  return {
    arm: name,
    load_pct_1rm: load,
    reps_per_set: Math.max(1, Math.round(possible - reserve)),
    attempted_failure: reserve === 0 ? 'yes' : 'no',
    reserve_reps: reported,
    reserve_sd: knowsSpread ? sd : '',
    beyond_failure: beyond,
  };
}

function measureArm(
  study: PlannedStudy,
  arm: PlannedArm,
  shift: { growth: number; strength: number; fatigue: number },
  shared: number,
  n: number,
  dice: Dice,
): Cells[] {
  const rows: Cells[] = [];
  const measure = (cells: Cells, percent: number, scale: Scale) => {
    const error = Math.sqrt(SHARED_ERROR) * shared + Math.sqrt(1 - SHARED_ERROR) * dice.normal();
    rows.push({ ...cells, ...report(drawMeasured(percent, scale, n, error, dice), study.reporting) });
  };
  if (study.growth) {
    const gain = arm.beyond === 'none' ? 0 : BEYOND_FAILURE_GAIN[arm.beyond];
    study.exercise.muscles.slice(0, study.secondMuscle ? 2 : 1).forEach((muscle, i) => {
      const percent =
        trueGrowth(arm.load, arm.reserve) +
        gain +
        GROWTH_SPREAD.study * shift.growth +
        GROWTH_SPREAD.row * dice.normal();
      const where = { outcome: 'growth', muscle, source_place: `table ${2 + i}` };
      if (i === 0) measure({ ...where, measure: 'muscle thickness', unit: 'mm' }, percent, SCALES.thickness);
      else measure({ ...where, measure: 'cross-sectional area', unit: 'cm²' }, percent, SCALES.area);
    });
  }
  if (study.strength && arm.beyond === 'none') {
    const percent =
      trueStrength(arm.load, arm.reserve) +
      STRENGTH_SPREAD.study * shift.strength +
      STRENGTH_SPREAD.row * dice.normal();
    measure(
      { outcome: 'strength', muscle: study.exercise.muscles[0], measure: '1RM', unit: 'kg', source_place: 'table 4' },
      percent,
      SCALES.weight,
    );
  }
  for (const hours of study.hours) {
    const percent =
      -trueDrop(study.status, arm.reserve, hours) +
      FATIGUE_SPREAD.study * shift.fatigue +
      FATIGUE_SPREAD.row * dice.normal();
    measure(
      {
        outcome: 'fatigue',
        muscle: study.exercise.muscles[0],
        measure: 'jump height',
        unit: 'cm',
        hours_after: hours,
        source_place: 'figure 2',
      },
      percent,
      SCALES.jump,
    );
  }
  return rows;
}

function makeStudy({ name, year, exercise }: PlannedStudy): Cells {
  const bird = name.split(' ')[0];
  return {
    study: name,
    authors: `${bird} A, ${bird} B`,
    year,
    title: `Repetitions in reserve in the ${exercise.name}: an invented study`,
    journal: 'Demonstration Papers (invented)',
    volume: String(year - 1990),
    pages: '1–10',
    doi: '',
    note: 'invented for demonstration; no such study exists',
  };
}

/** Lines end in LF, so that a table in version control is the same bytes everywhere. */
function toCsv(columns: readonly string[], rows: readonly Cells[]): string {
  const data = rows.map((row) => columns.map((column) => row[column] ?? ''));
  return `${Papa.unparse({ fields: [...columns], data }, { newline: '\n' })}\n`;
}

const HELP = `usage: npm run demo

Writes the invented demonstration, data/arms.csv and data/studies.csv, and the truth that it was drawn from,
data/demonstration-truth.json, the same bytes on every run. A table that has a line of another origin is not overwritten: move it away first.

Exit code 0: written. 1: a table holds other lines; nothing is written. 2: wrong call.`;

if (import.meta.main) {
  runScript({ help: HELP }, () => {
    const { truth, ...texts } = generateDemo(DEMO_SEED);
    const tables = Object.entries(texts).map(([name, text]) => ({ file: `data/${name}.csv`, text }));
    for (const { file } of tables) refuseOwnLines(file);
    const files = [...tables, { file: 'data/demonstration-truth.json', text: truth }];
    for (const { file, text } of files) writeFileSync(file, text);
    console.log(`wrote ${files.map(({ file }) => file).join(', ')} (${DEMONSTRATION_NOTE})`);
  });
}

function refuseOwnLines(file: string): void {
  const line = existsSync(file) ? findOwnLine(readText(file, 'table')) : null;
  if (line !== null) {
    const message = `${file}, line ${line}: expected a note with “${DEMONSTRATION_NOTE}”, as the lines have that may be overwritten`;
    throw new CallError(`${message}. Nothing is written; move the table away first.`, 1);
  }
}
