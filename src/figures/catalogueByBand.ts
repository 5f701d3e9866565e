/**
 * Entries of the catalogue that are drawn of light, of heavy, or of all loads. Each `show…` gives the
 * figure of one such band that was fitted, or why there is none.
 */

import { findBand } from '../model/bands.ts';
import type { BandChecks } from '../model/full.ts';
import type { Band, BandName } from '../model/result.ts';
import { countOf, countStudies } from '../numerics/countOf.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';
import type { CatalogueEntry, FigureEvidence, FigureNeed, MadeFigure } from './catalogueEntry.ts';
import { deviationsByStudy } from './deviationsByStudy.ts';
import type { Figure } from './figure.ts';
import { lowerFirst, upperFirst } from './firstLetter.ts';
import { growthByReserve } from './growthByReserve.ts';
import { titleNewStudy } from './growthWords.ts';
import { smallStudyPattern } from './smallStudyPattern.ts';
import { targetsByYear } from './targetsByYear.ts';
import { targetsWithoutStudies } from './targetsWithoutStudies.ts';

interface BandEvidence {
  readonly evidence: FigureEvidence;
  readonly name: BandName;
  readonly band: Band;
}

/** An entry for the loads that the settings make; a reason where they make others. */
export function ofBand(
  stem: string,
  name: string,
  band: BandName,
  show: (of: BandEvidence) => MadeFigure | string,
  needs?: FigureNeed,
): CatalogueEntry {
  return {
    ...(needs ? { needs } : {}),
    slug: `${stem}-${band}`,
    name: `${name}, ${LOAD_NAMES[band]}`,
    make: (evidence) => {
      const { bands, settings } = evidence.analysis;
      const found = findBand(bands, band);
      if (!found)
        return settings.split === null
          ? 'the analysis fits all loads together'
          : `the analysis splits loads at ${settings.split}\u00a0% of 1RM`;
      if (found.failure) return found.failure.reason;
      return show({ evidence, name: band, band: found });
    },
  };
}

export function showGrowth({ evidence: { analysis }, name, band }: BandEvidence) {
  const { settings, rows } = analysis;
  return {
    figure: growthByReserve(analysis, { band: name }),
    shown: stateRows(name, band, settings.split),
    excluded: rows.excluded,
    part: { settings, band },
  };
}

/** The same with where a new study would lie, which is its finding. */
export function showNewStudy(of: BandEvidence): MadeFigure | string {
  const { analysis } = of.evidence;
  const title = titleNewStudy(analysis, of.band, of.name);
  if (title === null) return 'this weighting estimates no spread between studies, which a new one is drawn from';
  const figure = growthByReserve(analysis, { band: of.name, showsNewStudy: true });
  return {
    ...showGrowth(of),
    part: { settings: analysis.settings, band: of.band, atFailure: of.band.curvePoints[0] },
    figure: { ...figure, title, alternative: figure.alternative.replace(figure.title, () => title) },
  };
}

/** A figure of the checks of a band. */
function ofChecks(
  { evidence: { analysis }, name, band }: BandEvidence,
  show: (checks: BandChecks) => { readonly figure: Figure; readonly part: object } | string,
): MadeFigure | string {
  const { settings, rows } = analysis;
  const checks = analysis.checks[name];
  if (!checks) return 'the checks of these loads were not made';
  const made = show(checks);
  if (typeof made === 'string') return made;
  const { title } = made.figure;
  const loads = LOAD_NAMES[name];
  const named = `${upperFirst(loads)}: ${lowerFirst(title)}`;
  return {
    figure: { ...made.figure, title: named, alternative: made.figure.alternative.replace(title, () => named) },
    shown: stateRows(name, band, settings.split),
    excluded: rows.excluded,
    part: { settings, ...made.part },
  };
}

export function showForest(of: BandEvidence) {
  const { settings } = of.evidence.analysis;
  return ofChecks(of, ({ deviations }) => ({
    figure: deviationsByStudy(deviations, of.name, settings),
    part: { deviations },
  }));
}

export function showInfluence(of: BandEvidence) {
  const { target, studiedReserve } = of.band;
  return ofChecks(of, ({ influence }) =>
    influence.studies.some(({ targetWithout: { point, low } }) => point !== null && low !== null)
      ? {
          figure: targetsWithoutStudies(influence, target, studiedReserve?.high ?? 0, of.name),
          part: { target, studiedReserve, influence: influence.studies },
        }
      : 'whichever study is left out, there is no target',
  );
}

export function showSmallStudies(of: BandEvidence) {
  const { metric } = of.evidence.analysis.settings;
  return ofChecks(of, ({ smallStudies }) => ({
    figure: smallStudyPattern(smallStudies, of.name, metric),
    part: { smallStudies },
  }));
}

export function showYears(of: BandEvidence) {
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

function stateRows(name: BandName, { rows, studies }: Band, split: number | null): string {
  const loads = {
    light: `loads below ${split}\u00a0% of 1RM`,
    heavy: `loads of ${split}\u00a0% of 1RM and more`,
    all: LOAD_NAMES.all,
  };
  return `The ${countOf(rows, 'row')} of ${countStudies(studies)} with ${loads[name]}.`;
}
