/** A band's interval today and with each plan, one under the other. */
import * as Plot from '@observablehq/plot';
import type { ExpectedTarget } from '../../model/plan/expectedTarget.ts';
import type { BandExpectation } from '../../model/plan/planExpectation.ts';
import type { BandName } from '../../model/result.ts';
import type { Settings } from '../../model/settings.ts';
import { countOf } from '../../numerics/countOf.ts';
import { writePercent } from '../../numerics/percent.ts';
import { LOAD_HEADINGS } from '../../practice/loadNames.ts';
import { describedByWords, type Figure } from '../figure.ts';
import { listIntervals, OPEN_INTERVALS } from '../intervalList.ts';
import { LOAD_LOOKS } from '../looks.ts';
import { OUTCOME_WORDS } from '../outcomeWords.ts';
import {
  formatExpectedRange,
  formatWidth,
  PER_PEOPLE,
  type PlanName,
  statePerPeople,
  stateWidth,
} from './planWords.ts';

/** What one plan does to the band, in which it has arms. */
export interface PlannedInterval {
  readonly plan: PlanName;
  /** People of the whole study. */
  readonly people: number;
  readonly expectation: BandExpectation;
}

export interface PlannedIntervalsOptions {
  readonly band: BandName;
  readonly settings: Pick<Settings, 'keptShare' | 'confidence' | 'outcome'>;
  /** Largest reserve studied, to which intervals without an upper end are drawn; null without rows. */
  readonly furthest: number | null;
}

const TODAY = 'today';
/** Pixels: names are short, lines stand apart. */
const NAME_WIDTH = 92;
const ROW_HEIGHT = 30;

/** @param today of the band, in the words of what is expected */
export function plannedIntervals(
  today: ExpectedTarget,
  plans: readonly PlannedInterval[],
  { band, settings: { keptShare, confidence, outcome }, furthest }: PlannedIntervalsOptions,
): Figure {
  const named: readonly { name: string; plan: PlannedInterval | null; target: ExpectedTarget | null }[] = [
    { name: TODAY, plan: null, target: today },
    ...plans.map((plan) => ({ name: `with plan ${plan.plan}`, plan, target: plan.expectation.after })),
  ];
  const drawnTo = furthest ?? 0;
  const lines = named.flatMap(({ name, target }) =>
    !target || target.point === null || target.low === null
      ? []
      : [{ name, point: target.point, low: target.low, high: target.high ?? drawnTo }],
  );
  const isOpen = named.some(({ target }) => target?.point != null && target.high === null);
  const { colour, symbol } = LOAD_LOOKS[band];
  const list = listIntervals(lines, {
    by: 'name',
    label: 'repetitions in reserve →',
    colour,
    symbol,
    reference: null,
    nameWidth: NAME_WIDTH,
    rowHeight: ROW_HEIGHT,
    names: named.map(({ name }) => name),
    // Today's mark is open: what is known is told from what is expected without colour.
    above: [
      Plot.dot(
        lines.filter(({ name }) => name === TODAY),
        { y: 'name', x: 'point', fill: 'var(--paper)', stroke: colour, strokeWidth: 2, r: 4, symbol },
      ),
    ],
  });
  const most = lines.reduce((far, { high }) => Math.max(far, high), 1);
  return describedByWords({
    plot: { ...list, x: { ...list.x, domain: [0, most * 1.03] } },
    title: titleOf(band, today, plans),
    caption: [
      `The largest reserve that keeps ${writePercent(keptShare)} of the ${OUTCOME_WORDS[outcome].effect} at reserve 0, with its ${writePercent(confidence)} interval.`,
      'Open mark: as it stands today. Filled: as it is expected once the study is done, in the middle of all ways in which it may come out.',
      isOpen ? OPEN_INTERVALS : '',
      ...plans.flatMap(({ plan, expectation: { after, reason } }) =>
        after === null && reason ? [`Plan ${plan}: ${reason}.`] : [],
      ),
    ]
      .filter(Boolean)
      .join(' '),
    table: {
      columns: ['', 'people', 'estimate', 'interval', 'width', `for every ${PER_PEOPLE} people`],
      rows: named.map(({ name, plan, target }) => [
        name,
        plan ? plan.people.toLocaleString('en') : '',
        !target || target.point === null ? 'none' : formatWidth(target.point),
        target ? formatExpectedRange(target) : 'cannot be said',
        target ? stateWidth(target) : 'cannot be said',
        plan ? statePerPeople(plan.expectation.narrowingPerPerson) : '',
      ]),
    },
  });
}

function titleOf(band: BandName, today: ExpectedTarget, plans: readonly PlannedInterval[]): string {
  const now = today.point === null ? 'no target today' : `${formatExpectedRange(today)} today`;
  const then = plans.map(({ plan, people, expectation: { after } }) => {
    const expected = after ? `about ${formatExpectedRange(after)}` : 'not foreseeable';
    return `${expected} with plan ${plan} (${countOf(people, 'person', 'people')})`;
  });
  return `${LOAD_HEADINGS[band]}: ${[now, ...then].join(', ')}`;
}
