/** The target by how many repetitions are possible in the set, with common practice beside it. */
import * as Plot from '@observablehq/plot';
import type { Settings } from '../model/settings.ts';
import { drawnLow } from '../model/wholeRepetitions.ts';
import { writePercent } from '../numerics/percent.ts';
import { COMMON_PRACTICE_TAG } from '../practice/commonPractice.ts';
import type { TargetRow } from '../practice/targetTable.ts';
import { describedByWords, type Figure } from './figure.ts';
import { formatNumber, formatRange, formatTarget, formatWhole } from './format.ts';
import { listIntervals } from './intervalList.ts';
import { OUTCOME_WORDS } from './outcomeWords.ts';

export interface TargetsByRangeOptions {
  readonly keptShare: number;
  readonly confidence: number;
  /** What is kept: growth, or another outcome that was asked for. */
  readonly outcome: Settings['outcome'];
  /** Largest reserve studied, to which intervals without an upper end are drawn. */
  readonly furthest: number;
}

export function targetsByRange(
  rows: readonly TargetRow[],
  { keptShare, confidence, outcome, furthest }: TargetsByRangeOptions,
): Figure {
  const named = rows.map((row) => ({ ...row, name: `${row.range.name} possible` }));
  const lines = named.flatMap(({ name, target }) => {
    const { point, high } = target;
    const low = drawnLow(target);
    return point === null || low === null ? [] : [{ name, point, low, high: high ?? furthest }];
  });
  const practice = named.map(({ name, range }) => ({ name, upTo: range.upTo }));
  const furthestShown = lines.reduce((most, { high }) => Math.max(most, high), 4) * 1.03;
  // Right of its square, unless it would leave the picture there.
  const side = (practice[0]?.upTo ?? 0) > furthestShown / 2 ? -1 : 1;
  const title = titleOf(rows);
  const open = lines.length > 0 && rows.some(({ target }) => target.point !== null && target.high === null);
  const loads = rows
    .map(({ range, load }) => `${range.typical} at about ${formatNumber(load, 0)}\u00a0% of 1RM`)
    .join(', ');
  const caption = [
    `Filled: the largest reserve that keeps ${writePercent(keptShare)} of the ${OUTCOME_WORDS[outcome].effect} at reserve 0, with its ${writePercent(confidence)} interval: ${rows.map(stateRow).join('; ')}.`,
    `Read where so many repetitions are possible on average: ${loads}.`,
    rows.some(({ inPractice, target }) => inPractice?.most !== target.whole?.most)
      ? 'In whole repetitions no set leaves more than those possible but one.'
      : '',
    open ? `Intervals without an upper end are drawn to ${furthest}, the largest reserve studied.` : '',
    rows.some(({ unreliable }) => unreliable)
      ? 'Some intervals rest on few degrees of freedom and are unreliable.'
      : '',
    `Open squares: ${COMMON_PRACTICE_TAG}.`,
  ]
    .filter(Boolean)
    .join(' ');
  const plot = listIntervals(lines, {
    by: 'name',
    label: 'repetitions in reserve →',
    colour: 'var(--ink)',
    reference: null,
    rowHeight: 48,
    // Every range has its line, also one without a target.
    names: named.map(({ name }) => name),
    above: [
      Plot.dot(practice, {
        x: 'upTo',
        y: 'name',
        dy: 12,
        symbol: 'square',
        r: 4.5,
        fill: 'var(--paper)',
        stroke: 'var(--quiet)',
        strokeWidth: 1.5,
      }),
      // One label says it for all; the others are the same squares.
      Plot.text(practice.slice(0, 1), {
        x: 'upTo',
        y: 'name',
        dx: 9 * side,
        dy: 13,
        text: () => 'common practice',
        textAnchor: side < 0 ? 'end' : 'start',
        fill: 'var(--quiet)',
      }),
    ],
  });
  return describedByWords({
    plot: { ...plot, x: { ...plot.x, domain: [0, furthestShown] } },
    title,
    caption,
    table: {
      columns: ['possible in the set', 'load (% of 1RM)', 'in practice', 'target', 'interval', COMMON_PRACTICE_TAG],
      rows: rows.map(({ range, load, inPractice, target: { shown } }) => [
        range.name,
        formatNumber(load, 0),
        formatWhole(inPractice),
        shown === null ? 'none' : formatNumber(shown.point, 1),
        formatRange(shown?.low ?? null, shown?.high ?? null, 1),
        `up to about ${range.upTo}`,
      ]),
    },
  });
}

function stateRow({ range, target }: TargetRow): string {
  return target.point === null
    ? `none for ${range.name} possible, since ${(target.reason ?? '').replace(/^no target: (?:no fit was possible, since )?/u, '')}`
    : `${formatTarget(target)} for ${range.name} possible`;
}

/** Each range with its whole number: “3 where below 10 are possible, 2 where 10 to 20, …”. */
function titleOf(rows: readonly TargetRow[]): string {
  if (rows.every(({ inPractice }) => inPractice === null)) return 'No target at any number of repetitions possible';
  const parts = rows.map(({ range, inPractice }, i) =>
    i === 0
      ? `${inPractice ? formatWhole(inPractice) : 'no target'} where ${range.name} are possible`
      : `${formatWhole(inPractice)} where ${range.name}`,
  );
  return `Repetitions that may stay in reserve: ${parts.join(', ')}`;
}
