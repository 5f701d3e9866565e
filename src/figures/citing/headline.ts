/**
 * What a figure found, in a few numbers: short enough for an address, so that who opens it later sees what was found when
 * it was cited. Numbers only: the words round them are the site's, so that no address can put words of its own on a page.
 */
import { listBands } from '../../model/bands.ts';
import type { BandName, Target } from '../../model/result.ts';
import { JUDGED_REPETITIONS } from '../../model/settings.ts';
import { countOf, countStudies } from '../../numerics/countOf.ts';
import { LOAD_NAMES } from '../../practice/loadNames.ts';
import type { FigureEvidence } from '../catalogue.ts';
import { formatNumber, formatTarget, shownDigits, shownUnit, toShown } from '../format.ts';

export interface Headline {
  /** Targets of the loads that the figure shows, as they are shown; null where there was none. */
  readonly targets: readonly { readonly band: BandName; readonly shown: Target['shown'] }[];
  /** What more reserve changes strength by, on the shown scale; null of figures of other things. */
  readonly strength: { readonly point: number; readonly low: number; readonly high: number } | null;
  readonly rows: number;
  /** null where the figure counts no studies. */
  readonly studies: number | null;
  /** The figure, where what was found is these two counts alone: else each would pass for another's. null of others. */
  readonly counts: CountedFigure | null;
}

/** Figures of which nothing but rows, or arms, and studies is said; and the letter of each in an address. */
const COUNTED = { 'evidence-map': 'm', 'recovery-trained': 't', 'recovery-untrained': 'u' } as const;
type CountedFigure = keyof typeof COUNTED;

export function headlineOf(slug: string, { analysis, map }: Pick<FigureEvidence, 'analysis' | 'map'>): Headline {
  const { bands, rows, strength, fatigue, beyondFailure, settings } = analysis;
  const none = { targets: [], strength: null, counts: null };
  const all = listBands(bands).map(([band, one]) => ({
    band,
    ...one.target,
    rows: one.rows,
    studies: one.studies,
  }));
  const own = all.find(({ band }) => slug.endsWith(`-${band}`));
  if (own) return { ...none, targets: [pick(own)], rows: own.rows, studies: own.studies };
  if (slug === 'strength') {
    const { difference } = strength.equivalence ?? {};
    const round = (value: number) => Number(toShown(value, settings.metric).toFixed(shownDigits(settings.metric)));
    const found = difference && {
      point: round(difference.estimate),
      low: round(difference.ciLow),
      high: round(difference.ciHigh),
    };
    return { ...none, strength: found ?? null, rows: strength.rows, studies: strength.studies };
  }
  const recovered = fatigue.byStatus.find(({ status }) => slug === `recovery-${status}`);
  if (recovered)
    return { ...none, counts: `recovery-${recovered.status}`, rows: recovered.rows, studies: recovered.studies };
  if (slug === 'beyond-failure')
    return { ...none, rows: beyondFailure.reduce((sum, one) => sum + one.rows, 0), studies: null };
  if (slug === 'evidence-map') return { ...none, counts: slug, rows: map.arms, studies: map.studies };
  return { ...none, targets: all.map(pick), rows: rows.included, studies: null };
}

/**
 * Whether the numbers are of such a figure: its loads, and no strength or target where it shows none. Figures that show
 * the same fit have the same numbers.
 */
export function isHeadlineOf(slug: string, { targets, strength, studies, counts }: Headline): boolean {
  if (counts) return counts === slug && targets.length === 0 && strength === null && studies !== null;
  const bands = targets
    .map(({ band }) => band)
    .sort()
    .join();
  const band = listKeys(LETTERS).find((one) => slug.endsWith(`-${one}`));
  // Other choices split loads, also of an analysis that fits them together.
  if (slug.startsWith('robustness-') && bands === 'all') return strength === null && studies === null;
  if (band) return bands === band && strength === null && studies !== null;
  if (slug === 'targets') return ['heavy,light', 'all'].includes(bands) && strength === null && studies === null;
  if (bands !== '') return false;
  if (slug === 'strength') return strength !== null && studies !== null;
  return strength === null && (studies === null) === (slug === 'beyond-failure');
}

function pick({ band, shown }: Headline['targets'][number]): Headline['targets'][number] {
  return { band, shown };
}

/** In words, without a full stop. */
export function stateFound(
  slug: string,
  { targets, strength, rows, studies }: Headline,
  metric: Parameters<typeof shownUnit>[0],
): string {
  const number = (value: number) => formatNumber(value, shownDigits(metric));
  const unit = shownUnit(metric);
  // The map shows arms, whether or not their rows are in a fit.
  const counted = countOf(rows, slug === 'evidence-map' ? 'arm' : 'row');
  return [
    ...targets.map(
      ({ band, shown }) =>
        `${LOAD_NAMES[band]}: ${shown ? `target ${formatTarget({ shown })} in reserve` : 'no target'}`,
    ),
    ...(strength
      ? [
          `${JUDGED_REPETITIONS} more in reserve change strength by ${number(strength.point)}\u00a0${unit} (${number(strength.low)} to ${number(strength.high)})`,
        ]
      : []),
    studies === null ? counted : `${counted} of ${countStudies(studies)}`,
  ].join('; ');
}

const LETTERS = { light: 'l', heavy: 'h', all: 'a' } as const satisfies Readonly<Record<BandName, string>>;

/** For an address: `l0.4_0.2_1.1*n64_15`, an end that is not there left empty. */
export function writeHeadline({ targets, strength, rows, studies, counts }: Headline): string {
  const numbers = (letter: string, values: readonly (number | null)[]) =>
    letter + values.map((value) => value ?? '').join('_');
  return [
    ...targets.map(({ band, shown }) => numbers(LETTERS[band], shown ? [shown.point, shown.low, shown.high] : [])),
    ...(strength ? [numbers('s', [strength.point, strength.low, strength.high])] : []),
    numbers(counts ? COUNTED[counts] : 'n', studies === null ? [rows] : [rows, studies]),
  ].join('*');
}

/** What `writeHeadline` wrote; null where it is anything else, or numbers that no figure has. */
export function readHeadline(written: string): Headline | null {
  let found: Headline = { targets: [], strength: null, rows: Number.NaN, studies: null, counts: null };
  const parts = written.split('*');
  // Each is said once: an address cannot fill a page.
  if (new Set(parts.map(([letter]) => letter)).size < parts.length) return null;
  for (const part of parts) {
    const values = part.slice(1).split('_').map(toNumber);
    const [first, low, high] = values;
    const band = listKeys(LETTERS).find((one) => LETTERS[one] === part[0]);
    const counts = listKeys(COUNTED).find((one) => COUNTED[one] === part[0]) ?? null;
    if (values.some(Number.isNaN) || values.length > 3) return null;
    if (band && typeof first === 'number' && typeof low === 'number' && values.length === 3)
      found = { ...found, targets: [...found.targets, { band, shown: { point: first, low, high } }] };
    else if (band && part.length === 1) found = { ...found, targets: [...found.targets, { band, shown: null }] };
    else if (part[0] === 's' && typeof first === 'number' && typeof low === 'number' && typeof high === 'number')
      found = { ...found, strength: { point: first, low, high } };
    else if (
      (part[0] === 'n' || counts) &&
      Number.isNaN(found.rows) &&
      isCount(first) &&
      (low === undefined || isCount(low)) &&
      values.length < 3
    )
      found = { ...found, counts, rows: first, studies: low ?? null };
    else return null;
  }
  return Number.isNaN(found.rows) || !isPossible(found) ? null : found;
}

/** Ends about their estimate, no reserve below 0, and a row at least for each study. */
function isPossible({ targets, strength, rows, studies }: Headline): boolean {
  const isAround = ({ point, low, high }: NonNullable<Target['shown']>) =>
    low <= point && (high === null || point <= high);
  const isTarget = (shown: Target['shown']) => shown === null || (shown.low >= 0 && isAround(shown));
  return (
    targets.every(({ shown }) => isTarget(shown)) && (strength === null || isAround(strength)) && rows >= (studies ?? 0)
  );
}

function isCount(value: number | null | undefined): value is number {
  return typeof value === 'number' && Number.isInteger(value) && value >= 0;
}

/** A short written number; null where nothing is written, NaN where it is none. */
function toNumber(written: string): number | null {
  if (written === '') return null;
  return /^-?\d{1,7}(?:\.\d{1,3})?$/u.test(written) ? Number(written) : Number.NaN;
}

function listKeys<Key extends string>(record: Readonly<Record<Key, unknown>>): readonly Key[] {
  return Object.keys(record) as Key[];
}
