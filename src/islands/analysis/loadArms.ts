/** The rows of a table, read once in each worker that asks for them. */
import { formatProblem } from '../../evidence/problem.ts';
import type { Arm } from '../../evidence/schema.ts';
import { readArmsToAnalyse } from '../../evidence/table.ts';
import type { Settings } from '../../model/settings.ts';
import { loadTableText } from '../../ownTable/loadTable.ts';

/** What every analysis is asked with. */
export interface Asked {
  /** Address of the table on this site, or of the reader's own (loadTable.ts). */
  readonly table: string;
  readonly settings: Settings;
}

const tables = new Map<string, Promise<readonly Arm[]>>();

/** @throws with all problems of the table, or why it could not be loaded */
export async function loadArms(address: string): Promise<readonly Arm[]> {
  const known = tables.get(address) ?? readTable(address);
  tables.set(address, known);
  try {
    return await known;
  } catch (error) {
    // A table that failed to load is asked for again next time.
    tables.delete(address);
    throw error;
  }
}

async function readTable(address: string): Promise<readonly Arm[]> {
  const { arms, problems } = readArmsToAnalyse(await loadTableText(address), address);
  if (problems.length > 0) throw new Error(problems.map(formatProblem).join('\n'));
  return arms;
}
