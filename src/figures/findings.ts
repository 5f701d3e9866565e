/**
 * What stands beside the answer, in sentences computed from the analysis. Each says no more than its
 * interval allows.
 */
import type { BeyondFailureContrast } from '../model/beyondFailure.ts';
import type { Sweep, SweepChoice } from '../model/checks/sweep.ts';
import type { FatigueByStatus } from '../model/fatigue.ts';
import type { BandChecks, FullAnalysis } from '../model/full.ts';
import { type Band, type Estimate, LEAST_RELIABLE_DF } from '../model/result.ts';
import { JUDGED_REPETITIONS, type Settings } from '../model/settings.ts';
import type { Strength } from '../model/strength.ts';
import { formatChange, formatNumber, formatRange, shownUnit } from './format.ts';

/** Strength against reserve and load, and whether the effect of reserve is worth something. */
export function describeStrength(
  { reserve, load, equivalence, failure, rows, studies }: Omit<Strength, 'excluded'>,
  settings: Settings,
): string {
  if (failure || !reserve || !load || !equivalence)
    return `Strength could not be fitted: ${failure?.reason ?? 'no rows'}.`;
  const { metric, smallestWorthwhile } = settings;
  const over = equivalence.difference;
  const difference = `${JUDGED_REPETITIONS} more repetitions in reserve change strength by ${formatChange(over, metric)}`;
  const verdicts = {
    inside: `, inside the ${smallestWorthwhile[metric]} ${shownUnit(metric)} taken as the smallest difference worth having`,
    'inside and apart from 0': `, apart from 0 but inside the ${smallestWorthwhile[metric]} ${shownUnit(metric)} taken as the smallest difference worth having`,
    'apart from 0': ', which is apart from 0',
    open: ', which neither shows an effect nor rules out one worth having',
  } as const;
  const perTen = scaleEstimate(load, 10);
  const loadSide =
    load.ciLow > 0
      ? 'Heavier loads bring more'
      : load.ciHigh < 0
        ? 'Heavier loads bring less'
        : 'Load shows no effect distinguishable from none';
  return `${difference}${verdicts[equivalence.verdict]}. ${loadSide}: 10 points of 1RM change it by ${formatChange(perTen, metric)} (${rows} rows, ${studies} studies).${doubt('The intervals are', over, load)}`;
}

/** How long until performance is back, by training status. */
export function describeRecovery(
  { status, recovery, perReserve, failure, studies }: FatigueByStatus,
  settings: Settings,
): string {
  const who = status === 'trained' ? 'Trained people' : 'Untrained people';
  if (failure) return `${who}: no estimate, since ${failure.reason}.`;
  const [first] = recovery;
  if (!first) return `${who}: no reserve near failure was studied.`;
  const last = recovery[recovery.length - 1];
  const hours = ({ hours: point, low, high }: typeof first) =>
    `${formatNumber(point, 0)} hours (${formatRange(low, high, 0)})`;
  const later = last === first ? '' : `, after sets with ${last.reserve} left ${hours(last)}`;
  return `${who} are back to within ${settings.fatigueMargin} % of their performance ${hours(first)} after sets with ${first.reserve} in reserve${later} (${studies} studies).${perReserve ? doubt('That reserve changes this is', perReserve) : ''}`;
}

/** Partials and load drops against stopping at failure. */
export function describeBeyondFailure(
  { kind, difference, failure, studies }: BeyondFailureContrast,
  settings: Settings,
): string {
  const name = kind === 'partials' ? 'Shortened-range repetitions after failure' : 'Load drops after failure';
  if (failure || !difference) return `${name}: no comparison, since ${failure?.reason ?? 'there is none'}.`;
  const found =
    difference.ciLow > 0
      ? 'bring more growth than stopping at failure'
      : difference.ciHigh < 0
        ? 'bring less growth than stopping at failure'
        : 'show no difference in growth from stopping at failure that can be told from none';
  const few =
    difference.df < LEAST_RELIABLE_DF
      ? `; with ${studies} studies and ${formatNumber(difference.df, 1)} degrees of freedom the interval is unreliable`
      : '';
  return `${name} ${found}: ${formatChange(difference, settings.metric)}${few}.`;
}

/** What would move a band's target: a study, a curve, the other choices. */
export function describeRobustness(name: 'light' | 'heavy', analysis: FullAnalysis, sweep: Sweep): string[] {
  const { bands, checks } = analysis;
  const band = 'light' in bands ? bands[name] : null;
  const bandChecks = checks[name] ?? null;
  if (!band || band.target.point === null || !bandChecks) return [];
  return [describeInfluence(name, band, bandChecks), describeCurves(name, band), describeSweep(name, sweep)];
}

function describeInfluence(name: string, { target }: Band, { influence }: BandChecks): string {
  const moved = influence.studies
    .flatMap(({ study, targetWithout: { point } }) => (point === null ? [] : [{ study, point }]))
    .sort((a, b) => Math.abs(b.point - (target.point ?? 0)) - Math.abs(a.point - (target.point ?? 0)));
  const lost = influence.studies.length - moved.length;
  const [most] = moved;
  if (!most) return `Without any one study there is no target for ${name} loads.`;
  const gone = lost > 0 ? `; without ${lost} of them there is no target` : '';
  return `One study: leaving out ${most.study}, the one that moves it most, puts the target for ${name} loads at ${formatNumber(most.point, 1)} instead of ${formatNumber(target.point ?? 0, 1)}${gone}.`;
}

function describeCurves(name: string, { curves, curve, target }: Band): string {
  const names = { line: 'a straight line', log: 'a logarithm', quadratic: 'a parabola', spline: 'a spline' } as const;
  const others = curves
    .filter((other) => other.curve !== curve && other.target.point !== null)
    .map((other) => `${formatNumber(other.target.point ?? 0, 1)} with ${names[other.curve]}`);
  const best = curves.find(({ aboveBest }) => aboveBest === 0);
  const own = curves.find((one) => one.curve === curve);
  const verdict =
    !best || own?.aboveBest == null
      ? ''
      : best.curve === curve
        ? ` By AICc ${names[curve]} describes the rows best.`
        : ` By AICc ${names[best.curve]} describes them best, by ${formatNumber(own.aboveBest, 1)}${own.aboveBest < 2 ? ', too little to choose by' : ''}.`;
  return `The curve: the target for ${name} loads is ${formatNumber(target.point ?? 0, 1)} with ${[names[curve], ...others].join(', ')}.${verdict}`;
}

const CHOICE_WORDS: Readonly<Record<SweepChoice, string>> = {
  metric: 'the metric',
  correlation: 'the assumed correlation',
  rho: 'the correlation of sampling errors',
  split: 'where light ends',
  curve: 'the shape of the curve',
  weighting: 'the weighting',
  adjust: 'the adjustment',
  inclusion: 'leaving out studies of high concern',
};

export function describeSweep(name: 'light' | 'heavy', sweep: Sweep): string {
  const { quantiles, outcomes, withoutTarget, shares } = sweep[name];
  const [low, , , , high] = quantiles;
  const [first] = shares;
  if (low === undefined || high === undefined || !first)
    return `All choices: none of ${outcomes.length} combinations gives a target for ${name} loads.`;
  const none = withoutTarget > 0 ? `, ${withoutTarget} without a target` : '';
  return `All choices: over ${outcomes.length} combinations of metric, correlations, split, curve, weighting, adjustment and inclusion nine in ten targets for ${name} loads lie between ${formatNumber(low, 1)} and ${formatNumber(high, 1)}${none}; ${CHOICE_WORDS[first.choice]} moves them most (${formatNumber(100 * first.share, 0)} % of their variance).`;
}

/** A sentence where an estimate behind the words has too few degrees of freedom; empty otherwise. */
function doubt(what: string, ...estimates: readonly Estimate[]): string {
  const least = Math.min(...estimates.map(({ df }) => df));
  return least < LEAST_RELIABLE_DF
    ? ` ${what} unreliable: ${formatNumber(least, 1)} degrees of freedom, fewer than ${LEAST_RELIABLE_DF}.`
    : '';
}

function scaleEstimate({ estimate, ciLow, ciHigh }: Estimate, by: number) {
  return { estimate: by * estimate, ciLow: by * ciLow, ciHigh: by * ciHigh };
}
