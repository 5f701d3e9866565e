/**
 * Every choice an analysis depends on, as one zod schema.
 *
 * The same object is the state in the address bar, the command line's `--settings` file and the
 * `settings` field of an `Analysis`. A default is what the shipped site shows; each field says its
 * unit and what it does in words a reader can be shown.
 */
import { z } from 'zod';
import {
  CONCERNS,
  DESIGNS,
  FAILURE_DEFINITIONS,
  JOINTS,
  OUTCOMES,
  RESERVE_BASES,
  SEXES,
  TRAINING_STATUSES,
} from '../evidence/vocabulary.ts';

export const METRICS = ['log-ratio', 'standardised'] as const;
export const CURVES = ['line', 'log', 'quadratic', 'spline'] as const;
export const WEIGHTINGS = ['mixed', 'precision', 'equal'] as const;
export const ADJUSTMENTS = ['load', 'weekly-sets', 'weeks', 'training-status'] as const;

/** Correlation of baseline with follow-up, strictly inside −1 to 1 so that a change has a variance. */
const correlation = z.number().gt(-1).lt(1);

const assumedCorrelationByOutcome = z.strictObject({
  growth: correlation
    .default(0.87)
    .describe('Muscle size: about 0.87 in a re-analysis of a published data set (second-hand).'),
  strength: correlation.default(0.87).describe('Maximal strength: about 0.87 in the same re-analysis (second-hand).'),
  fatigue: correlation.default(0.8).describe('Performance hours apart: an assumption without a source.'),
});

/** An empty list keeps every row; a list keeps rows whose value is in it. */
const keepOnly = <T extends z.ZodType>(values: T, what: string) =>
  z.array(values).default([]).describe(`Keep only rows whose ${what} is listed; an empty list keeps all.`);

const includeSchema = z.strictObject({
  trainingStatus: keepOnly(z.enum(TRAINING_STATUSES), 'training status'),
  sex: keepOnly(z.enum(SEXES), 'sex'),
  joints: keepOnly(z.enum(JOINTS), 'kind of exercise (single- or multi-joint)'),
  muscle: keepOnly(z.string(), 'muscle'),
  measure: keepOnly(z.string(), 'measure'),
  concerns: keepOnly(z.enum(CONCERNS), 'level of concern about bias'),
  design: keepOnly(z.enum(DESIGNS), 'design'),
  failureDefinition: keepOnly(z.enum(FAILURE_DEFINITIONS), 'failure definition'),
  reserveBasis: keepOnly(z.enum(RESERVE_BASES), 'way of knowing reserve'),
  yearFrom: z.int().nullable().default(null).describe('First year of publication kept; null for no limit.'),
  yearTo: z.int().nullable().default(null).describe('Last year of publication kept; null for no limit.'),
  withoutStudies: z.array(z.string()).default([]).describe('Studies left out by name.'),
});

export const settingsSchema = z.strictObject({
  outcome: z.enum(OUTCOMES).default('growth').describe('What is fitted against reserve.'),
  metric: z
    .enum(METRICS)
    .default('log-ratio')
    .describe('Effect of a row: log ratio of means (shown as per cent change) or change in baseline SDs.'),
  split: z
    .number()
    .gt(0)
    .lt(100)
    .nullable()
    .default(60)
    .describe('Per cent of 1RM at and above which a load is heavy; null fits all loads together.'),
  curve: z.enum(CURVES).default('line').describe('Shape of growth against reserve.'),
  weighting: z
    .enum(WEIGHTINGS)
    .default('mixed')
    .describe('How much a row counts: mixed model, by its own precision only, or all equal.'),
  rho: z
    .number()
    .min(0)
    .max(0.95)
    .default(0.5)
    .describe('Correlation of sampling errors of rows that measured the same people.'),
  assumedCorrelation: z
    .preprocess(
      // One number stands for all three outcomes.
      (value) => (typeof value === 'number' ? { growth: value, strength: value, fatigue: value } : value),
      assumedCorrelationByOutcome.prefault({}),
    )
    .describe('Correlation of baseline with follow-up where a row gives none, by outcome.'),
  adjust: z.array(z.enum(ADJUSTMENTS)).default([]).describe('Covariates held at their mean while reserve varies.'),
  keptShare: z
    .number()
    .gt(0)
    .lt(1)
    .default(0.9)
    .describe('Share of the growth at reserve 0 that the target must keep (0 to 1, open).'),
  confidence: z.number().min(0.5).max(0.999).default(0.95).describe('Confidence level of all intervals.'),
  smallestWorthwhile: z
    .strictObject({
      'log-ratio': z.number().gt(0).lt(100).default(2).describe('Per cent.'),
      standardised: z.number().gt(0).lt(10).default(0.2).describe('Baseline SDs.'),
    })
    .prefault({})
    .describe(
      'Smallest difference in strength over 5 repetitions of reserve that is worth having (common practice, no source).',
    ),
  fatigueMargin: z
    .number()
    .gt(0)
    .lt(100)
    .default(2)
    .describe('Per cent of performance: a drop within it counts as recovered (common practice, no source).'),
  seed: z
    .int()
    .min(0)
    .max(2 ** 31 - 1)
    .default(1)
    .describe('Seed of the bootstrap and of the simulated reserve errors.'),
  include: includeSchema.prefault({}),
});

export type Settings = z.infer<typeof settingsSchema>;
/** What a caller may write: everything optional. */
export type SettingsInput = z.input<typeof settingsSchema>;
export type Metric = Settings['metric'];
export type Curve = Settings['curve'];
export type Weighting = Settings['weighting'];
export type Adjustment = (typeof ADJUSTMENTS)[number];

export const defaultSettings: Settings = settingsSchema.parse({});
