/** What would move the answer, in sentences computed from the analysis: a study, a curve, the other choices. */

import { findBand } from '../model/bands.ts';
import type { BandSweep, Sweep, SweepChoice } from '../model/checks/sweep.ts';
import type { BandChecks, FullAnalysis } from '../model/full.ts';
import type { Band, BandName } from '../model/result.ts';
import { countOf, writeCount } from '../numerics/countOf.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';
import { formatNumber } from './format.ts';
import { CURVE_WORDS } from './settingsWords.ts';

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
