/**
 * A planned study by simulation, the slow way: the study is drawn, its rows are added to the table, and the site's
 * whole fit is made anew, τ² and ω² with it, many times. `expectPlan` is held to it.
 */
import type { Effect } from '../../evidence/effects.ts';
import { choleskyFactor } from '../../numerics/cholesky.ts';
import { makeRandom, type Random } from '../../numerics/random.ts';
import { fitEffects, targetOf } from '../bandFit.ts';
import type { BandName } from '../result.ts';
import { SCAN_STEPS } from '../target.ts';
import {
  chanceOfMove,
  type ExpectedTarget,
  expectTarget,
  shareWholes,
  type TargetOutcome,
  type WholeShare,
} from './expectedTarget.ts';
import { assume, makePlannedRows, type PlannedRow } from './plannedRows.ts';
import { checkPlan, type PlannedStudy } from './plannedStudy.ts';
import type { Planning, PlanningBand } from './planningBase.ts';
import { refuseContinued } from './refusedBand.ts';

export interface BandSimulation {
  readonly band: BandName;
  /** Studies drawn. */
  readonly tables: number;
  readonly after: ExpectedTarget;
  /**
   * Standard error of the median width by the order statistics about it; null where there is no width, or an
   * interval without an upper end among these.
   */
  readonly widthError: number | null;
  /** Chance that the whole repetitions to tell come out otherwise than today, and its standard error. */
  readonly chanceOfMove: number;
  readonly chanceError: number;
  readonly wholes: readonly WholeShare[];
}

/** One deviation of the middle on either side, in order statistics: √n/2. */
const HALF = 0.5;

/**
 * @param tables studies to draw, one at least
 * @param seed a whole number
 * @returns the bands with a fit in which the plan has arms that can be drawn; none for a plan with problems
 */
export function simulatePlan(
  planning: Planning,
  plan: PlannedStudy,
  tables: number,
  seed: number,
): readonly BandSimulation[] {
  const steps = simulateInSteps(planning, plan, tables, seed);
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

/** The same, a table at a time: yields the share that is done, 0 to 1, for who shows it or may want to stop. */
export function* simulateInSteps(
  planning: Planning,
  plan: PlannedStudy,
  tables: number,
  seed: number,
): Generator<number, readonly BandSimulation[]> {
  if (checkPlan(plan, planning.bands).length > 0) return [];
  const assumptions = assume(planning, plan);
  if (typeof assumptions === 'string') return [];
  const parts = planning.bands.flatMap((band) => {
    const rows = band.scatter ? makePlannedRows(planning, band, plan, assumptions) : [];
    const isUnsaid = typeof rows === 'string' || rows.length === 0 || refuseContinued(band, rows) !== null;
    return isUnsaid ? [] : [{ band, rows }];
  });
  const found: BandSimulation[] = [];
  for (const { band, rows } of parts) {
    const steps = simulateBand(planning, band, rows, tables, makeRandom(seed));
    let step = steps.next();
    for (; !step.done; step = steps.next()) yield (found.length + step.value) / parts.length;
    found.push(step.value);
  }
  return found;
}

function* simulateBand(
  { settings }: Planning,
  band: PlanningBand,
  rows: readonly PlannedRow[],
  tables: number,
  random: Random,
): Generator<number, BandSimulation> {
  const draw = makeStudyDrawer(band, rows, random);
  const targets: TargetOutcome[] = [];
  while (targets.length < tables) {
    const fit = fitEffects([...band.fit.effects, ...draw()], { ...settings, answerOnly: true });
    targets.push(targetOf(fit, settings, SCAN_STEPS.coarse));
    yield targets.length / tables;
  }
  const wholes = shareWholes(targets);
  const chance = chanceOfMove(band.target.whole, wholes);
  const after = expectTarget(targets);
  return {
    band: band.name,
    tables,
    after,
    widthError: after.width === null ? null : medianError(targets),
    chanceOfMove: chance,
    chanceError: Math.sqrt((chance * (1 - chance)) / tables),
    wholes,
  };
}

/**
 * Draws the study's effects: β from its robust distribution, u(study), a(row) and sampling errors, those of a cohort
 * correlated.
 */
function makeStudyDrawer(band: PlanningBand, rows: readonly PlannedRow[], { normal }: Random): () => readonly Effect[] {
  const { fit } = band.fit.outcome;
  const { scatter } = band;
  if (!fit || !scatter) throw new Error('invalid call: a study drawn from a band without a fit');
  const { p, covariance } = fit.inference;
  const lower = choleskyFactor(covariance, p);
  return () => {
    const deviates = Array.from({ length: p }, normal);
    const step = Array.from({ length: p }, (_, r) =>
      deviates.reduce((sum, value, c) => sum + lower[r * p + c] * value, 0),
    );
    const study = Math.sqrt(scatter.tau2) * normal();
    const shared = new Map<string, number>();
    return rows.map(({ effect, x }) => {
      const key = effect.arm.cohort ?? '';
      const ofCohort = shared.get(key) ?? normal();
      shared.set(key, ofCohort);
      const error = Math.sqrt(scatter.rho) * ofCohort + Math.sqrt(1 - scatter.rho) * normal();
      const curve = x.reduce((sum, value, j) => sum + value * step[j], effect.y);
      return { ...effect, y: curve + study + Math.sqrt(scatter.omega2) * normal() + Math.sqrt(effect.v) * error };
    });
  };
}

function medianError(targets: readonly TargetOutcome[]): number | null {
  const widths = Float64Array.from(
    targets.flatMap(({ point, low, high }) =>
      point === null || low === null ? [] : [(high ?? Number.POSITIVE_INFINITY) - low],
    ),
  ).sort();
  const middle = (widths.length - 1) / 2;
  const reach = HALF * Math.sqrt(widths.length);
  const low = widths[Math.max(0, Math.floor(middle - reach))];
  const high = widths[Math.min(widths.length - 1, Math.ceil(middle + reach))];
  const error = (high - low) / 2;
  return Number.isFinite(error) ? error : null;
}
