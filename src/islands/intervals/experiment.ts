/**
 * What a reader has drawn and fitted, and the same as an address: only what differs from the defaults.
 *
 *     ?truth=plateau&studies=15&reserves=spread&fit=log&against=none&seed=3
 *
 * The same choices draw the same tables. A part that does not hold stands at its default and is named.
 */
import * as z from 'zod/mini';
import '../../evidence/zodConfig.ts';
import type { Cell } from '../../model/coverage.ts';
import { CURVES, type Curve } from '../../model/settings.ts';
import { LAYOUTS, type Layout } from '../../model/simulation.ts';
import { LEAST_TARGET_STUDIES } from '../../model/target.ts';
import { ALL_TRUTHS, type TruthName } from '../../model/truths.ts';

/** Tables of a run: they tell a share to within 7 points of per cent, and are drawn in a second or so. */
export const TABLES = 200;
/** Studies of a table. Fewer give no target; with more a run takes longer and shows nothing new. */
export const STUDIES = { least: LEAST_TARGET_STUDIES, most: 60 } as const;
/** Largest seed that the generator takes for another than a smaller one. */
const MOST_SEED = 2 ** 31 - 1;

const whole = (from: number, to: number) =>
  z.pipe(z.pipe(z.string().check(z.regex(/^\d{1,10}$/u)), z.transform(Number)), z.int().check(z.gte(from), z.lte(to)));

const fields = {
  truth: z.enum(Object.keys(ALL_TRUTHS) as TruthName[]),
  studies: whole(STUDIES.least, STUDIES.most),
  reserves: z.enum(Object.keys(LAYOUTS) as Layout[]),
  /** The analyst's curve. */
  fit: z.enum(CURVES),
  /** Another on the same tables. */
  against: z.enum([...CURVES, 'none']),
  seed: whole(1, MOST_SEED),
} as const;

export type Experiment = { readonly [Name in keyof typeof fields]: z.output<(typeof fields)[Name]> };

export const DEFAULT_EXPERIMENT: Experiment = {
  truth: 'saturating',
  studies: 8,
  reserves: 'near',
  fit: 'line',
  against: 'flexible',
  seed: 1,
};

export function cellOf({ truth, studies, reserves }: Experiment): Cell {
  return { truth, studies, layout: reserves };
}

/** One curve, or two that differ. */
export function curvesOf({ fit, against }: Experiment): readonly Curve[] {
  return against === 'none' || against === fit ? [fit] : [fit, against];
}

/** The same choices with other tables. */
export function drawAgain(experiment: Experiment): Experiment {
  return { ...experiment, seed: experiment.seed < MOST_SEED ? experiment.seed + 1 : 1 };
}

/** @returns what was read, and the names of the parts that were not taken */
export function readExperiment(query: string): { readonly experiment: Experiment; readonly unread: readonly string[] } {
  const parameters = new URLSearchParams(query);
  const values: Record<string, unknown> = {};
  const unread = [...new Set(parameters.keys())].filter((name) => !Object.hasOwn(fields, name));
  for (const [name, schema] of Object.entries(fields)) {
    const written = parameters.get(name);
    if (written === null) continue;
    const parsed = schema.safeParse(written);
    if (parsed.success) values[name] = parsed.data;
    else unread.push(name);
  }
  const experiment: Experiment = { ...DEFAULT_EXPERIMENT, ...values };
  // A curve beside itself is one curve.
  return {
    experiment: experiment.against === experiment.fit ? { ...experiment, against: 'none' } : experiment,
    unread,
  };
}

/** Query of an address, with its question mark; empty for the defaults. */
export function writeExperiment(experiment: Experiment): string {
  const parameters = new URLSearchParams();
  for (const name of Object.keys(fields) as (keyof Experiment)[]) {
    if (experiment[name] !== DEFAULT_EXPERIMENT[name]) parameters.set(name, String(experiment[name]));
  }
  return parameters.size === 0 ? '' : `?${parameters}`;
}
