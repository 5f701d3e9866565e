/** The share of growth that a reserve keeps at a load, read from the fit that answers for the load. */
import type { PracticeAnalysis } from '../model/full.ts';
import { inferKeptShare, type KeptShare } from '../model/keptShare.ts';
import type { OpenFit } from '../model/response.ts';
import { NEAR_FAILURE } from '../model/target.ts';
import { rememberBy } from './remember.ts';
import { fitNear } from './targetTable.ts';

export type KeptAnswer =
  | { readonly share: KeptShare; readonly reason: null }
  | { readonly share: null; readonly reason: string };

const keptShare = rememberBy<PracticeAnalysis, KeptAnswer>();

/**
 * @param load per cent of 1RM
 * @param reserve repetitions really left, at least 0
 */
export function keptAt(analysis: PracticeAnalysis, load: number, reserve: number): KeptAnswer {
  const near = fitNear(analysis, load);
  // The curve of a band is the same at all its loads.
  const key = `${near?.fit.source} ${near?.fit.meanLoad === null ? '' : load} ${reserve}`;
  return keptShare(analysis, key, () => keptOf(near, load, reserve, analysis.settings.confidence));
}

/**
 * The share by one fit, or why there is none.
 *
 * @param near undefined where it could not be made
 * @param load per cent of 1RM; only the fit of all loads reads it
 */
export function keptOf(near: OpenFit | undefined, load: number, reserve: number, confidence: number): KeptAnswer {
  if (!near) return { share: null, reason: 'there is no fit for this load' };
  const { low, high } = near.fit.studiedReserve;
  if (reserve > high) return { share: null, reason: `more reserve than any that was studied (${high})` };
  if (low > NEAR_FAILURE) return { share: null, reason: `nobody here trained to reserve 0 (least studied: ${low})` };
  const share = inferKeptShare(near.inference, near.at(load, reserve), near.at(load, 0), confidence);
  return share
    ? { share, reason: null }
    : { share: null, reason: 'growth at reserve 0 is not distinguishable from nothing' };
}
