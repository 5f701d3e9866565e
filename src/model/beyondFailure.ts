/**
 * Beyond failure against at failure, inside studies: growth with partials or load drops after failure
 * minus growth at failure alone, from studies that had both.
 *
 * Each indicator is centred on its study's mean, so that only differences between arms of one study
 * count.
 */
import type { Effect } from '../evidence/effects.ts';
import type { Arm } from '../evidence/schema.ts';
import { BEYOND_FAILURE, wentBeyondFailure } from '../evidence/vocabulary.ts';
import { toObservations } from './bandFit.ts';
import { sortCanonically } from './canonicalOrder.ts';
import { fitCarried } from './carriedFit.ts';
import { countDistinctStudies } from './counts.ts';
import type { Estimate, FitFailure } from './result.ts';
import { inferContrast } from './robust.ts';
import { computeKeptEffects, reasonOfFilter } from './selection.ts';
import type { Settings } from './settings.ts';
import { studyMeans } from './withinBetween.ts';

type Kind = Exclude<(typeof BEYOND_FAILURE)[number], 'none'>;

/** Kinds that advice speaks of, told of every table; others where a table has them. */
const ALWAYS_TOLD: readonly (typeof BEYOND_FAILURE)[number][] = ['partials', 'load-drops'];

export interface BeyondFailureContrast {
  readonly kind: Kind;
  readonly studies: number;
  readonly rows: number;
  /** Growth beyond failure minus growth at failure, on the analysis scale. */
  readonly difference: Estimate | null;
  readonly failure: FitFailure | null;
}

/** One contrast a kind of work beyond failure. @param arms all rows of the table; the settings' filters apply */
export function compareBeyondFailure(arms: readonly Arm[], settings: Settings): readonly BeyondFailureContrast[] {
  const candidates = arms.filter(
    (arm) =>
      arm.outcome === 'growth' &&
      !arm.later &&
      arm.reserve_reps === 0 &&
      reasonOfFilter(arm, settings.include) === null,
  );
  const { effects } = computeKeptEffects(candidates, arms, settings, 'growth');
  const ordered = sortCanonically(effects);
  return BEYOND_FAILURE.filter(
    (kind) => kind !== 'none' && (ALWAYS_TOLD.includes(kind) || arms.some((arm) => arm.beyond_failure === kind)),
  ).map((kind) => compareKind(ordered, kind as Kind, settings));
}

function compareKind(all: readonly Effect[], kind: Kind, settings: Settings): BeyondFailureContrast {
  const isKind = ({ arm }: Effect) => arm.beyond_failure === kind;
  const isAtFailure = ({ arm }: Effect) => !wentBeyondFailure(arm);
  const having = (test: (effect: Effect) => boolean) => new Set(all.filter(test).map(({ arm }) => arm.study));
  const beyond = having(isKind);
  const at = having(isAtFailure);
  const effects = all.filter(
    (effect) => beyond.has(effect.arm.study) && at.has(effect.arm.study) && (isKind(effect) || isAtFailure(effect)),
  );
  const counts = { kind, studies: countDistinctStudies(effects), rows: effects.length };
  const indicator = effects.map((effect) => (isKind(effect) ? 1 : 0));
  const means = studyMeans(effects, indicator);
  const columns = [indicator.map(() => 1), indicator.map((value, i) => value - means[i])];
  const { fit, failure } = fitCarried(toObservations(effects), columns, settings);
  return {
    ...counts,
    difference: fit ? inferContrast(fit.inference, [0, 1], settings.confidence) : null,
    failure,
  };
}
