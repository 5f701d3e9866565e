/**
 * Learning by changing one thing: a sequence of steps, each of which asks what a change will do before it is made. What
 * is ringed, and whether a step says anything of the table at hand, is read from the analysis before the change.
 */

import { listBands } from '../../model/bands.ts';
import type { Analysis } from '../../model/result.ts';
import type { Settings } from '../../model/settings.ts';
import { listFirst } from '../../numerics/countOf.ts';
import type { FilterOptions } from '../analysis/filterOptions.ts';
import {
  changingSides,
  hasTwoReserves,
  isMeasured,
  keptMeasured,
  MEASURED_BY,
  most,
  mostExtreme,
  mostPrecise,
  movedSplit,
  otherShape,
  refuseLoneStudy,
  sidesMoved,
  withoutStudy,
} from './guidePicks.ts';
import {
  curveAt,
  followedBand,
  MOST_RINGS,
  nameFollowed,
  type Ringed,
  ringRows,
  ringStudy,
  ringTarget,
} from './guideRings.ts';
import { askOfShape, type FollowedChange, teachPrecision, teachShape, teachSharing } from './guideWords.ts';

/** The table at hand, as a step begins: the analysis of its settings, and what the table offers to choose by. */
export interface GuideContext {
  readonly analysis: Analysis;
  readonly options: FilterOptions;
}

export interface GuideStep {
  readonly title: string;
  /** What is changed, and what to look at. */
  readonly look: (context: GuideContext) => string;
  /** What is asked of it: where the target goes, or how wide its interval becomes. */
  readonly asks: 'target' | 'width';
  /** What the change shows, where there is a curve to follow after it. */
  readonly lesson: (change: FollowedChange) => string;
  /** Settings that the question starts from, from those the guide was begun with. */
  readonly base: (start: Settings) => Settings;
  /** The one change. */
  readonly change: (context: GuideContext) => Settings;
  /** Why the change says nothing of this table; null where it does. */
  readonly whyNot: (context: GuideContext) => string | null;
  /** What to look at before the change. */
  readonly rings: (context: GuideContext) => Ringed;
}

const asItIs = (start: Settings): Settings => start;
const mixed = (start: Settings): Settings => ({ ...start, weighting: 'mixed' });
const precision = (start: Settings): Settings => ({ ...start, weighting: 'precision' });

export const GUIDE_STEPS: readonly GuideStep[] = [
  {
    title: 'Count every row alike',
    look: () =>
      'Ringed is the row that counts most. Now every row is to count alike: a study of eight people like one of eighty.',
    asks: 'target',
    lesson: () => 'The marks are now of one size. A target that moves was resting on how much each row counts.',
    base: (start) => (start.weighting === 'equal' ? mixed(start) : start),
    change: ({ analysis }) => ({ ...analysis.settings, weighting: 'equal' }),
    whyNot: () => null,
    rings: ({ analysis }) =>
      ringRows(analysis, 'the row that counts most', (rows) => most(rows, ({ weight }) => weight)),
  },
  {
    title: 'Count by precision',
    look: () =>
      'Ringed is the row that was measured most exactly. Now each row is to count by that, and by nothing else.',
    asks: 'width',
    lesson: teachPrecision,
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
    look: () => 'Rows count by precision. Ringed is the study that counts most then. Now it is left out.',
    asks: 'target',
    lesson: () => 'If the target moves far, one study had been speaking for all.',
    base: precision,
    change: ({ analysis }) => withoutStudy(analysis.settings, mostPrecise(analysis)),
    whyNot: ({ analysis }) => refuseLoneStudy(analysis),
    rings: ({ analysis }) => ringStudy(analysis, mostPrecise(analysis)),
  },
  {
    title: 'Let studies differ',
    look: () =>
      'Rows count by precision still. The mixed model asks by how much studies differ beyond their own error, and shares the weight out by that. Ringed is the curve where it is farthest from failure.',
    asks: 'width',
    lesson: teachSharing,
    base: precision,
    change: ({ analysis }) => mixed(analysis.settings),
    whyNot: ({ analysis }) => refuseLoneStudy(analysis),
    rings: ({ analysis }) => curveAt(analysis, 'end', 'the curve where it is farthest from failure'),
  },
  {
    title: 'Straighten or bend',
    look: ({ analysis }) =>
      askOfShape(followedBand(analysis)?.band.curve ?? analysis.settings.curve, otherShape(analysis)),
    asks: 'width',
    lesson: teachShape,
    base: mixed,
    change: ({ analysis: { settings } }) => ({ ...settings, curve: settings.curve === 'line' ? 'flexible' : 'line' }),
    whyNot: ({ analysis }) =>
      analysis.settings.curve !== 'log' && hasTwoReserves(analysis)
        ? `Only two different reserves were studied with ${nameFollowed(analysis)}: no curve but a straight line can be told from these rows.`
        : null,
    rings: ({ analysis }) => curveAt(analysis, 'start', 'the curve near failure'),
  },
  {
    title: 'Move the split',
    look: ({ analysis: { settings } }) =>
      `Ringed is what was lifted at ${sidesMoved(settings)} of 1RM, ${MOST_RINGS} rows at most. The split is moved up to ${movedSplit(settings)}\u00a0%, and rows with such loads change from heavy to light.`,
    asks: 'target',
    lesson: () => 'A target that jumps was resting on where the split stands.',
    base: asItIs,
    change: ({ analysis: { settings } }) => ({ ...settings, split: movedSplit(settings) }),
    whyNot: ({ analysis }) => {
      const { split } = analysis.settings;
      if (split === null) return 'Loads are fitted together here: there is no split to move.';
      if (movedSplit(analysis.settings) === split) return 'The split stands as high as it goes.';
      return changingSides(analysis).length === 0
        ? `No row that counts here was lifted at ${sidesMoved(analysis.settings)}: none would change sides.`
        : null;
    },
    rings: ({ analysis }) =>
      ringRows(analysis, 'rows that change from heavy to light', () => changingSides(analysis), 'heavy'),
  },
  {
    title: 'Leave out one study',
    look: () =>
      'Of the rows near failure, one lies furthest from where the curve starts. Ringed is its study. Now it is left out.',
    asks: 'target',
    lesson: () => 'The panel “Without each study” does so with each of the others.',
    base: mixed,
    change: ({ analysis }) => withoutStudy(analysis.settings, mostExtreme(analysis)),
    whyNot: ({ analysis }) =>
      refuseLoneStudy(analysis) ??
      (mostExtreme(analysis) === null
        ? `No row that is fitted was near failure with ${nameFollowed(analysis)}, so that none stands out there.`
        : null),
    rings: ({ analysis }) => ringStudy(analysis, mostExtreme(analysis)),
  },
  {
    title: 'Doubt the reserve',
    look: ({ analysis }) =>
      `Ringed is the target. Now only studies that measured reserve are to count, ${keptMeasured(analysis.settings)
        .map((basis) => MEASURED_BY[basis])
        .join(' or ')}.`,
    asks: 'width',
    lesson: () =>
      'Left are the rows that measured it. The panel “Reserve known with error” shows what not knowing does to the slope.',
    base: asItIs,
    change: ({ analysis: { settings } }) => ({
      ...settings,
      include: { ...settings.include, reserveBasis: keptMeasured(settings) },
    }),
    whyNot: ({ analysis: { settings }, options: { reserveBasis } }) => {
      const filter = settings.include.reserveBasis;
      if (!reserveBasis.some(isMeasured)) return 'No study of this table says that it measured reserve.';
      if (!keptMeasured(settings).some((basis) => reserveBasis.includes(basis)))
        return 'The filter of how reserve was known leaves no study that measured it.';
      // Rows that do not say how they knew it count without a filter.
      if (filter.length === 0)
        return reserveBasis.every(isMeasured) ? 'Every study that says how it knew reserve measured it.' : null;
      return filter.every(isMeasured) ? 'Only studies that measured reserve count already.' : null;
    },
    rings: ({ analysis }) => ringTarget(analysis),
  },
];

/** What a step asks, whole. */
export function stateQuestion({ look, asks }: Pick<GuideStep, 'look' | 'asks'>, context: GuideContext): string {
  const loads = nameFollowed(context.analysis);
  return `${look(context)} ${
    asks === 'target'
      ? `Where will the target with ${loads} go?`
      : `How wide will the interval of the target with ${loads} become?`
  }`;
}

/** Why no step can be asked of these settings; null where one can. */
export function refuseGuide(analysis: Analysis): string | null {
  if (followedBand(analysis)) return null;
  const reasons = listBands(analysis.bands).map(([, { failure, target }]) => failure?.reason ?? target.reason ?? '');
  return `There is no target here to follow: ${listFirst([...new Set(reasons)], 2)}.`;
}
