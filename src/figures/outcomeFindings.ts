/**
 * Strength, fatigue and work beyond failure beside the answer, in sentences computed from the analysis. Each says no
 * more than its interval allows.
 */

import type { BeyondFailureContrast } from '../model/beyondFailure.ts';
import type { FatigueByStatus } from '../model/fatigue.ts';
import { type Estimate, LEAST_RELIABLE_DF } from '../model/result.ts';
import { JUDGED_REPETITIONS, type Settings } from '../model/settings.ts';
import type { Equivalence, Strength } from '../model/strength.ts';
import { countOf, countStudies } from '../numerics/countOf.ts';
import { writePercent } from '../numerics/percent.ts';
import { chooseTold, writeHours } from '../practice/recovery.ts';
import { upperFirst } from './firstLetter.ts';
import { formatChange, formatHours, formatNumber, shownDigits, shownUnit, toShown } from './format.ts';

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
    inside: `, inside ${least}${stateOneSided(equivalence, settings)}`,
    'inside and apart from 0': `, apart from 0 but inside ${least}${stateOneSided(equivalence, settings)}`,
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

/** By which interval a difference lies inside the margin, where the one that is shown reaches beyond it. */
function stateOneSided({ difference, margin, low, high }: Equivalence, { metric, confidence }: Settings): string {
  if (Math.max(-difference.ciLow, difference.ciHigh) <= margin) return '';
  const [from, to] = [low, high].map((end) => formatNumber(toShown(end, metric), shownDigits(metric)));
  return ` by the ${writePercent(2 * confidence - 1)} interval of two one-sided tests (${from} to ${to})`;
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
