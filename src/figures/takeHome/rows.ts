/** The rows of an analysis with the design they were fitted on: what a script elsewhere needs. */
import Papa from 'papaparse';
import type { Arm } from '../../evidence/schema.ts';
import { type BandFit, fitEffects, targetOf } from '../../model/bandFit.ts';
import { groupByBand } from '../../model/loads.ts';
import type { Target } from '../../model/result.ts';
import { inferContrast } from '../../model/robust.ts';
import { selectRows } from '../../model/selection.ts';
import type { Settings } from '../../model/settings.ts';

export interface FittedBandRows {
  readonly name: string;
  readonly source: BandFit;
  readonly target: Target;
}

/** Numbers of the site that a script prints beside its own. */
export interface SiteNumber {
  readonly band: string;
  readonly quantity: string;
  readonly value: number;
}

export function fitBands(arms: readonly Arm[], settings: Settings): FittedBandRows[] {
  const { effects } = selectRows(arms, settings);
  return groupByBand(effects, settings.split).map(([name, rows]) => {
    const source = fitEffects(rows, settings);
    return { name, source, target: targetOf(source, settings) };
  });
}

/** One line a row: band, study, cohort, effect, variance and the columns of the design (x1 is the intercept). */
export function writeDesignTable(bands: readonly FittedBandRows[]): string {
  const widest = Math.max(0, ...bands.map(({ source }) => source.terms.length));
  const design = Array.from({ length: widest }, (_, j) => `x${j + 1}`);
  const fields = ['band', 'line', 'study', 'cohort', 'y', 'v', ...design];
  const data = bands.flatMap(({ name, source }) =>
    source.effects.map(({ arm, y, v }, i) => [
      name,
      arm.line,
      arm.study,
      arm.cohort ?? '',
      y,
      v,
      ...design.map((_, j) => source.columns[j]?.[i] ?? ''),
    ]),
  );
  return Papa.unparse({ fields, data }, { newline: '\n' });
}

/** Coefficients, robust errors, df, variances, likelihoods and targets of every band that was fitted. */
export function listSiteNumbers(bands: readonly FittedBandRows[], settings: Settings): SiteNumber[] {
  return bands.flatMap(({ name, source, target }) => {
    const { fit } = source.outcome;
    if (!fit) return [];
    const coefficients = source.terms.flatMap((term, j) => {
      const { estimate, standardError, df } = inferContrast(
        fit.inference,
        source.terms.map((_, i) => (i === j ? 1 : 0)),
        settings.confidence,
      );
      return [
        { band: name, quantity: `${term}: estimate`, value: estimate },
        { band: name, quantity: `${term}: robust standard error`, value: standardError },
        { band: name, quantity: `${term}: degrees of freedom`, value: df },
      ];
    });
    const variances = fit.components
      ? [
          { band: name, quantity: 'variance between studies', value: fit.components.tau2 },
          { band: name, quantity: 'variance between rows', value: fit.components.omega2 },
          { band: name, quantity: 'restricted log-likelihood', value: fit.components.logLikelihood },
        ]
      : [];
    const ends = [
      ['target', target.point],
      ['target, least', target.low],
      ['target, most', target.high],
    ] as const;
    // A target without a point has a part of its set at most, which is not told; one without an upper end has no most.
    const told = target.point === null ? [] : ends;
    const targets = told.flatMap(([quantity, value]) => (value === null ? [] : [{ band: name, quantity, value }]));
    return [...coefficients, ...variances, ...targets];
  });
}
