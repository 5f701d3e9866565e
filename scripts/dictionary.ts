/**
 * Writes the data dictionary from the schema: `data/README.md` and `data/datapackage.json`.
 *
 *     npm run dictionary
 */
import { writeFileSync } from 'node:fs';
import { describePackage, writeDictionary } from '../src/evidence/dictionary.ts';

writeFileSync(new URL('../data/README.md', import.meta.url), writeDictionary());
writeFileSync(new URL('../data/datapackage.json', import.meta.url), `${JSON.stringify(describePackage(), null, 2)}\n`);
console.log('wrote data/README.md and data/datapackage.json');
