/**
 * Which intervals keep their promise: how often the interval of a target holds the true one in simulated tables,
 * by the truth they were drawn from and the number of studies, for the curve that is fitted.
 */
import * as Plot from '@observablehq/plot';
import type { TruthName } from '../model/truths.ts';
import { writePercent } from '../numerics/percent.ts';
import { type CalibratedCurve, type CoverageCell, LAYOUT_WORDS, TRUTH_WORDS } from './coverageCells.ts';
import { captionCoverage, tabulateCoverage, titleCoverage } from './coverageFindings.ts';
import { describedByWords, type Figure } from './figure.ts';
import { upperFirst } from './firstLetter.ts';
import { HALO, LIST_STYLE } from './looks.ts';

const WIDTH = 420;
const ROW_HEIGHT = 17;
const FRAME_HEIGHT = 84;

/** @param confidence of the intervals: the share that they promise to hold */
export function coverageByTruth(cells: readonly CoverageCell[], confidence: number): Figure {
  const truths = [...new Set(cells.map(({ truth }) => truth))];
  const counts = [...new Set(cells.map(({ studies }) => studies))].sort((a, b) => a - b);
  // A truth's heading is a row of its own above its numbers of studies.
  const rows = truths.flatMap((truth) => [truth, ...counts.map((studies) => nameRow(truth, studies))]);
  const headings = truths.map((truth) => ({ row: truth, name: upperFirst(truth), words: TRUTH_WORDS[truth] }));
  const dots = (curve: CalibratedCurve) =>
    cells.flatMap(({ truth, studies, layout, shapes }) => {
      const { held } = shapes[curve];
      return held === null
        ? []
        : [{ row: nameRow(truth, studies), truth, studies, reserves: LAYOUT_WORDS[layout], held: 100 * held }];
    });
  return describedByWords({
    plot: {
      width: WIDTH,
      height: FRAME_HEIGHT + ROW_HEIGHT * rows.length,
      marginLeft: 40,
      marginRight: 16,
      marginTop: 40,
      marginBottom: 44,
      style: LIST_STYLE,
      x: {
        label: '% of intervals that hold the true target →',
        labelAnchor: 'center',
        labelOffset: 38,
        tickSize: 0,
        ticks: [0, 25, 50, 75, 100],
        domain: [0, 100],
        inset: 6,
      },
      y: {
        label: 'studies',
        labelAnchor: 'top',
        tickSize: 0,
        domain: rows,
        tickFormat: (row: string) => row.split(ROW_MARK)[1] ?? '',
      },
      marks: [
        Plot.ruleY(
          rows.filter((row) => row.includes(ROW_MARK)),
          { stroke: 'var(--rule)' },
        ),
        Plot.ruleX([100 * confidence], { stroke: 'var(--ink)', strokeDasharray: '2,4' }),
        Plot.text([{ held: 100 * confidence }], {
          x: 'held',
          frameAnchor: 'top',
          dy: -22,
          dx: 14,
          textAnchor: 'end',
          text: () => `promised: ${writePercent(confidence)}`,
          fill: 'var(--ink)',
        }),
        Plot.text(headings, {
          y: 'row',
          text: ({ name, words }: (typeof headings)[number]) => `${name}: ${words}`,
          frameAnchor: 'left',
          dx: -34,
          dy: 3,
          textAnchor: 'start',
          fontWeight: 600,
          fill: 'var(--ink)',
          ...HALO,
        }),
        Plot.dot(dots('line'), {
          x: 'held',
          y: 'row',
          symbol: 'square',
          r: 4,
          fill: 'var(--paper)',
          stroke: 'var(--quiet)',
          strokeWidth: 1.5,
        }),
        Plot.dot(dots('flexible'), { x: 'held', y: 'row', r: 4.5, fill: 'var(--heavy-load)' }),
      ],
    },
    title: titleCoverage(cells, confidence),
    caption: captionCoverage(cells),
    table: tabulateCoverage(cells),
  });
}

const ROW_MARK = ' / ';

function nameRow(truth: TruthName, studies: number): string {
  return `${truth}${ROW_MARK}${studies}`;
}
