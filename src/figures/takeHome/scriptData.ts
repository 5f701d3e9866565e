/** What the scripts hold of an analysis: rows by number, the curve of each band, and the site's own numbers. */
import type { Settings } from '../../model/settings.ts';
import type { ScriptData } from './dialects.ts';
import { type FittedBandRows, listSiteNumbers } from './rows.ts';

const COLUMNS = ['line', 'study', 'cohort', 'y', 'v', 'reserve'] as const;

export function gatherScriptData(bands: readonly FittedBandRows[], settings: Settings): ScriptData {
  const fitted = bands.filter(({ source }) => source.outcome.fit);
  const effects = fitted.flatMap(({ source }) => source.effects);
  // By number, so that no text of a table decides which rows belong together.
  const studies = numberNames(effects.map(({ arm }) => arm.study));
  const cohorts = numberNames(effects.flatMap(({ arm }) => arm.cohort ?? []));
  const { rho, weighting, keptShare, confidence } = settings;
  return {
    studies: [...studies.keys()],
    columns: COLUMNS,
    bands: fitted.map(({ name, source }) => {
      const covariates = source.columns.slice(source.basis.terms.length);
      const rows = source.effects.map(({ arm, y, v }, i) => [
        arm.line,
        studies.get(arm.study) ?? Number.NaN,
        arm.cohort === null ? 0 : (cohorts.get(arm.cohort) ?? Number.NaN),
        y,
        v,
        source.reserves[i],
        ...covariates.map((column) => column[i]),
      ]);
      const { curve, knots } = source.basis;
      return { name, curve, knots: knots ?? [], covariates: covariates.length, rows };
    }),
    site: listSiteNumbers(bands, settings).map(({ band, quantity, value }) => [band, quantity, value]),
    noFit: Object.fromEntries(
      bands.flatMap(({ name, source: { outcome } }) => (outcome.failure ? [[name, outcome.failure.reason]] : [])),
    ),
    noTarget: Object.fromEntries(
      fitted.flatMap(({ name, target }) => (target.point === null ? [[name, target.reason ?? 'no target']] : [])),
    ),
    rho,
    weighting,
    keptShare,
    confidence,
  };
}

/** Different names with numbers from 1. */
function numberNames(names: readonly string[]): ReadonlyMap<string, number> {
  return new Map([...new Set(names)].map((name, i) => [name, i + 1]));
}
