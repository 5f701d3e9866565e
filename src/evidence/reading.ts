/** How the papers behind a table were read: what of it does not come from their full text. */
import type { Arm } from './schema.ts';

/** Rows and studies. */
interface Count {
  readonly rows: number;
  readonly studies: number;
}

export interface TableReading {
  readonly table: Count;
  /** Rows whose paper was not read in full; a study counts with one such row. */
  readonly notInFull: Count;
  /** Rows of them that another paper quotes. */
  readonly secondHand: number;
}

/** null where every row comes from a full text, or does not say. */
export function countReading(arms: readonly Pick<Arm, 'study' | 'how_read'>[]): TableReading | null {
  const notInFull = arms.filter(({ how_read: read }) => read !== null && read !== 'full text');
  if (notInFull.length === 0) return null;
  return {
    table: count(arms),
    notInFull: count(notInFull),
    secondHand: notInFull.filter(({ how_read: read }) => read === 'second-hand').length,
  };
}

function count(arms: readonly Pick<Arm, 'study'>[]): Count {
  return { rows: arms.length, studies: new Set(arms.map(({ study }) => study)).size };
}
