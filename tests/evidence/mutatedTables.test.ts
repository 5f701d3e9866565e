/**
 * 10,000 corrupted tables: up to four rows of six studies of the demonstration, changed in every way of support/mutations.ts.
 *
 * Proven of each: it is read as a slow reading that shares no code with the fast one says (rows with all their cells,
 * or refused); a refusal names a line that was hit; what is accepted has the analysis of its meaning; no text that was
 * accepted, no message and no file of problems holds markup, a formula or unseen characters; nothing throws or hangs.
 */
import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { formatProblem, type Problem } from '../../src/evidence/problem.ts';
import { ARM_COLUMNS, type Arm, type ArmColumn } from '../../src/evidence/schema.ts';
import { readArms } from '../../src/evidence/table.ts';
import { problemsToCsv } from '../../src/evidence/writeProblems.ts';
import { writeArms } from '../../src/evidence/writeTable.ts';
import { analyse } from '../../src/model/analyse.ts';
import { type BandFit, fitEffects, slopeOf, targetOf } from '../../src/model/bandFit.ts';
import { groupByBand } from '../../src/model/loads.ts';
import { selectRows } from '../../src/model/selection.ts';
import { defaultSettings } from '../../src/model/settings.ts';
import { SCAN_STEPS } from '../../src/model/target.ts';
import { makeRandom } from '../../src/numerics/random.ts';
import { type Mutation, mutate } from '../support/mutations.ts';
import { readMeaning } from '../support/slowReading.ts';
import { timeRatio } from '../support/timeRatio.ts';

const TABLES = 10_000;
/** Every this many accepted tables the whole analysis is made, which takes five times as long as the answer. */
const WHOLE_ANALYSIS_EVERY = 60;
/** How many times as long as the table that was corrupted one may take to read and answer: a text that hangs takes more. */
const LONGEST = 20;
/** The slowest tables, which are timed again: what came between them the first time is not theirs. */
const TIMED = 5;

/** Small studies: three with light and four with heavy loads, one of fatigue, one that gives ready-made effects. */
const NAMES = ['Dipper 2023', 'Dunlin 2011', 'Egret 2005', 'Gannet 1998', 'Kestrel 2002', 'Wagtail 2007'];
/** Rows of a study, which stand together; more of them differ from these in numbers alone, and slow every table. */
const MOST_ROWS = 4;
const shipped = readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8');
/** Some notes need quotation marks, so that these are mutated too. */
const base = readArms(shipped, 'arms.csv')
  .arms.filter(({ study }) => NAMES.includes(study))
  .filter(({ study }, i, rows) => i - rows.findIndex((row) => row.study === study) < MOST_ROWS)
  .map((arm, i): Arm => ({ ...arm, line: i + 2, note: i % 5 === 0 ? `${arm.note}, "read twice"` : arm.note }));
const table = Papa.parse<string[]>(writeArms(base).trimEnd()).data;
/** As the slow reading has it: what is filled from other cells is tested in deriveDesign.test.ts. */
const asPrinted = ({ derived = [], ...arm }: Arm) => ({
  ...arm,
  ...Object.fromEntries(derived.map(({ column }) => [column, null])),
});
const asJson = (arms: readonly Arm[]) => arms.map((arm) => JSON.stringify(asPrinted(arm)));
const baseRows = asJson(base);

/** Columns that no fit reads. */
const SAID_ONLY: readonly ArmColumn[] = ['note', 'source_place'];

/** Slope and target of both bands, as the site's first sentence needs them. */
function answer(arms: readonly Arm[]): string {
  const { effects, excluded } = selectRows(arms, defaultSettings);
  const settings = { ...defaultSettings, answerOnly: true };
  const bands = groupByBand(effects, defaultSettings.split).map(([name, rows]) => {
    const band: BandFit = fitEffects(rows, settings);
    return [name, slopeOf(band, 0.95), targetOf(band, defaultSettings, SCAN_STEPS.coarse), band.outcome.failure];
  });
  return JSON.stringify([bands, excluded]);
}

const readAndAnswer = (text: string) => () => answer(readArms(text, 'mutated.csv').arms);

/** What is told of a row by its text alone; tables that differ in a few rows share the rest. */
interface Told {
  /** The row as JSON without what no fit reads: tables that agree in these have the same answer. */
  readonly fitted: string;
  /** Each text of the row that could calculate, be taken for markup or hide something. */
  readonly attacks: readonly string[];
}

const ATTACK = /<[a-z/!?]|(?:^|;)[=+\-@]|(?![\u200c\u200d])[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/iu;

const told = new Map<string, Told>();

/** @param row the row as JSON */
function tellOf(row: string): Told {
  const known = told.get(row) ?? lookAt(JSON.parse(row));
  told.set(row, known);
  return known;
}

function lookAt(arm: Arm): Told {
  return {
    fitted: JSON.stringify({ ...arm, ...Object.fromEntries(SAID_ONLY.map((name) => [name, null])) }),
    attacks: (Object.keys(ARM_COLUMNS) as ArmColumn[]).flatMap((name) => {
      const value = arm[name];
      return typeof value === 'string' && ATTACK.test(value) ? [value] : [];
    }),
  };
}

const fitted = (rows: readonly string[]) => rows.map((row) => tellOf(row).fitted).join();

/** The slow reading gives rows that it has read already again, as the same object. */
const meant = new WeakMap<Arm, string>();

function jsonOfMeant(arm: Arm): string {
  const json = meant.get(arm) ?? JSON.stringify(arm);
  meant.set(arm, json);
  return json;
}

/** What rows must be alone and together, in the fewest words. */
function contradictionsIn(arms: readonly Arm[]): string[] {
  const studies = new Map<string, string>();
  const rows = new Set<string>();
  return arms.flatMap((arm) => {
    const facts = JSON.stringify([arm.year, arm.design, arm.concerns, arm.training_status]);
    const earlier = studies.get(arm.study) ?? facts;
    studies.set(arm.study, earlier);
    const row = JSON.stringify([
      arm.study,
      arm.arm,
      arm.exercise,
      arm.muscle,
      arm.outcome,
      arm.measure,
      arm.unit,
      arm.hours_after,
    ]);
    const isDoubled = rows.has(row);
    rows.add(row);
    const broken = [
      facts !== earlier && 'facts of a study',
      isDoubled && 'a row twice',
      (arm.outcome === 'fatigue') !== (arm.hours_after !== null) && 'hours',
      arm.attempted_failure && (arm.reserve_reps ?? 0) > 0 && 'reserve at failure',
      (arm.change_ci_low === null) !== (arm.change_ci_high === null) && 'half an interval',
      (arm.effect === null) !== (arm.effect_variance === null) && 'an effect without variance',
      [arm.effect, arm.percent_change, arm.change_mean, arm.change_median].every((value) => value === null) &&
        ((arm.baseline_mean ?? arm.baseline_median) === null || (arm.followup_mean ?? arm.followup_median) === null) &&
        'no change',
    ];
    return broken.filter((one) => one !== false && one !== null);
  });
}

/** Lines that a message names: its own and those it quotes. */
function linesOf(problem: Problem): number[] {
  return [...formatProblem(problem).matchAll(/\bline (\d+)/gu)].map(([, line]) => Number(line));
}

function headerOf(text: string): string[] {
  const [first = []] = Papa.parse<string[]>(text.replace(/^\ufeff/u, ''), { preview: 1 }).data;
  return first.map((name) => name.trim());
}

/** Columns that the header named at another place before; to name one of them is to name the header. */
function columnsHit({ lines, text }: Mutation): readonly string[] {
  if (!lines.includes(1)) return [];
  const now = headerOf(text);
  return table[0].flatMap((name, i) => (now[i] === name ? [] : [name, now[i] ?? '']));
}

function namesWhatWasHit(problem: Problem, mutation: Mutation): boolean {
  const { line, column, expected } = problem;
  if (line === null || linesOf(problem).some((one) => mutation.lines.includes(one))) return true;
  // “`change_mean`” and, of rows that disagree, “of study X” and “of arm X”.
  const named = [column, ...[...expected.matchAll(/`(\w+)`|\bof (study|arm)\b/gu)].flatMap(([, a, b]) => [a, b])];
  return columnsHit(mutation).some((hit) => named.includes(hit));
}

describe(`${TABLES.toLocaleString('en')} corrupted tables`, () => {
  const random = makeRandom(20_261_125);
  const kinds = new Map<string, { accepted: number; refused: number }>();
  const failures: string[] = [];
  const answers = new Map<string, string>();
  let whole = 0;
  const slowest: { readonly text: string; readonly took: number }[] = [];

  const fail = (index: number, mutation: Mutation, what: string, seen: unknown) => {
    const shown = JSON.stringify(seen) ?? String(seen);
    failures.push(
      `table ${index}, ${mutation.kind}, lines ${mutation.lines.join(' and ')}: ${what}: ${shown.slice(0, 500)}`,
    );
  };

  function checkAccepted(index: number, mutation: Mutation, arms: readonly Arm[], warnings: readonly Problem[]): void {
    const meaning = readMeaning(mutation.text);
    if ('wrong' in meaning) {
      fail(index, mutation, 'accepted, but the slow reading refuses it', meaning.wrong);
      return;
    }
    const rows = asJson(arms);
    const place = rows.findIndex((row, i) => row !== (meaning.arms[i] && jsonOfMeant(meaning.arms[i])));
    if (place >= 0 || rows.length !== meaning.arms.length) {
      fail(index, mutation, 'read as other rows', [rows.length, rows[place], meaning.arms.length, meaning.arms[place]]);
      return;
    }
    const attacks = [...rows.flatMap((row) => tellOf(row).attacks), ...contradictionsIn(arms)];
    if (attacks.length > 0) fail(index, mutation, 'let through', attacks);
    if (mutation.meaning === 'same' && rows.join() !== baseRows.join())
      fail(index, mutation, 'not the same rows', rows);
    if (mutation.meaning === 'any' && mutation.lines.includes(1)) {
      const lost = headerOf(mutation.text).find((cell) => !Object.hasOwn(ARM_COLUMNS, cell));
      if (lost !== undefined && !warnings.some(({ line }) => line === 1))
        fail(index, mutation, 'a column lost silently', lost);
    }
    const key = fitted(rows);
    const known = answers.get(key);
    // Of rows that were fitted already only other notes are fitted again: the others are the same in every cell.
    if (known === undefined) answers.set(key, answer(arms));
    else if (mutation.meaning === 'note' && answer(arms) !== known)
      fail(index, mutation, 'notes moved the answer', arms);
  }

  function checkRefused(
    index: number,
    mutation: Mutation,
    problems: readonly Problem[],
    warnings: readonly Problem[],
  ): void {
    if (mutation.meaning !== 'any') fail(index, mutation, 'refused', problems);
    if (mutation.lines.length > 0 && !problems.some((problem) => namesWhatWasHit(problem, mutation))) {
      fail(index, mutation, 'no problem names a line that was hit', problems.slice(0, 3));
    }
    const meaning = readMeaning(mutation.text);
    const kindsSeen = new Set(problems.map(({ kind }) => kind));
    const mayBeRight = ['contradiction', 'duplicate', 'unknown-column'] as const;
    if ('arms' in meaning && !mayBeRight.some((kind) => kindsSeen.has(kind))) {
      fail(index, mutation, 'refused, but the slow reading finds nothing wrong', problems.slice(0, 3));
    }
    for (const problem of problems) {
      const message = formatProblem(problem);
      if (message.length > 1200 || /[\p{Cc}\p{Cf}\p{Cs}]/u.test(message)) fail(index, mutation, 'message', message);
    }
    if (index % 10 > 0) return;
    const lines = Papa.parse<string[]>(problemsToCsv(problems, warnings).trimEnd()).data;
    if (lines.length !== 1 + problems.length + warnings.length)
      fail(index, mutation, 'lines of the file', lines.length);
    const attack = lines.flat().find((cell) => ATTACK.test(cell));
    if (attack !== undefined) fail(index, mutation, 'file of problems', attack);
  }

  // Some 22 s beside other work; the limit only ends what hangs, however busy the machine.
  it('are each read as they are meant, or refused with a problem that names the line', { timeout: 300_000 }, () => {
    answers.set(fitted(baseRows), answer(base));
    const baseAnalysis = JSON.stringify(analyse(base, defaultSettings));
    let accepted = 0;
    for (let index = 0; index < TABLES; index++) {
      const mutation = mutate(table, random);
      const start = performance.now();
      const { arms, problems, warnings } = readArms(mutation.text, 'mutated.csv');
      const count = kinds.get(mutation.kind) ?? { accepted: 0, refused: 0 };
      kinds.set(mutation.kind, count);
      if (problems.length > 0) {
        count.refused++;
        checkRefused(index, mutation, problems, warnings);
      } else {
        count.accepted++;
        checkAccepted(index, mutation, arms, warnings);
        if (++accepted % WHOLE_ANALYSIS_EVERY === 0) {
          const analysis = analyse(arms, defaultSettings);
          whole++;
          const text = JSON.stringify(analysis);
          if (ATTACK.test(text.replace(/\\n/gu, ''))) fail(index, mutation, 'analysis holds', text);
          if (mutation.meaning === 'same' || mutation.meaning === 'note') expect(text).toBe(baseAnalysis);
        }
      }
      slowest.push({ text: mutation.text, took: performance.now() - start });
      slowest.sort((a, b) => b.took - a.took).splice(TIMED);
    }
    expect(failures.slice(0, 20), `${failures.length} failures`).toEqual([]);
    const plain = writeArms(base);
    for (const { text } of slowest) {
      expect(timeRatio(readAndAnswer(text), readAndAnswer(plain)), text).toBeLessThan(LONGEST);
    }
  });

  it('were of many kinds, accepted and refused, with many answers', () => {
    const total = [...kinds.values()].reduce((sum, { accepted, refused }) => sum + accepted + refused, 0);
    expect(total).toBe(TABLES);
    expect(kinds.size).toBeGreaterThan(50);
    expect([...kinds.values()].reduce((sum, { accepted }) => sum + accepted, 0)).toBeGreaterThan(TABLES / 4);
    expect([...kinds.values()].reduce((sum, { refused }) => sum + refused, 0)).toBeGreaterThan(TABLES / 4);
    expect(answers.size).toBeGreaterThan(500);
    expect(whole).toBeGreaterThan(40);
  });
});
