/**
 * Kept share: growth in one situation divided by growth in another, with its interval.
 *
 * For contrasts a (what is done) and b (the same at reserve 0) the interval is every share s whose
 * contrast a − s b is not rejected: |(a − s b)'β| / se ≤ t(df) (Fieller 1954, J R Stat Soc B 16:175;
 * here with CR2 and Satterthwaite, whose df change with s). It is the target's construction asked the
 * other way: a reserve lies in a target's interval exactly where the share lies in this one.
 */
import { findRoot } from '../numerics/roots.ts';
import { applyContrast, type ContrastInference, inferContrast, makeAcceptance, measureP } from './robust.ts';

export interface KeptShare {
  /** 1 at reserve 0; above 1 where more reserve brought more growth. */
  readonly estimate: number;
  /** Ends of the interval; null where this evidence does not limit it. */
  readonly low: number | null;
  readonly high: number | null;
}

/** First distance from the estimate at which an end is looked for; doubled until the share is rejected. */
const FIRST_REACH = 0.05;
/** Shares beyond which an end is not looked for: twenty times the growth at reserve 0, or as much lost. */
const FURTHEST_SHARE = 20;

/**
 * @param done contrast of what is done
 * @param atFailure contrast of the same at reserve 0
 * @param confidence level, 0 to 1 open
 * @returns null where growth at reserve 0 is not distinguishable from nothing: there is nothing to keep a share of
 */
export function inferKeptShare(
  inference: ContrastInference,
  done: ArrayLike<number>,
  atFailure: ArrayLike<number>,
  confidence: number,
): KeptShare | null {
  if (!(inferContrast(inference, atFailure, confidence).ciLow > 0)) return null;
  if (Array.from(done).every((value, j) => value === atFailure[j])) return { estimate: 1, low: 1, high: 1 };
  const estimate = applyContrast(done, inference.coefficients) / applyContrast(atFailure, inference.coefficients);
  const notRejected = makeAcceptance(inference, confidence);
  const contrast = (share: number) => Float64Array.from(done, (value, j) => value - share * atFailure[j]);
  const holds = (share: number) => notRejected(contrast(share));
  /** Above 0 where a share is not rejected, below where it is. */
  const margin = (share: number) => measureP(inference, contrast(share)) - (1 - confidence);
  const end = (direction: 1 | -1): number | null => {
    let reach = FIRST_REACH;
    while (holds(estimate + direction * reach)) {
      reach *= 2;
      if (reach > FURTHEST_SHARE) return null;
    }
    // A few looks in place of fifty: a programme asks for hundreds of shares.
    return direction > 0 ? findRoot(margin, estimate, estimate + reach) : findRoot(margin, estimate - reach, estimate);
  };
  return { estimate, low: end(-1), high: end(1) };
}
