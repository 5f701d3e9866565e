/** The target under every combination of choices: all together, and with each choice held at each level. */

import type { Sweep, SweepChoice } from '../model/checks/sweep.ts';
import type { SweepLevel } from '../model/checks/sweepLevels.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';
import { describedByWords, type Figure } from './figure.ts';
import { middleTargets, statePlace, stateSweep } from './findings.ts';
import { formatNumber } from './format.ts';
import { listIntervals } from './intervalList.ts';
import { LOAD_LOOKS } from './looks.ts';
import { CURVE_WORDS } from './settingsWords.ts';

const LEVEL_WORDS: Readonly<Record<SweepChoice, (level: string | number) => string>> = {
  metric: (level) => (level === 'log-ratio' ? 'as log ratio' : 'standardised'),
  correlation: (level) => `correlation ${level}`,
  rho: (level) => `shared error ${level}`,
  split: (level) => `split at ${level} %`,
  curve: (level) => ({ ...CURVE_WORDS })[String(level)] ?? String(level),
  weighting: (level) =>
    ({ mixed: 'mixed model', precision: 'by precision', equal: 'weighted equally' })[String(level)] ?? String(level),
  adjust: (level) => (level === 'nothing' ? 'not adjusted' : 'adjusted'),
  inclusion: (level) => (level === 'all studies' ? 'all studies' : 'no high concern'),
  restingOn: (level) => (level === 'all rows' ? 'all rows' : 'no assumed rows'),
  missingSds: (level) => (level === 'off' ? 'no missing SDs' : 'missing SDs pooled'),
};

/**
 * @param point the target under the analysis' own choices; null where there is none
 * @throws where no combination gives a target
 */
export function targetsByChoice(
  name: 'light' | 'heavy',
  sweep: Sweep,
  levels: readonly SweepLevel[],
  point: number | null,
): Figure {
  const { outcomes, withoutTarget } = sweep[name];
  const found = middleTargets(sweep[name]);
  if (!found) throw new Error(`invalid sweep; no target in ${outcomes.length} combinations for ${name} loads`);
  const { low, middle, high } = found;
  const lines = [
    { name: 'all combinations', point: middle, low, high },
    ...levels.flatMap(({ choice, level, low: from, middle: centre, high: to }) =>
      from === null || centre === null || to === null
        ? []
        : [{ name: LEVEL_WORDS[choice](level), point: centre, low: from, high: to }],
    ),
  ];
  const { colour, symbol } = LOAD_LOOKS[name];
  const loads = LOAD_NAMES[name];
  const title = `Other choices: nine in ten targets for ${loads} lie ${statePlace(low, high)}`;
  const own = point === null ? '' : ` The broken line is the target of the analysis, ${formatNumber(point, 1)}.`;
  const caption = `${stateSweep(name, sweep)} Each line holds one choice and varies all others: the mark is the middle of its targets, the line nine in ten of them; choices from the one that moves them most.${own}`;
  return describedByWords({
    plot: listIntervals(lines, {
      by: 'name',
      label: 'target, repetitions in reserve →',
      reference: point,
      colour,
      symbol,
    }),
    title,
    caption,
    table: {
      columns: ['choice held', 'combinations', 'without a target', '5 %', '50 %', '95 %'],
      rows: [
        [
          'all combinations',
          outcomes.length,
          withoutTarget,
          ...[low, middle, high].map((value) => formatNumber(value, 2)),
        ],
        ...levels.map((level) => [
          LEVEL_WORDS[level.choice](level.level),
          level.combinations,
          level.withoutTarget,
          ...[level.low, level.middle, level.high].map((value) => (value === null ? 'none' : formatNumber(value, 2))),
        ]),
      ],
    },
  });
}
