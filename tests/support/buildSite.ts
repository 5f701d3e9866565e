/** Builds of the site for tests, each where no other build is at work. */
import { spawn, spawnSync } from 'node:child_process';
import { cpSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));
/** What a build does not read, or finds through the link to the installed packages. */
const NOT_COPIED: readonly string[] = ['.git', '.astro', 'dist', 'node_modules', 'tests'];

/** The project in a folder of its own, with the installed packages of this one. */
export function copyProject(into: string): void {
  for (const name of readdirSync(root).filter((one) => !NOT_COPIED.includes(one)))
    cpSync(join(root, name), join(into, name), { recursive: true });
  // As installed there: behind a link they would be outside of the project, and the bundler orders modules by where they are.
  const [from, to] = [join(root, 'node_modules'), join(into, 'node_modules')];
  const linked = spawnSync('cp', ['-al', from, to]);
  if (linked.status !== 0) cpSync(from, to, { recursive: true, verbatimSymlinks: true });
}

/**
 * Builds the project in `from` into the folder `into`; rejects with what the build said where it fails.
 *
 * @param environment beside path, home and the table that the tests were called with
 */
export function buildSite(from: string, into: string, environment: Readonly<Record<string, string>>): Promise<void> {
  // Not the test runner's environment, whose mode and base would become the build's.
  const { PATH, HOME, EVIDENCE } = process.env;
  const env = { PATH, HOME, ...(EVIDENCE && { EVIDENCE }), ASTRO_TELEMETRY_DISABLED: '1', ...environment };
  const child = spawn(process.execPath, ['node_modules/astro/bin/astro.mjs', 'build', '--outDir', into], {
    cwd: from,
    env,
  });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (text) => (said += text));
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => (code === 0 ? resolve() : reject(new Error(`the build failed (${code}):\n${said}`))));
  });
}
