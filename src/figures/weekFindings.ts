/** The weeks of a programme in words and in a table: what is expected of each, and what the evidence does not know. */
import type { PracticeAnalysis } from '../model/full.ts';
import { countOf } from '../numerics/countOf.ts';
import { RESERVE_PARTS, type WeekCheck } from '../practice/programme/byWeek.ts';
import { writeDay } from '../practice/programme/columns.ts';
import { wholeHours } from '../practice/recovery.ts';
import type { FigureTable } from './figure.ts';
import { upperFirst } from './firstLetter.ts';
import { formatHours, formatNumber, formatPlain, formatShare } from './format.ts';
import { bandsWithGrowth, type VersionWeeks } from './weekData.ts';

/** “Weeks are expected to keep 84 to 97 % of growth, and recovery to take up to 41 hours” */
export function titleOfWeeks(versions: readonly VersionWeeks[]): string {
  if (versions.length === 1) {
    const [{ weeks }] = versions;
    const subject = weeks.length === 1 ? 'The week is expected to keep' : 'Weeks are expected to keep';
    const growth = growthOf(weeks);
    const hours = longestOf(weeks);
    if (growth === null) {
      return hours === null
        ? 'Neither growth kept nor recovery is known for these sets'
        : `Growth kept is not known for these sets; recovery is expected to take up to ${countOf(hours, 'hour')}`;
    }
    const recovery =
      hours === null ? '; recovery is not known' : `, and recovery to take up to ${countOf(hours, 'hour')}`;
    return `${subject} ${growth} of growth${recovery}`;
  }
  return versions
    .map(({ name, weeks }) => {
      const hours = longestOf(weeks);
      const recovery = hours === null ? 'recovery not known' : `recovery up to ${countOf(hours, 'hour')}`;
      return `${upperFirst(name)}: ${growthOf(weeks) ?? 'an unknown share'} of growth expected in a week, ${recovery}`;
    })
    .join('. ');
}

function growthOf(weeks: readonly WeekCheck[]): string | null {
  const shares = weeks.flatMap(({ all }) => (all.kept ? [Math.round(100 * all.kept.estimate)] : []));
  if (shares.length === 0) return null;
  const [low, high] = [Math.min(...shares), Math.max(...shares)].map((share) => formatNumber(share, 0));
  return low === high ? `${low}\u00a0%` : `${low} to ${high}\u00a0%`;
}

function longestOf(weeks: readonly WeekCheck[]): number | null {
  const hours = weeks.flatMap(({ longest }) =>
    longest?.recovery.time ? [wholeHours(longest.recovery.time.hours)] : [],
  );
  return hours.length === 0 ? null : Math.max(...hours);
}

export function describeWeeks(
  versions: readonly VersionWeeks[],
  { split, fatigueMargin, confidence }: PracticeAnalysis['settings'],
): string {
  const isPair = versions.length > 1;
  const loads =
    split === null
      ? ''
      : isPair
        ? ', all sets together (light and heavy loads apart stand in the numbers)'
        : bandsWithGrowth(versions).length > 1
          ? `, diamonds of loads below ${split}\u00a0% of 1RM and circles from there on`
          : '';
  const parts = [
    `Growth kept is the mean over a week’s sets${loads}; lines are ${formatNumber(100 * confidence, 0)}\u00a0% intervals, drawn as far as a panel goes.`,
    `A point of recovery is one session: hours until the expected drop is within ${fatigueMargin}\u00a0%, by its set with the fewest in reserve.`,
    isPair ? 'Filled points and left bars are version one’s; hollow points and right bars version two’s.' : '',
    sayGaps(versions),
    sayLeftOut(versions),
    'Each week is read for itself. Not in this evidence, and so not in the picture: that loads go up from week to week, that people get used to the training, what is lost in a week off, what sessions and weeks do to one another, and how one person differs.',
  ];
  return parts.filter(Boolean).join(' ');
}

function sayGaps(versions: readonly VersionWeeks[]): string {
  return versions
    .flatMap(({ name, weeks }) => {
      const known = weeks.map(({ week }) => week);
      const gaps = Array.from({ length: Math.max(0, ...known) }, (_, i) => i + 1).filter(
        (week) => !known.includes(week),
      );
      if (gaps.length === 0) return [];
      const who = versions.length > 1 ? `In ${name} ` : '';
      const words = `${gaps.length === 1 ? 'week' : 'weeks'} ${gaps.join(', ')} ${gaps.length === 1 ? 'has' : 'have'} no sets.`;
      return [upperFirst(`${who}${words}`)];
    })
    .join(' ');
}

function sayLeftOut(versions: readonly VersionWeeks[]): string {
  const sets = versions.flatMap(({ weeks }) => weeks).reduce((sum, { all }) => sum + all.setsLeftOut, 0);
  return sets === 0
    ? ''
    : `${countOf(sets, 'set is', 'sets are')} not in the growth kept, since the evidence has none for their load and reserve.`;
}

export function tabulateWeeks(versions: readonly VersionWeeks[]): FigureTable {
  const isPair = versions.length > 1;
  const bands = versions[0]?.weeks[0]?.byLoads.map(({ band }) => band) ?? [];
  const rows = versions.flatMap(({ name, weeks }) => weeks.map((week) => ({ name, week })));
  return {
    columns: [
      'week',
      ...(isPair ? ['version'] : []),
      'growth kept, all sets',
      ...bands.map((band) => `${band} loads`),
      'sets',
      ...RESERVE_PARTS.map((part) => `${part.name} left`),
      'sessions',
      'hours until recovered, longest',
      'interval',
      'after',
    ],
    rows: rows
      .sort((a, b) => a.week.week - b.week.week)
      .map(({ name, week: { week, all, byLoads, setsByReserve, sessions, longest } }) => {
        const time = longest?.recovery.time;
        return [
          week,
          ...(isPair ? [name] : []),
          ...[all, ...byLoads].map(({ kept, sets }) =>
            kept ? formatShare(kept) : sets === 0 ? 'no sets' : 'not known',
          ),
          all.sets,
          ...setsByReserve,
          sessions.length,
          time ? wholeHours(time.hours) : 'not known',
          time ? formatHours(time.low, time.high) : 'not known',
          longest ? `${writeDay(longest.day)}, ${formatPlain(longest.reserve)} left` : 'none',
        ];
      }),
  };
}
