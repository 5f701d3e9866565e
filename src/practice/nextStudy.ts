/** What one more study would do to the answer, in words that promise nothing. */
import { type NextStudy, type NextStudyOfBand, planNextStudy } from '../model/plan/nextStudy.ts';
import type { PlannedStudy } from '../model/plan/plannedStudy.ts';
import type { UsualPeople } from '../model/plan/usualPeople.ts';
import { showTarget, type TargetInterval } from '../model/wholeRepetitions.ts';
import { LOAD_NAMES } from './loadNames.ts';

/**
 * Narrower by less is “not much”: a tenth of a repetition, in which intervals are told, and a tenth of the width
 * (common practice, no source).
 */
export const MUCH = { repetitions: 0.1, share: 0.1 } as const;

/** Per cent to which a share is told: expected widths are off by up to 4 (src/model/README.md). */
const ROUND = 5;

/** What stands where nothing can be foreseen: there may be no interval either, nor a curve. */
export const UNFORESEEN = 'The next study, though which one would change it most cannot be told from this table.';

/** What is said, and the studies that it is said of, in the order of the sentences. */
export interface StatedNextStudy {
  readonly words: string;
  readonly plans: readonly PlannedStudy[];
}

/** One sentence, or one for each band that has no width to be narrowed. */
export function stateNextStudy({ usual, bands }: NextStudy): StatedNextStudy {
  const [narrowest] = bands
    .flatMap(({ narrowing, left, ...band }) =>
      narrowing === null || left === null ? [] : [{ ...band, narrowing, left }],
    )
    .sort((a, b) => Number(isMuch(b)) - Number(isMuch(a)) || a.left - b.left);
  const openings = bands.filter(({ left }) => left === null);
  const said = [
    ...(narrowest ? [stateNarrowing(narrowest, usual, openings.length > 0)] : []),
    ...openings.map((opening) => stateOpening(opening, usual)),
  ];
  const plans = [...(narrowest ? [narrowest] : []), ...openings].map((band) => planNextStudy(usual, band));
  return { words: said.length > 0 ? said.join(' ') : UNFORESEEN, plans };
}

type Narrowing = NextStudyOfBand & { readonly narrowing: number; readonly left: number };

function isMuch({ narrowing, left }: Narrowing): boolean {
  return narrowing >= MUCH.repetitions && left <= 1 - MUCH.share;
}

/** @param isOne whether it is said of its own loads alone, since the others have no interval to be narrowed */
function stateNarrowing(best: Narrowing, usual: UsualPeople, isOne: boolean): string {
  const loads = LOAD_NAMES[best.band];
  const about = isOne ? `the interval for ${loads}` : 'an interval';
  const arms = isOne ? tellArms(best) : `${tellArms(best)} and ${best.band === 'all' ? 'any loads' : loads}`;
  const change = `${tellInterval(best.today)} would be expected to become ${tellExpected(best)}`;
  if (!isMuch(best))
    return `No single study of ${tellPeople(usual)} would be expected to narrow ${about} much: at best, with ${arms}, ${change}.`;
  const share = `${ROUND * Math.round((100 * (1 - best.left)) / ROUND)}\u00a0%`;
  return `One more study of ${tellPeople(usual)} would be expected to narrow ${about} most with ${arms}: ${change}, about ${share} narrower.`;
}

function stateOpening(best: NextStudyOfBand, usual: UsualPeople): string {
  const { today, band, after } = best;
  const study = `one more study of ${tellPeople(usual)} with ${tellArms(best)}`;
  if (today)
    return `With ${LOAD_NAMES[band]} the interval has no upper end today; with ${study} it would be expected to have one: ${tellExpected(best)}.`;
  return `With ${LOAD_NAMES[band]} there is no target today; with ${study} there would be one in about ${Math.round(100 * (1 - after.refused))} of 100 outcomes: ${tellExpected(best)}.`;
}

function tellPeople({ people, median }: UsualPeople): string {
  return `${people} people (the middle study here has ${Math.round(median ?? people)})`;
}

/** “arms at 0 and 4 in reserve” */
function tellArms({ reserves: [first, second] }: NextStudyOfBand): string {
  return `${first === second ? `both arms at ${first}` : `arms at ${first} and ${second}`} in reserve`;
}

/** “about 0.5 to 1.9”: what the site would then show, where the target and its ends come out as expected. */
function tellExpected({ after: { point, low, high } }: NextStudyOfBand): string {
  const words = tellInterval(point === null || low === null ? null : showTarget({ point, low, high }).shown);
  return words.replace(/^(?:at least )?/u, '$&about ');
}

function tellInterval(interval: TargetInterval | null): string {
  if (!interval) return 'none';
  const low = interval.low.toFixed(1);
  return interval.high === null ? `at least ${low}` : `${low} to ${interval.high.toFixed(1)}`;
}
