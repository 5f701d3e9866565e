/**
 * Every choice an analysis depends on, as one zod schema.
 *
 * The same object is the state in the address bar, the command line's `--settings` file and the
 * `settings` field of an `Analysis`. A default is what the shipped site shows; each field says its
 * unit and what it does in words a reader can be shown.
 */
import * as z from 'zod/mini';
import { EFFECT_METRICS, OUTCOMES, POOLED_FOR } from '../evidence/vocabulary.ts';
import '../evidence/zodConfig.ts';
import { FILTERS, type FilterKey, mapFilters } from './filters.ts';

export const METRICS = EFFECT_METRICS;
export const CURVES = ['flexible', 'line', 'log', 'quadratic', 'spline'] as const;
export const WEIGHTINGS = ['mixed', 'precision', 'equal'] as const;
export const MISSING_SDS = ['off', ...POOLED_FOR] as const;
export const ADJUSTMENTS = ['load', 'weekly-sets', 'weeks', 'training-status'] as const;

/** Repetitions of reserve over which a difference in strength is judged: about as far as training for strength stays from failure (common practice, no source). */
export const JUDGED_REPETITIONS = 5;

/** Correlation of baseline with follow-up, strictly inside −1 to 1 so that a change has a variance. */
const correlation = z.number().check(z.gt(-1), z.lt(1));

/** A setting with its default, and what it does in words a reader can be shown. */
const field = <Schema extends z.ZodMiniType>(
  schema: Schema,
  fallback: z.input<Schema> & z.output<Schema>,
  words: string,
) => z._default(schema, fallback as never).check(z.describe(words));

/** A group of settings: what is not written stands at the defaults of its parts. */
const group = <Schema extends z.ZodMiniType>(schema: Schema, words: string) =>
  z.prefault(schema, {} as never).check(z.describe(words));

const assumedCorrelationByOutcome = z.strictObject({
  // Muscle size and maximal strength: a re-analysis of a published data set, read second-hand.
  growth: z._default(correlation, 0.87),
  strength: z._default(correlation, 0.87),
  // Performance hours apart: an assumption without a source.
  fatigue: z._default(correlation, 0.8),
});

/** An empty list keeps every row; a list keeps rows whose word is in it. */
type WordLists = { [Key in FilterKey]: z.ZodMiniDefault<z.ZodMiniArray<(typeof FILTERS)[Key]['words']>> };
const wordLists = mapFilters((key) => z._default(z.array<z.ZodMiniType>(FILTERS[key].words), [])) as WordLists;

const includeSchema = z.strictObject({
  ...wordLists,
  /** First and last year of publication kept; null for no limit. */
  yearFrom: z._default(z.nullable(z.int()), null),
  yearTo: z._default(z.nullable(z.int()), null),
  /** Studies left out by name. */
  withoutStudies: z._default(z.array(z.string()), []),
});

export const settingsSchema = z.strictObject({
  outcome: field(z.enum(OUTCOMES), 'growth', 'What is fitted against reserve.'),
  metric: field(
    z.enum(METRICS),
    'log-ratio',
    'Effect of a row: log ratio of the means, shown as per cent change, or change in baseline SDs.',
  ),
  /** Per cent of 1RM; null fits all loads together. */
  split: field(
    z.nullable(z.number().check(z.gt(0), z.lt(100))),
    60,
    'Loads below it, in per cent of 1RM, are light; from there on they are heavy.',
  ),
  curve: field(z.enum(CURVES), 'flexible', 'Shape of growth against reserve.'),
  weighting: field(z.enum(WEIGHTINGS), 'mixed', 'How much a row counts.'),
  rho: field(
    z.number().check(z.gte(0), z.lte(0.95)),
    0.5,
    'Correlation of sampling errors of rows that measured the same people.',
  ),
  assumedCorrelation: group(
    z.pipe(
      // One number stands for all three outcomes.
      z.transform((value: AssumedCorrelation) =>
        typeof value === 'number' ? { growth: value, strength: value, fatigue: value } : value,
      ),
      assumedCorrelationByOutcome,
    ),
    'Correlation of before with after, where a row gives none: about 0.87 for size and strength in a re-analysis of a published data set (second-hand), 0.8 for performance hours apart (an assumption without a source).',
  ),
  missingSds: field(
    z.enum(MISSING_SDS),
    'off',
    'Whether the pooled spread of other rows of the same measure stands in for SDs: for none, for rows that print none, or for all.',
  ),
  adjust: field(z.array(z.enum(ADJUSTMENTS)), [], 'Covariates held at their mean while reserve varies.'),
  keptShare: field(
    z.number().check(z.gt(0), z.lt(1)),
    0.9,
    'Share of the growth at reserve 0 that the target must keep.',
  ),
  confidence: field(z.number().check(z.gte(0.5), z.lte(0.999)), 0.95, 'Confidence level of all intervals.'),
  smallestWorthwhile: group(
    z.strictObject({
      /** Per cent. */
      'log-ratio': z._default(z.number().check(z.gt(0), z.lt(100)), 2),
      /** Baseline SDs. */
      standardised: z._default(z.number().check(z.gt(0), z.lt(10)), 0.2),
    }),
    `Smallest difference in strength over ${JUDGED_REPETITIONS} repetitions of reserve that is worth having (common practice, no source).`,
  ),
  fatigueMargin: field(
    z.number().check(z.gt(0), z.lt(100)),
    2,
    'Per cent of performance: a drop within it counts as recovered (common practice, no source).',
  ),
  seed: field(
    z.int().check(z.gte(0), z.lte(2 ** 31 - 1)),
    1,
    'Seed of the bootstrap and of the simulated reserve errors.',
  ),
  include: group(includeSchema, 'Which rows are kept.'),
});

type AssumedCorrelation = number | { [Outcome in (typeof OUTCOMES)[number]]?: number | undefined };

export type Settings = z.infer<typeof settingsSchema>;
/** What a caller may write: everything optional. */
export type SettingsInput = z.input<typeof settingsSchema>;
export type Metric = Settings['metric'];
export type Curve = Settings['curve'];
export type Weighting = Settings['weighting'];
export type Adjustment = (typeof ADJUSTMENTS)[number];

/** What a setting does, a sentence for a reader. */
export function wordsOfSetting(key: keyof Settings): string {
  const words = z.globalRegistry.get(settingsSchema.shape[key])?.description;
  if (words === undefined) throw new Error(`invalid setting; it has no words: ${key}`);
  return words;
}

/** What the shipped site shows. */
export const defaultSettings: Settings = settingsSchema.parse({});
