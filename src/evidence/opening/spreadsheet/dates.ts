/** Days and times as a workbook of Office Open XML stores them: numbers, told from others by their format alone. */

/** Formats that every workbook has and that show a date or a time (ECMA-376, part 1, 18.8.30). */
const BUILT_IN_DATES = [
  [14, 22],
  [27, 36],
  [45, 47],
  [50, 58],
] as const;
const BUILT_IN_SHARES = new Set([9, 10]);

export type NumberFormat = 'number' | 'date' | 'share';

/** @param code of a format that the workbook defines; undefined for the others */
export function recogniseFormat(id: number, code: string | undefined): NumberFormat {
  if (code === undefined) {
    if (BUILT_IN_SHARES.has(id)) return 'share';
    return BUILT_IN_DATES.some(([from, to]) => id >= from && id <= to) ? 'date' : 'number';
  }
  // What stands in quotation marks, after a backslash or in brackets, a duration apart, is shown as it is.
  const plain = code.replace(/"[^"]*"|\\.|_.|\[(?!h+\]|m+\]|s+\])[^\]]*\]/giu, '');
  if (/[dmyhs]/iu.test(plain)) return 'date';
  return plain.includes('%') ? 'share' : 'number';
}

/** Days from 1970-01-01 back to the day 0 of either calendar of a workbook. */
const DAYS_1900 = 25_569;
const DAYS_1904 = 24_107;
/** The 1900 calendar has a 29 February 1900, day 60, that never was; days before it are one further. */
const FIRST_RIGHT_DAY = 61;
const MINUTES = 24 * 60;

/** “2026-08-12”, with the time where there is one; a time alone below the first day. */
export function writeSerialDate(serial: number, is1904: boolean): string {
  const minutes = Math.round(serial * MINUTES);
  const day = Math.floor(minutes / MINUTES);
  const ofDay = minutes - day * MINUTES;
  const time = `${twoDigits(Math.floor(ofDay / 60))}:${twoDigits(ofDay % 60)}`;
  if (day <= 0 && !is1904) return time;
  const days = is1904 ? day - DAYS_1904 : day - DAYS_1900 + (day < FIRST_RIGHT_DAY ? 1 : 0);
  return `${writeCivilDay(days)}${ofDay > 0 ? ` ${time}` : ''}`;
}

/** Gregorian day by its number from 1970-01-01 (Hinnant 2013, chrono-compatible low-level date algorithms, `civil_from_days`). */
function writeCivilDay(days: number): string {
  const shifted = days + 719_468;
  const era = Math.floor(shifted / 146_097);
  const ofEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (ofEra - Math.floor(ofEra / 1460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096)) / 365,
  );
  const ofYear = ofEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  // Months counted from March, so that the leap day is the last of a year.
  const fromMarch = Math.floor((5 * ofYear + 2) / 153);
  const day = ofYear - Math.floor((153 * fromMarch + 2) / 5) + 1;
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  return `${yearOfEra + era * 400 + (month <= 2 ? 1 : 0)}-${twoDigits(month)}-${twoDigits(day)}`;
}

function twoDigits(value: number): string {
  return String(value).padStart(2, '0');
}
