/** What a run of drawn tables came to, in words: how many intervals hold the truth, and what that many tables can tell. */
import { COVERAGE_QUESTION, type CurveCoverage, type TableAnswer } from '../../model/coverage.ts';
import type { Curve } from '../../model/settings.ts';
import { countOf } from '../../numerics/countOf.ts';
import { writePercent } from '../../numerics/percent.ts';
import { inferShare } from '../../numerics/wilson.ts';
import { upperFirst } from '../firstLetter.ts';
import { formatNumber, formatShare } from '../format.ts';
import { CURVE_WORDS } from '../settingsWords.ts';

/** How curves and marks are told apart, by place, form and colour. */
export const CURVE_LOOKS = [
  { colour: 'var(--quiet)', dash: '7,4', symbol: 'square' },
  { colour: 'var(--heavy-load)', dash: undefined, symbol: 'circle' },
] as const;

export const REFUSAL_WORDS = {
  fit: 'no fit',
  growth: 'growth at reserve 0 not told from nothing',
  noDifference: 'no difference by reserve seen',
} as const satisfies Readonly<Record<keyof CurveCoverage['refused'], string>>;

/** How many of the intervals given hold the truth; a whole number again where the share was made of one. */
export function countHeld({ given, held }: CurveCoverage): number {
  return Math.round((held ?? 0) * given);
}

/** “12 of 200 hold the truth: 6 % (3 to 10 %)”. */
export function stateHeld(coverage: CurveCoverage): string {
  const { given } = coverage;
  if (given === 0) return 'no interval was given';
  const held = countHeld(coverage);
  return `${held} of ${countOf(given, 'interval')} ${held === 1 ? 'holds' : 'hold'} the truth: ${writeShare(held, given)}`;
}

/** Tables from which on a tenth of a point of per cent is told: of as many, none still leaves up to 0.4 % open. */
const MANY_TABLES = 1000;

/** A share with the interval that so few tables leave it: “6 % (3 to 10 %)”, of many “24.6 % (22.7 to 26.5 %)”. */
export function writeShare(count: number, of: number): string {
  const { share, low, high } = inferShare(count, of, COVERAGE_QUESTION.confidence);
  return formatShare({ estimate: share, low, high }, of < MANY_TABLES ? 0 : 1);
}

/** Tables without an interval, by their reasons; empty where there is none. */
export function stateRefused({ refused }: CurveCoverage): string {
  const reasons = (Object.keys(REFUSAL_WORDS) as (keyof typeof REFUSAL_WORDS)[]).filter(
    (reason) => refused[reason] > 0,
  );
  const total = reasons.reduce((sum, reason) => sum + refused[reason], 0);
  if (total === 0) return '';
  const list = reasons.map((reason) => `${refused[reason]} ${REFUSAL_WORDS[reason]}`).join(', ');
  return `${countOf(total, 'table')} gave no interval (${list}) and count${total === 1 ? 's' : ''} neither way.`;
}

/** “spans 1.8 repetitions, typically”. */
export function writeWidth({ medianWidth }: CurveCoverage): string {
  return medianWidth === null ? 'none' : `${formatNumber(medianWidth, 1)} repetitions`;
}

/** Where the true target lies. */
export function writeTrueTarget(trueTarget: number): string {
  return Number.isFinite(trueTarget) ? formatNumber(trueTarget, 2) : 'every reserve';
}

export function nameCurve(curve: Curve): string {
  return upperFirst(CURVE_WORDS[curve]);
}

/** Promise of the intervals: “95 %”. */
export const PROMISED = writePercent(COVERAGE_QUESTION.confidence);

/** One answer in a line of a table. */
export function writeAnswer({ point, low, high, refusal, holds }: TableAnswer): readonly string[] {
  if (refusal !== null) return ['none', 'none', 'none', REFUSAL_WORDS[refusal]];
  const end = high === null ? 'no upper end' : formatNumber(high, 2);
  return [formatNumber(point ?? 0, 2), formatNumber(low ?? 0, 2), end, holds ? 'yes' : 'no'];
}
