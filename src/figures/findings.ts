/**
 * What stands beside the answer, in sentences computed from the analysis. Each says no more than its
 * interval allows.
 */

import { findBand } from '../model/bands.ts';
import type { BeyondFailureContrast } from '../model/beyondFailure.ts';
import type { BandSweep, Sweep, SweepChoice } from '../model/checks/sweep.ts';
import type { FatigueByStatus } from '../model/fatigue.ts';
import type { BandChecks, FullAnalysis } from '../model/full.ts';
import { type Band, type BandName, type Estimate, LEAST_RELIABLE_DF } from '../model/result.ts';
import { JUDGED_REPETITIONS, type Settings } from '../model/settings.ts';
import type { Strength } from '../model/strength.ts';
import { countOf, countStudies, writeCount } from '../numerics/countOf.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';
import { chooseTold, writeHours } from '../practice/recovery.ts';
import { upperFirst } from './firstLetter.ts';
import { formatChange, formatHours, formatNumber, shownUnit } from './format.ts';
import { CURVE_WORDS } from './settingsWords.ts';

/** Points of per cent of 1RM over which a difference in strength by load is stated. */
export const SHOWN_POINTS = 10;

/** Strength against reserve and load, and whether the effect of reserve is worth something. */
export function stateStrength(
  { reserve, load, equivalence, failure, rows, studies }: Omit<Strength, 'excluded'>,
  settings: Settings,
): string {
  if (failure || !reserve || !load || !equivalence)
    return `Strength could not be fitted: ${failure?.reason ?? 'no rows'}.`;
  const { metric, smallestWorthwhile } = settings;
  const over = equivalence.difference;
  const difference = `By a straight line ${JUDGED_REPETITIONS} more repetitions in reserve change strength by ${formatChange(over, metric)}`;
  const least = `the ${smallestWorthwhile[metric]}\u00a0${shownUnit(metric)} taken as the smallest difference worth having`;
  const verdicts = {
    inside: `, inside ${least}`,
    'inside and apart from 0': `, apart from 0 but inside ${least}`,
    'apart from 0': ', which is apart from 0',
    open: ', which neither shows an effect nor rules out one worth having',
  } as const;
  const loadSide =
    load.ciLow > 0
      ? 'Heavier loads bring more'
      : load.ciHigh < 0
        ? 'Heavier loads bring less'
        : 'Load shows no effect distinguishable from none';
  return `${difference}${verdicts[equivalence.verdict]}. ${loadSide}: ${SHOWN_POINTS} points of 1RM change it by ${formatChange(scaleEstimate(load, SHOWN_POINTS), metric)} (${countOf(rows, 'row')}, ${countStudies(studies)}).${doubt('The intervals are', over, load)}`;
}

/** How long until performance is back, by training status. */
export function stateRecovery(
  { status, recovery, perReserve, failure, studies }: FatigueByStatus,
  settings: Settings,
): string {
  const who = `${upperFirst(status)} people`;
  if (failure) return `${who}: no estimate, since ${failure.reason}.`;
  const [first, further] = chooseTold(recovery);
  if (!first) return `${who}: no reserve near failure was studied.`;
  const hours = ({ hours: point, low, high }: typeof first) => `${writeHours(point)} (${formatHours(low, high)})`;
  const later = further ? `, after sets with ${further.reserve} left ${hours(further)}` : '';
  return `${who} are back to within ${settings.fatigueMargin}\u00a0% of their performance ${hours(first)} after sets with ${first.reserve} in reserve${later} (${countStudies(studies)}).${perReserve ? doubt('How reserve changes this is', perReserve) : ''}`;
}

const BEYOND_FAILURE_NAMES: Readonly<Record<BeyondFailureContrast['kind'], string>> = {
  partials: 'Shortened-range repetitions after failure',
  'load-drops': 'Load drops after failure',
  'rest-pause': 'A short rest and more repetitions after failure',
  assisted: 'Repetitions with help after failure',
};

/** Work beyond failure against stopping at failure. */
export function stateBeyondFailure(
  { kind, difference, failure, studies }: BeyondFailureContrast,
  settings: Settings,
): string {
  const name = BEYOND_FAILURE_NAMES[kind];
  if (failure || !difference) return `${name}: no comparison, since ${failure?.reason ?? 'there is none'}.`;
  const found =
    difference.ciLow > 0
      ? 'bring more growth than stopping at failure'
      : difference.ciHigh < 0
        ? 'bring less growth than stopping at failure'
        : 'show no difference in growth from stopping at failure that can be told from none';
  const few =
    difference.df < LEAST_RELIABLE_DF
      ? `; with ${countStudies(studies)} and ${formatNumber(difference.df, 1)} degrees of freedom the interval is unreliable`
      : '';
  return `${name} ${found}: ${formatChange(difference, settings.metric)}${few}.`;
}

/**
 * What would move a band's target: a study, a curve, the other choices.
 *
 * @param sweep null where the combinations of choices were not worked out; nothing is said of them then
 */
export function stateRobustness(name: 'light' | 'heavy', analysis: FullAnalysis, sweep: Sweep | null): string[] {
  const { bands, checks } = analysis;
  const band = findBand(bands, name);
  const bandChecks = checks[name] ?? null;
  if (!band || band.target.point === null || !bandChecks) return [];
  const others = sweep ? [stateSweep(name, sweep)] : [];
  return [stateInfluence(name, band, bandChecks), stateCurves(name, band), ...others];
}

function stateInfluence(name: string, { target }: Band, { influence }: BandChecks): string {
  const all = target.point ?? 0;
  const found = influence.studies
    .flatMap(({ study, targetWithout: { point } }) => (point === null ? [] : [{ study, point }]))
    .sort((a, b) => Math.abs(b.point - all) - Math.abs(a.point - all));
  const lost = influence.studies.length - found.length;
  const [most] = found;
  if (!most) return `One study: whichever is left out, there is no target for ${name} loads.`;
  const [was, without] = [all, most.point].map((point) => formatNumber(point, 1));
  const lose =
    lost > 0
      ? `without ${lost === 1 ? 'one of them' : `${lost} of them, one at a time,`} there is no target at all; `
      : '';
  const move =
    was === without
      ? `the target for ${name} loads stays at ${was} whichever${lost > 0 ? ' other' : ''} is left out`
      : `leaving out ${most.study} moves the target for ${name} loads most, to ${without} from ${was}`;
  return `One study: ${lose}${move}.`;
}

/** Difference of AICc below which a curve is not preferred (Burnham & Anderson 2002, Model Selection and Multimodel Inference, 2nd ed., p. 70; from memory). */
const LEAST_AICC = 2;

function stateCurves(name: string, { curves, curve, target }: Band): string {
  const named = (one: typeof curve) => `a ${CURVE_WORDS[one]}`;
  const others = curves
    .filter((other) => other.curve !== curve)
    .map(
      ({ curve: one, target: { point } }) => `${point === null ? 'none' : formatNumber(point, 1)} with ${named(one)}`,
    );
  const targets = [`${formatNumber(target.point ?? 0, 1)} with ${named(curve)}`, ...others].join(', ');
  return `The curve: the target for ${name} loads is ${targets}.`;
}

/** Which shape describes a band's rows best, and by how much; empty where fewer than two could be fitted. */
export function stateBestCurve(name: BandName, { curves }: Pick<Band, 'curves'>): string {
  const [best, next] = curves
    .flatMap(({ curve, aboveBest }) => (aboveBest === null ? [] : [{ curve, aboveBest }]))
    .sort((a, b) => a.aboveBest - b.aboveBest);
  if (!best || !next) return '';
  const little = next.aboveBest < LEAST_AICC ? ', too little to choose by' : '';
  return `With ${LOAD_NAMES[name]}, by AICc a ${CURVE_WORDS[best.curve]} describes the rows best, by ${formatNumber(next.aboveBest, 1)} before a ${CURVE_WORDS[next.curve]}${little}.`;
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
  restingOn: 'leaving out rows that rest on assumptions',
  missingSds: 'filling in missing SDs',
};

/** Ends and middle of nine in ten targets of a sweep; null where no combination gives one. */
export function middleTargets({ quantiles: [low, , middle, , high] }: BandSweep) {
  return low === undefined || middle === undefined || high === undefined ? null : { low, middle, high };
}

/** “from 1.2 to 3.3”, “at 8.0” where both ends are shown the same. */
export function statePlace(low: number, high: number): string {
  const [from, to] = [low, high].map((value) => formatNumber(value, 1));
  return from === to ? `at ${from}` : `from ${from} to ${to}`;
}

/** Where the targets of all other choices lie, and which choice moves them most. */
export function stateSweep(name: 'light' | 'heavy', sweep: Sweep): string {
  const { outcomes, withoutTarget, atEdge, shares } = sweep[name];
  const combinations = countOf(outcomes.length, 'combination');
  const found = middleTargets(sweep[name]);
  if (!found) return `All choices: none of ${combinations} gives a target for ${name} loads.`;
  const aside = [
    atEdge > 0 ? `, ${writeCount(atEdge)} at the largest reserve studied` : '',
    withoutTarget > 0 ? `, ${writeCount(withoutTarget)} without a target` : '',
  ].join('');
  const [first] = shares;
  // Where all targets are one there is nothing to move.
  const mover =
    first && first.share > 0
      ? `; ${CHOICE_WORDS[first.choice]} moves them most (${formatNumber(100 * first.share, 0)}\u00a0% of their variance)`
      : '';
  return `All choices: over ${combinations} of metric, correlations, split, curve, weighting, adjustment and inclusion nine in ten targets for ${name} loads lie ${statePlace(found.low, found.high)}${aside}${mover}.`;
}

/** What would move the targets most over all combinations of choices, in one line; empty where nothing does. */
export function stateMover(sweep: Sweep): string {
  const movers = (['heavy', 'light'] as const).flatMap((name) => {
    const [first] = sweep[name].shares;
    if (!first || first.share <= 0) return [];
    const share = `${formatNumber(100 * first.share, 0)}\u00a0% of the variance of its targets over all choices`;
    return [{ name, words: CHOICE_WORDS[first.choice], share }];
  });
  const [one, other] = movers;
  if (!one) return '';
  if (other && one.words === other.words) {
    return `What would move both most is ${one.words} (${LOAD_NAMES[one.name]}: ${one.share}; ${LOAD_NAMES[other.name]}: ${other.share.replace(/ of .*/u, '')}).`;
  }
  return `What would move them most: ${movers.map(({ name, words, share }) => `for ${LOAD_NAMES[name]} ${words} (${share})`).join(', ')}.`;
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
