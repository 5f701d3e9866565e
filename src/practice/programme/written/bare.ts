/** A bare number: what it is in its column, or why it cannot be told. */
import type { WrittenColumn } from './headings.ts';
import type { Refusal, Said } from './notation.ts';
import { sayRating } from './rating.ts';
import { type Span, type WrittenLoad, writeSpan } from './understood.ts';

const SHOW = '“4x6” for sets and repetitions, “80%” or “80 kg” for a load, “2 RIR” for repetitions in reserve';

/**
 * @param column null outside a table
 * @param text the number as written
 */
export function sayBare(value: Span, text: string, column: WrittenColumn | null): Said {
  switch (column?.kind) {
    case 'sets':
    case 'repetitions':
    case 'possible':
    case 'reserve':
      return { found: [{ field: column.kind, value }] };
    case 'rating':
      return sayRating(text);
    case 'load':
      return sayLoad(value, column.unit);
    default:
      return { refused: refuseBare() };
  }
}

export function refuseBare(): Refusal {
  return {
    field: null,
    expected: 'a number that says what it is',
    remedy: `Write ${SHOW}; or name the columns in a row above: Day, Exercise, Sets, Reps, %1RM, RIR.`,
  };
}

/** Up to here a number in a column of per cent is a share: no set is of 1 % of 1RM. */
const LARGEST_SHARE = 1;

function sayLoad(value: Span, unit: WrittenLoad['unit'] | 'form' | null): Said {
  if (unit === null) {
    return {
      refused: {
        field: 'load',
        expected: 'a load with its unit',
        remedy: 'Write “80%” of 1RM, “80 kg” or “80 lb”, or the unit in the name of the column: “%1RM”, “kg” or “lb”.',
      },
    };
  }
  if (unit === 'kg' || unit === 'lb') return { found: [{ field: 'load', value: { ...value, unit } }] };
  if (unit === '%' && value.most <= LARGEST_SHARE) {
    const inPercent = { least: toPercent(value.least), most: toPercent(value.most) };
    return {
      found: [{ field: 'load', value: { ...inPercent, unit: '%' } }],
      assumed: `A load of ${writeSpan(value)} is taken as ${writeSpan(inPercent)} % of 1RM.`,
    };
  }
  return {
    found: [{ field: 'load', value: { ...value, unit: '%' } }],
    ...(unit === 'form' ? { assumed: sayNoUnit(value) } : {}),
  };
}

export function sayNoUnit(value: Span): string {
  return `The load ${writeSpan(value)} has no unit: it is taken as ${writeSpan(value)} % of 1RM.`;
}

/** Without the rounding of the product: 0.57 is 57. */
function toPercent(share: number): number {
  return Number((100 * share).toFixed(6));
}
