/**
 * The main lift of strength work: the load leads, and reserve is what the planned repetitions leave of
 * those possible at it.
 */
import type { Possible } from './possible.ts';
import { count, type ReserveRange } from './tellLifter.ts';

export interface MainLift {
  /** Repetitions to do: those planned, or fewer where they would leave too little. */
  readonly repetitions: number | null;
  /** Reserve that they leave on average, and for about two people in three. */
  readonly left: { readonly mean: number; readonly low: number; readonly high: number } | null;
  readonly reserve: ReserveRange | null;
  readonly raised: readonly string[];
  readonly sentence: string;
}

/**
 * @param planned repetitions of a set, at least 1
 * @param floor least reserve that safety asks for, whole repetitions
 */
export function planMainLift(planned: number, possible: Possible | null, floor: number): MainLift {
  if (!possible) {
    return refuse(
      `No repetitions are published for this load, so what ${count(planned)} leave is not known. Leave at least ${Math.max(1, floor)}.`,
    );
  }
  const most = Math.floor(possible.mean - floor);
  if (most < 1) {
    return refuse(
      `At this load about ${possible.mean.toFixed(1)} repetitions are possible on average: no set leaves ${floor} in reserve. Take a lighter load, or set safety arms or have a spotter.`,
    );
  }
  const repetitions = Math.min(planned, most);
  const mean = possible.mean - repetitions;
  const sd = possible.sd ?? 0;
  const left = { mean, low: Math.max(0, mean - sd), high: mean + sd };
  const whole = Math.max(floor, Math.floor(mean));
  const people =
    possible.sd === null ? '' : ` (${left.low.toFixed(0)} to ${left.high.toFixed(0)} for about two people in three)`;
  const stop =
    floor > 0 ? ` End it earlier if fewer than ${floor} would be left.` : ' End it when the next one would not count.';
  return {
    repetitions,
    left,
    reserve: { least: whole, most: whole },
    raised:
      repetitions < planned
        ? [
            `${count(planned)} were planned; ${floor > 0 ? `no more than ${repetitions} leave the ${floor} that safety asks for` : `about ${possible.mean.toFixed(1)} are possible`}.`,
          ]
        : [],
    sentence: `Do ${count(repetitions)} at this load: about ${mean.toFixed(1)} would be left${people}.${stop}`,
  };
}

function refuse(sentence: string): MainLift {
  return { repetitions: null, left: null, reserve: null, raised: [], sentence };
}
