/**
 * What changed between two tables: the rows (rowChanges.ts), the answer of each band before and after,
 * and which study's change moved it most (studyMoves.ts). Plain JSON; pure.
 *
 * Compared is what a reader would ask first: mean slope and target with their intervals. The two
 * answers share most of their studies, so that their intervals overlapping says nothing about whether
 * the difference is real; no interval of the difference is given, since it is a difference between
 * tables and not between samples. With a curve other than the straight line the mean slope is over the
 * reserve studied in each table, which `studiedReserve` shows.
 */
import type { Arm } from '../evidence/schema.ts';
import { fitEffects } from './bandFit.ts';
import { groupByBand } from './loads.ts';
import type { BandName } from './result.ts';
import { compareRows, type RowChanges } from './rowChanges.ts';
import { selectRows } from './selection.ts';
import type { Settings } from './settings.ts';
import {
  type AnswerMove,
  answerOf,
  type BandAnswer,
  type ChangedStudy,
  compareAnswers,
  measureMoves,
  type StudyMoves,
} from './studyMoves.ts';

/** Studies that are refitted in a band at most: half a second for a table like the shipped one. */
const MOST_REFITS = 100;

/** Answers of one band; the difference is the new table's minus the old one's. */
export interface BandChange extends AnswerMove, StudyMoves {
  readonly band: BandName;
  readonly before: BandAnswer;
  readonly after: BandAnswer;
  /** What is not told about the studies' moves and why; null where all is. */
  readonly limits: string | null;
}

export interface TableComparison {
  readonly settings: Settings;
  /** True where every study has the same rows under the same name; their order may differ. */
  readonly same: boolean;
  readonly rowsBefore: number;
  readonly rowsAfter: number;
  readonly studies: RowChanges;
  readonly bands: readonly BandChange[];
}

/**
 * @param before @param after validated rows of the old and the new table
 * @param mostRefits studies refitted in a band at most
 */
export function compareTables(
  before: readonly Arm[],
  after: readonly Arm[],
  settings: Settings,
  mostRefits: number = MOST_REFITS,
): TableComparison {
  const studies = compareRows(before, after);
  const changed = listChanged(studies);
  const old = groupByBand(selectRows(before, settings).effects, settings.split);
  const now = new Map(groupByBand(selectRows(after, settings).effects, settings.split));
  return {
    settings,
    same: changed.length + studies.renamed.length === 0,
    rowsBefore: before.length,
    rowsAfter: after.length,
    studies,
    bands: old.map(([band, effects]): BandChange => {
      const others = now.get(band) ?? [];
      const first = answerOf(fitEffects(effects, settings), settings);
      const second = answerOf(fitEffects(others, settings), settings);
      const moves = measureMoves(effects, others, changed, settings, mostRefits);
      return {
        band,
        before: first,
        after: second,
        ...compareAnswers(first, second),
        ...moves,
        limits: stateLimits(moves, mostRefits),
      };
    }),
  };
}

function listChanged({ added, removed, changed }: RowChanges): readonly ChangedStudy[] {
  return [
    ...added.map((study) => ({ study, change: 'added' }) as const),
    ...removed.map((study) => ({ study, change: 'removed' }) as const),
    ...changed.map(({ study }) => ({ study, change: 'changed' }) as const),
  ];
}

function stateLimits({ moves, notRefitted }: StudyMoves, mostRefits: number): string | null {
  if (notRefitted.length === 0) return null;
  return `${moves.length + notRefitted.length} changed studies reach this band; the ${mostRefits} with most rows were refitted, so that one of the other ${notRefitted.length} may have moved more`;
}
