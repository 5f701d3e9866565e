/**
 * Robustness sweep: the target under every combination of choices that another analyst could have
 * made, and which choice moves it most.
 *
 * A choice's share is the variance of its levels' mean targets over the variance of all targets: the
 * first-order share of a full factorial (Saltelli et al. 2008, Global Sensitivity Analysis, ch. 1).
 * Shares need not sum to 1: what is left belongs to choices acting together.
 */
import { mean, variance } from 'simple-statistics';
import type { Effect } from '../../evidence/effects.ts';
import { isInPaper } from '../../evidence/restsOn.ts';
import type { Arm } from '../../evidence/schema.ts';
import { CONCERNS, RESTS_ON } from '../../evidence/vocabulary.ts';
import { quantileOfSorted } from '../../numerics/quantile.ts';
import { arrangeEffects, fitEffects, targetOf } from '../bandFit.ts';
import { splitByLoad } from '../loads.ts';
import type { Observations } from '../observations.ts';
import { selectRows } from '../selection.ts';
import { CURVES, METRICS, type Settings, WEIGHTINGS } from '../settings.ts';
import { SCAN_STEPS } from '../target.ts';

/** The choices and their levels. Their product is the number of combinations. */
export const SWEEP_CHOICES = {
  metric: METRICS,
  /** Correlation of baseline with follow-up where a row gives none. */
  correlation: [0.7, 0.9],
  rho: [0.2, 0.8],
  /** Per cent of 1RM. */
  split: [50, 60, 70],
  curve: CURVES,
  weighting: WEIGHTINGS,
  adjust: ['nothing', 'load and training status'],
  inclusion: ['all studies', 'without high concerns'],
} as const;

/** Choices that only a table with such rows leaves open; the product then grows by their levels. */
const TABLE_CHOICES = {
  /** Where a row rests on assumptions. */
  restingOn: ['all rows', 'only what is printed or recovered'],
  /** Where a row prints no spread. */
  missingSds: ['off', 'missing'],
} as const;

const ALL_CHOICES = { ...SWEEP_CHOICES, ...TABLE_CHOICES } as const;

export type SweepChoice = keyof typeof ALL_CHOICES;
type Levels<Choices> = {
  readonly [Choice in keyof Choices]: Choices[Choice] extends readonly (infer Level)[] ? Level : never;
};
type Combination = Levels<typeof SWEEP_CHOICES> & Partial<Levels<typeof TABLE_CHOICES>>;

/** Levels of a choice, in the order in which they are tried. */
export function levelsOf(choice: SweepChoice): readonly (string | number)[] {
  return ALL_CHOICES[choice];
}

export interface SweepProgress {
  readonly done: number;
  readonly total: number;
}

export interface SweepOutcome {
  readonly combination: Combination;
  /** Target in repetitions; null where there is none. */
  readonly point: number | null;
  readonly reachedEdge: boolean;
}

export interface BandSweep {
  readonly outcomes: readonly SweepOutcome[];
  /** Combinations without a target. */
  readonly withoutTarget: number;
  /** Combinations whose target is the largest reserve studied, and so may lie further. */
  readonly atEdge: number;
  /** Quantiles of the targets found, repetitions: 5, 25, 50, 75, 95 %; none where no target was found. */
  readonly quantiles: readonly number[];
  /** Share of the targets' variance by choice, the largest first. */
  readonly shares: readonly { readonly choice: SweepChoice; readonly share: number }[];
}

export interface Sweep {
  readonly light: BandSweep;
  readonly heavy: BandSweep;
}

/** Shares of the targets below the quantiles told. */
const QUANTILES = [0.05, 0.25, 0.5, 0.75, 0.95] as const;
/** Combinations between two reports of progress. */
const REPORT_EVERY = 16;

/** Runs the sweep in steps; a caller may stop between them. */
export function* sweepChoices(arms: readonly Arm[], settings: Settings): Generator<SweepProgress, Sweep> {
  const choices = listChoices(arms, settings);
  const combinations = listCombinations(choices);
  const rows = new Map<string, Rows>();
  const known = new Map<string, SweepOutcome>();
  const light: SweepOutcome[] = [];
  const heavy: SweepOutcome[] = [];
  for (const [done, combination] of combinations.entries()) {
    if (done % REPORT_EVERY === 0) yield { done, total: combinations.length };
    const choice = applyCombination(combination, settings);
    const key = JSON.stringify([
      combination.metric,
      combination.correlation,
      combination.inclusion,
      combination.adjust,
      combination.split,
      combination.restingOn,
      combination.missingSds,
    ]);
    const bands = rows.get(key) ?? arrangeBands(selectRows(arms, choice).effects, combination.split);
    rows.set(key, bands);
    for (const [name, outcomes] of [
      ['light', light],
      ['heavy', heavy],
    ] as const) {
      // Weights that do not look at shared errors give the same fit for every ρ.
      const rho = combination.weighting === 'mixed' ? combination.rho : null;
      const fitKey = JSON.stringify([name, { ...combination, rho }]);
      const outcome = known.get(fitKey) ?? findOutcome(bands[name], combination, choice);
      known.set(fitKey, outcome);
      outcomes.push({ ...outcome, combination });
    }
  }
  return { light: summarise(light, choices), heavy: summarise(heavy, choices) };
}

/** Those of every table, and those that this one leaves open. */
function listChoices(arms: readonly Arm[], settings: Settings): readonly SweepChoice[] {
  const without = selectRows(arms, { ...settings, missingSds: 'off' }).effects;
  const filled = selectRows(arms, { ...settings, missingSds: 'missing' }).effects;
  const hasMissing = filled.length > without.length;
  const hasAssumed = (hasMissing ? filled : without).some(({ restsOn }) => !isInPaper(restsOn));
  return [
    ...(Object.keys(SWEEP_CHOICES) as SweepChoice[]),
    ...(hasAssumed ? (['restingOn'] as const) : []),
    ...(hasMissing ? (['missingSds'] as const) : []),
  ];
}

function listCombinations(choices: readonly SweepChoice[]): Combination[] {
  return choices.reduce<Record<string, unknown>[]>(
    (so, choice) => so.flatMap((begun) => levelsOf(choice).map((level) => ({ ...begun, [choice]: level }))),
    [{}],
  ) as Combination[];
}

function applyCombination(combination: Combination, settings: Settings): Settings {
  const { metric, correlation, rho, split, curve, weighting, adjust, inclusion } = combination;
  return {
    ...settings,
    metric,
    rho,
    split,
    curve,
    weighting,
    assumedCorrelation: { ...settings.assumedCorrelation, [settings.outcome]: correlation },
    adjust: adjust === 'nothing' ? [] : ['load', 'training-status'],
    missingSds: combination.missingSds ?? settings.missingSds,
    include: {
      ...settings.include,
      concerns: chooseConcerns(settings.include.concerns, inclusion),
      restsOn: chooseRests(settings.include.restsOn, combination.restingOn),
    },
  };
}

/** The reader's own filter, or what of it is not of high concern. */
function chooseConcerns(
  chosen: Settings['include']['concerns'],
  inclusion: Combination['inclusion'],
): Settings['include']['concerns'] {
  if (inclusion === 'all studies') return chosen;
  const others = (chosen.length > 0 ? chosen : CONCERNS).filter((level) => level !== 'high');
  // A filter on high concern alone leaves nothing when those are left out: it then stays as it is.
  return others.length > 0 ? others : chosen;
}

/** The reader's own filter, or what of it is in the papers. */
function chooseRests(
  chosen: Settings['include']['restsOn'],
  restingOn: Combination['restingOn'] = 'all rows',
): Settings['include']['restsOn'] {
  if (restingOn === 'all rows') return chosen;
  const inPapers = (chosen.length > 0 ? chosen : RESTS_ON).filter(isInPaper);
  return inPapers.length > 0 ? inPapers : chosen;
}

/** The rows of both bands, arranged once for all fits of them. */
interface Rows {
  readonly light: BandRows;
  readonly heavy: BandRows;
}

interface BandRows {
  readonly effects: readonly Effect[];
  readonly data: Observations;
}

function arrangeBands(effects: readonly Effect[], split: number): Rows {
  const { light, heavy } = splitByLoad(effects, split);
  return {
    light: { effects: light, data: arrangeEffects(light) },
    heavy: { effects: heavy, data: arrangeEffects(heavy) },
  };
}

function findOutcome({ effects, data }: BandRows, combination: Combination, settings: Settings): SweepOutcome {
  const { point, reachedEdge } = targetOf(
    fitEffects(effects, { ...settings, answerOnly: true }, data),
    settings,
    SCAN_STEPS.coarse,
  );
  return { combination, point, reachedEdge };
}

function summarise(outcomes: readonly SweepOutcome[], choices: readonly SweepChoice[]): BandSweep {
  const found = outcomes.flatMap(({ point, ...rest }) => (point === null ? [] : [{ point, ...rest }]));
  const points = found.map(({ point }) => point);
  const sorted = Float64Array.from(points).sort();
  const whole = points.length > 0 ? variance(points) : 0;
  const overall = points.length > 0 ? mean(points) : 0;
  const shares = choices.map((choice) => {
    const levels = levelsOf(choice).map((level) =>
      found.filter(({ combination }) => combination[choice] === level).map(({ point }) => point),
    );
    const between = levels.reduce(
      (sum, level) => sum + (level.length > 0 ? level.length * (mean(level) - overall) ** 2 : 0),
      0,
    );
    return { choice, share: whole > 0 ? between / found.length / whole : 0 };
  });
  return {
    outcomes,
    withoutTarget: outcomes.length - found.length,
    // Where reserve makes no difference the edge is reached, too, without a target.
    atEdge: found.filter(({ reachedEdge }) => reachedEdge).length,
    quantiles: points.length > 0 ? QUANTILES.map((share) => quantileOfSorted(sorted, share)) : [],
    shares: shares.sort((a, b) => b.share - a.share),
  };
}
