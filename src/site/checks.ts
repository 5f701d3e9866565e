/**
 * How the engine was checked, in the words and numbers of the Methods page: against values from elsewhere, as the
 * tests wrote it (tests/reference/checks.test.ts).
 */
import { readFileSync } from 'node:fs';
import * as z from 'zod';

const difference = z.number().positive();

const checksSchema = z.object({
  referenceFits: z.object({
    fits: z.int(),
    dataSets: z.int(),
    digits: z.int(),
    largestDifference: z.object({ coefficient: difference, covariance: difference, df: difference }),
  }),
  leastSquares: z.object({ sets: z.array(z.object({ name: z.string(), digits: z.int() })) }),
  threeLevels: z.object({ source: z.string(), decimals: z.int() }),
});

const { referenceFits, leastSquares, threeLevels } = checksSchema.parse(
  JSON.parse(readFileSync('data/checks.json', 'utf8')),
);
const { coefficient, covariance, df } = referenceFits.largestDifference;

export const checks = {
  ...referenceFits,
  coefficient: writePower(coefficient),
  covariance: writePower(covariance),
  df: writePower(df),
  /** “Norris, Pontius to 9 digits; Wampler1 to 8 digits”. */
  leastSquares: [...new Set(leastSquares.sets.map(({ digits }) => digits))]
    .map((digits) => {
      const names = leastSquares.sets.filter((set) => set.digits === digits).map(({ name }) => name);
      return `${names.join(', ')} to ${digits} digits`;
    })
    .join('; '),
  threeLevels,
} as const;

/** “3·10⁻¹²” of a number with one digit that counts. */
function writePower(value: number): string {
  const [digit, power] = value.toExponential(0).split('e');
  return `${digit}·10${[...power].map((sign) => (sign === '-' ? '⁻' : '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(sign)])).join('')}`;
}
