/**
 * A planned study as rows of the table: each arm with the statistics that are expected of it, from which the table's
 * own functions compute effect and variance. The expected change of an arm is what the fitted curve says at its
 * reserve.
 */
import { mean } from 'simple-statistics';
import { computeEffect, type Effect } from '../../evidence/effects.ts';
import { ARM_COLUMNS, type Arm } from '../../evidence/schema.ts';
import { smallSampleFactor } from '../../evidence/smallSampleFactor.ts';
import { bandOfLoad } from '../loads.ts';
import type { BandName } from '../result.ts';
import { applyContrast } from '../robust.ts';
import { COVARIATES } from '../selection.ts';
import { ADJUSTMENTS } from '../settings.ts';
import { assumeOfBand, type BandAssumptions } from './bandAssumptions.ts';
import type { PlannedArm, PlannedStudy } from './plannedStudy.ts';
import type { Planning, PlanningBand } from './planningBase.ts';
import type { Usual } from './usualMeasure.ts';

/** What a plan is worked out with, in numbers and words. */
export interface PlanAssumptions {
  readonly measure: string;
  readonly coefficientOfVariation: Usual;
  readonly correlation: Usual;
  /** null where neither plan nor table says. It counts only where weeks are adjusted for. */
  readonly weeks: number | null;
  /** Medians of the rows that are fitted, null where none says; their product counts where weekly sets are adjusted for. */
  readonly sets: number | null;
  readonly sessionsPerWeek: number | null;
  /** Of every band; status and load count only where they are adjusted for. */
  readonly bands: readonly BandAssumptions[];
}

/** One row for a band's fit. */
export interface PlannedRow {
  readonly effect: Effect;
  /** The design row of the band's fit today; empty where it has none. */
  readonly x: readonly number[];
}

/** Name of the study among the rows; primes keep it apart from a real one. */
const STUDY = 'planned study';
/** Mean before training of a planned arm: any, since effects are relative to it. */
const BASELINE = 100;
/** Stands in under the standardised metric, which counts in SDs, where the table gives none. */
const ANY_VARIATION = 0.1;
const EMPTY_ROW = Object.fromEntries(Object.keys(ARM_COLUMNS).map((column) => [column, null]));

/** The reason in words where the table has none and the plan gives none. */
export function assume({ measures, usual, settings, bands }: Planning, plan: PlannedStudy): PlanAssumptions | string {
  const found = plan.measure === null ? measures[0] : measures.find(({ measure }) => measure === plan.measure);
  const given = (value: number | null): Usual | null =>
    value === null ? null : { value, rows: 0, studies: 0, from: 'given', words: 'given with the plan' };
  if (!found && plan.measure !== null && measures.length > 0)
    return `no row of ${settings.outcome} is by ${plan.measure}; measures are ${measures.map(({ measure }) => measure).join(', ')}`;
  if (!found) return `no row of ${settings.outcome} is in the table`;
  const any: Usual | null =
    settings.metric === 'standardised'
      ? {
          value: ANY_VARIATION,
          rows: 0,
          studies: 0,
          from: 'any',
          words: 'any does, since changes are counted in standard deviations',
        }
      : null;
  const coefficientOfVariation = given(plan.coefficientOfVariation) ?? found.coefficientOfVariation ?? any;
  if (!coefficientOfVariation) return found.reason ?? 'no coefficient of variation';
  return {
    measure: found.measure,
    coefficientOfVariation,
    correlation: given(plan.correlation) ?? found.correlation,
    weeks: plan.weeks ?? usual.weeks,
    sets: usual.sets,
    sessionsPerWeek: usual.sessions_per_week,
    bands: bands.map(assumeOfBand),
  };
}

/** Load of an arm, per cent of 1RM, and the band that it falls into. */
export function placeArm({ settings, bands }: Planning, { load }: PlannedArm): { load: number | null; band: BandName } {
  if (typeof load === 'number') return { load, band: bandOfLoad(load, settings.split) };
  return { load: bands.find(({ name }) => name === load)?.medianLoad ?? null, band: load };
}

/**
 * Rows of a plan in one band, arms in one order whatever the plan's; arms without people are no rows.
 *
 * @returns the reason in words where a row has no effect, as the table's own rows have
 */
export function makePlannedRows(
  planning: Planning,
  band: PlanningBand,
  plan: PlannedStudy,
  assumptions: PlanAssumptions,
): readonly PlannedRow[] | string {
  const arms = plan.arms
    .map((arm) => ({ ...arm, ...placeArm(planning, arm) }))
    .sort((a, b) => a.reserve - b.reserve || (a.load ?? 0) - (b.load ?? 0) || a.people - b.people);
  let study = STUDY;
  while (planning.studies.has(study)) study += '′';
  const usual = assumeOfBand(band);
  const rows: PlannedRow[] = [];
  for (const [place, arm] of arms.entries()) {
    if (arm.people === 0 || arm.band !== band.name) continue;
    const cohort = plan.design === 'within-person' ? 'people' : `arm ${String(place + 1).padStart(2, '0')}`;
    const row = {
      ...EMPTY_ROW,
      line: 0,
      study,
      year: 0,
      design: plan.design,
      arm: `arm ${place + 1}`,
      cohort,
      n: arm.people,
      exercise: 'any',
      load_pct_1rm: arm.load,
      sets: assumptions.sets,
      sessions_per_week: assumptions.sessionsPerWeek,
      weeks: assumptions.weeks,
      training_status: usual.trainingStatus,
      reserve_reps: arm.reserve,
      outcome: planning.settings.outcome,
      measure: assumptions.measure,
      correlation: assumptions.correlation.value,
    } as unknown as Arm;
    const { x, y } = expectEffect(band, row);
    const effect = computeEffect(
      { ...row, ...expectStatistics(planning, assumptions, arm.people, y) },
      {
        metric: planning.settings.metric,
        assumedCorrelation: assumptions.correlation.value,
        pooled: planning.pooled,
      },
    );
    if (typeof effect === 'string') return `a planned arm of ${arm.people} people has no effect: ${effect}`;
    // A pooled spread moves the effect by a bias of second order; expected is what the curve says.
    rows.push({ effect: { ...effect, y }, x });
  }
  return rows;
}

/** Means and SDs before and after that give the expected effect, in the metric of the settings. */
function expectStatistics(
  { settings }: Planning,
  { coefficientOfVariation: { value: cv } }: PlanAssumptions,
  people: number,
  y: number,
) {
  const sd = cv * BASELINE;
  const after =
    settings.metric === 'log-ratio' ? BASELINE * Math.exp(y) : BASELINE + (y * sd) / smallSampleFactor(people - 1);
  const statistics = { baseline_mean: BASELINE, baseline_sd: sd, followup_mean: after };
  return settings.metric === 'log-ratio' ? { ...statistics, followup_sd: cv * after } : statistics;
}

/**
 * What today's fit says of a row: the curve at its reserve, covariates as far from the mean as they are. Without a fit,
 * the mean effect.
 */
function expectEffect(
  { fit: { basis, terms, effects, outcome } }: PlanningBand,
  arm: Arm,
): { x: readonly number[]; y: number } {
  if (!outcome.fit) return { x: [], y: effects.length > 0 ? mean(effects.map(({ y }) => y)) : 0 };
  const covariates = ADJUSTMENTS.map((name) => COVARIATES[name])
    .filter(({ name }) => terms.includes(name))
    .sort((a, b) => terms.indexOf(a.name) - terms.indexOf(b.name))
    .map(({ of }) => {
      const centre = mean(effects.map(({ arm: one }) => of(one) ?? Number.NaN));
      return (of(arm) ?? centre) - centre;
    });
  const x = [...basis.at(arm.reserve_reps ?? Number.NaN), ...covariates];
  return { x, y: applyContrast(x, outcome.fit.inference.coefficients) };
}
