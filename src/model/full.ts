/**
 * The whole analysis: the answer, what stands beside it and whether it survives. Some seconds of work,
 * for the build and the command line; a slider asks for `analyse` alone and for parts of this later.
 */

import type { Arm } from '../evidence/schema.ts';
import { analyseWithFits } from './analyse.ts';
import { type BandFit, fitEffects, meanSlopeContrast, rangeOf } from './bandFit.ts';
import { mapBands } from './bands.ts';
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
import type { FittedRow } from './fittedRow.ts';
import { groupByBand } from './loads.ts';
import { type GrowthFits, type GrowthResponse, packResponse } from './response.ts';
import type { Analysis, Band, BandName, Bands } from './result.ts';
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

/** What advice is read from: targets, the curves as they can be asked anything, and what stands beside them. */
export interface PracticeAnalysis {
  readonly settings: Settings;
  readonly bands: Bands<BandForPractice>;
  readonly response: GrowthResponse;
  readonly strength: Omit<Strength, 'excluded'>;
  readonly fatigue: Omit<Fatigue, 'excluded'>;
}

/** The rows only as far as to count those near a load and reserve. */
type BandForPractice = Pick<Band, 'studies' | 'target' | 'unreliable'> & {
  readonly fitted: readonly RowPlace[];
  readonly unfitted?: readonly RowPlace[];
};
type RowPlace = Pick<FittedRow, 'study' | 'arm' | 'load' | 'reserve'>;

export interface FullAnalysis extends Analysis {
  readonly response: GrowthResponse;
  readonly strength: Strength;
  readonly beyondFailure: readonly BeyondFailureContrast[];
  readonly fatigue: Fatigue;
  readonly checks: BandsChecks;
}

/** What stands beside the growth curve in advice. It does not depend on the kept share, and is the slower half. */
export type StrengthAndFatigue = Pick<FullAnalysis, 'strength' | 'fatigue'>;

/** Strength and fatigue of the same rows. */
export function analyseStrengthAndFatigue(arms: readonly Arm[], settings: Settings): StrengthAndFatigue {
  return { strength: analyseStrength(arms, settings), fatigue: analyseFatigue(arms, settings) };
}

/**
 * Everything that advice needs, without the checks.
 *
 * @param beside of the same rows and settings, where it is known already
 */
export function analyseForPractice(
  arms: readonly Arm[],
  settings: Settings,
  beside: StrengthAndFatigue = analyseStrengthAndFatigue(arms, settings),
): PracticeAnalysis {
  const { analysis, fits } = analyseWithFits(arms, settings);
  return keepForPractice({ ...analysis, response: packResponse(fits), ...beside });
}

function keepPlace({ study, arm, load, reserve }: RowPlace): RowPlace {
  return { study, arm, load, reserve };
}

/** Cuts an analysis to what advice is read from, to be sent to a browser. */
export function keepForPractice({
  settings,
  bands,
  response,
  strength: { excluded: _strength, ...strength },
  fatigue: { excluded: _fatigue, ...fatigue },
}: Omit<FullAnalysis, 'beyondFailure' | 'checks'>): PracticeAnalysis {
  const keep = ({ studies, target, unreliable, fitted, unfitted }: Band): BandForPractice => ({
    studies,
    target,
    unreliable,
    fitted: fitted.map(keepPlace),
    ...(unfitted && { unfitted: unfitted.map(keepPlace) }),
  });
  return {
    settings,
    bands: mapBands(bands, keep),
    response,
    strength,
    fatigue,
  };
}

/** The analysis with everything beside it and the checks of every band. */
export function analyseInFull(arms: readonly Arm[], settings: Settings): FullAnalysis {
  const { unchecked, check } = analyseThenCheck(arms, settings);
  return { ...unchecked, checks: check() };
}

/** The whole analysis but for the checks, which are most of the work, and these of the same fits when they are asked for. */
export function analyseThenCheck(
  arms: readonly Arm[],
  settings: Settings,
): { readonly unchecked: Omit<FullAnalysis, 'checks'>; readonly check: () => BandsChecks } {
  const { analysis, fits } = analyseWithFits(arms, settings);
  return {
    unchecked: {
      ...analysis,
      response: packResponse(fits),
      ...analyseStrengthAndFatigue(arms, settings),
      beyondFailure: compareBeyondFailure(arms, settings),
    },
    check: () => checkFits(fits.bands, settings),
  };
}

/** The checks alone of every band that the settings make. */
export function checkBands(arms: readonly Arm[], settings: Settings): BandsChecks {
  const bands = groupByBand(selectRows(arms, settings).effects, settings.split);
  return checkFits(
    bands.map(([name, effects]) => [name, fitEffects(effects, settings)]),
    settings,
  );
}

function checkFits(bands: GrowthFits['bands'], settings: Settings): BandsChecks {
  return Object.fromEntries(bands.map(([name, band]) => [name, checkBand(band, settings)]));
}

function checkBand(band: BandFit, settings: Settings): BandChecks | null {
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
