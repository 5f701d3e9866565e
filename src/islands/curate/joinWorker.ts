/** Joins tables, and takes studies from them, away from the page, which stays free to move while a large one is read. */
import { answerCalls } from '../../ui/workerAnswers.ts';
import type { Operation } from '../../ui/workerCalls.ts';
import type { Cells } from './cells.ts';
import { type JoinedTables, joinTables, listStudies, type StudyRows, type TableText, takeStudy } from './joinTables.ts';

interface Asked {
  readonly table: TableText | null;
  readonly studies: readonly StudyRows[];
  readonly name: string;
}

export type JoinOperations = {
  readonly join: Operation<Asked, JoinedTables>;
  readonly list: Operation<TableText, ReturnType<typeof listStudies>>;
  readonly take: Operation<{ readonly table: TableText; readonly study: string }, readonly Cells[]>;
};

answerCalls<JoinOperations>({
  join: ({ table, studies, name }) => joinTables(table, studies, name),
  list: (table) => listStudies(table),
  take: ({ table, study }) => takeStudy(table, study),
});
