/**
 * What every plan on one table starts from: the fits of its bands, made once, the variances that a new study is drawn
 * with, and what is usual in its measures.
 */
import { median } from 'simple-statistics';
import type { PooledSpread } from '../../evidence/pooledSpread.ts';
import type { Arm } from '../../evidence/schema.ts';
import { type BandFit, fitEffects, targetOf } from '../bandFit.ts';
import { groupByBand } from '../loads.ts';
import type { BandName, Target } from '../result.ts';
import { poolFor, selectRows } from '../selection.ts';
import type { Settings } from '../settings.ts';
import type { WorkingCovariance } from '../whitening.ts';
import { listUsualMeasures, type UsualMeasure } from './usualMeasure.ts';

/** One band of the table. */
export interface PlanningBand {
  readonly name: BandName;
  readonly fit: BandFit;
  /** The target as the site shows it today. */
  readonly target: Target;
  /**
   * What new rows are drawn with: τ² and ω² by REML, also where the settings weigh rows otherwise; null without a fit.
   */
  readonly scatter: WorkingCovariance | null;
  /** Per cent of 1RM; null where no row has a load. */
  readonly medianLoad: number | null;
}

export interface Planning {
  readonly settings: Settings;
  readonly bands: readonly PlanningBand[];
  readonly measures: readonly UsualMeasure[];
  readonly pooled: PooledSpread | null;
  /** Medians over the rows that are fitted; null where none says. */
  readonly usual: Readonly<Record<'weeks' | 'sets' | 'sessions_per_week', number | null>>;
  /** Names in use, which a planned study must not have. */
  readonly studies: ReadonlySet<string>;
}

/**
 * @param arms all rows of the table
 * @param settings as the analysis has them; rows of a plan are taken to pass its filters
 */
export function openPlanning(arms: readonly Arm[], settings: Settings): Planning {
  const { effects } = selectRows(arms, settings);
  const medianOf = (column: 'weeks' | 'sets' | 'sessions_per_week' | 'load_pct_1rm', of = effects) => {
    const values = of.flatMap(({ arm }) => arm[column] ?? []);
    return values.length > 0 ? median(values) : null;
  };
  return {
    settings,
    bands: groupByBand(effects, settings.split).map(([name, rows]): PlanningBand => {
      const fit = fitEffects(rows, { ...settings, answerOnly: true });
      return {
        name,
        fit,
        target: targetOf(fit, settings),
        scatter: scatterOf(fit, settings),
        medianLoad: medianOf('load_pct_1rm', rows),
      };
    }),
    measures: listUsualMeasures(arms, settings),
    pooled: poolFor(arms, settings),
    usual: { weeks: medianOf('weeks'), sets: medianOf('sets'), sessions_per_week: medianOf('sessions_per_week') },
    studies: new Set(arms.map(({ study }) => study)),
  };
}

/** The band of a name, for callers that have it from the same planning. */
export function bandNamed({ bands }: Planning, name: BandName): PlanningBand {
  const found = bands.find((band) => band.name === name);
  if (!found) throw new Error(`invalid band; not one of ${bands.map((band) => band.name).join(', ')}: ${name}`);
  return found;
}

function scatterOf(band: BandFit, settings: Settings): WorkingCovariance | null {
  const { rho } = settings;
  if (!band.outcome.fit) return null;
  const mixed =
    settings.weighting === 'mixed'
      ? band
      : fitEffects(band.effects, { ...settings, weighting: 'mixed', answerOnly: true });
  const components = mixed.outcome.fit?.components;
  return components ? { tau2: components.tau2, omega2: components.omega2, rho } : null;
}
