/** Tabs of one profile in either browser, with what the tests of stored tables do in them. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { launchFirefox } from '../support/firefox.ts';
import { chromiumOptions, LONGEST_WAIT, WITHOUT_SERVICE_WORKERS } from './site.ts';

export interface Tab {
  readonly goto: (path: string) => Promise<unknown>;
  /** Ends the page that is open, and what it was still asking for. */
  readonly leave: () => Promise<unknown>;
  /** Runs a script in the page, as text. */
  readonly run: (script: string) => Promise<unknown>;
  /** Gives a file to the entry of “Your table”. */
  readonly upload: (file: string) => Promise<unknown>;
}

export interface Profile {
  readonly open: () => Promise<Tab>;
  /** Tells the browser that the machine has no network; Firefox cannot be told. */
  readonly setOffline: (isOffline: boolean) => Promise<void>;
  readonly close: () => Promise<void>;
}

export type BrowserName = 'Chromium' | 'Firefox';
/** What a profile's pages may keep: what they make, the site itself too, nothing, or nothing of any size. */
export type Storage = 'usual' | 'site too' | 'denied' | 'full';

/** Bytes of a store that is full. */
const FULL = 2000;

export async function openProfile(name: BrowserName, address: string, storage: Storage = 'usual'): Promise<Profile> {
  return name === 'Chromium' ? openChromium(address, storage) : openFirefox(address, storage);
}

async function openChromium(address: string, storage: Storage): Promise<Profile> {
  const folder = mkdtempSync(join(tmpdir(), 'profile-'));
  const context = await chromium.launchPersistentContext(folder, chromiumOptions());
  context.setDefaultTimeout(LONGEST_WAIT);
  if (storage !== 'site too') await context.addInitScript(WITHOUT_SERVICE_WORKERS);
  if (storage === 'denied') {
    // A Chromium without a window does not read the setting of a reader who lets no site keep anything: this is what it does.
    const deny = `for (const name of ['localStorage', 'indexedDB'])
      Object.defineProperty(self, name, { get() { throw new DOMException('Access is denied.', 'SecurityError'); } });`;
    await context.addInitScript(deny);
    await context.route(/Worker[^/]*\.js$/u, async (route) => {
      const response = await route.fetch();
      await route.fulfill({ response, body: `${deny}\n${await response.text()}` });
    });
  }
  return {
    open: async () => {
      const page = await context.newPage();
      const session = await context.newCDPSession(page);
      return {
        goto: async (path) => {
          await page.goto(`${address}/${path}`, { waitUntil: 'load' });
          if (storage === 'full')
            await session.send('Storage.overrideQuotaForOrigin', { origin: address, quotaSize: FULL });
        },
        leave: () => page.goto('about:blank'),
        run: (script) => page.evaluate(script),
        upload: (file) => page.locator('#own-file').setInputFiles(file),
      };
    },
    setOffline: (isOffline) => context.setOffline(isOffline),
    close: async () => {
      await context.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function openFirefox(address: string, storage: Storage): Promise<Profile> {
  const preferences = {
    usual: {},
    'site too': {},
    // 2 blocks all cookies, and with them every other store of a site.
    denied: { 'network.cookie.cookieBehavior': 2 },
    // Kilobytes for all sites together.
    full: { 'dom.quotaManager.temporaryStorage.fixedLimit': 1 },
  }[storage];
  const browser = await launchFirefox({ 'dom.serviceWorkers.enabled': storage === 'site too', ...preferences });
  return {
    open: async () => {
      const page = await browser.newPage();
      page.setDefaultTimeout(LONGEST_WAIT);
      return {
        goto: (path) => page.goto(`${address}/${path}`, { waitUntil: 'load' }),
        leave: () => page.goto('about:blank'),
        run: (script) => page.evaluate(script),
        upload: async (file) => {
          const entry = await page.waitForSelector('#own-file');
          await (entry as unknown as { uploadFile: (path: string) => Promise<void> }).uploadFile(file);
        },
      };
    },
    setOffline: async () => {},
    close: () => browser.close(),
  };
}
