/** What calibration over truths found, in words and numbers. */
import { countOf } from '../numerics/countOf.ts';
import { writePercent } from '../numerics/percent.ts';
import { type CalibratedCurve, type CoverageCell, CURVE_NAMES, LAYOUT_WORDS, PROMISE } from './coverageCells.ts';
import type { Figure } from './figure.ts';
import { formatNumber } from './format.ts';

/** @param confidence of the intervals: the share that they promise to hold */
export function titleCoverage(cells: readonly CoverageCell[], confidence: number): string {
  const truths = new Set(cells.map(({ truth }) => truth)).size;
  return `Over ${countOf(truths, 'truth', 'truths')} the flexible curve’s ${writePercent(confidence)} interval held the target in ${rangeHeld(cells, 'flexible')} of tables, the straight line’s in ${rangeHeld(cells, 'line')}`;
}

/** @param cells at least one */
export function captionCoverage(cells: readonly CoverageCell[]): string {
  const [{ tables }] = cells;
  return [
    `Filled circles: the flexible curve; open squares: a straight line fitted to the same tables. Each mark is ${tables.toLocaleString('en')} tables invented around a known truth, by how many studies a table has; the two of a kind in a row are reserves of ${LAYOUT_WORDS.spread} and ${LAYOUT_WORDS.near}.`,
    stateBroken(cells),
    stateWrongShapes(cells),
    stateWidths(cells),
    stateRefusals(cells),
  ]
    .filter(Boolean)
    .join(' ');
}

/** Truths around which the line fails, the more the more studies there are. */
function stateWrongShapes(cells: readonly CoverageCell[]): string {
  const counts = countsOf(cells);
  const [fewest, most] = [counts[0], counts[counts.length - 1]];
  const worst = (truth: string, studies: number) =>
    Math.min(
      ...cells.flatMap((cell) =>
        cell.truth === truth && cell.studies === studies ? (cell.shapes.line.held ?? []) : [],
      ),
    );
  const wrong = [...new Set(cells.map(({ truth }) => truth))].filter(
    (truth) => worst(truth, most) < PROMISE.least && worst(truth, most) <= worst(truth, fewest),
  );
  return wrong.length === 0 || fewest === most
    ? ''
    : `More studies do not mend a wrong shape: around ${inWords(wrong)} the line’s interval narrows about a wrong place and holds the truth no more often with ${most} studies than with ${fewest}.`;
}

/** Widths with a middling number of studies: the price of assuming no shape. */
function stateWidths(cells: readonly CoverageCell[]): string {
  const middle = countsOf(cells).at(-2) ?? cells[0].studies;
  const widths = (curve: CalibratedCurve) =>
    rangeOfNumbers(
      cells.flatMap(({ studies, shapes }) => (studies === middle ? (shapes[curve].medianWidth ?? []) : [])),
      1,
    );
  return `Assuming no shape costs width: with ${middle} studies a typical interval spans ${widths('flexible')} repetitions, the line’s ${widths('line')}.`;
}

function stateRefusals(cells: readonly CoverageCell[]): string {
  const shares = countsOf(cells).map((count) => {
    const those = cells.filter(({ studies }) => studies === count);
    const most = Math.max(...those.map(({ tables, shapes: { flexible } }) => 1 - flexible.given / tables));
    return `${formatNumber(100 * most, 0)}\u00a0% with ${count} studies`;
  });
  return `Counted is the interval as the site shows it. The flexible curve gave none for up to ${inWords(shares)}: a refusal counts neither way.`;
}

function countsOf(cells: readonly CoverageCell[]): readonly number[] {
  return [...new Set(cells.map(({ studies }) => studies))].sort((a, b) => a - b);
}

/** “a, b and c”. */
function inWords(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]}`;
}

/** Where the flexible curve's interval falls short of what is asked of it, or that it does nowhere. */
function stateBroken(cells: readonly CoverageCell[]): string {
  const short = cells.filter(({ shapes: { flexible } }) => flexible.held !== null && flexible.held < PROMISE.least);
  const bound = writePercent(PROMISE.least);
  if (short.length === 0) return `Nowhere here does the flexible curve’s interval hold it in fewer than ${bound}.`;
  const truths = [...new Set(short.map(({ truth }) => truth))].map((truth) => {
    const those = short.filter((cell) => cell.truth === truth);
    return `“${truth}” (${rangeHeld(those, 'flexible', 1)} with ${inWords(countsOf(those).map(String))} studies)`;
  });
  return `The flexible curve’s interval does not keep its promise, and holds the truth in fewer than ${bound}, around ${inWords(truths)}.`;
}

/** “93 to 97 %” of the cells in which a curve gave any interval. */
function rangeHeld(cells: readonly CoverageCell[], curve: CalibratedCurve, digits = 0): string {
  const shares = cells.flatMap(({ shapes }) => shapes[curve].held ?? []).map((held) => 100 * held);
  return shares.length === 0 ? 'none' : `${rangeOfNumbers(shares, digits)}\u00a0%`;
}

function rangeOfNumbers(values: readonly number[], digits: number): string {
  const [low, high] = [Math.min(...values), Math.max(...values)].map((value) => formatNumber(value, digits));
  return low === high ? low : `${low} to ${high}`;
}

/** A line a cell and curve. */
export function tabulateCoverage(cells: readonly CoverageCell[]): Figure['table'] {
  const percent = (share: number | null, digits: number) =>
    share === null ? 'none' : `${formatNumber(100 * share, digits)}\u00a0%`;
  const repetitions = (value: number | null) => (value === null ? 'none' : formatNumber(value, 2));
  return {
    columns: [
      'truth',
      'true target',
      'studies',
      'reserves',
      'curve',
      'held of those given',
      'simulation error',
      'median width',
      'without upper end',
      'target off by (median)',
      'refused: no fit',
      'refused: growth at 0 unsure',
      'refused: no difference seen',
    ],
    rows: cells.flatMap(({ truth, trueTarget, studies, layout, shapes }) =>
      (['flexible', 'line'] as const).map((curve) => {
        const { held, heldError, medianWidth, withoutUpperEnd, medianBias, refused } = shapes[curve];
        return [
          truth,
          trueTarget === null ? 'every reserve' : formatNumber(trueTarget, 2),
          studies,
          LAYOUT_WORDS[layout],
          CURVE_NAMES[curve],
          percent(held, 1),
          percent(heldError, 1),
          repetitions(medianWidth),
          percent(withoutUpperEnd, 0),
          repetitions(medianBias),
          refused.fit,
          refused.growth,
          refused.noDifference,
        ];
      }),
    ),
  };
}
