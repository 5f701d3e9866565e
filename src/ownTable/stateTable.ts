/** What is said of a table wherever it is named. */
import { isDemonstration } from '../evidence/demonstration.ts';
import { countReading } from '../evidence/reading.ts';
import type { Arm } from '../evidence/schema.ts';
import { analyse } from '../model/analyse.ts';
import { countBase } from '../model/evidenceBase.ts';
import { defaultSettings } from '../model/settings.ts';
import { nameReading, stateReading } from '../practice/evidenceNeeded.ts';
import type { KeptTable } from './keptTables.ts';

/** Of its rows; what its text and the clock say comes to it where it is kept. */
export type TableFacts = Pick<KeptTable, 'name' | 'studies' | 'rows' | 'demonstration' | 'reading'>;

export function stateTable(name: string, arms: readonly Arm[]): TableFacts {
  const reading = countReading(arms);
  return {
    name,
    studies: new Set(arms.map(({ study }) => study)).size,
    rows: arms.length,
    demonstration: isDemonstration(arms),
    ...(reading && { reading: `${nameReading(reading)} ${stateReading(reading, baseOf(arms))}` }),
  };
}

/** With the settings that the pages begin with. */
function baseOf(arms: readonly Arm[]) {
  return countBase(arms, analyse(arms, defaultSettings));
}
