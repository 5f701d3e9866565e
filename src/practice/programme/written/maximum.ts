/** What is said of a load in kilograms or pounds: the site knows per cent of 1RM, and not the 1RM. */
import type { WrittenLoad } from './understood.ts';

/** @param exercise name; empty where none is known */
export function sayMaximum(
  exercise: string,
  unit: WrittenLoad['unit'],
): { readonly expected: string; readonly remedy: string } {
  return {
    expected: 'a load in % of 1RM',
    remedy: `Say the 1RM of ${exercise || 'the exercise'} in ${unit}, or write the load in %, or the repetitions possible.`,
  };
}
