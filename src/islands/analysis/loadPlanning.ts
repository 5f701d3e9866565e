/** What plans on a table start from, read and fitted once in each worker that asks for it. */
import type { Arm } from '../../evidence/schema.ts';
import { openPlanning, type Planning } from '../../model/plan/planningBase.ts';
import { type Asked, loadArms } from './loadArms.ts';

export interface LoadedPlanning {
  readonly planning: Planning;
  /** All rows of the table. */
  readonly arms: readonly Arm[];
}

/** The last table and settings; a page asks of few. */
let loaded: (LoadedPlanning & { readonly key: string }) | null = null;

/** @throws as loadArms.ts does */
export async function loadPlanning({ table, settings }: Asked): Promise<LoadedPlanning> {
  const arms = await loadArms(table);
  const key = JSON.stringify(settings);
  if (loaded?.arms !== arms || loaded.key !== key) loaded = { arms, key, planning: openPlanning(arms, settings) };
  return loaded;
}
