/** What the guided steps take up, from settings and an analysis: rows, studies, and where a change goes. */
import { findBand, listBands } from '../../model/bands.ts';
import type { FittedRow } from '../../model/fittedRow.ts';
import type { Analysis } from '../../model/result.ts';
import type { Curve, Settings } from '../../model/settings.ts';
import { SPLIT } from './controlList.ts';
import { followedBand, type RingedRow } from './guideRings.ts';

/** Bases of reserve that measured it, and how. */
export const MEASURED_BY = { reported: 'by asking', 'velocity-loss': 'by the slowing of the bar' } as const;
const MEASURED = ['reported', 'velocity-loss'] as const satisfies readonly (keyof typeof MEASURED_BY)[];
/** Points of per cent of 1RM by which the split is moved. */
const SPLIT_STEP = 10;
/** A row below this reserve, repetitions, is near failure. */
const NEAR = 1;

/** True where line and flexible curve are one, with the loads that are followed. */
export function hasTwoReserves(analysis: Analysis): boolean {
  return new Set(followedBand(analysis)?.band.fitted.map(({ reserve }) => reserve)).size < 3;
}

/** Shape that a line gives place to, or that comes in the place of another: with three reserves a parabola is the flexible curve. */
export function otherShape(analysis: Analysis): Curve {
  if (analysis.settings.curve !== 'line') return 'line';
  return followedBand(analysis)?.band.curves.some(({ curve }) => curve === 'flexible') ? 'flexible' : 'quadratic';
}

/** Bases that measured reserve, of those that the reader’s filter keeps: what was filtered out stays out. */
export function keptMeasured({ include: { reserveBasis } }: Settings) {
  return MEASURED.filter((basis) => reserveBasis.length === 0 || reserveBasis.includes(basis));
}

/** True of a word of a table that stands for measured reserve. */
export function isMeasured(word: string): boolean {
  return MEASURED.some((one) => one === word);
}

/** With one study left there is nothing to compare studies by. */
export function refuseLoneStudy(analysis: Analysis): string | null {
  const studies = new Set(listBands(analysis.bands).flatMap(([, { fitted }]) => fitted.map(({ study }) => study)));
  return studies.size > 1 ? null : 'There is only one study here.';
}

/** Those that the reader left out stay out: a step changes one thing. */
export function withoutStudy({ include, ...settings }: Settings, study: string | null): Settings {
  const more = study === null ? [] : [study];
  return { ...settings, include: { ...include, withoutStudies: [...include.withoutStudies, ...more] } };
}

/** Study with the largest sum of 1/v, which is what precision weighs by, with the loads that are followed. */
export function mostPrecise(analysis: Analysis): string | null {
  const sums = new Map<string, number>();
  for (const { study, standardError } of followedBand(analysis)?.band.fitted ?? [])
    sums.set(study, (sums.get(study) ?? 0) + standardError ** -2);
  return [...sums].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;
}

/** Study of the row near failure that lies furthest from the growth fitted there, by the curve that is followed. */
export function mostExtreme(analysis: Analysis): string | null {
  const band = followedBand(analysis)?.band;
  const growth = band?.atFailure?.estimate ?? 0;
  const near = (band?.fitted ?? []).filter(({ reserve }) => reserve < NEAR);
  return most(near, ({ effect }) => Math.abs(effect - growth))[0]?.study ?? null;
}

/** Never down: an address may have it above where its control ends. */
export function movedSplit({ split }: Settings): number | null {
  return split === null ? null : Math.max(split, Math.min(SPLIT.max, split + SPLIT_STEP));
}

/** “60 to below 70 %”: loads that a moved split makes light. */
export function sidesMoved(settings: Settings): string {
  return `${settings.split} to below ${movedSplit(settings)}\u00a0%`;
}

/** Heavy rows that a moved split makes light, whether there is a fit of them or not. */
export function changingSides({ bands, settings }: Analysis): readonly RingedRow[] {
  const to = movedSplit(settings) ?? 0;
  const heavy = findBand(bands, 'heavy');
  return [...(heavy?.fitted ?? []), ...(heavy?.unfitted ?? [])].filter(({ load }) => load !== null && load < to);
}

/** The row that has most of something; none of none. */
export function most(rows: readonly FittedRow[], by: (row: FittedRow) => number): readonly FittedRow[] {
  return [...rows].sort((a, b) => by(b) - by(a)).slice(0, 1);
}
