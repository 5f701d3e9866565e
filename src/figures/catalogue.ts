/**
 * Every figure of an analysis, each under a name that stays: the part of an address. A figure that the
 * analysis cannot make is listed with the reason.
 */

import type { Sweep } from '../model/checks/sweep.ts';
import { listSweepLevels } from '../model/checks/sweepLevels.ts';
import type { EvidenceMap } from '../model/evidenceMap.ts';
import type { FatigueByStatus } from '../model/fatigue.ts';
import type { BandChecks, FullAnalysis } from '../model/full.ts';
import type { Band, BandName, ExcludedRow } from '../model/result.ts';
import { listTargets } from '../practice/targetTable.ts';
import { beyondFailureContrasts } from './beyondFailureContrasts.ts';
import { evidenceMap } from './evidenceMap.ts';
import type { Figure } from './figure.ts';
import { BAND_LOOKS, growthByReserve } from './growthByReserve.ts';
import { recoveryByHours } from './recoveryByHours.ts';
import { strengthContrasts } from './strengthContrasts.ts';
import { deviationsByStudy, smallStudyPattern, targetsByYear, targetsWithoutStudies } from './studyFigures.ts';
import { targetsByChoice } from './targetsByChoice.ts';
import { targetsByRange } from './targetsByRange.ts';

export interface FigureEvidence {
  readonly analysis: FullAnalysis;
  readonly map: EvidenceMap;
  /** null where it has not been worked out. */
  readonly sweep: Sweep | null;
}

export interface CataloguedFigure {
  /** Part of the address; stays the same whatever the numbers are. */
  readonly slug: string;
  /** What the figure is of, whatever it finds. */
  readonly name: string;
  readonly figure: Figure;
  /** Which rows it shows. */
  readonly shown: string;
  /** Rows of the table that it could show and does not, with why; null where the caption says so. */
  readonly excluded: readonly ExcludedRow[] | null;
  /** What of the analysis it is drawn from: plain JSON, with every number of its words. */
  readonly part: object;
}

export interface MissingFigure {
  readonly slug: string;
  readonly name: string;
  readonly reason: string;
}

export interface FigureCatalogue {
  readonly figures: readonly CataloguedFigure[];
  readonly missing: readonly MissingFigure[];
}

/** What of the evidence a figure cannot do without, besides the analysis itself. */
export type FigureNeed = 'checks' | 'sweep';

interface Entry {
  readonly slug: string;
  readonly name: string;
  readonly needs?: FigureNeed;
  /** The figure, or why there is none. */
  readonly make: (evidence: FigureEvidence) => Omit<CataloguedFigure, 'slug' | 'name'> | string;
}

const BANDS = ['light', 'heavy', 'all'] as const;

const ENTRIES: readonly Entry[] = [
  ...BANDS.map((band) => ofBand('growth', 'Growth by reserve', band, showGrowth)),
  { slug: 'targets', name: 'Targets by repetitions possible', make: showTargets },
  { slug: 'strength', name: 'Strength by reserve and load', make: showStrength },
  ...(['untrained', 'trained'] as const).map((status) => ({
    slug: `recovery-${status}`,
    name: `Fatigue and recovery, ${status} people`,
    make: (evidence: FigureEvidence) => showRecovery(evidence, status),
  })),
  { slug: 'beyond-failure', name: 'Work beyond failure', make: showBeyondFailure },
  ...BANDS.map((band) => ofBand('forest', 'Study by study', band, showForest, 'checks')),
  ...BANDS.map((band) => ofBand('influence', 'The target without each study', band, showInfluence, 'checks')),
  ...BANDS.map((band) => ofBand('small-studies', 'Effects by precision', band, showSmallStudies, 'checks')),
  ...BANDS.map((band) => ofBand('by-year', 'The target year by year', band, showYears, 'checks')),
  { slug: 'evidence-map', name: 'Evidence map', make: showMap },
  ...(['light', 'heavy'] as const).map((band) => ({
    slug: `robustness-${band}`,
    name: `The target under other choices, ${BAND_LOOKS[band].name}`,
    needs: 'sweep' as const,
    make: (evidence: FigureEvidence) => showRobustness(evidence, band),
  })),
];

/** All figures that some analysis makes, and what they need. */
export const LISTED_FIGURES: readonly Pick<Entry, 'slug' | 'name' | 'needs'>[] = ENTRIES;

/** @param only slug of the one figure that is wanted */
export function listFigures(evidence: FigureEvidence, only?: string): FigureCatalogue {
  const figures: CataloguedFigure[] = [];
  const missing: MissingFigure[] = [];
  for (const { slug, name, make } of ENTRIES) {
    if (only !== undefined && slug !== only) continue;
    const made = make(evidence);
    if (typeof made === 'string') missing.push({ slug, name, reason: made });
    else figures.push({ slug, name, ...made });
  }
  return { figures, missing };
}

interface BandEvidence {
  readonly evidence: FigureEvidence;
  readonly name: BandName;
  readonly band: Band;
}

/** An entry for the loads that the settings make; a reason where they make others. */
function ofBand(
  stem: string,
  name: string,
  band: BandName,
  show: (of: BandEvidence) => ReturnType<Entry['make']>,
  needs?: FigureNeed,
): Entry {
  return {
    ...(needs ? { needs } : {}),
    slug: `${stem}-${band}`,
    name: `${name}, ${BAND_LOOKS[band].name}`,
    make: (evidence) => {
      const { bands, settings } = evidence.analysis;
      const found = Object.entries(bands).find(([key]) => key === band)?.[1];
      if (!found)
        return settings.split === null
          ? 'the analysis fits all loads together'
          : `the analysis splits loads at ${settings.split} % of 1RM`;
      if (found.failure) return found.failure.reason;
      return show({ evidence, name: band, band: found });
    },
  };
}

function showGrowth({ evidence: { analysis }, name, band }: BandEvidence) {
  const { settings, rows } = analysis;
  return {
    figure: growthByReserve(analysis, { band: name }),
    shown: describeRows(name, band, settings.split),
    excluded: rows.excluded,
    part: { settings, band },
  };
}

/** A figure of the checks of a band. */
function ofChecks(
  { evidence: { analysis }, name, band }: BandEvidence,
  show: (checks: BandChecks) => { readonly figure: Figure; readonly part: object } | string,
): ReturnType<Entry['make']> {
  const { settings, rows } = analysis;
  const checks = analysis.checks[name];
  if (!checks) return 'the checks of these loads were not made';
  const made = show(checks);
  if (typeof made === 'string') return made;
  const { title } = made.figure;
  const loads = BAND_LOOKS[name].name;
  const named = `${upperFirst(loads)}: ${lowerFirst(title)}`;
  return {
    figure: { ...made.figure, title: named, alternative: made.figure.alternative.replace(title, () => named) },
    shown: describeRows(name, band, settings.split),
    excluded: rows.excluded,
    part: { settings, ...made.part },
  };
}

function showForest(of: BandEvidence) {
  const { metric } = of.evidence.analysis.settings;
  return ofChecks(of, ({ deviations }) => ({
    figure: deviationsByStudy(deviations, of.name, metric),
    part: { deviations },
  }));
}

function showInfluence(of: BandEvidence) {
  const { target, studiedReserve } = of.band;
  return ofChecks(of, ({ influence }) =>
    influence.studies.some(({ targetWithout: { point, low } }) => point !== null && low !== null)
      ? {
          figure: targetsWithoutStudies(influence, target, studiedReserve?.high ?? 0, of.name),
          part: { target, studiedReserve, influence: influence.studies },
        }
      : 'there is no target without any one study',
  );
}

function showSmallStudies(of: BandEvidence) {
  const { metric } = of.evidence.analysis.settings;
  return ofChecks(of, ({ smallStudies }) => ({
    figure: smallStudyPattern(smallStudies, of.name, metric),
    part: { smallStudies },
  }));
}

function showYears(of: BandEvidence) {
  const { studiedReserve } = of.band;
  return ofChecks(of, ({ cumulative }) =>
    cumulative.some(({ target: { point, low } }) => point !== null && low !== null)
      ? {
          figure: targetsByYear(cumulative, studiedReserve?.high ?? 0, of.name),
          part: { studiedReserve, cumulative },
        }
      : 'no year gives a target',
  );
}

function showTargets({ analysis }: FigureEvidence) {
  const { settings, rows, bands, joint } = analysis;
  const targets = listTargets(analysis);
  if (targets.every(({ target: { point, low } }) => point === null || low === null))
    return targets[0]?.target.reason ?? 'there is no target';
  const all: readonly Band[] = Object.values(bands);
  const furthest = Math.max(...[...all, joint].flatMap(({ studiedReserve }) => studiedReserve?.high ?? []));
  return {
    figure: targetsByRange(targets, { ...settings, furthest }),
    shown: `The targets of ${settings.outcome} from ${rows.included} rows; near the split between light and heavy the fit of all loads together answers.`,
    excluded: rows.excluded,
    part: { settings, targets, furthest },
  };
}

function showStrength({ analysis: { strength, settings } }: FigureEvidence) {
  if (strength.failure) return strength.failure.reason;
  const { excluded, ...part } = strength;
  return {
    figure: strengthContrasts(strength, settings),
    shown: `The ${strength.rows} rows of ${strength.studies} studies that measured strength and state their load.`,
    excluded,
    part: { settings, strength: part },
  };
}

function showRecovery({ analysis }: FigureEvidence, status: FatigueByStatus['status']) {
  const { fatigue, settings } = analysis;
  const found = fatigue.byStatus.find((one) => one.status === status);
  if (!found) return `no row of ${status} people measured fatigue`;
  if (found.failure) return found.failure.reason;
  if (found.recovery.length === 0) return 'no reserve near failure was studied';
  const { inference: _inference, ...part } = found;
  return {
    figure: recoveryByHours(analysis, { status }),
    shown: `The ${found.rows} rows of ${found.studies} studies that measured fatigue in ${status} people.`,
    excluded: fatigue.excluded,
    part: { settings, fatigue: part },
  };
}

function showBeyondFailure({ analysis: { beyondFailure, settings } }: FigureEvidence) {
  if (beyondFailure.every(({ difference }) => difference === null))
    return beyondFailure[0]?.failure?.reason ?? 'no study compared work beyond failure with failure';
  return {
    figure: beyondFailureContrasts(beyondFailure, settings),
    shown:
      'Rows at reserve 0 of studies that had arms at failure and arms beyond it; all other rows are no part of it.',
    excluded: null,
    part: { settings, beyondFailure },
  };
}

function showMap({ map }: FigureEvidence) {
  if (map.places.length === 0) return `no arm that measured ${map.outcome} states load and reserve`;
  return {
    figure: evidenceMap(map),
    shown: `Arms that measured ${map.outcome} and state load and reserve, also those that are not in the fit.`,
    excluded: null,
    part: { map },
  };
}

function showRobustness({ analysis, sweep }: FigureEvidence, name: 'light' | 'heavy') {
  if (!sweep) return 'the other choices were not worked out';
  const { outcomes, ...summary } = sweep[name];
  if (summary.quantiles.length === 0) return `none of ${outcomes.length} combinations gives a target`;
  const levels = listSweepLevels(sweep[name]);
  const target = 'all' in analysis.bands ? null : analysis.bands[name].target;
  return {
    figure: targetsByChoice(name, sweep, levels, target?.point ?? null),
    shown: `The targets of ${outcomes.length} combinations of choices; each leaves out rows of its own.`,
    excluded: null,
    part: { settings: analysis.settings, target, combinations: outcomes.length, ...summary, levels },
  };
}

function describeRows(name: BandName, { rows, studies }: Band, split: number | null): string {
  const loads = {
    light: `loads below ${split} % of 1RM`,
    heavy: `loads of ${split} % of 1RM and more`,
    all: 'all loads',
  };
  return `The ${rows} rows of ${studies} studies with ${loads[name]}.`;
}

function upperFirst(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

function lowerFirst(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
}
