/**
 * What moved between two analyses, in words: the target and its interval, the growth kept at the former target, the rows.
 * Where nothing moved it says so.
 */
import { listBands } from '../model/bands.ts';
import type { Analysis, Band, BandName, CurvePoint } from '../model/result.ts';
import { countOf } from '../numerics/countOf.ts';
import { writePercent } from '../numerics/percent.ts';
import { LOAD_HEADINGS, LOAD_NAMES } from '../practice/loadNames.ts';
import { EFFECT_NAMES } from './effectNames.ts';
import { formatNumber, formatTarget } from './format.ts';

/** Difference of two drawn curves below which they are one: a millionth of a per cent, far below what is shown. */
const SAME = 1e-8;

interface Words {
  /** What is kept: growth, or what the effects of another outcome are. */
  readonly effect: string;
  /** True where both curves are of one outcome in one unit. */
  readonly onOneScale: boolean;
}

/** Bands of an analysis that stand against one of another: that of the same loads, or where loads are split otherwise all. */
export function bandsAgainst(
  { bands }: Pick<Analysis, 'bands'>,
  name: BandName,
): readonly (readonly [BandName, Band])[] {
  const all = listBands(bands);
  const same = all.filter(([one]) => one === name);
  return same.length > 0 ? same : all;
}

/** True where two analyses have curves that can be drawn on one axis: of one outcome, in one unit. */
export function isComparable(a: Pick<Analysis, 'settings'>, b: Pick<Analysis, 'settings'>): boolean {
  return a.settings.outcome === b.settings.outcome && a.settings.metric === b.settings.metric;
}

/** True where curve, band and target of every band are as they were, to the last digit that could be shown. */
export function hasMoved(before: Analysis, after: Analysis): boolean {
  const [old, now] = [listBands(before.bands), listBands(after.bands)];
  return old.length !== now.length || now.some(([, band], i) => !isStill(old[i][1], band));
}

/** A sentence or two for each band, and one of the rows where their number changed. */
export function stateMoved(before: Analysis, after: Analysis): string {
  const words = { effect: EFFECT_NAMES[after.settings.outcome], onOneScale: isComparable(before, after) };
  const sentences = listBands(after.bands).map(([name, band]) => {
    const former = bandsAgainst(before, name);
    const [[one, old]] = former;
    const said = one === name ? stateBand(old, band, words) : `${stateNow(band)}; before, ${stateEach(former)}.`;
    return `${LOAD_HEADINGS[name]}: ${said}`;
  });
  const rows = after.rows.included - before.rows.included;
  const counted = `${countOf(Math.abs(rows), 'row')} ${rows < 0 ? 'fewer' : 'more'} ${Math.abs(rows) === 1 ? 'is' : 'are'} fitted.`;
  return [...sentences, ...(rows === 0 ? [] : [counted])].join(' ');
}

function stateBand(old: Band, now: Band, words: Words): string {
  if (now.failure) {
    const before = old.failure ? 'nor was there one before' : `before, ${stateNow(old)}`;
    return `no fit, since ${now.failure.reason}; ${before}.`;
  }
  if (old.failure) return `${stateNow(now)}; before, there was no fit, since ${old.failure.reason}.`;
  if (isStill(old, now)) return `nothing moved, ${stateNow(now)}.`;
  const [was, is] = [old, now].map(({ target }) => formatTarget(target));
  if (was === is) {
    const curve = areSame(old.curvePoints, now.curvePoints, ['estimate'])
      ? '; the curve stays too, its band does not'
      : '; the curve moved';
    return `${was === 'none' ? 'there is no target, before or after' : `target still ${was}`}${words.onOneScale ? curve : ''}.`;
  }
  return `target from ${was} to ${is}${stateWidths(old, now)}${stateKept(old, now, words)}.`;
}

/** Growth kept at the former target, by the curve before and by that of now; empty where either says nothing of it. */
function stateKept(old: Band, now: Band, { effect }: Words): string {
  const { target } = old;
  const { point, keptShare, reachedEdge } = target;
  if (point === null) return '';
  const [was, is] = [reachedEdge ? keptAt(old, point) : keptShare, keptAt(now, point)];
  if (was === null || is === null) return '';
  const shown = (share: number) => writePercent(Number(share.toFixed(share === keptShare ? 4 : 2)));
  const goes = shown(was) === shown(is) ? `still ${shown(is)}` : `from ${shown(was)} to ${shown(is)}`;
  return `, ${effect} kept at ${formatNumber(target.shown?.point ?? point, 1)} ${goes}`;
}

/** Share of the growth at reserve 0 that a reserve keeps, by the drawn curve; null beyond it, or without growth there. */
function keptAt({ curvePoints }: Band, reserve: number): number | null {
  const next = curvePoints.findIndex((point) => point.reserve >= reserve - 1e-9);
  const [first] = curvePoints;
  if (next < 0 || !first || first.reserve > 0 || !(first.estimate > 0)) return null;
  const [from, to] = [curvePoints[Math.max(0, next - 1)], curvePoints[next]];
  const part = to.reserve > from.reserve ? (reserve - from.reserve) / (to.reserve - from.reserve) : 1;
  return (from.estimate + part * (to.estimate - from.estimate)) / first.estimate;
}

/** How wide the target's interval was and is, in repetitions; empty where there is none before or now. */
function stateWidths({ target: { shown: old } }: Band, { target: { shown: now } }: Band): string {
  if (!old || !now) return '';
  const [was, is] = [old, now].map(({ low, high }) => (high === null ? null : formatNumber(high - low, 1)));
  if (was === is) return was === null ? '' : `, interval still ${was} wide`;
  if (was === null) return `, interval from no upper end to ${is} wide`;
  return is === null ? `, interval from ${was} wide to no upper end` : `, interval from ${was} to ${is} wide`;
}

function stateNow({ failure, target }: Band): string {
  return failure ? `no fit, since ${failure.reason}` : `target ${formatTarget(target)}`;
}

function stateEach(bands: readonly (readonly [BandName, Band])[]): string {
  return bands.map(([name, band]) => `${LOAD_NAMES[name]}: ${stateNow(band)}`).join('; ');
}

function isStill(old: Band, now: Band): boolean {
  if (old.failure || now.failure) return old.failure?.reason === now.failure?.reason && old.rows === now.rows;
  return (
    formatTarget(old.target) === formatTarget(now.target) &&
    old.target.reason === now.target.reason &&
    areSame(old.curvePoints, now.curvePoints, ['estimate', 'ciLow', 'ciHigh'])
  );
}

function areSame(
  one: readonly CurvePoint[],
  other: readonly CurvePoint[],
  keys: readonly ('estimate' | 'ciLow' | 'ciHigh')[],
): boolean {
  return (
    one.length === other.length &&
    one.every(
      (point, i) =>
        Math.abs(point.reserve - other[i].reserve) < SAME &&
        keys.every((key) => Math.abs(point[key] - other[i][key]) < SAME),
    )
  );
}
