/** Lists every dependency with its licence; `npm run licences -- --help` says how. */
import { fileURLToPath } from 'node:url';
import { listPackages } from './licences/installed.ts';
import { EXCEPTIONS, refuseLicence } from './licences/policy.ts';
import { CallError, runScript } from './terminal/call.ts';

const HELP = `usage: npm run licences

Lists every package of package-lock.json with its licence, and the exceptions that scripts/licences/policy.ts
makes with their reasons.

Exit code 0: every licence is allowed. 1: some are not; they are named. 2: wrong call.`;

runScript({ help: HELP }, () => {
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
  if (refused.length > 0) throw new CallError(refused.join('\n'), 1);
  console.log('Every licence is allowed.');
});
