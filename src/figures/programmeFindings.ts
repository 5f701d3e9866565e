/** What the programme check found, in sentences that say no more than their intervals allow. */
import type { PracticeAnalysis } from '../model/full.ts';
import { type Estimate, isUnreliable, LEAST_RELIABLE_DF } from '../model/result.ts';
import type { WholeRange } from '../model/wholeRepetitions.ts';
import { countOf } from '../numerics/countOf.ts';
import { LEAST_RESERVE_WHEN_PINNED } from '../practice/cautions.ts';
import { askAbout } from '../practice/plausible.ts';
import { writeDay } from '../practice/programme/columns.ts';
import type { CheckedLine } from '../practice/programme/line.ts';
import type { VersionsComparison } from '../practice/programme/report.ts';
import type { Calendar } from '../practice/programme/sessions.ts';
import { formatChange, formatNumber, lossInPercent } from './format.ts';

/** What version two is expected to be worth, and to cost at the event. */
export function stateVersions(
  { overall, drop, dropReason }: VersionsComparison,
  { event }: Calendar,
  { settings, response }: Pick<PracticeAnalysis, 'settings' | 'response'>,
): string {
  const { difference, reason } = overall;
  const weeks =
    response.medianWeeks === null
      ? ''
      : ` over ${countOf(Math.round(response.medianWeeks), 'week')} (the median of the studies’ arms)`;
  const growth = difference
    ? `Over all sets version two is expected to change growth by ${formatChange(difference, settings.metric)}${weeks}${openly(difference)}.`
    : `Over all sets no difference in growth can be stated: ${reason}.`;
  if (!event) return growth;
  const cost = drop
    ? ` At the event on ${writeDay(event.day)} the session that leaves most leaves ${stateDrop(drop)}.`
    : ` At the event on ${writeDay(event.day)} no difference in fatigue can be stated: ${dropReason}.`;
  return `${growth}${cost}`;
}

function openly(estimate: Estimate): string {
  return `${isOpen(estimate) ? ', which is not distinguishable from nothing' : ''}${doubt(estimate)}`;
}

function doubt(estimate: Estimate): string {
  return isUnreliable([estimate])
    ? ` (fewer than ${LEAST_RELIABLE_DF} degrees of freedom: the interval is unreliable)`
    : '';
}

function isOpen({ ciLow, ciHigh }: Estimate): boolean {
  return ciLow <= 0 && ciHigh >= 0;
}

/** A difference of drops on the log scale, above 0 where the second version leaves more. */
function stateDrop(drop: Estimate): string {
  const few = doubt(drop);
  if (isOpen(drop)) return `a fatigue that is not distinguishable from version one’s${few}`;
  const [low, high] = [drop.ciLow, drop.ciHigh].map((value) => Math.abs(lossInPercent(value))).sort((a, b) => a - b);
  const size = formatNumber(Math.abs(lossInPercent(drop.estimate)), 1);
  if (Number(size) === 0)
    return `a fatigue that differs from version one’s by less than 0.1\u00a0% of performance${few}`;
  return `${drop.estimate < 0 ? 'less' : 'more'} fatigue than version one’s, by ${size}\u00a0% of performance (${formatNumber(low, 1)} to ${formatNumber(high, 1)})${few}`;
}

function isWithin(reserve: number, range: WholeRange | null): boolean {
  return range === null || (reserve >= range.least && reserve <= range.most);
}

/** How a line stands against what is advised. */
export function stateAgainst({
  against,
  advised,
  unsafe,
  line,
  plausibility,
}: Pick<CheckedLine, 'against' | 'advised' | 'unsafe' | 'line' | 'plausibility'>): string {
  if (unsafe) return `unsafe: alone under a load that can pin, with less than ${LEAST_RESERVE_WHEN_PINNED} in reserve`;
  if (against === 'none') return advised.sentence;
  if (against === 'inside')
    return isWithin(line.reserve, advised.reserve) ? 'as advised' : 'as advised, to half a repetition';
  if (against === 'questioned') {
    return `not judged. ${askAbout({ ...line, relation: line.exercise.relation }, plausibility)}`;
  }
  return against === 'closer' ? 'closer to failure than advised' : 'further from failure than advised';
}
