/** What `--full` adds to an analysis, as lines of text for a terminal, in the site's own sentences. */
import { describeBeyondFailure, describeRecovery, describeStrength } from '../../src/figures/findings.ts';
import {
  describeBootstrap,
  describeReserveError,
  describeWeightings,
  describeWithinBetween,
} from '../../src/figures/panels.ts';
import type { FullAnalysis } from '../../src/model/full.ts';

export function describeFullAnalysis(full: FullAnalysis): string {
  const { settings, bands, checks, strength, fatigue, beyondFailure } = full;
  const { metric } = settings;
  return [
    'STRENGTH, FATIGUE, WORK BEYOND FAILURE',
    describeStrength(strength, settings),
    ...fatigue.byStatus.map((status) => describeRecovery(status, settings)),
    ...beyondFailure.map((contrast) => describeBeyondFailure(contrast, settings)),
    ...Object.entries(bands).flatMap(([name, band]) => {
      const own = Object.entries(checks).find(([key]) => key === name)?.[1];
      if (!own) return [];
      return [
        '',
        `CHECKS, ${name.toUpperCase()}`,
        describeWeightings(own.weightings),
        describeWithinBetween(band.withinBetween, metric),
        describeReserveError(own.reserveError, metric),
        describeBootstrap(own.bootstrap),
      ];
    }),
    '',
    'Each study left out, the years one by one and the pattern of small studies are in --json.',
  ].join('\n');
}
