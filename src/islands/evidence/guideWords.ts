/** Words of the guided steps that differ with the table and the settings: what is said is what is fitted and shown. */
import { formatNumber } from '../../figures/format.ts';
import { CURVE_WORDS } from '../../figures/settingsWords.ts';
import type { Band } from '../../model/result.ts';
import type { Curve } from '../../model/settings.ts';

/** The curve that the questions follow, before a change and after it; fitted both times. */
export interface FollowedChange {
  /** “heavy loads”. */
  readonly loads: string;
  readonly before: Band;
  readonly after: Band;
}

/** A mark that grew by less did so unseen: ratio of shares of the weight. */
const GREW = 1.1;

/** Which marks grew by counting rows by precision. */
export function teachPrecision({ loads, before, after }: FollowedChange): string {
  const former = new Map(before.fitted.map(({ line, weight }) => [line, weight]));
  return after.fitted.some(({ line, weight }) => weight > GREW * (former.get(line) ?? weight))
    ? `Look at which marks grew with ${loads}: the most exact rows now decide.`
    : `The marks with ${loads} hardly changed: these rows counted about so before.`;
}

/** What the mixed model found beyond the rows' own error, and what that did to their weights. */
export function teachSharing({ loads, before, after }: FollowedChange): string {
  if (after.tau2 === 0 && after.omega2 === 0)
    return `With ${loads}, results differ by no more than their own error, as far as the model can tell: there is nothing to share the weight out by.`;
  const [was, is] = [before, after].map(({ fitted }) =>
    formatNumber(100 * Math.max(...fitted.map(({ weight }) => weight)), 0),
  );
  return `With ${loads}, results differ by more than their own error, and that counts now: the row that counts most has ${is}\u00a0% of the weight, before ${was}\u00a0%.`;
}

/** What is asked where one shape takes the place of another; one of them is a line. */
export function askOfShape(from: Curve, to: Curve): string {
  const bent = bentOf(from, to);
  return `Ringed is the curve near failure. A straight line changes as much with the tenth repetition left as with the first; the ${CURVE_WORDS[bent]} ${bent === 'log' ? 'does' : 'need'} not. Now the ${CURVE_WORDS[to]} takes the place of the ${CURVE_WORDS[from]}.`;
}

export function teachShape({ before, after }: FollowedChange): string {
  const bent = bentOf(before.curve, after.curve);
  const finds = bent === 'flexible' ? 'finds it' : 'finds only how far it bends';
  const known =
    bent === 'log'
      ? 'Line and logarithm both take their shape as known.'
      : `A line takes its shape as known, the ${CURVE_WORDS[bent]} ${finds}.`;
  return `${known} Which is right the table does not say; the page Learn shows what a wrong shape costs.`;
}

function bentOf(from: Curve, to: Curve): Curve {
  return from === 'line' ? to : from;
}
