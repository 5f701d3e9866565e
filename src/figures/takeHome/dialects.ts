/** The same data as R and as Python write it: what a script holds before its steps. */
import { writeLiterals } from './literals.ts';

/** What the steps of both scripts read, by these names. */
export interface ScriptData {
  readonly studies: readonly string[];
  /** Columns of a band's rows, before those of its covariates. */
  readonly columns: readonly string[];
  /** Bands that were fitted. */
  readonly bands: readonly ScriptBand[];
  /** Numbers of the site to compare with, in the order in which the steps find them. */
  readonly site: readonly (readonly [band: string, quantity: string, value: number])[];
  readonly noFit: Readonly<Record<string, string>>;
  readonly noTarget: Readonly<Record<string, string>>;
  readonly rho: number;
  readonly weighting: string;
  readonly keptShare: number;
  readonly confidence: number;
}

interface ScriptBand {
  readonly name: string;
  readonly curve: string;
  readonly knots: readonly number[];
  readonly covariates: number;
  readonly rows: readonly (readonly number[])[];
}

/** Data as assignments in R. */
export function writeForR(data: ScriptData): string {
  const text = (value: string) => {
    const pieces = writeLiterals(value);
    return pieces.length === 1 ? pieces[0] : `paste0(\n    ${pieces.join(',\n    ')}\n  )`;
  };
  const vector = (items: readonly string[], none: string) =>
    items.length === 0 ? none : `c(\n  ${items.join(',\n  ')}\n)`;
  const reasons = (of: Readonly<Record<string, string>>) => {
    const entries = Object.entries(of).map(([name, reason]) => `${name} = ${text(reason)}`);
    return entries.length === 0 ? 'list()' : `list(\n  ${entries.join(',\n  ')}\n)`;
  };
  const bands = data.bands.map(({ name, curve, knots, covariates, rows }) =>
    [
      `BANDS$${name} <- list(curve = "${curve}", knots = c(${knots.join(', ')}), covariates = ${covariates}, rows = c(`,
      rows.map((row) => `  ${row.join(', ')}`).join(',\n'),
      '))',
    ].join('\n'),
  );
  const site = data.site;
  return [
    `STUDIES <- ${vector(data.studies.map(text), 'character()')}`,
    `COLUMNS <- c(${data.columns.map((column) => `"${column}"`).join(', ')})`,
    'BANDS <- list()',
    ...bands,
    'SITE <- data.frame(stringsAsFactors = FALSE,',
    `band = ${vector(
      site.map(([band]) => text(band)),
      'character()',
    )},`,
    `quantity = ${vector(
      site.map(([, quantity]) => text(quantity)),
      'character()',
    )},`,
    `value = ${vector(
      site.map(([, , value]) => String(value)),
      'numeric()',
    )})`,
    `NO_FIT <- ${reasons(data.noFit)}`,
    `NO_TARGET <- ${reasons(data.noTarget)}`,
    `RHO <- ${data.rho}`,
    `WEIGHTING <- "${data.weighting}"`,
    `KEPT_SHARE <- ${data.keptShare}`,
    `CONFIDENCE <- ${data.confidence}`,
    '',
  ].join('\n');
}

/** Data as assignments in Python. */
export function writeForPython(data: ScriptData): string {
  const text = (value: string) => {
    const pieces = writeLiterals(value);
    return pieces.length === 1 ? pieces[0] : `(\n        ${pieces.join('\n        ')}\n    )`;
  };
  const list = (items: readonly string[]) =>
    items.length === 0 ? '[]' : `[\n${items.map((item) => `    ${item},`).join('\n')}\n]`;
  const reasons = (of: Readonly<Record<string, string>>) =>
    `{${Object.entries(of)
      .map(([name, reason]) => `\n    "${name}": ${text(reason)},\n`)
      .join('')}}`;
  const bands = data.bands.map(({ name, curve, knots, rows }) =>
    [
      `BANDS["${name}"] = dict(curve="${curve}", knots=[${knots.join(', ')}], rows=[`,
      ...rows.map((row) => `    [${row.join(', ')}],`),
      '])',
    ].join('\n'),
  );
  return [
    `STUDIES = ${list(data.studies.map(text))}`,
    `COLUMNS = [${data.columns.map((column) => `"${column}"`).join(', ')}]`,
    'BANDS = {}',
    ...bands,
    `SITE = ${list(data.site.map(([band, quantity, value]) => `("${band}", ${text(quantity)}, ${value})`))}`,
    `NO_FIT = ${reasons(data.noFit)}`,
    `NO_TARGET = ${reasons(data.noTarget)}`,
    `RHO = ${data.rho}`,
    `WEIGHTING = "${data.weighting}"`,
    `KEPT_SHARE = ${data.keptShare}`,
    `CONFIDENCE = ${data.confidence}`,
    '',
  ].join('\n');
}
