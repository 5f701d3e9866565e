/** What `--full` adds to an analysis, as lines of text for a terminal, in the site's own sentences. */

import { stateBeyondFailure, stateRecovery, stateStrength } from '../../src/figures/outcomeFindings.ts';
import { stateBootstrap, stateReserveError, stateWeightings, stateWithinBetween } from '../../src/figures/panels.ts';
import { listBands } from '../../src/model/bands.ts';
import type { FullAnalysis } from '../../src/model/full.ts';

export function stateFullAnalysis(full: FullAnalysis): string {
  const { settings, bands, checks, strength, fatigue, beyondFailure } = full;
  const { metric } = settings;
  return [
    'STRENGTH, FATIGUE, WORK BEYOND FAILURE',
    stateStrength(strength, settings),
    ...fatigue.byStatus.map((status) => stateRecovery(status, settings)),
    ...beyondFailure.map((contrast) => stateBeyondFailure(contrast, settings)),
    ...listBands(bands).flatMap(([name, band]) => {
      const own = checks[name];
      if (!own) return [];
      return [
        '',
        `CHECKS, ${name.toUpperCase()}`,
        stateWeightings(own.weightings),
        stateWithinBetween(band.withinBetween, metric),
        stateReserveError(own.reserveError, metric),
        stateBootstrap(own.bootstrap),
      ];
    }),
    '',
    'Each study left out, the years one by one and the pattern of small studies are in --json.',
  ].join('\n');
}
