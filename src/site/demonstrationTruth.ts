/**
 * The truth that the demonstration was drawn from beside what was estimated of it, as the Methods page shows them.
 * There is one for the very table that `npm run demo` wrote, and for no other.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import * as z from 'zod';
import { formatNumber, formatRange, formatShare } from '../figures/format.ts';
import { bandOf } from '../model/bands.ts';
import type { FullAnalysis } from '../model/full.ts';
import { inferKeptShare } from '../model/keptShare.ts';
import { openResponse } from '../model/response.ts';
import type { Band } from '../model/result.ts';
import { toPercent, writePercent } from '../numerics/percent.ts';
import { LOAD_HEADINGS, LOAD_NAMES } from '../practice/loadNames.ts';

const BANDS = ['light', 'heavy'] as const;

const share = z.number().gt(0).max(1);
const bandSchema = z.object({
  target: z.number().positive(),
  kept: z.array(z.object({ reserve: z.number().positive(), share })),
});
const truthSchema = z.object({
  words: z.string(),
  tableSha256: z.string(),
  split: z.number(),
  keptShare: share,
  growthAtFailure: z.number(),
  bands: z.object({ light: bandSchema, heavy: bandSchema }),
});

export interface TruthComparison {
  /** Of the curves that were put in, a sentence. */
  readonly words: string;
  readonly rows: readonly TruthBesideEstimate[];
  /** What a straight line through the same rows would say, a sentence. */
  readonly straight: string;
}

/** One number that was put in, and what the fit says of it. */
export interface TruthBesideEstimate {
  readonly loads: string;
  readonly what: string;
  readonly truth: string;
  /** With its interval, or the reason why there is none. */
  readonly estimate: string;
  /** Whether the interval holds the truth; null where there is no interval. */
  readonly isHeld: boolean | null;
}

/**
 * @param table text of the table that the analysis is of
 * @returns null where the truth is not known: the table is another, or is split or asked otherwise
 */
export function compareWithTruth(table: string, analysis: FullAnalysis): TruthComparison | null {
  const truth = truthSchema.parse(JSON.parse(readFileSync('data/demonstration-truth.json', 'utf8')));
  const { split, keptShare, confidence, metric } = analysis.settings;
  const isOfTable = createHash('sha256').update(table).digest('hex') === truth.tableSha256;
  if (!isOfTable || split !== truth.split || keptShare !== truth.keptShare || metric !== 'log-ratio') return null;
  const { fits } = openResponse(analysis.response);
  const rows = BANDS.flatMap((name) => {
    const { target, atFailure } = bandOf(analysis, name);
    const open = fits.find(({ fit }) => fit.source === name);
    const put = truth.bands[name];
    const row = (what: string, shown: string, estimate: string, isHeld: boolean | null) => ({
      loads: LOAD_HEADINGS[name],
      what,
      truth: shown,
      estimate,
      isHeld,
    });
    const growth = atFailure && {
      point: toPercent(atFailure.estimate),
      low: toPercent(atFailure.ciLow),
      high: toPercent(atFailure.ciHigh),
    };
    return [
      row(
        `target at ${writePercent(keptShare)}, repetitions`,
        formatNumber(put.target, 1),
        target.point === null
          ? (target.reason ?? 'none')
          : `${formatNumber(target.point, 1)} (${formatRange(target.low, target.high, 1)})`,
        target.point === null ? null : holds(target, put.target),
      ),
      row(
        'growth at reserve 0',
        `${formatNumber(truth.growthAtFailure, 1)}\u00a0%`,
        growth
          ? `${formatNumber(growth.point, 1)}\u00a0% (${formatRange(growth.low, growth.high, 1)}\u00a0%)`
          : 'no curve could be fitted',
        growth && holds(growth, truth.growthAtFailure),
      ),
      ...put.kept.map(({ reserve, share: kept }) => {
        const found = open && inferKeptShare(open.inference, open.at(0, reserve), open.at(0, 0), confidence);
        return row(
          `growth kept at ${reserve}`,
          writePercent(Number(kept.toFixed(2))),
          found ? formatShare(found) : 'growth at reserve 0 is not distinguishable from nothing',
          found ? holds(found, kept) : null,
        );
      }),
    ];
  });
  const straight = BANDS.map((name) => stateStraight(name, bandOf(analysis, name), truth.bands[name].target));
  return {
    words: truth.words,
    rows,
    straight: `By a straight line through the same rows the target would be ${straight.join('; ')}.`,
  };
}

function stateStraight(name: (typeof BANDS)[number], { curves }: Band, truth: number): string {
  const target = curves.find(({ curve }) => curve === 'line')?.target;
  if (!target || target.point === null) return `none with ${LOAD_NAMES[name]}`;
  const found = `${formatNumber(target.point, 1)} (${formatRange(target.low, target.high, 1)}) with ${LOAD_NAMES[name]}`;
  return `${found}, which ${holds(target, truth) ? 'holds' : 'misses'} the truth of ${formatNumber(truth, 1)}`;
}

function holds({ low, high }: { readonly low: number | null; readonly high: number | null }, truth: number): boolean {
  return (low === null || low <= truth) && (high === null || high >= truth);
}
