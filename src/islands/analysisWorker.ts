/** The worker that analyses: reads the site's table once, then answers each request with an Analysis. */
import { formatProblem } from '../evidence/problem.ts';
import type { Arm } from '../evidence/schema.ts';
import { readArms } from '../evidence/table.ts';
import { analyse } from '../model/analyse.ts';
import type { Analysis } from '../model/result.ts';
import type { Settings } from '../model/settings.ts';

export interface AnalysisRequest {
  readonly id: number;
  /** Address of the table on this site. */
  readonly table: string;
  readonly settings: Settings;
}

export type AnalysisReply =
  | { readonly id: number; readonly analysis: Analysis; readonly problem: null }
  | { readonly id: number; readonly analysis: null; readonly problem: string };

const tables = new Map<string, Promise<readonly Arm[]>>();

async function fetchArms(address: string): Promise<readonly Arm[]> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`the table could not be loaded: ${response.status} ${response.statusText}`);
  const { arms, problems } = readArms(await response.text(), address);
  if (problems.length > 0) throw new Error(problems.map(formatProblem).join('\n'));
  return arms;
}

self.addEventListener('message', async ({ data }: MessageEvent<AnalysisRequest>) => {
  const { id, table, settings } = data;
  let reply: AnalysisReply;
  try {
    const arms = tables.get(table) ?? fetchArms(table);
    tables.set(table, arms);
    reply = { id, analysis: analyse(await arms, settings), problem: null };
  } catch (error) {
    // A table that failed to load is asked for again next time.
    tables.delete(table);
    reply = { id, analysis: null, problem: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(reply);
});
