/**
 * The programme check: one version against the evidence and the calendar, and a second version against
 * the first. Plain JSON, made in the worker and at build time by the same function.
 */
import type { Exercise } from '../../evidence/exercises.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import type { Estimate } from '../../model/result.ts';
import { checkWeeks, type WeekCheck } from './byWeek.ts';
import { type CheckedLine, checkLine } from './line.ts';
import { checkMuscle, compareGrowth, type GrowthDifference, listMuscles, type MuscleCheck } from './muscles.ts';
import { type Programme, readProgramme } from './read.ts';
import { type Calendar, compareDrops, listSessions, type Session, worstBeforeEvent } from './sessions.ts';

export interface ProgrammeInput {
  /** CSV of the programme, and of a second version of it; null where there is none. */
  readonly first: string;
  readonly second: string | null;
  /** The list of exercises, and those that the reader described. */
  readonly exercises: readonly Exercise[];
  readonly calendar: Calendar;
}

export interface ProgrammeCheck {
  readonly lines: readonly CheckedLine[];
  readonly muscles: readonly MuscleCheck[];
  readonly overall: MuscleCheck;
  readonly sessions: readonly Session[];
  /** Each week for itself. */
  readonly weeks: readonly WeekCheck[];
  /** The session that leaves most at the event; null without one before an event. */
  readonly worst: Session | null;
}

export interface Version extends Omit<Programme, 'lines'> {
  /** Every line that could be read, each for itself, whatever the others are. */
  readonly lines: readonly CheckedLine[];
  /** null while there are problems, or an exercise is asked about: a sum over half a programme would be of another one. */
  readonly check: ProgrammeCheck | null;
}

export type MuscleDifference = GrowthDifference & {
  /** null for all sets together. */
  readonly muscle: string | null;
  readonly sets: { readonly first: number; readonly second: number };
};

export interface VersionsComparison {
  readonly muscles: readonly MuscleDifference[];
  readonly overall: MuscleDifference;
  /** Drop of performance at the event, second minus first, log ratio; null where there is none. */
  readonly drop: Estimate | null;
  /** Why there is no difference at the event; null where there is one or no event. */
  readonly dropReason: string | null;
}

export interface ProgrammeReport {
  readonly first: Version;
  readonly second: Version | null;
  readonly comparison: VersionsComparison | null;
}

export function reportProgramme(analysis: PracticeAnalysis, input: ProgrammeInput): ProgrammeReport {
  const first = checkVersion(analysis, input, input.first, 'version one');
  const second = input.second === null ? null : checkVersion(analysis, input, input.second, 'version two');
  return {
    first,
    second,
    comparison:
      first.check && second?.check ? compareVersions(analysis, first.check, second.check, input.calendar) : null,
  };
}

function checkVersion(
  analysis: PracticeAnalysis,
  { exercises, calendar }: ProgrammeInput,
  text: string,
  name: string,
): Version {
  const { lines: written, ...found } = readProgramme(text, name, exercises);
  const lines = written.map((line) => checkLine(analysis, line, calendar.status));
  if (found.problems.length + found.asked.length > 0 || written.length === 0) return { ...found, lines, check: null };
  const sessions = listSessions(analysis, written, calendar);
  return {
    ...found,
    lines,
    check: {
      lines,
      muscles: listMuscles(lines).map((muscle) => checkMuscle(analysis, lines, muscle)),
      overall: checkMuscle(analysis, lines, null),
      sessions,
      weeks: checkWeeks(analysis, lines, sessions),
      worst: worstBeforeEvent(sessions),
    },
  };
}

function compareVersions(
  analysis: PracticeAnalysis,
  first: ProgrammeCheck,
  second: ProgrammeCheck,
  { status, event }: Calendar,
): VersionsComparison {
  const names = [...new Set([...listMuscles(first.lines), ...listMuscles(second.lines)])];
  const drop = compareDrops(analysis, status, first.worst, second.worst);
  return {
    muscles: names.map((muscle) => compareMuscle(analysis, first, second, muscle)),
    overall: compareMuscle(analysis, first, second, null),
    drop,
    dropReason: drop || !event ? null : explainDrop(first.worst, second.worst),
  };
}

function compareMuscle(
  analysis: PracticeAnalysis,
  first: ProgrammeCheck,
  second: ProgrammeCheck,
  muscle: string | null,
): MuscleDifference {
  const own = ({ muscles, overall }: ProgrammeCheck) =>
    muscle === null ? overall : muscles.find((one) => one.muscle === muscle);
  return {
    muscle,
    sets: { first: own(first)?.sets ?? 0, second: own(second)?.sets ?? 0 },
    ...compareGrowth(analysis, first.lines, second.lines, muscle),
  };
}

function explainDrop(first: Session | null, second: Session | null): string {
  if (!first || !second) return 'a version has no session before the event whose recovery is known';
  return 'both versions leave the same';
}
