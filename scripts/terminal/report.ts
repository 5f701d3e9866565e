/** An analysis as lines of text for a terminal. */
import { formatWhole } from '../../src/figures/format.ts';
import { stateSimplerCurve } from '../../src/figures/settingsWords.ts';
import { listBands } from '../../src/model/bands.ts';
import type { BandDifference } from '../../src/model/differenceResult.ts';
import type { Analysis, Band, Coefficient, Target } from '../../src/model/result.ts';
import type { Settings } from '../../src/model/settings.ts';
import { writePercent } from '../../src/numerics/percent.ts';

/** @param table what the first line calls the table */
export function stateAnalysis(analysis: Analysis, table: string): string {
  const { settings, rows, bands } = analysis;
  const split =
    settings.split === null ? 'all loads together' : `light below ${settings.split} % of 1RM, heavy from there on`;
  return [
    `${table}: ${settings.outcome} against reserve, ${settings.metric}, ${settings.curve}, ${settings.weighting} weighting`,
    `${rows.included} rows fitted, ${rows.excluded.length} left out; ${split}`,
    ...listBands(bands).flatMap(([name, band]) => ['', ...stateBand(name, band, settings)]),
    ...(analysis.difference ? ['', stateDifference(analysis.difference)] : []),
    ...(rows.excluded.length > 0 ? ['', 'Rows left out:'] : []),
    ...countReasons(analysis).map(([reason, lines]) => `  ${lines} × ${reason}`),
  ].join('\n');
}

function stateBand(name: string, band: Band, settings: Settings): string[] {
  const simpler = stateSimplerCurve(band, settings);
  const head = `${name.toUpperCase()}: ${band.rows} rows of ${band.studies} studies, ${band.participants} people`;
  if (band.failure) return [head, `  not fitted: ${band.failure.reason}`];
  return [
    head,
    `  coefficients and variances in ${settings.metric === 'log-ratio' ? 'the log ratio itself; pages show hundredths of it' : 'baseline SDs'}`,
    `  ${'term'.padEnd(20)} ${'estimate'.padStart(11)} ${'robust SE'.padStart(11)} ${'df'.padStart(7)}   ${writePercent(settings.confidence)} interval      p`,
    ...band.coefficients.map(stateCoefficient),
    `  ${stateVariances(band)}`,
    `  log-likelihood REML ${fixed(band.logLikelihood.reml)}, ML ${fixed(band.logLikelihood.ml)}; AICc ${fixed(band.aicc)}`,
    `  target: ${stateTarget(band.target)}`,
    ...(simpler ? [`  ${simpler}`] : []),
    ...(band.unreliable ? ['  fewer than 4 degrees of freedom: intervals are unreliable'] : []),
  ];
}

function stateCoefficient({ term, estimate, standardError, df, ciLow, ciHigh, p }: Coefficient): string {
  const interval = `${significant(ciLow)} to ${significant(ciHigh)}`;
  return `  ${term.padEnd(20)} ${significant(estimate).padStart(11)} ${significant(standardError).padStart(11)} ${df.toFixed(1).padStart(7)}   ${interval.padEnd(25)} ${writeP(p)}`;
}

function stateTarget({ keptShare, point, low, high, whole, set, reason }: Target): string {
  if (point === null) return reason ?? 'none';
  const ends = `${low?.toFixed(2) ?? 'not limited'} to ${high?.toFixed(2) ?? 'not limited'}`;
  const pieces =
    set.length > 1
      ? `; not rejected are ${set.map(([a, b]) => `${a.toFixed(2)}–${b.toFixed(2)}`).join(' and ')}, of which the interval is one piece, since growth is taken not to rise with reserve`
      : '';
  return `${point.toFixed(2)} in reserve keep ${writePercent(keptShare)} of the growth at 0 (interval ${ends}${pieces}); in whole repetitions ${formatWhole(whole)}${reason ? `. ${reason}` : ''}`;
}

function stateDifference({ term, estimate, standardError, df, ciLow, ciHigh, p, reason }: BandDifference): string {
  if (estimate === null || standardError === null || df === null || ciLow === null || ciHigh === null || p === null) {
    return `Heavy minus light: ${reason}`;
  }
  return `Heavy minus light, ${term}: ${significant(estimate)} (robust SE ${significant(standardError)}, df ${df.toFixed(1)}, ${significant(ciLow)} to ${significant(ciHigh)}, p ${writeP(p)})`;
}

function countReasons(analysis: Analysis): [string, number][] {
  const counts = new Map<string, number>();
  for (const { reason } of analysis.rows.excluded) counts.set(reason, (counts.get(reason) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1]);
}

/** With one row a study only the sum of the two is to be had. */
function stateVariances({ tau2, omega2, boundary, rows, studies }: Band): string {
  const between = variance(tau2, boundary.tau2);
  return omega2 === null || rows > studies
    ? `variance between studies ${between}, between rows ${variance(omega2, boundary.omega2)}`
    : `variance between studies of one row each ${between}`;
}

function variance(value: number | null, atBoundary: boolean): string {
  if (value === null) return 'not estimated';
  return atBoundary ? '0 (at the boundary)' : significant(value);
}

function writeP(p: number): string {
  return p < 0.0001 ? '<0.0001' : p.toFixed(4);
}

function fixed(value: number | null): string {
  return value === null ? 'none' : value.toFixed(3);
}

function significant(value: number): string {
  return value.toPrecision(5);
}
