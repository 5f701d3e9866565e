/** What every answer about a hostile table must be: finite or refused in words, and the same in any order of rows. */

import type { Arm } from '../../src/evidence/schema.ts';
import { listFigures } from '../../src/figures/catalogue.ts';
import { mapEvidence } from '../../src/model/evidenceMap.ts';
import { analyseInFull, analyseThenCheck, type FullAnalysis, keepForPractice } from '../../src/model/full.ts';
import type { Settings } from '../../src/model/settings.ts';
import { makeRandom } from '../../src/numerics/random.ts';
import { advise } from '../../src/practice/advice.ts';
import { stateAnswer, stateDoubts } from '../../src/practice/answer.ts';
import { listTargets } from '../../src/practice/targetTable.ts';
import { stateFullAnalysis } from '../terminal/fullReport.ts';
import { stateAnalysis } from '../terminal/report.ts';
import type { HostileCase } from './hostileTables.ts';

/** Orders of rows that each table is read in. */
export const ORDERS = 5;
/** Share of its own size by which a number may differ between orders and machines. */
export const SAME = 1e-9;
/** Size below which a difference is rounding of a number that is 0. */
const ROUNDING = 1e-12;

/** A set of a trained lifter on an exercise that cannot pin; the load varies. */
const SITUATION = {
  purpose: 'growth',
  planned: 5,
  exercise: { name: 'any', canPin: false, stoppable: true, partials: true, relation: null },
  company: 'alone',
  status: 'trained',
  hoursToEvent: 24,
  judgement: { bias: 0, spread: 0 },
} as const;

/** Places of a plain value whose numbers are not finite or whose intervals have no width. */
export function findUnsound(value: unknown, place = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${place} is ${value}`];
  if (typeof value === 'string') return /NaN|Infinity|undefined|\bnull\b/.test(value) ? [`${place}: ${value}`] : [];
  if (typeof value !== 'object' || value === null) return [];
  const entries = Object.entries(value);
  const of = (name: string): unknown => Reflect.get(value, name);
  const flat =
    typeof of('ciLow') === 'number' && of('ciLow') === of('ciHigh') ? [`${place} has an interval of no width`] : [];
  return [...flat, ...entries.flatMap(([key, part]) => findUnsound(part, `${place}.${key}`))];
}

/** Everything that is written about an analysis: for the terminal, the answer and advice. */
function writeWords(full: FullAnalysis): readonly string[] {
  const practice = keepForPractice(full);
  const advice = [40, 62, 80].map((load) => advise(practice, { ...SITUATION, load }));
  return [
    stateAnalysis(full, 'table'),
    stateFullAnalysis(full),
    stateAnswer(practice),
    ...stateDoubts(practice),
    ...listTargets(practice).map(({ target }) => target.reason ?? ''),
    ...advice.flatMap(({ sentence, adjustments, cautions }) => [sentence, ...adjustments, ...cautions]),
  ];
}

/** The words and tables of all its figures. */
function writeFigures(arms: readonly Arm[], full: FullAnalysis): readonly string[] {
  const figures = listFigures({ analysis: full, map: mapEvidence(arms, full), sweep: null });
  return [
    ...figures.figures.flatMap(({ figure }) => [
      figure.title,
      figure.caption,
      figure.alternative,
      ...figure.table.rows.flat().map(String),
    ]),
    ...figures.missing.map(({ reason }) => reason),
  ];
}

/** Lists of a packed inference that are matrices: their entries are as large as the largest, and some are 0 but for rounding. */
const MATRICES = new Set(['covariance', 'root', 'trace', 'squares', 'cross']);

/**
 * Places where two plain values differ by more than `SAME` of their size.
 *
 * @param scale size that differences are measured by, where it is above the values' own
 */
export function findDifferences(a: unknown, b: unknown, place = '', scale = 0): string[] {
  if (typeof a === 'number' && typeof b === 'number') {
    const most = Math.max(scale, Math.abs(a), Math.abs(b));
    return Math.abs(a - b) <= Math.max(ROUNDING, SAME * most) ? [] : [`${place}: ${a} and ${b}`];
  }
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) {
    return a === b ? [] : [`${place}: ${String(a)} and ${String(b)}`];
  }
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].flatMap((key) => {
    const [inA, inB]: unknown[] = [Reflect.get(a, key), Reflect.get(b, key)];
    return findDifferences(inA, inB, `${place}.${key}`, Math.max(scale, scaleOf(key, inA)));
  });
}

/** The size that differences below a key are measured by; 0 for the values' own. */
function scaleOf(key: string, value: unknown): number {
  if (MATRICES.has(key) && Array.isArray(value)) return Math.max(...value.map((one) => Math.abs(Number(one))));
  // Targets and their ends are places between 0 and the furthest reserve: a repetition is their size.
  return /^target/u.test(key) ? 1 : 0;
}

export interface HostileFindings {
  /** Numbers that are none, and intervals without a width, with their places. */
  readonly unsound: readonly string[];
  /** Numbers that depend on the order of rows. */
  readonly unstable: readonly string[];
  /** Fits that were made and fits that were refused, bands and joint. */
  readonly made: number;
  readonly refused: number;
}

/**
 * @param seed of the orders
 * @param withChecks also the checks and all figures, which are most of the work
 */
export function checkHostileCase({ arms, settings }: HostileCase, seed: number, withChecks: boolean): HostileFindings {
  const full = withChecks ? analyseInFull(arms, settings) : uncheckedOf(arms, settings);
  const words = [...writeWords(full), ...(withChecks ? writeFigures(arms, full) : [])];
  const unsound = [...findUnsound(full), ...words.flatMap((text) => findUnsound(text, 'text'))];
  const { uniform } = makeRandom(seed);
  const unstable = Array.from({ length: ORDERS - 1 }).flatMap(() => {
    const shuffled = shuffle(arms, uniform);
    const again = withChecks ? analyseInFull(shuffled, settings) : uncheckedOf(shuffled, settings);
    return findDifferences(full, again);
  });
  const fits = [...Object.values(full.bands), full.joint];
  const refused = fits.filter(({ failure }) => failure !== null).length;
  return { unsound, unstable, made: fits.length - refused, refused };
}

function uncheckedOf(arms: readonly Arm[], settings: Settings): FullAnalysis {
  return { ...analyseThenCheck(arms, settings).unchecked, checks: {} };
}

/** Fisher & Yates. */
function shuffle<Value>(values: readonly Value[], uniform: () => number): Value[] {
  const out = [...values];
  for (let i = out.length - 1; i > 0; i--) {
    const j = Math.floor((i + 1) * uniform());
    [out[i], out[j]] = [out[j], out[i]];
  }
  return out;
}
