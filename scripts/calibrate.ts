/** Measures calibration and writes what the site shows; `npm run calibrate -- --help` says how. */
import { writeFileSync } from 'node:fs';
import {
  CONFIDENCE,
  calibrate,
  KEPT_SHARE,
  REPETITIONS,
  SEED,
  STUDY_COUNTS,
  TRUE_TARGET,
  TRUTH,
} from './measure/calibration.ts';
import { type CellResult, SHAPE_STUDY_COUNTS, SHAPE_TABLES, SHAPES } from './measure/shapeCalibration.ts';
import { CELLS, calibrateCells, FEWEST_CELLS, FURTHER_CELLS } from './measure/shapeCells.ts';
import { runScript } from './terminal/call.ts';

/** Tables of a cell where only a look is wanted. */
const QUICK_TABLES = 100;

const HELP = `usage: npm run calibrate -- [--quick]

Simulates tables with a known truth, counts how often the intervals hold it, and writes data/calibration.json, which the
site shows: ${REPETITIONS} tables each of ${STUDY_COUNTS.join(', ')} studies around a straight line, then ${SHAPE_TABLES} tables each of
${SHAPE_STUDY_COUNTS.join(', ')} studies around truths of many shapes, with the curves ${SHAPES.join(' and ')} on the same tables. Takes
about 10 minutes on two cores.

--quick  ${QUICK_TABLES} tables each, printed and not written: a look in a minute or two.`;

runScript({ help: HELP, options: { quick: { type: 'boolean' } } }, ({ values: { quick } }) => {
  void measure(quick ?? false);
});

async function measure(quick: boolean): Promise<void> {
  const results = STUDY_COUNTS.map((studies) => calibrate(studies, quick ? QUICK_TABLES : REPETITIONS, SEED));
  console.table(
    results.map(
      ({ studies, slopeCoverage, targetCoverage, slopeBias, slopeBiasError, targetMedianBias, failures }) => ({
        studies,
        slopeCoverage,
        targetCoverage,
        slopeBias,
        slopeBiasError,
        targetMedianBias,
        failures,
      }),
    ),
  );
  const all = [...CELLS, ...FEWEST_CELLS, ...FURTHER_CELLS];
  const tables = quick ? QUICK_TABLES : SHAPE_TABLES;
  const measured = await calibrateCells(all, tables, SEED, (result, count) => {
    console.log(`${count}/${all.length} ${describe(result)}`);
  });
  const report = {
    about: 'Tables simulated under the working model with a known truth; intervals at the confidence named.',
    truth: { ...TRUTH, target: TRUE_TARGET },
    keptShare: KEPT_SHARE,
    confidence: CONFIDENCE,
    seed: SEED,
    results,
    shapes: {
      tables,
      cells: measured.slice(0, CELLS.length),
      fewest: measured.slice(CELLS.length, -FURTHER_CELLS.length),
      further: measured.slice(-FURTHER_CELLS.length),
    },
  };
  if (quick) return;
  writeFileSync(new URL('../data/calibration.json', import.meta.url), `${JSON.stringify(report, null, 2)}\n`);
}

/** A cell in a line: “line, 8 studies, spread: line 95.1 %, flexible 96.0 % …”. */
function describe({ truth, studies, layout, shapes }: CellResult): string {
  const shown = SHAPES.map((shape) => {
    const { held, given, medianWidth } = shapes[shape];
    if (held === null || medianWidth === null) return `${shape} gave none`;
    return `${shape} held ${(100 * held).toFixed(1)} % of ${given}, width ${medianWidth.toFixed(2)}`;
  });
  return `${truth}, ${studies} studies, ${layout}: ${shown.join('; ')}`;
}
