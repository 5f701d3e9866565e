/** Settings drawn over all that a reader can choose on a table, for tests with a fixed seed. */
import fc from 'fast-check';
import type { Arm } from '../../src/evidence/schema.ts';
import { OUTCOMES } from '../../src/evidence/vocabulary.ts';
import { listVocabulary } from '../../src/islands/analysis/filterOptions.ts';
import { FILTER_KEYS } from '../../src/model/filters.ts';
import {
  ADJUSTMENTS,
  CURVES,
  METRICS,
  MISSING_SDS,
  type Settings,
  settingsSchema,
  WEIGHTINGS,
} from '../../src/model/settings.ts';

/** Any one of the schema's settings; of filters one or two at a time, so that most draws leave rows to fit. */
export function anySettings(arms: readonly Arm[]): fc.Arbitrary<Settings> {
  const { options, years } = listVocabulary(arms);
  const studies = [...new Set(arms.map(({ study }) => study))];
  const between = (low: number, high: number) =>
    fc.integer({ min: Math.round(low * 1000), max: Math.round(high * 1000) }).map((thousandths) => thousandths / 1000);
  const words = FILTER_KEYS.filter((key) => options[key].length > 0).map((key) =>
    fc.subarray([...options[key]], { minLength: 1 }).map((kept) => ({ [key]: kept })),
  );
  const include = fc.oneof(
    { weight: 4, arbitrary: fc.constant({}) },
    { weight: 6, arbitrary: fc.oneof(...words) },
    { weight: 2, arbitrary: fc.subarray(studies, { maxLength: 4 }).map((withoutStudies) => ({ withoutStudies })) },
    { weight: 1, arbitrary: fc.integer({ min: years.low, max: years.high }).map((yearFrom) => ({ yearFrom })) },
    { weight: 1, arbitrary: fc.integer({ min: years.low, max: years.high }).map((yearTo) => ({ yearTo })) },
  );
  const correlation = between(-0.5, 0.99);
  return fc
    .record({
      outcome: fc.constantFrom(...OUTCOMES),
      metric: fc.constantFrom(...METRICS),
      split: fc.oneof(fc.constant(null), between(30, 90)),
      curve: fc.constantFrom(...CURVES),
      weighting: fc.constantFrom(...WEIGHTINGS, 'mixed' as const),
      rho: between(0, 0.95),
      assumedCorrelation: fc.record({ growth: correlation, strength: correlation, fatigue: correlation }),
      missingSds: fc.constantFrom(...MISSING_SDS),
      adjust: fc.subarray([...ADJUSTMENTS], { maxLength: 2 }),
      keptShare: between(0.5, 0.99),
      confidence: between(0.5, 0.999),
      include,
    })
    .map((chosen) => settingsSchema.parse(chosen));
}
