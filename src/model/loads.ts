/** Rows by load: below the split, at or above it, or all together. */
import type { Effect } from '../evidence/effects.ts';
import type { BandName } from './result.ts';

/** @param load @param split per cent of 1RM; a load at the split is heavy; null tells no loads apart */
export function bandOfLoad(load: number, split: number | null): BandName {
  if (split === null) return 'all';
  return load < split ? 'light' : 'heavy';
}

/** Loads below the split, and those at or above it; a row without a load is in neither. */
export function splitByLoad(
  effects: readonly Effect[],
  split: number,
): { readonly light: readonly Effect[]; readonly heavy: readonly Effect[] } {
  const inBand = (band: BandName) =>
    effects.filter(({ arm: { load_pct_1rm: load } }) => load !== null && bandOfLoad(load, split) === band);
  return { light: inBand('light'), heavy: inBand('heavy') };
}

/** The bands that a split makes, by name; one of all rows without a split. */
export function groupByBand(
  effects: readonly Effect[],
  split: number | null,
): readonly (readonly [BandName, readonly Effect[]])[] {
  if (split === null) return [['all', effects]];
  const { light, heavy } = splitByLoad(effects, split);
  return [
    ['light', light],
    ['heavy', heavy],
  ];
}
