/** A reserve that is advised, in the fewest words. */
import type { Advice } from '../practice/advice.ts';

/** “2”, “1–3”, “no number”. */
export function showReserve(reserve: Advice['reserve']): string {
  if (reserve === null) return 'no number';
  return reserve.least === reserve.most ? String(reserve.most) : `${reserve.least}–${reserve.most}`;
}
