/** Rows by load: below the split, at or above it, or all together. */
import type { Effect } from '../evidence/effects.ts';
import type { BandName } from './result.ts';

/** Loads below the split, and those at or above it; a row without a load is in neither. */
export function splitByLoad(
  effects: readonly Effect[],
  split: number,
): { readonly light: readonly Effect[]; readonly heavy: readonly Effect[] } {
  const load = ({ arm }: Effect) => arm.load_pct_1rm ?? Number.NaN;
  return {
    light: effects.filter((effect) => load(effect) < split),
    heavy: effects.filter((effect) => load(effect) >= split),
  };
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
