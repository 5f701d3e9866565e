/** Writes the data dictionary from the schema; `npm run dictionary -- --help` says how. */
import { writeFileSync } from 'node:fs';
import { makePackage, writeDictionary } from '../src/evidence/dictionary.ts';
import { runScript } from './terminal/call.ts';

const HELP = `usage: npm run dictionary

Writes data/README.md and data/datapackage.json from the schema of the tables (src/evidence/schema.ts).`;

runScript({ help: HELP }, () => {
  writeFileSync(new URL('../data/README.md', import.meta.url), writeDictionary());
  writeFileSync(new URL('../data/datapackage.json', import.meta.url), `${JSON.stringify(makePackage(), null, 2)}\n`);
  console.log('wrote data/README.md and data/datapackage.json');
});
