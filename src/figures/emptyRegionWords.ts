/** An empty region of the evidence map in words, which claim no more than the region covers. */
import { type EmptyRegion, MAPPED_LOAD, MAPPED_RESERVE } from '../model/emptyRegions.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';

/** A statement without its full stop: “No arm with light loads has 7 or more in reserve”. */
export function stateEmptyRegion(region: EmptyRegion, split: number | null): string {
  const loads = nameLoads(region, split);
  const reserves = nameReserves(region);
  if (loads === '' && reserves === '') return 'No arm reports both a load and a reserve';
  if (loads === '') return `No arm has ${reserves}`;
  return reserves === '' ? `No arm has ${loads}` : `No arm with ${loads} has ${reserves}`;
}

/** Empty for any load. */
function nameLoads({ load: [low, high], anyLighter }: EmptyRegion, split: number | null): string {
  const toTop = high === MAPPED_LOAD.to;
  if (anyLighter && toTop) return '';
  if (anyLighter) return high === split ? LOAD_NAMES.light : `loads below ${high}\u00a0%`;
  if (toTop) return low === split ? LOAD_NAMES.heavy : `loads of ${low}\u00a0% or more`;
  return `loads from ${low} to below ${high}\u00a0%`;
}

/** Empty for any reserve. */
function nameReserves({ reserve: [low, high], anyMore }: EmptyRegion): string {
  if (anyMore) return low === 0 ? '' : `${low} or more in reserve`;
  if (high === MAPPED_RESERVE.to) return `from ${low} to ${high} in reserve`;
  return low === 0 ? `less than ${high} in reserve` : `from ${low} to less than ${high} in reserve`;
}
