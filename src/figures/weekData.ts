/** What is drawn of the weeks of a programme: a flat record for each mark, its numbers and where it stands. */
import type { BandName } from '../model/result.ts';
import { RESERVE_PARTS, type WeekCheck } from '../practice/programme/byWeek.ts';
import { WEEKDAYS, weekdayOf } from '../practice/programme/columns.ts';
import { wholeHours } from '../practice/recovery.ts';

export interface VersionWeeks {
  /** “version one” */
  readonly name: string;
  readonly weeks: readonly WeekCheck[];
}

interface Drawn {
  /** Days since the start of the first Monday. */
  readonly x: number;
  readonly week: number;
  readonly version: string;
  /** 0 for the first version. */
  readonly place: number;
}

/** Growth kept, per cent of that at reserve 0. */
export interface DrawnGrowth extends Drawn {
  readonly loads: BandName;
  readonly share: number;
  /** null where the interval has no such end. */
  readonly low: number | null;
  readonly high: number | null;
}

/** Hours until recovered after a session. */
export interface DrawnRecovery extends Drawn {
  readonly day: string;
  /** Fewest repetitions in reserve of its sets. */
  readonly reserve: number;
  readonly hours: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** Sets that leave as many repetitions, as a part of a bar: from so many sets up to so many. */
export interface DrawnSets extends Drawn {
  readonly end: number;
  readonly left: string;
  readonly part: number;
  readonly sets: number;
  readonly from: number;
  readonly to: number;
}

const DAYS = WEEKDAYS.length;
/** Days between marks of the same week that would hide each other. */
const APART = 2.4;
/** The same for sessions of the same day. */
const SESSIONS_APART = 0.5;
/** Half of the place that the bars of a week take, days, and of a day. */
const HALF_WEEK = 2.8;
const HALF_DAY = 0.4;

export function middleOf(week: number): number {
  return (week - 0.5) * DAYS;
}

/** Place of one of several marks around a middle. */
function beside(place: number, of: number, by: number): number {
  return (place - (of - 1) / 2) * by;
}

/** Loads, apart, of which growth kept is known; none where loads are not told apart. */
export function bandsWithGrowth(versions: readonly VersionWeeks[]): readonly BandName[] {
  const all = versions.flatMap(({ weeks }) => weeks.flatMap(({ byLoads }) => byLoads));
  return [...new Set(all.flatMap(({ band, kept }) => (kept ? [band] : [])))];
}

/** Of one version light and heavy loads apart, where it has both; of two, all sets together. */
export function listGrowth(versions: readonly VersionWeeks[]): readonly DrawnGrowth[] {
  const isPair = versions.length > 1;
  const bands = bandsWithGrowth(versions);
  return versions.flatMap(({ name, weeks }, place) =>
    weeks.flatMap(({ week, all, byLoads }) => {
      const apart = byLoads.filter(({ band }) => bands.includes(band));
      const marks = isPair || byLoads.length === 0 ? [{ band: 'all' as const, ...all }] : apart;
      return marks.flatMap(({ band, kept }, i): DrawnGrowth[] => {
        if (!kept) return [];
        const offset = isPair ? beside(place, versions.length, APART) : beside(i, marks.length, APART);
        const percent = (share: number | null) => (share === null ? null : 100 * share);
        return [
          {
            x: middleOf(week) + offset,
            week,
            version: name,
            place,
            loads: band,
            share: 100 * kept.estimate,
            low: percent(kept.low),
            high: percent(kept.high),
          },
        ];
      });
    }),
  );
}

export function listRecoveries(versions: readonly VersionWeeks[]): readonly DrawnRecovery[] {
  const whole = (hours: number | null) => (hours === null ? null : wholeHours(hours));
  return versions.flatMap(({ name, weeks }, place) =>
    weeks.flatMap(({ week, sessions }) =>
      sessions.flatMap(({ day, reserve, recovery: { time } }): DrawnRecovery[] =>
        time
          ? [
              {
                x: day - 0.5 + beside(place, versions.length, SESSIONS_APART),
                week,
                version: name,
                place,
                day: weekdayOf(day),
                reserve,
                hours: wholeHours(time.hours),
                low: whole(time.low),
                high: whole(time.high),
              },
            ]
          : [],
      ),
    ),
  );
}

/** @param isByDay true where each day has its bar, in a picture of a single week */
export function listSets(versions: readonly VersionWeeks[], isByDay: boolean): readonly DrawnSets[] {
  const half = isByDay ? HALF_DAY : HALF_WEEK;
  const width = (2 * half) / versions.length;
  return versions.flatMap(({ name, weeks }, place) =>
    weeks
      .flatMap(({ week, setsByReserve, days }) =>
        isByDay
          ? days.map((one) => ({ week, middle: one.day - 0.5, counts: one.setsByReserve }))
          : [{ week, middle: middleOf(week), counts: setsByReserve }],
      )
      .flatMap(({ week, middle, counts }) => {
        const x = middle - half + place * width;
        const end = x + 0.95 * width;
        return counts.flatMap((sets, part): DrawnSets[] => {
          if (sets === 0) return [];
          const from = counts.slice(0, part).reduce((sum, one) => sum + one, 0);
          return [
            { x, end, week, version: name, place, left: RESERVE_PARTS[part].name, part, sets, from, to: from + sets },
          ];
        });
      }),
  );
}
