/** What the guide rings on the figures, at places that are read from the analysis. */
import { formatPlain, toShown } from '../../figures/format.ts';
import type { Spot } from '../../figures/pointOut.ts';
import { findBand } from '../../model/bands.ts';
import type { FittedRow } from '../../model/fittedRow.ts';
import type { Analysis, Band, BandName } from '../../model/result.ts';
import { LOAD_NAMES } from '../../practice/loadNames.ts';

export interface Ringed {
  /** Of which figure. */
  readonly band: BandName;
  readonly spots: readonly Spot[];
}

/** Rings on one figure: more are looked at no more. */
export const MOST_RINGS = 5;
/** A row as it is ringed, with a fit or without. */
export type RingedRow = Pick<FittedRow, 'study' | 'reserve' | 'effect' | 'load'>;

/** Loads in the order in which the guide follows one of their targets. */
const FOLLOWED = ['heavy', 'all', 'light'] as const satisfies readonly BandName[];

/** The band whose target the questions are about; null where none has one. */
export function followedBand({ bands }: Pick<Analysis, 'bands'>): { name: BandName; band: Band } | null {
  for (const name of FOLLOWED) {
    const band = findBand(bands, name);
    if (band && band.target.point !== null) return { name, band };
  }
  return null;
}

/** “heavy loads”, of the curve that the questions follow; empty where there is none. */
export function nameFollowed(analysis: Pick<Analysis, 'bands'>): string {
  const followed = followedBand(analysis);
  return followed ? LOAD_NAMES[followed.name] : '';
}

/** @param band whose figure is ringed, where not that whose target is followed */
export function ringRows(
  analysis: Analysis,
  what: string,
  pick: (rows: readonly FittedRow[]) => readonly RingedRow[],
  band: BandName = followedBand(analysis)?.name ?? 'all',
): Ringed {
  const rows = pick(findBand(analysis.bands, band)?.fitted ?? []).slice(0, MOST_RINGS);
  const spots = rows.map(({ study, reserve, effect }) => ({
    x: reserve,
    y: toShown(effect, analysis.settings.metric),
    words: `${what}, ${study} at reserve ${formatPlain(reserve)}`,
  }));
  return { band, spots };
}

/** The rows of a study, in the figure that is followed. */
export function ringStudy(analysis: Analysis, name: string | null): Ringed {
  return ringRows(analysis, 'the study', (rows) => rows.filter(({ study }) => study === name));
}

/** The curve that is followed, at reserve 0 or at the largest reserve studied. */
export function curveAt(analysis: Analysis, where: 'start' | 'end', words: string): Ringed {
  const followed = followedBand(analysis);
  const point = followed?.band.curvePoints.at(where === 'start' ? 0 : -1);
  if (!followed || !point) return { band: 'all', spots: [] };
  const y = toShown(point.estimate, analysis.settings.metric);
  return { band: followed.name, spots: [{ x: point.reserve, y, words }] };
}

/** The target that is followed, on its curve. */
export function ringTarget(analysis: Analysis): Ringed {
  const followed = followedBand(analysis);
  const target = followed?.band.target.point ?? null;
  if (!followed || target === null) return { band: 'all', spots: [] };
  // The nearest of the points that are drawn: an eighth of a repetition off at most.
  const points = followed.band.curvePoints;
  const point = points.find(({ reserve }) => reserve >= target) ?? points.at(-1);
  const y = toShown(point?.estimate ?? 0, analysis.settings.metric);
  return { band: followed.name, spots: [{ x: target, y, words: 'the target' }] };
}
