/**
 * Lists every dependency with its licence and says which may not be used; exit code 1 if there is one.
 *
 *     npm run licences
 */
import { fileURLToPath } from 'node:url';
import { listPackages } from './licences/installed.ts';
import { EXCEPTIONS, refuseLicence } from './licences/policy.ts';

const packages = listPackages(fileURLToPath(new URL('..', import.meta.url)));
for (const { name, version, licence, isDevelopment } of packages) {
  console.log(
    `${`${name} ${version}`.padEnd(60)} ${licence.padEnd(30)} ${isDevelopment ? 'development' : 'production'}`,
  );
}
console.log(`\n${packages.length} packages. Exceptions:`);
for (const { name, licence, reason } of EXCEPTIONS) {
  const names = packages.filter((one) => name.test(one.name) && licence.test(one.licence)).map((one) => one.name);
  console.log(`- ${names.join(', ') || 'none'}: ${reason}.`);
}
const refused = packages.flatMap(({ name, licence }) => refuseLicence(name, licence) ?? []);
for (const refusal of refused) console.error(refusal);
if (refused.length > 0) process.exitCode = 1;
else console.log('Every licence is allowed.');
