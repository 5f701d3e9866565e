/**
 * Each week of a programme for itself: the share of growth that its sets keep, how many repetitions they leave, and
 * its sessions. Growth is the same mean over sets as that of the whole programme (muscles.ts). What weeks do to one
 * another is not in this evidence: nothing of one week is carried into the next.
 */
import type { PracticeAnalysis } from '../../model/full.ts';
import type { KeptShare } from '../../model/keptShare.ts';
import { bandOfLoad } from '../../model/loads.ts';
import type { BandName } from '../../model/result.ts';
import { weekOfDay } from './columns.ts';
import type { CheckedLine } from './line.ts';
import { keptOfLines } from './muscles.ts';
import type { Session } from './sessions.ts';

/** Growth kept by sets of some loads. */
export interface GrowthOfLoads {
  readonly sets: number;
  /** null where the evidence says nothing of these sets, or where there are none. */
  readonly kept: KeptShare | null;
  /** Sets for which the evidence has no growth. */
  readonly setsLeftOut: number;
}

export interface WeekCheck {
  /** From 1. */
  readonly week: number;
  readonly all: GrowthOfLoads;
  /** Apart by loads below the split and from it on; none without a split. */
  readonly byLoads: readonly (GrowthOfLoads & { readonly band: BandName })[];
  /** Sets by the repetitions that they leave, in the order of `RESERVE_PARTS`. */
  readonly setsByReserve: readonly number[];
  /** The same of each day that has sets. */
  readonly days: readonly { readonly day: number; readonly setsByReserve: readonly number[] }[];
  /** Its sessions, by day. */
  readonly sessions: readonly Session[];
  /** The session after which recovery is expected to take longest; null where that is known of none. */
  readonly longest: Session | null;
}

/** Parts in which sets are counted by what they leave, repetitions in reserve: a way of listing them, no judgement. */
export const RESERVE_PARTS = [
  { from: 0, below: 2, name: 'under 2' },
  { from: 2, below: 4, name: '2 to under 4' },
  { from: 4, below: Number.POSITIVE_INFINITY, name: '4 or more' },
] as const;

/** The weeks that have a line, in their order. */
export function checkWeeks(
  analysis: PracticeAnalysis,
  lines: readonly CheckedLine[],
  sessions: readonly Session[],
): readonly WeekCheck[] {
  const weeks = [...new Set(lines.map(({ line }) => weekOfDay(line.day)))].sort((a, b) => a - b);
  return weeks.map((week) =>
    checkWeek(
      analysis,
      week,
      lines.filter(({ line }) => weekOfDay(line.day) === week),
      sessions.filter(({ day }) => weekOfDay(day) === week),
    ),
  );
}

function checkWeek(
  analysis: PracticeAnalysis,
  week: number,
  lines: readonly CheckedLine[],
  sessions: readonly Session[],
): WeekCheck {
  const { split } = analysis.settings;
  const bands: readonly BandName[] = split === null ? [] : ['light', 'heavy'];
  return {
    week,
    all: growthOf(analysis, lines),
    byLoads: bands.map((band) => ({
      band,
      ...growthOf(
        analysis,
        lines.filter(({ line }) => bandOfLoad(line.load, split) === band),
      ),
    })),
    setsByReserve: countByReserve(lines),
    days: sessions.map(({ day }) => ({
      day,
      setsByReserve: countByReserve(lines.filter(({ line }) => line.day === day)),
    })),
    sessions,
    longest: findLongest(sessions),
  };
}

function growthOf(analysis: PracticeAnalysis, lines: readonly CheckedLine[]): GrowthOfLoads {
  return {
    sets: countSets(lines),
    kept: keptOfLines(analysis, lines),
    setsLeftOut: countSets(lines.filter(({ kept }) => kept.share === null)),
  };
}

function countByReserve(lines: readonly CheckedLine[]): readonly number[] {
  return RESERVE_PARTS.map(({ from, below }) =>
    countSets(lines.filter(({ line }) => line.reserve >= from && line.reserve < below)),
  );
}

function countSets(lines: readonly CheckedLine[]): number {
  return lines.reduce((sum, { line }) => sum + line.sets, 0);
}

function findLongest(sessions: readonly Session[]): Session | null {
  return sessions.reduce<Session | null>(
    (longest, session) =>
      session.recovery.time && session.recovery.time.hours > (longest?.recovery.time?.hours ?? -1) ? session : longest,
    null,
  );
}
