/** Ratings of effort out of ten, as some coaches write them. */
import type { Said } from './notation.ts';
import { parseSpan } from './numbers.ts';
import type { Span } from './understood.ts';

/** Ratings of effort out of ten that are read: below, people cannot tell how many repetitions are left (common practice, no source). */
const RATINGS: Span = { least: 5, most: 10 };

/** A rating out of ten leaves ten minus the rating (common practice, no source). */
export function sayRating(written: string): Said {
  const rating = parseSpan(written);
  if (rating.least < RATINGS.least || rating.most > RATINGS.most) {
    return {
      refused: {
        field: 'reserve',
        expected: `repetitions in reserve, or an effort rating out of ten from ${RATINGS.least} to ${RATINGS.most}`,
        remedy: 'Write how many repetitions are left, “2 RIR”.',
      },
    };
  }
  return {
    found: [{ field: 'reserve', value: { least: RATINGS.most - rating.most, most: RATINGS.most - rating.least } }],
    assumed: `An effort rating of ${written} out of ten is taken as ten minus the rating in reserve (common practice, no source).`,
  };
}
