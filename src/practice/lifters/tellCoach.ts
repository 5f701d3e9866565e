/** A lifter’s load in words for the coach who enters the 1RM and looks at the sheets; tellLine.ts speaks to the lifter. */
import type { LifterLoad } from './loadFor.ts';
import { explainLoad, tellLoad } from './tellLine.ts';
import { writeWeight } from './weight.ts';

/** “107.5 kg”, “78 % of 1RM”, “one for 14 repetitions at most”. */
export function tellLoadToCoach(load: LifterLoad): string {
  switch (load.kind) {
    case 'above 1RM':
      return writeWeight(load.meant);
    case 'by repetitions':
      return `one for ${load.possible} repetitions at most`;
    case 'not read':
      return load.written === '' ? 'no load' : load.written;
    default:
      return tellLoad(load);
  }
}

/** What a coach has to know of a load, and may mend; null where it is plain. */
export function explainToCoach(load: LifterLoad): string | null {
  switch (load.kind) {
    case 'above 1RM':
      return `Above the 1RM of ${writeWeight(load.oneRm)}: no set can be advised.`;
    case 'not read':
      return load.written === '' ? 'Write one, or the repetitions possible.' : 'The load cannot be read.';
    // The entry says itself whether body weight is part of it.
    case 'weight':
      return null;
    default:
      return explainLoad(load);
  }
}
