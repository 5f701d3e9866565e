/**
 * The whole analysis: the answer, what stands beside it and whether it survives. Some seconds of work,
 * for the build and the command line; a slider asks for `analyse` alone and for parts of this later.
 */
import type { Arm } from '../evidence/schema.ts';
import { analyse } from './analyse.ts';
import { type BandFit, fitEffects, meanSlopeContrast, rangeOf } from './bandFit.ts';
import { type BeyondFailureContrast, compareBeyondFailure } from './beyondFailure.ts';
import { type BootstrapTest, bootstrapContrast } from './checks/bootstrap.ts';
import { accumulateByYear, type CumulativeYear } from './checks/cumulative.ts';
import { type Influence, measureInfluence } from './checks/influence.ts';
import { correctForReserveError, type ReserveErrorCheck } from './checks/reserveError.ts';
import { type SmallStudyPattern, testSmallStudies } from './checks/smallStudies.ts';
import {
  compareWeightings,
  measureDeviations,
  type StudyDeviation,
  type WeightingComparison,
} from './checks/studies.ts';
import { analyseFatigue, type Fatigue } from './fatigue.ts';
import { groupByBand } from './loads.ts';
import type { Analysis, BandName } from './result.ts';
import { selectRows } from './selection.ts';
import type { Settings } from './settings.ts';
import { analyseStrength, type Strength } from './strength.ts';

/** Checks on one band; null where the band could not be fitted. */
export interface BandChecks {
  readonly weightings: readonly WeightingComparison[];
  readonly deviations: readonly StudyDeviation[];
  readonly influence: Influence;
  readonly smallStudies: SmallStudyPattern;
  /** Of the mean slope. */
  readonly bootstrap: BootstrapTest;
  readonly reserveError: ReserveErrorCheck;
  readonly cumulative: readonly CumulativeYear[];
}

export type BandsChecks = Readonly<Partial<Record<BandName, BandChecks | null>>>;

export interface FullAnalysis extends Analysis {
  readonly strength: Strength;
  readonly beyondFailure: readonly BeyondFailureContrast[];
  readonly fatigue: Fatigue;
  readonly checks: BandsChecks;
}

export function analyseInFull(arms: readonly Arm[], settings: Settings): FullAnalysis {
  return {
    ...analyse(arms, settings),
    strength: analyseStrength(arms, settings),
    beyondFailure: compareBeyondFailure(arms, settings),
    fatigue: analyseFatigue(arms, settings),
    checks: checkBands(arms, settings),
  };
}

/** The checks of every band that the settings make. */
export function checkBands(arms: readonly Arm[], settings: Settings): BandsChecks {
  const { effects } = selectRows(arms, settings);
  return Object.fromEntries(
    groupByBand(effects, settings.split).map(([name, rows]) => [name, checkBand(fitEffects(rows, settings), settings)]),
  );
}

export function checkBand(band: BandFit, settings: Settings): BandChecks | null {
  const studied = rangeOf(band.reserves);
  const { fit } = band.outcome;
  if (!fit || !studied) return null;
  return {
    weightings: compareWeightings(band, settings),
    deviations: measureDeviations(band, settings),
    influence: measureInfluence(band, settings),
    smallStudies: testSmallStudies(band, settings),
    bootstrap: bootstrapContrast(fit, meanSlopeContrast(band.at, studied.high), settings.seed),
    reserveError: correctForReserveError(band, settings),
    cumulative: accumulateByYear(band, settings),
  };
}
