/** Reserve where a paper does not report it, always with its spread. */
import { loadsWithSpread, type Relation, repetitionsAtLoad } from './repetitions.ts';

/** An estimated reserve, or the reason why there is none. */
export type ReserveEstimate =
  | { readonly mean: number; readonly sd: number; readonly how: string; readonly reason: null }
  | { readonly mean: null; readonly sd: null; readonly how: null; readonly reason: string };

/**
 * Repetitions possible at the load (published relation, see repetitions.ts) minus repetitions done;
 * at least 0. The SD is the published spread between people: of one person it is no less, of a
 * group's mean it is less.
 *
 * @param load per cent of 1RM
 * @param repetitions done in the set, at least 0
 * @param relation exercise whose published relation is read
 */
export function reserveFromLoad(
  load: number,
  repetitions: number,
  relation: Relation = 'bench press',
): ReserveEstimate {
  if (!(repetitions >= 0 && Number.isFinite(repetitions))) {
    return none(`repetitions done are a number of at least 0, not ${repetitions}`);
  }
  const possible = repetitionsAtLoad(load, relation);
  if (!possible) {
    const { from, to } = loadsWithSpread(relation);
    return none(`the published spread of repetitions (${relation}) covers ${from} to ${to} % of 1RM, not ${load} %`);
  }
  return {
    mean: Math.max(0, possible.mean - repetitions),
    sd: possible.sd,
    how: `${possible.mean.toFixed(1)} repetitions possible at ${load} % of 1RM, minus ${repetitions} done${repetitions > possible.mean ? ', not below 0' : ''}`,
    reason: null,
  };
}

/**
 * From a share of the repetitions possible: 60 % of the 20 possible at 20RM leave 8.
 *
 * @param share of the maximum that was done, 0 to 1
 * @param maximum repetitions possible, above 0
 * @param maximumSd what the maximum may have been off by, SD in repetitions, at least 0
 */
export function reserveFromShare(share: number, maximum: number, maximumSd: number): ReserveEstimate {
  if (!(share >= 0 && share <= 1)) return none(`a share of the maximum lies between 0 and 1, not at ${share}`);
  if (!(maximum > 0)) return none(`a maximum of ${maximum} repetitions leaves nothing to share`);
  if (!(maximumSd >= 0)) return none(`the SD of the maximum is at least 0, not ${maximumSd}`);
  return {
    mean: (1 - share) * maximum,
    sd: (1 - share) * maximumSd,
    how: `${maximum} repetitions possible, ${(100 * share).toFixed(0)} % of them done`,
    reason: null,
  };
}

function none(reason: string): ReserveEstimate {
  return { mean: null, sd: null, how: null, reason };
}
