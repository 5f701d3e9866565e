/** Joins tables away from the page, which stays free to move while a large one is read. */
import { type JoinedTables, joinTables, type TableText } from './joinTables.ts';

export interface JoinRequest {
  readonly table: TableText | null;
  readonly rows: string;
  readonly name: string;
}

self.addEventListener('message', ({ data }: MessageEvent<JoinRequest>) => {
  const reply: JoinedTables = joinTables(data.table, data.rows, data.name);
  self.postMessage(reply);
});
