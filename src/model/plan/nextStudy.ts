/**
 * The one study that is expected to narrow an answer most: two arms on any whole reserves of one band, different
 * people in each, as many as a study of the table usually has.
 *
 * Bands are set beside one another by what is left of the width, since a tenth of a repetition is much of a narrow
 * interval and little of a wide one. Where there is no width to be narrowed, the study is looked for that gives the
 * interval an upper end, or a target where there is none; there one arm is at failure.
 */
import type { BandName } from '../result.ts';
import type { TargetInterval } from '../wholeRepetitions.ts';
import { findBestPlacement } from './bestPlacement.ts';
import type { ExpectedTarget } from './expectedTarget.ts';
import { mapGains } from './mapGains.ts';
import { type PlannedStudy, planStudy } from './plannedStudy.ts';
import type { Planning, PlanningBand } from './planningBase.ts';
import { findUsualPeople, type UsualPeople } from './usualPeople.ts';

/** What the best study of a band would do. */
export interface NextStudyOfBand {
  readonly band: BandName;
  /** The interval as the site shows it today; null without a target. */
  readonly today: TargetInterval | null;
  /** Reserves of its two arms, repetitions, the smaller first. */
  readonly reserves: readonly [number, number];
  /** The target expected with it, in more than half of the outcomes. */
  readonly after: ExpectedTarget;
  /** Repetitions by which the interval gets narrower; null where there is no width today. */
  readonly narrowing: number | null;
  /** What is left of the width of today, 1 for all of it; null with `narrowing`. */
  readonly left: number | null;
}

export interface NextStudy {
  readonly usual: UsualPeople;
  /** Bands of which a best study can be said, in the order of the table's bands. */
  readonly bands: readonly NextStudyOfBand[];
}

const ARMS = 2;
const AS_USUAL = { weeks: null, measure: null, coefficientOfVariation: null, correlation: null } as const;

export function findNextStudy(planning: Planning): NextStudy {
  const usual = findUsualPeople(planning);
  return { usual, bands: planning.bands.flatMap((band) => findOfBand(planning, band, usual.people) ?? []) };
}

/** The study that is said of a band, as a plan. */
export function planNextStudy({ people }: UsualPeople, { band, reserves }: NextStudyOfBand): PlannedStudy {
  const each = Math.floor(people / ARMS);
  return planStudy(
    'parallel',
    reserves.map((reserve) => ({ reserve, load: band, people: each })),
  );
}

function findOfBand(planning: Planning, band: PlanningBand, people: number): NextStudyOfBand | null {
  const { shown } = band.target;
  if (!band.scatter) return null;
  if (shown && shown.high !== null) return findNarrowest(planning, band.name, people, shown);
  return findOpening(planning, band.name, people, shown);
}

function findNarrowest(
  planning: Planning,
  name: BandName,
  people: number,
  today: TargetInterval,
): NextStudyOfBand | null {
  const question = { design: 'parallel', arms: ARMS, people, band: name, furthest: null, study: AS_USUAL } as const;
  const [best] = findBestPlacement(planning, question, 1).best;
  if (!best) return null;
  const [first, second] = best.plan.arms.map(({ reserve }) => reserve).sort((a, b) => a - b);
  const { narrowing, left } = best;
  return { band: name, today, reserves: [first, second], after: best.bands[0].after, narrowing, left };
}

/** Of the arms beside failure the one that gives a target most often, and of these the narrowest interval. */
function findOpening(
  planning: Planning,
  name: BandName,
  people: number,
  today: TargetInterval | null,
): NextStudyOfBand | null {
  const widthOf = ({ width }: ExpectedTarget) => width ?? Number.POSITIVE_INFINITY;
  const [best] = mapGains(planning, name, people)
    .cells.flatMap(({ reserve, after }) => {
      const gives = after && (today ? after.width !== null : after.point !== null);
      return gives ? [{ reserve: reserve[0], after }] : [];
    })
    .sort((a, b) => a.after.refused - b.after.refused || widthOf(a.after) - widthOf(b.after));
  return best
    ? { band: name, today, reserves: [0, best.reserve], after: best.after, narrowing: null, left: null }
    : null;
}
