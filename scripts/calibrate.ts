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
import { runScript } from './terminal/call.ts';

const HELP = `usage: npm run calibrate

Simulates ${REPETITIONS} tables each of ${STUDY_COUNTS.join(' and ')} studies with a known truth, counts how often the intervals
hold it, and writes data/calibration.json, which the site shows. Takes some minutes.`;

runScript({ help: HELP }, () => {
  const results = STUDY_COUNTS.map((studies) => calibrate(studies, REPETITIONS, SEED));
  const report = {
    about: 'Tables simulated under the working model with a known truth; intervals at the confidence named.',
    truth: { ...TRUTH, target: TRUE_TARGET },
    keptShare: KEPT_SHARE,
    confidence: CONFIDENCE,
    seed: SEED,
    results,
  };
  writeFileSync(new URL('../data/calibration.json', import.meta.url), `${JSON.stringify(report, null, 2)}\n`);
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
});
