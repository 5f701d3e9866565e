/** Finds the browsers of the tests, or installs them; `npx node scripts/browser.ts --help` says how. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { CallError, runScript } from './terminal/call.ts';

interface BrowserKind {
  readonly name: string;
  /** Environment variable that names the executable to use, before all other places. */
  readonly variable: string;
  readonly debianPackage: string;
  readonly usualPaths: () => readonly string[];
}

const CHROMIUM: BrowserKind = {
  name: 'Chromium',
  variable: 'SHY_CHROMIUM',
  // The same browser without its window: the tests take two thirds of the time in it.
  debianPackage: 'chromium-headless-shell',
  usualPaths: () => [
    '/usr/bin/chromium-headless-shell',
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/snap/bin/chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    chromium.executablePath(),
  ],
};

const FIREFOX: BrowserKind = {
  name: 'Firefox',
  variable: 'SHY_FIREFOX',
  debianPackage: 'firefox-esr',
  usualPaths: () => [
    '/usr/bin/firefox-esr',
    '/usr/bin/firefox',
    '/snap/bin/firefox',
    '/Applications/Firefox.app/Contents/MacOS/firefox',
  ],
};

/** Path of a Chromium, null where none is installed. Throws where the variable names no file. */
export function findChromium(): string | null {
  return find(CHROMIUM);
}

/** Path of a Firefox, null where none is installed. Throws where the variable names no file. */
export function findFirefox(): string | null {
  return find(FIREFOX);
}

function find({ name, variable, usualPaths }: BrowserKind): string | null {
  const named = process.env[variable];
  if (named !== undefined) {
    if (existsSync(named)) return named;
    throw new CallError(
      `${variable}: expected the path of a ${name}, found nothing at ${named}; correct it or leave it out`,
      2,
    );
  }
  return usualPaths().find((path) => path && existsSync(path)) ?? null;
}

function run(command: string, ...parameters: string[]): boolean {
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  return spawnSync(command, parameters, { stdio: 'inherit', env: environment }).status === 0;
}

/** Debian's package, where this machine allows it; true where the commands succeeded. */
function installFromDebian({ debianPackage }: BrowserKind): boolean {
  const isRootOnDebian = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  return isRootOnDebian && run('apt-get', 'update') && run('apt-get', 'install', '-y', debianPackage);
}

/** @param install tried where none is found; true where it succeeded */
function obtain(kind: BrowserKind, install: () => boolean): boolean {
  const path = find(kind) ?? (install() ? find(kind) : null);
  if (path === null) {
    console.error(
      `No ${kind.name} was found and none could be installed. Install one (Debian: apt-get install ${kind.debianPackage}) or set ${kind.variable} to its path; the browser tests need it.`,
    );
  } else {
    console.log(`${kind.name} for the browser tests: ${path}`);
  }
  return path !== null;
}

const HELP = `usage: npx node scripts/browser.ts

Finds a Chromium and a Firefox for the tests and prints their paths, or installs them: Debian's packages as
root, else playwright's download of Chromium. ${CHROMIUM.variable} and ${FIREFOX.variable} name others. Without a Firefox its
tests are left out, with a notice; where CI is true that is a failure.

Exit code 0: found. 1: none could be had. 2: a variable names no file.`;

function obtainBoth(): void {
  const hasChromium = obtain(
    CHROMIUM,
    () => installFromDebian(CHROMIUM) || run('npx', 'playwright-core', 'install', 'chromium'),
  );
  const hasFirefox = obtain(FIREFOX, () => installFromDebian(FIREFOX));
  if (!hasFirefox && process.env.CI !== 'true') console.error('THE TESTS IN FIREFOX ARE LEFT OUT.');
  if (!hasChromium || (!hasFirefox && process.env.CI === 'true')) process.exitCode = 1;
}

if (import.meta.main) runScript({ help: HELP }, obtainBoth);
