/** What a page or a file says of the table that plans are made on: plain JSON. */
import { isDemonstration } from '../../evidence/demonstration.ts';
import type { Arm } from '../../evidence/schema.ts';
import { rangeOf } from '../bandFit.ts';
import { countDistinctStudies } from '../counts.ts';
import type { BandName, Target } from '../result.ts';
import type { Settings } from '../settings.ts';
import type { Planning } from './planningBase.ts';
import type { UsualMeasure } from './usualMeasure.ts';

export interface PlanningFacts {
  readonly settings: Settings;
  /** True where its studies are invented. */
  readonly isDemonstration: boolean;
  /** Of the whole table. */
  readonly rows: number;
  readonly studies: number;
  readonly bands: readonly PlanningBandFacts[];
  readonly measures: readonly UsualMeasure[];
  /** Median of the rows that are fitted; null where none says. */
  readonly usualWeeks: number | null;
}

export interface PlanningBandFacts {
  readonly name: BandName;
  /** Rows and studies that are fitted. */
  readonly rows: number;
  readonly studies: number;
  /** The target today, as the site shows it. */
  readonly target: Target;
  /** True where a curve is fitted, so that something can be expected. */
  readonly isFitted: boolean;
  /** Largest reserve studied, repetitions; null without rows. */
  readonly furthest: number | null;
  /** Per cent of 1RM; null where no row has a load. */
  readonly medianLoad: number | null;
}

/** @param arms all rows of the table that the planning was opened on */
export function describePlanning(planning: Planning, arms: readonly Arm[]): PlanningFacts {
  return {
    settings: planning.settings,
    isDemonstration: isDemonstration(arms),
    rows: arms.length,
    studies: planning.studies.size,
    bands: planning.bands.map(({ name, fit, target, scatter, medianLoad }) => ({
      name,
      rows: fit.effects.length,
      studies: countDistinctStudies(fit.effects),
      target,
      isFitted: scatter !== null,
      furthest: rangeOf(fit.reserves)?.high ?? null,
      medianLoad,
    })),
    measures: planning.measures,
    usualWeeks: planning.usual.weeks,
  };
}
