/**
 * Learning by changing one thing: a sequence of steps, each of which asks what a change will do before it is made. What
 * is ringed, and whether a step says anything of the table at hand, is read from the analysis before the change.
 */

import { findBand, listBands } from '../../model/bands.ts';
import type { FittedRow } from '../../model/fittedRow.ts';
import type { Analysis, Band } from '../../model/result.ts';
import type { Settings } from '../../model/settings.ts';
import { listFirst } from '../../numerics/countOf.ts';
import { LOAD_NAMES } from '../../practice/loadNames.ts';
import type { FilterOptions } from '../analysis/filterOptions.ts';
import { SPLIT } from './controlList.ts';
import { curveAt, followedBand, type Ringed, ringRows, ringStudy, ringTarget } from './guideRings.ts';

/** The table at hand, as a step begins: the analysis of its settings, and what the table offers to choose by. */
export interface GuideContext {
  readonly analysis: Analysis;
  readonly options: FilterOptions;
}

export interface GuideStep {
  readonly title: string;
  /** What is changed, and what to look at. */
  readonly look: string;
  /** What is asked of it: where the target goes, or how wide its interval becomes. */
  readonly asks: 'target' | 'width';
  /** What the change shows. */
  readonly lesson: string;
  /** Settings that the question starts from, from those the guide was begun with. */
  readonly base: (start: Settings) => Settings;
  /** The one change. */
  readonly change: (context: GuideContext) => Settings;
  /** Why the change says nothing of this table; null where it does. */
  readonly whyNot: (context: GuideContext) => string | null;
  /** What to look at before the change. */
  readonly rings: (context: GuideContext) => Ringed;
}

/** Bases of reserve that measured it. */
const MEASURED = ['reported', 'velocity-loss'] as const;
/** Points of per cent of 1RM by which the split is moved. */
const SPLIT_STEP = 10;
/** A row below this reserve, repetitions, is near failure. */
const NEAR = 1;

const asItIs = (start: Settings): Settings => start;
const mixed = (start: Settings): Settings => ({ ...start, weighting: 'mixed' });
const precision = (start: Settings): Settings => ({ ...start, weighting: 'precision' });

export const GUIDE_STEPS: readonly GuideStep[] = [
  {
    title: 'Count every row alike',
    look: 'Ringed is the row that counts most. Now every row is to count alike: a study of eight people like one of eighty.',
    asks: 'target',
    lesson: 'The marks are now of one size. A target that moves was resting on few rows.',
    base: (start) => (start.weighting === 'equal' ? mixed(start) : start),
    change: ({ analysis }) => ({ ...analysis.settings, weighting: 'equal' }),
    whyNot: () => null,
    rings: ({ analysis }) =>
      ringRows(analysis, 'the row that counts most', (rows) => most(rows, ({ weight }) => weight)),
  },
  {
    title: 'Count by precision',
    look: 'Ringed is the row that was measured most exactly. Now each row is to count by that, and by nothing else.',
    asks: 'width',
    lesson: 'Look at which marks grew: the most exact rows now decide.',
    base: (start) => (start.weighting === 'precision' ? mixed(start) : start),
    change: ({ analysis }) => precision(analysis.settings),
    whyNot: () => null,
    rings: ({ analysis }) =>
      ringRows(analysis, 'the row that was measured most exactly', (rows) =>
        most(rows, ({ standardError }) => -standardError),
      ),
  },
  {
    title: 'Take out the study that counts most',
    look: 'Rows count by precision. Ringed is the study that counts most then. Now it is left out.',
    asks: 'target',
    lesson: 'If the target moves far, one study had been speaking for all.',
    base: precision,
    change: ({ analysis }) => withoutStudy(analysis.settings, mostPrecise(analysis)),
    whyNot: ({ analysis }) => refuseLoneStudy(analysis),
    rings: ({ analysis }) => ringStudy(analysis, mostPrecise(analysis)),
  },
  {
    title: 'Let studies differ',
    look: 'Rows count by precision still. The mixed model knows that studies differ by more than their own error, and shares the weight out. Ringed is the curve where it is farthest from failure.',
    asks: 'width',
    lesson: 'No few rows decide any more, and the interval is as wide as the studies disagree.',
    base: precision,
    change: ({ analysis }) => mixed(analysis.settings),
    whyNot: ({ analysis }) => refuseLoneStudy(analysis),
    rings: ({ analysis }) => curveAt(analysis, 'end', 'the curve where it is farthest from failure'),
  },
  {
    title: 'Straighten or bend',
    look: 'Ringed is the curve near failure. A straight line loses as much with the tenth repetition left as with the first; the flexible curve need not. Now the one takes the place of the other.',
    asks: 'width',
    lesson:
      'A line takes its shape as known, the flexible curve finds it. Which is right the table does not say; the page Learn shows what a wrong shape costs.',
    base: mixed,
    change: ({ analysis: { settings } }) => ({ ...settings, curve: settings.curve === 'line' ? 'flexible' : 'line' }),
    whyNot: ({ analysis }) =>
      analysis.settings.curve !== 'log' && listBands(analysis.bands).every(([, band]) => hasTwoReserves(band))
        ? 'Only two different reserves were studied here: no curve but a straight line can be told from these rows.'
        : null,
    rings: ({ analysis }) => curveAt(analysis, 'start', 'the curve near failure'),
  },
  {
    title: 'Move the split',
    look: 'Ringed are rows whose loads stand just above the split. It is moved up by ten points, and they change from heavy to light.',
    asks: 'target',
    lesson: 'A target that jumps was resting on where the split stands.',
    base: asItIs,
    change: ({ analysis: { settings } }) => ({ ...settings, split: movedSplit(settings) }),
    whyNot: ({ analysis }) => {
      const { split } = analysis.settings;
      if (split === null) return 'Loads are fitted together here: there is no split to move.';
      if (movedSplit(analysis.settings) === split) return 'The split stands as high as it goes.';
      return changingSides(analysis).length === 0
        ? `No row has a load from ${split} to ${movedSplit(analysis.settings)}\u00a0%: none would change sides.`
        : null;
    },
    rings: ({ analysis }) =>
      ringRows(analysis, 'rows that change from heavy to light', () => changingSides(analysis), 'heavy'),
  },
  {
    title: 'Leave out one study',
    look: 'Ringed is the study that stands furthest from the curve near failure. Now it is left out.',
    asks: 'target',
    lesson: 'See the panel “Without each study” for all of them.',
    base: mixed,
    change: ({ analysis }) => withoutStudy(analysis.settings, mostExtreme(analysis)),
    whyNot: ({ analysis }) =>
      refuseLoneStudy(analysis) ??
      (mostExtreme(analysis) === null
        ? 'No row that is fitted was near failure, so that none stands out there.'
        : null),
    rings: ({ analysis }) => ringStudy(analysis, mostExtreme(analysis)),
  },
  {
    title: 'Doubt the reserve',
    look: 'Ringed is the target. Now only studies that measured reserve are to count, by asking or by the slowing of the bar.',
    asks: 'width',
    lesson:
      'Left are the rows that measured it. The panel “Reserve known with error” shows what not knowing does to the slope.',
    base: asItIs,
    change: ({ analysis: { settings } }) => ({
      ...settings,
      include: { ...settings.include, reserveBasis: [...MEASURED] },
    }),
    whyNot: ({ analysis: { settings }, options: { reserveBasis } }) => {
      const isMeasured = (word: string) => MEASURED.some((one) => one === word);
      const kept = settings.include.reserveBasis.length > 0 ? settings.include.reserveBasis : reserveBasis;
      if (!reserveBasis.some(isMeasured)) return 'No study of this table says that it measured reserve.';
      return kept.every(isMeasured) ? 'Only studies that measured reserve count already.' : null;
    },
    rings: ({ analysis }) => ringTarget(analysis),
  },
];

/** “heavy loads”, of the curve that the questions follow. */
export function nameFollowed(analysis: Analysis): string {
  const followed = followedBand(analysis);
  return followed ? LOAD_NAMES[followed.name] : '';
}

/** Why no step can be asked of these settings; null where one can. */
export function refuseGuide(analysis: Analysis): string | null {
  if (followedBand(analysis)) return null;
  const reasons = listBands(analysis.bands).map(([, { failure, target }]) => failure?.reason ?? target.reason ?? '');
  return `There is no target here to follow: ${listFirst([...new Set(reasons)], 2)}.`;
}

/** True where line and flexible curve are one, whatever else is fitted. */
function hasTwoReserves({ fitted }: Band): boolean {
  return new Set(fitted.map(({ reserve }) => reserve)).size < 3;
}

/** With one study left there is nothing to compare studies by. */
function refuseLoneStudy(analysis: Analysis): string | null {
  const studies = new Set(listBands(analysis.bands).flatMap(([, { fitted }]) => fitted.map(({ study }) => study)));
  return studies.size > 1 ? null : 'There is only one study here.';
}

/** Those that the reader left out stay out: a step changes one thing. */
function withoutStudy({ include, ...settings }: Settings, study: string | null): Settings {
  const more = study === null ? [] : [study];
  return { ...settings, include: { ...include, withoutStudies: [...include.withoutStudies, ...more] } };
}

/** Study with the largest sum of 1/v, which is what precision weighs by. */
function mostPrecise(analysis: Analysis): string | null {
  const sums = new Map<string, number>();
  for (const { study, standardError } of listBands(analysis.bands).flatMap(([, band]) => band.fitted))
    sums.set(study, (sums.get(study) ?? 0) + standardError ** -2);
  return [...sums].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;
}

/** Study of the row near failure that lies furthest from the growth fitted there, by the curve that is followed. */
function mostExtreme(analysis: Analysis): string | null {
  const band = followedBand(analysis)?.band;
  const growth = band?.atFailure?.estimate ?? 0;
  const near = (band?.fitted ?? []).filter(({ reserve }) => reserve < NEAR);
  return most(near, ({ effect }) => Math.abs(effect - growth))[0]?.study ?? null;
}

function movedSplit({ split }: Settings): number | null {
  return split === null ? null : Math.min(SPLIT.max, split + SPLIT_STEP);
}

/** Heavy rows that a moved split makes light. */
function changingSides({ bands, settings }: Analysis): readonly FittedRow[] {
  const to = movedSplit(settings) ?? 0;
  return (findBand(bands, 'heavy')?.fitted ?? []).filter(({ load }) => load !== null && load < to);
}

function most(rows: readonly FittedRow[], by: (row: FittedRow) => number): readonly FittedRow[] {
  return [...rows].sort((a, b) => by(b) - by(a)).slice(0, 1);
}
