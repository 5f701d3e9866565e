/** What the programme check found, in sentences that say no more than their intervals allow. */
import type { PracticeAnalysis } from '../model/full.ts';
import { type Estimate, isUnreliable, LEAST_RELIABLE_DF } from '../model/result.ts';
import { writeDay } from '../practice/programme/columns.ts';
import type { CheckedLine } from '../practice/programme/line.ts';
import type { VersionsComparison } from '../practice/programme/report.ts';
import type { Calendar } from '../practice/programme/sessions.ts';
import { formatChange, formatNumber } from './format.ts';

export function describeVersions(
  { overall, drop, dropReason }: VersionsComparison,
  { event }: Calendar,
  { settings, response }: Pick<PracticeAnalysis, 'settings' | 'response'>,
): string {
  const { difference, reason } = overall;
  const weeks =
    response.medianWeeks === null
      ? ''
      : ` over ${formatNumber(response.medianWeeks, 0)} weeks (the median of the studies’ arms)`;
  const growth = difference
    ? `Over all sets version two is expected to change growth by ${formatChange(difference, settings.metric)}${weeks}${openly(difference)}.`
    : `Over all sets no difference in growth is expected: ${reason}.`;
  if (!event) return growth;
  const cost = drop
    ? ` At the event on ${writeDay(event.day)} the session that leaves most leaves ${describeDrop(drop)}.`
    : ` At the event on ${writeDay(event.day)} no difference is known: ${dropReason}.`;
  return `${growth}${cost}`;
}

function openly(estimate: Estimate): string {
  return estimate.ciLow <= 0 && estimate.ciHigh >= 0 ? ', which is not distinguishable from nothing' : '';
}

/** A difference of drops on the log scale, above 0 where the second version leaves more. */
function describeDrop(drop: Estimate): string {
  const percent = (value: number) => formatNumber(Math.abs(100 * Math.expm1(-value)), 1);
  const few = isUnreliable([drop])
    ? ` (fewer than ${LEAST_RELIABLE_DF} degrees of freedom: the interval is unreliable)`
    : '';
  const open = drop.ciLow <= 0 && drop.ciHigh >= 0;
  const direction = drop.estimate < 0 ? 'less' : 'more';
  const [from, to] = [percent(drop.ciLow), percent(drop.ciHigh)].sort((a, b) => Number(a) - Number(b));
  return open
    ? `a fatigue that is not distinguishable from version one’s${few}`
    : `${percent(drop.estimate)} % ${direction} fatigue than version one’s, ${from} to ${to} %${few}`;
}

/** How a line stands against what is advised. */
export function describeAgainst({ against, advised, unsafe }: CheckedLine): string {
  if (unsafe) return 'unsafe: alone under a load that can pin, with nothing left';
  if (against === 'none') return advised.sentence;
  if (against === 'inside') return 'as advised';
  return against === 'closer' ? 'closer to failure than advised' : 'further from failure than advised';
}
