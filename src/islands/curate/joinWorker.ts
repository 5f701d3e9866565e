/** Joins tables away from the page, which stays free to move while a large one is read. */
import { answerCalls } from '../../ui/workerAnswers.ts';
import type { Operation } from '../../ui/workerCalls.ts';
import { type JoinedTables, joinTables, type TableText } from './joinTables.ts';

interface Asked {
  readonly table: TableText | null;
  readonly rows: string;
  readonly name: string;
}

export type JoinOperations = { readonly join: Operation<Asked, JoinedTables> };

answerCalls<JoinOperations>({ join: ({ table, rows, name }) => joinTables(table, rows, name) });
