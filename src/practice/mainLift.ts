/**
 * The main lift of strength work: the load leads, and reserve is what the planned repetitions leave of
 * those possible at it.
 */
import type { WholeRange } from '../model/wholeRepetitions.ts';
import { countOf } from '../numerics/countOf.ts';
import { mostReserve, type Possible, refuseReserve } from './possible.ts';

export interface MainLift {
  /** Repetitions to do: those planned, or fewer where they would leave too little; null where none is advised. */
  readonly repetitions: number | null;
  /** Reserve that they leave on average, and for about two people in three; null with `repetitions`. */
  readonly left: { readonly mean: number; readonly low: number; readonly high: number } | null;
  readonly reserve: WholeRange | null;
  /** Why fewer than planned are to be done, a sentence each. */
  readonly adjustments: readonly string[];
  readonly sentence: string;
}

/**
 * @param planned repetitions of a set, at least 1
 * @param possible at the load; null where none are published
 * @param floor least reserve that safety asks for, whole repetitions
 */
export function planMainLift(planned: number, possible: Possible | null, floor: number): MainLift {
  if (!possible) {
    const what = `${countOf(planned, 'repetition')} ${planned === 1 ? 'leaves' : 'leave'}`;
    return refuse(
      `No repetitions are published for this load, so what ${what} is not known. Leave at least ${Math.max(1, floor)}.`,
    );
  }
  if (floor > mostReserve(possible)) {
    return refuse(`${refuseReserve(possible, floor)} Take a lighter load, or set safety arms or have a spotter.`);
  }
  // Where safety asks for none, of the mean as it is told too: 8 of about 8.0 are not too many.
  const most = floor > 0 ? possible.mean : Number(possible.mean.toFixed(1));
  const repetitions = Math.min(planned, Math.floor(most - floor));
  const mean = Math.max(0, possible.mean - repetitions);
  const sd = possible.sd ?? 0;
  const left = { mean, low: Math.max(0, mean - sd), high: mean + sd };
  // Of the mean as it is told: who reads that about 3.0 would be left is not told 2 beside it.
  const whole = Math.max(floor, Math.floor(Number(mean.toFixed(1))));
  return {
    repetitions,
    left,
    reserve: { least: whole, most: whole },
    adjustments: repetitions < planned ? [explainFewer(planned, repetitions, possible, floor)] : [],
    sentence: tellRepetitions(repetitions, left, possible.sd !== null, floor),
  };
}

function explainFewer(planned: number, repetitions: number, { mean }: Possible, floor: number): string {
  const why =
    floor > 0
      ? `no more than ${repetitions} ${repetitions === 1 ? 'leaves' : 'leave'} the ${floor} that safety asks for`
      : `about ${mean.toFixed(1)} are possible`;
  return `${countOf(planned, 'repetition')} ${planned === 1 ? 'was' : 'were'} planned; ${why}.`;
}

function tellRepetitions(
  repetitions: number,
  { mean, low, high }: NonNullable<MainLift['left']>,
  hasSpread: boolean,
  floor: number,
): string {
  const people = hasSpread ? ` (${low.toFixed(0)} to ${high.toFixed(0)} for about two people in three)` : '';
  const stop =
    floor > 0 ? `End it earlier if fewer than ${floor} would be left.` : 'End it when the next one would not count.';
  return `Do ${countOf(repetitions, 'repetition')} at this load: about ${mean.toFixed(1)} would be left${people}. ${stop}`;
}

function refuse(sentence: string): MainLift {
  return { repetitions: null, left: null, reserve: null, adjustments: [], sentence };
}
