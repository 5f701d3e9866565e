/**
 * Every figure of an analysis, each under a name that stays: the part of an address. A figure that the
 * analysis cannot make is listed with the reason.
 */
import { LOAD_NAMES } from '../practice/loadNames.ts';
import {
  ofBand,
  showForest,
  showGrowth,
  showInfluence,
  showNewStudy,
  showSmallStudies,
  showYears,
} from './catalogueByBand.ts';
import type { CataloguedFigure, CatalogueEntry, FigureEvidence } from './catalogueEntry.ts';
import {
  showBeyondFailure,
  showMap,
  showRecovery,
  showRobustness,
  showStrength,
  showTargets,
} from './catalogueOfWhole.ts';

export type { CataloguedFigure, FigureEvidence } from './catalogueEntry.ts';

export interface MissingFigure {
  readonly slug: string;
  readonly name: string;
  readonly reason: string;
}

export interface FigureCatalogue {
  readonly figures: readonly CataloguedFigure[];
  readonly missing: readonly MissingFigure[];
}

const BANDS = ['light', 'heavy', 'all'] as const;

const ENTRIES: readonly CatalogueEntry[] = [
  ...BANDS.map((band) => ofBand('growth', 'Growth by reserve', band, showGrowth)),
  ...BANDS.map((band) => ofBand('new-study', 'Where a new study would lie', band, showNewStudy)),
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
    name: `The target under other choices, ${LOAD_NAMES[band]}`,
    needs: 'sweep' as const,
    make: (evidence: FigureEvidence) => showRobustness(evidence, band),
  })),
];

/** All figures that some analysis makes, and what they need. */
export const LISTED_FIGURES: readonly Pick<CatalogueEntry, 'slug' | 'name' | 'needs'>[] = ENTRIES;

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
