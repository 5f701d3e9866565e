/**
 * Firefox in the browser tests, one rule for all of them: where none is installed what needs it is left out and that is
 * said; where the tests run before a release (CI is true) it is an error.
 */
import { type Browser, launch } from 'puppeteer-core';
import { findFirefox } from '../../scripts/browser.ts';

const path = findFirefox();
if (path === null) {
  const notice = 'NO FIREFOX WAS FOUND, SO NOTHING WAS TRIED IN IT: `node scripts/browser.ts` says how to get one';
  if (process.env.CI === 'true') throw new Error(notice);
  console.warn(notice);
}

export const hasFirefox = path !== null;

/** Pages are the server's each time (offline.test.ts tries the others). */
const WITHOUT_SERVICE_WORKERS = { 'dom.serviceWorkers.enabled': false } as const;

/** @param preferences beside those of a new profile */
export function launchFirefox(
  preferences: Readonly<Record<string, boolean | number>> = WITHOUT_SERVICE_WORKERS,
): Promise<Browser> {
  return launch({
    browser: 'firefox',
    executablePath: path ?? '',
    headless: true,
    extraPrefsFirefox: { ...preferences },
  });
}
