/**
 * The table read study by study: facts, arms, every row with its effect and what the fit made of it,
 * and what the answer is without the study.
 *
 * The interval of a row's effect is from its sampling variance alone: y ± z √v. A row whose ready-made
 * effect is in another metric than the analysis is shown in its own.
 */

import { intervalOf } from '../evidence/effectInterval.ts';
import { computeEffect, type Effect } from '../evidence/effects.ts';
import { groupRows } from '../evidence/groupRows.ts';
import { resolveMeans } from '../evidence/means.ts';
import type { PooledSpread } from '../evidence/pooledSpread.ts';
import type { Arm } from '../evidence/schema.ts';
import type { OUTCOMES } from '../evidence/vocabulary.ts';
import { rangeOf } from './bandFit.ts';
import { listBands } from './bands.ts';
import type { StudyInfluence } from './checks/influence.ts';
import { countPeople } from './counts.ts';
import type { FittedRow } from './fittedRow.ts';
import type { FullAnalysis } from './full.ts';
import { bandOfLoad } from './loads.ts';
import type { Band, BandName, Estimate } from './result.ts';
import { poolFor } from './selection.ts';
import type { Metric, Settings } from './settings.ts';

export interface RowReport {
  readonly arm: Arm;
  /** null where none can be had; `noEffect` says why. */
  readonly effect: Effect | null;
  readonly noEffect: string | null;
  /** Log ratio of a row whose means, or change in per cent, come without a variance; null where there is an effect, or no ratio. */
  readonly alone: number | null;
  /** Metric of the effect. */
  readonly metric: Metric;
  /** Interval of the effect at the settings' confidence, in its metric. */
  readonly ciLow: number | null;
  readonly ciHigh: number | null;
  /** Band whose fit the row is in; null where it is left out. */
  readonly band: BandName | null;
  /** Share of all weight in its band's fit, 0 to 1. */
  readonly weight: number | null;
  /** Why the row is in no fit of the dose-response. */
  readonly leftOut: string | null;
}

/** What a study is to one band that it has rows in. */
export interface StudyInBand {
  readonly band: BandName;
  readonly rows: number;
  /** Share of all weight in the fit, 0 to 1. */
  readonly weight: number;
  /** null where the checks of the band were not made. */
  readonly influence: StudyInfluence | null;
}

interface Range {
  readonly low: number;
  readonly high: number;
}

export interface StudyReport {
  readonly study: string;
  readonly year: number;
  readonly design: Arm['design'];
  readonly concerns: Arm['concerns'];
  readonly trainingStatus: Arm['training_status'];
  readonly people: number;
  /** The row with most people of each arm and exercise: what its training was. */
  readonly arms: readonly Arm[];
  readonly rows: readonly RowReport[];
  readonly outcomes: readonly (typeof OUTCOMES)[number][];
  /** Per cent of 1RM; null where no row reports it. */
  readonly load: Range | null;
  /** Repetitions; null where no row reports it. */
  readonly reserve: Range | null;
  readonly bands: readonly StudyInBand[];
}

/** What the reports are read from; bands whose checks are missing have no influence. */
type Reported = Pick<FullAnalysis, 'settings' | 'bands' | 'rows' | 'checks'>;

/** Reports of all studies, by year and then name; one pass over the rows. */
export function reportStudies(arms: readonly Arm[], analysis: Reported): readonly StudyReport[] {
  const bands = listBands(analysis.bands);
  const fitted = new Map<number, { readonly band: BandName; readonly row: FittedRow }>();
  for (const [band, { fitted: rows }] of bands) for (const row of rows) fitted.set(row.line, { band, row });
  const excluded = new Map(analysis.rows.excluded.map(({ line, reason }) => [line, reason]));
  const influence = new Map<string, StudyInfluence>();
  for (const [band] of bands) {
    for (const one of analysis.checks[band]?.influence.studies ?? []) influence.set(`${band} ${one.study}`, one);
  }
  const pooled = poolFor(arms, analysis.settings);
  const reportRow = (arm: Arm): RowReport => {
    const inFit = fitted.get(arm.line);
    return {
      arm,
      ...effectOf(arm, analysis.settings, pooled),
      band: inFit?.band ?? null,
      weight: inFit?.row.weight ?? null,
      leftOut: inFit ? null : (excluded.get(arm.line) ?? reasonOfFailure(arm, bands, analysis.settings)),
    };
  };
  return [...groupRows(arms, ({ study }) => study)]
    .map(([study, rows]): StudyReport => {
      const reports = rows.map(reportRow);
      const [{ year, design, concerns, training_status: trainingStatus }] = rows;
      return {
        ...{ study, year, design, concerns, trainingStatus },
        people: countPeople(rows),
        arms: pickArms(rows),
        rows: reports,
        outcomes: [...new Set(rows.map(({ outcome }) => outcome))],
        load: rangeOf(rows.flatMap(({ load_pct_1rm }) => load_pct_1rm ?? [])),
        reserve: rangeOf(rows.flatMap(({ reserve_reps }) => reserve_reps ?? [])),
        bands: bands.flatMap(([band]) => inBand(band, reports, influence.get(`${band} ${study}`) ?? null)),
      };
    })
    .sort((a, b) => a.year - b.year || (a.study < b.study ? -1 : 1));
}

function effectOf(
  arm: Arm,
  settings: Settings,
  pooled: PooledSpread | null,
): Pick<RowReport, 'effect' | 'noEffect' | 'alone' | 'metric' | 'ciLow' | 'ciHigh'> {
  const assumedCorrelation = settings.assumedCorrelation[arm.outcome];
  const inMetric = computeEffect(arm, { metric: settings.metric, assumedCorrelation, pooled });
  const metric = typeof inMetric === 'string' && arm.effect_metric ? arm.effect_metric : settings.metric;
  const effect = metric === settings.metric ? inMetric : computeEffect(arm, { metric, assumedCorrelation, pooled });
  if (typeof effect === 'string') {
    const alone = settings.metric === 'log-ratio' ? ratioOfMeans(arm) : null;
    return { effect: null, noEffect: effect, alone, metric, ciLow: null, ciHigh: null };
  }
  return { effect, noEffect: null, alone: null, metric, ...intervalOf(effect, settings.confidence) };
}

/** ln(m₂/m₁), of printed means or a change in per cent. */
function ratioOfMeans(arm: Arm): number | null {
  const { baselineMean: before, followupMean: after } = resolveMeans(arm);
  return before !== null && after !== null && before > 0 && after > 0 ? Math.log(after / before) : null;
}

/** A row that was selected and is in no fit belongs to a band that could not be fitted. */
function reasonOfFailure(arm: Arm, bands: readonly (readonly [BandName, Band])[], { split }: Settings): string {
  const name = bandOfLoad(arm.load_pct_1rm ?? Number.NaN, split);
  const failure = bands.find(([band]) => band === name)?.[1].failure;
  if (!failure)
    throw new Error(`invalid call; line ${arm.line} is not a row of the analysis: neither fitted nor left out`);
  return `${name} loads could not be fitted: ${failure.reason}`;
}

function pickArms(rows: readonly Arm[]): readonly Arm[] {
  const picked = new Map<string, Arm>();
  for (const row of rows) {
    const key = JSON.stringify([row.arm, row.exercise]);
    const other = picked.get(key);
    if (!other || (row.n ?? 0) > (other.n ?? 0)) picked.set(key, row);
  }
  return [...picked.values()];
}

function inBand(band: BandName, reports: readonly RowReport[], influence: StudyInfluence | null): StudyInBand[] {
  const weights = reports.flatMap((row) => (row.band === band ? [row.weight ?? 0] : []));
  if (weights.length === 0) return [];
  return [{ band, rows: weights.length, weight: weights.reduce((sum, weight) => sum + weight, 0), influence }];
}

/** A band as all its studies make it, for comparison with it without one. */
export interface WholeBand {
  readonly name: BandName;
  readonly band: Band;
  /** Mean slope; null where the band could not be fitted or its checks are not known. */
  readonly slope: Estimate | null;
}

/** The bands of an analysis, in its order. */
export function wholeBandsOf({ bands, checks, settings }: Reported): readonly WholeBand[] {
  return listBands(bands).map(([name, band]) => ({
    name,
    band,
    slope: checks[name]?.weightings.find(({ weighting }) => weighting === settings.weighting)?.slope ?? null,
  }));
}
