/** Reserve where a paper does not report it, as a curator asks for it: from an arm's load and repetitions, or from a share. */
import { type CellOf, type Column, number, oneOf } from '../../evidence/column.ts';
import { RELATIONS } from '../../evidence/repetitions.ts';
import { type ReserveEstimate, reserveFromLoad, reserveFromShare } from '../../evidence/reserve.ts';
import { ARM_COLUMNS } from '../../evidence/schema.ts';
import type { Cells } from './cells.ts';

const helper = { group: 'reserve', required: true } as const;

/** What is asked beside the arm's own entries. */
export const RESERVE_COLUMNS = {
  relation: oneOf(RELATIONS, {
    ...helper,
    example: 'bench press',
    description: 'Exercise whose published relation of repetitions to load is nearest (Nuzzo et al. 2024).',
  }),
  share_pct: number(
    { from: 0, to: 100 },
    { ...helper, unit: '%', example: '60', description: 'Share of the repetitions possible that was done.' },
  ),
  maximum: number(
    { above: 0, to: 1000 },
    { ...helper, unit: 'repetitions', example: '20', description: 'Repetitions possible: 20 at a 20RM load.' },
  ),
  maximum_sd: number(
    { from: 0, to: 1000 },
    {
      ...helper,
      unit: 'repetitions',
      example: '2',
      description: 'What the maximum may have been off by, as a standard deviation.',
    },
  ),
} as const satisfies Record<string, Column<unknown>>;

export type ReserveColumn = keyof typeof RESERVE_COLUMNS;
/** Texts of what is asked. */
export type ReserveCells = Readonly<Record<ReserveColumn, string>>;

export const EMPTY_RESERVE: ReserveCells = { relation: 'bench press', share_pct: '', maximum: '', maximum_sd: '' };

/** Cells that an estimate fills. */
export type ReserveFound = Pick<Cells, 'reserve_reps' | 'reserve_sd' | 'reserve_basis'>;

export type ReserveAnswer =
  | { readonly found: ReserveFound; readonly how: string; readonly reason: null }
  | { readonly found: null; readonly how: null; readonly reason: string };

/** Decimals that an estimate is worth. */
const DECIMALS = 2;

/** From load and repetitions of an arm. */
export function estimateFromLoad(
  cells: Pick<Cells, 'load_pct_1rm' | 'reps_per_set'>,
  { relation }: ReserveCells,
): ReserveAnswer {
  const load = readNumber(ARM_COLUMNS.load_pct_1rm, cells.load_pct_1rm);
  const repetitions = readNumber(ARM_COLUMNS.reps_per_set, cells.reps_per_set);
  if (load === null || repetitions === null) {
    return none('it needs the arm’s load and its repetitions in a set');
  }
  const known = RELATIONS.find((name) => name === relation);
  if (!known) return none('it needs the relation to read');
  return answer(reserveFromLoad(load, repetitions, known), 'load-table');
}

/** From a stated share of the repetitions possible. */
export function estimateFromShare(asked: ReserveCells): ReserveAnswer {
  const share = readNumber(RESERVE_COLUMNS.share_pct, asked.share_pct);
  const maximum = readNumber(RESERVE_COLUMNS.maximum, asked.maximum);
  const sd = readNumber(RESERVE_COLUMNS.maximum_sd, asked.maximum_sd);
  if (share === null || maximum === null || sd === null)
    return none('it needs share, maximum and the spread of the maximum');
  return answer(reserveFromShare(share / 100, maximum, sd), 'share-of-maximum');
}

function answer(estimate: ReserveEstimate, basis: CellOf<typeof ARM_COLUMNS.reserve_basis> & string): ReserveAnswer {
  if (estimate.reason !== null) return none(estimate.reason);
  const round = (value: number) => String(Number(value.toFixed(DECIMALS)));
  return {
    found: { reserve_reps: round(estimate.mean), reserve_sd: round(estimate.sd), reserve_basis: basis },
    how: estimate.how,
    reason: null,
  };
}

function none(reason: string): ReserveAnswer {
  return { found: null, how: null, reason };
}

/** The number of a cell as the column reads it; null where there is none. */
function readNumber(column: Column<number>, text: string): number | null {
  const read = column.cell.safeParse(text.trim());
  return read.success ? read.data : null;
}
