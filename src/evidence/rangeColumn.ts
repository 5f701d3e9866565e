/** Columns whose cells may hold a range or a bound in place of a number, as papers print them. */
import * as z from 'zod/mini';
import { type About, type CellRange, type ColumnOf, type Limits, number } from './column.ts';
import './zodConfig.ts';

/** Two numbers without signs with a dash or “to” between them. */
const RANGE = /^(\d+\.?\d*|\.\d+)\s*(?:[-–—]|to)\s*(\d+\.?\d*|\.\d+)$/iu;
/** A p-value of which only a bound is printed. */
const BOUND = /^([<>≤≥])\s*(\d+\.?\d*|\.\d+)(?:e([+-]?\d+))?$/iu;

/** A column of numbers, or ranges of them as they are printed, “8-12”, which count as their middle. */
export function numberOrRange<const A extends About>(limits: Limits, about: A): ColumnOf<number, A> {
  const plain = number(limits, about);
  const rangeOf = (cell: string): CellRange | null => {
    const ends = RANGE.exec(cell);
    if (!ends) return null;
    const [low, high] = [Number(ends[1]), Number(ends[2])];
    return { low, high, value: (low + high) / 2 };
  };
  const isRange = (cell: string) => {
    const ends = RANGE.exec(cell);
    return ends?.slice(1).every((end) => plain.cell.safeParse(end).success) && Number(ends[1]) < Number(ends[2]);
  };
  return {
    ...plain,
    expected: `${plain.expected}, or a range such as 8-12`,
    cell: z.union([
      plain.cell,
      z.pipe(
        z.string().check(z.refine(isRange)),
        z.transform((cell) => rangeOf(cell)?.value ?? Number.NaN),
      ),
    ]),
    rangeOf,
    endField: plain.field,
    field: { type: 'string', constraints: { required: about.required } },
  };
}

/**
 * A column of p-values, exact or as a printed bound. “<0.001” counts as 0.001, the conservative end; “>0.05” has no
 * such end, counts as no number and is kept as it is.
 */
export function pValue<const A extends About>(about: A): ColumnOf<number, A> {
  const exact = number({ above: 0, to: 1 }, about);
  const rangeOf = (cell: string): CellRange | null => {
    const [, sign, digits, exponent] = BOUND.exec(cell) ?? [];
    if (sign === undefined) return null;
    const bound = Number(`${digits}e${exponent ?? 0}`);
    return sign === '<' || sign === '≤' ? { low: 0, high: bound, value: bound } : { low: bound, high: 1, value: null };
  };
  const isBound = (cell: string) => {
    const range = rangeOf(cell);
    if (!range) return false;
    const bound = range.value ?? range.low;
    return bound > 0 && bound < 1;
  };
  return {
    ...exact,
    expected: `${exact.expected}, or a bound such as <0.001`,
    cell: z.union([
      exact.cell,
      z.pipe(
        z.string().check(z.refine(isBound)),
        z.transform((cell) => rangeOf(cell)?.high ?? Number.NaN),
      ),
    ]),
    rangeOf,
    endField: exact.field,
    field: { type: 'string', constraints: { required: about.required } },
  };
}
