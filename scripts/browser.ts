/**
 * Finds a Chromium for the browser tests, or installs one: Debian's package as root, else
 * playwright's download. Prints its path; fails with a sentence that says what to do.
 *
 *     node scripts/browser.ts
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';

/** Names the executable to use, before all other places. */
const VARIABLE = 'SHY_CHROMIUM';

const USUAL_PATHS = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** Path of a Chromium, null where none is installed. Throws where the variable names no file. */
export function findChromium(): string | null {
  const named = process.env[VARIABLE];
  if (named !== undefined) {
    if (existsSync(named)) return named;
    throw new Error(`${VARIABLE} names ${named}, which is no file; set it to a Chromium or leave it out`);
  }
  return [...USUAL_PATHS, chromium.executablePath()].find((path) => path && existsSync(path)) ?? null;
}

/** Tries what this machine allows; true where a command succeeded. */
function installChromium(): boolean {
  const run = (command: string, ...parameters: string[]) =>
    spawnSync(command, parameters, { stdio: 'inherit', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } })
      .status === 0;
  const isRootOnDebian = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (isRootOnDebian && run('apt-get', 'update') && run('apt-get', 'install', '-y', 'chromium')) return true;
  return run('npx', 'playwright-core', 'install', 'chromium');
}

if (import.meta.main) {
  const path = findChromium() ?? (installChromium() ? findChromium() : null);
  if (path === null) {
    console.error(
      `No Chromium was found and none could be installed. Install one (Debian: apt-get install chromium) or set ${VARIABLE} to its path; the browser tests need it.`,
    );
    process.exitCode = 1;
  } else {
    console.log(`Chromium for the browser tests: ${path}`);
  }
}
