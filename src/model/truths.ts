/**
 * Invented truths of how growth depends on reserve, and the target that each of them has: what simulated
 * tables are drawn from. B = 0.0725 is the log ratio at reserve 0, r the reserve in repetitions.
 *
 *   line          B − 0.005 r
 *   log           B − 0.0225 ln(1 + r)
 *   plateau       B − 0.0075 max(0, r − 2.5)
 *   saturating    B (0.35 + 0.65 e^(−r/3))
 *   parabola      B − 0.0005 r²
 *   shallow line  B − 0.0021 r
 *
 * They were chosen to differ near failure, where targets lie: loss at once, later, at the same pace or at one that
 * wears off. The further ones ask more than a curve can give: a slope without end at 0, corners, no loss at all, a step.
 */
import { bisect } from '../numerics/roots.ts';

/** Growth at a reserve (repetitions), log ratio; it never rises with reserve. */
export type Growth = (reserve: number) => number;

/** Growth at reserve 0, log ratio: that of the demonstration's light loads. */
const AT_FAILURE = 0.0725;

/** Truths that intervals are held to. */
export const TRUTHS = {
  line: (r) => AT_FAILURE - 0.005 * r,
  log: (r) => AT_FAILURE - 0.0225 * Math.log1p(r),
  plateau: (r) => AT_FAILURE - 0.0075 * Math.max(0, r - 2.5),
  saturating: (r) => AT_FAILURE * (0.35 + 0.65 * Math.exp(-r / 3)),
  parabola: (r) => AT_FAILURE - 0.0005 * r * r,
  'shallow line': (r) => AT_FAILURE - 0.0021 * r,
} as const satisfies Readonly<Record<string, Growth>>;

/** From 0 to 1 about a reserve of 4, most of it within 2 repetitions on either side. */
const stepAt4: Growth = (r) => 1 / (1 + Math.exp(-1.5 * (r - 4)));

/** Truths that are harder to follow, measured and told beside. */
export const FURTHER_TRUTHS = {
  'square root': (r) => AT_FAILURE - 0.016 * Math.sqrt(r),
  'early corner': (r) => AT_FAILURE - 0.0075 * Math.max(0, r - 1.5),
  'steep, then flat': (r) => AT_FAILURE - 0.012 * Math.min(r, 2),
  'no loss': () => AT_FAILURE,
  step: (r) => AT_FAILURE * (1 - 0.5 * (stepAt4(r) - stepAt4(0))),
} as const satisfies Readonly<Record<string, Growth>>;

export type TruthName = keyof typeof TRUTHS | keyof typeof FURTHER_TRUTHS;

/** Any truth by its name. */
export const ALL_TRUTHS: Readonly<Record<TruthName, Growth>> = { ...TRUTHS, ...FURTHER_TRUTHS };

/** Reserve up to which a true target is looked for, repetitions: beyond what any study has asked for. */
const FURTHEST = 100;

/**
 * The largest reserve that truly keeps the share of growth at reserve 0; Infinity where every one does.
 *
 * @param keptShare 0 to 1 open
 */
export function trueTargetOf(growth: Growth, keptShare: number): number {
  const keeps = (reserve: number) => growth(reserve) >= keptShare * growth(0);
  return keeps(FURTHEST) ? Number.POSITIVE_INFINITY : bisect(keeps, 0, FURTHEST);
}
