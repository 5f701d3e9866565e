/** Serves the built site and opens pages of it in a real Chromium, for the browser tests. */
import { readFileSync } from 'node:fs';
import { createServer, type ServerResponse } from 'node:http';
import { createRequire } from 'node:module';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import sirv from 'sirv';
import { findChromium } from '../../scripts/browser.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export interface ServedSite {
  readonly address: string;
  readonly browser: Browser;
  readonly close: () => Promise<void>;
}

export interface OpenedPage {
  readonly page: Page;
  /** Console messages, page errors and requests that left the site. */
  readonly complaints: string[];
  readonly close: () => Promise<void>;
}

/** Every page of the site, by its path; one study stands for all, and one figure. */
export const PATHS = [
  '',
  'evidence/',
  'target/',
  'programme/',
  'studies/',
  'studies/plover-1996/',
  'plan/',
  'figures/',
  'figures/growth-light/',
  'figures/growth-light/embed/',
  'figures/live/',
  'figures/live/embed/',
  'table/',
  'table/curate/',
  'intervals/',
  'methods/',
  'offline/',
] as const;

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));

/**
 * Makes a browser one that has no service workers, before a page's own scripts: pages are then the server's each time,
 * and what a test refuses or changes there is seen. What the site does with them has tests of its own (offline.test.ts).
 */
export const WITHOUT_SERVICE_WORKERS = 'delete Navigator.prototype.serviceWorker;';

/**
 * The built site at an address of this machine, for a browser of one's own; kept in the browser as hosts are told to.
 *
 * @param refuses paths that are not to be had at the moment; one that takes its time has them waited for
 * @param folder another build than dist/
 * @param at a port to be found at again; 0 for any
 * @param isKept false where nothing is to be kept in the browser: each script is asked for at each visit
 */
export async function servePages(
  refuses: (path: string) => boolean | Promise<boolean> = () => false,
  folder = DIST,
  at = 0,
  isKept = true,
): Promise<Omit<ServedSite, 'browser'>> {
  const setHeaders = (response: ServerResponse, path: string) =>
    response.setHeader(
      'Cache-Control',
      isKept ? (path.startsWith('/_astro/') ? 'max-age=31536000, immutable' : 'no-cache') : 'no-store',
    );
  const serve = sirv(folder, { etag: true, setHeaders });
  const server = createServer(async (request, response) => {
    if (await refuses(request.url ?? '')) response.writeHead(503, { 'Cache-Control': 'no-store' }).end();
    else serve(request, response);
  });
  await new Promise<void>((resolve) => {
    server.listen(at, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

/**
 * Milliseconds that a page is waited for, as long as a poll is (tests/vitest.config.ts): a limit against what never comes,
 * which a busy machine does not reach as it does a driver's own half a minute.
 */
export const LONGEST_WAIT = 60_000;

/** How a Chromium is started that talks to nobody else. */
export function chromiumOptions(): { readonly executablePath: string; readonly args: string[] } {
  const executablePath = findChromium();
  if (!executablePath) throw new Error('no Chromium found: run `node scripts/browser.ts`, which says how to get one');
  return {
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  };
}

export async function serveSite(): Promise<ServedSite> {
  const pages = await servePages();
  const browser = await chromium.launch(chromiumOptions());
  return {
    address: pages.address,
    browser,
    close: async () => {
      await browser.close();
      await pages.close();
    },
  };
}

/** All of axe's rules; what they find right is counted, not described, and an element is shown by its text, not by a selector. */
const RUN_AXE = `axe.run({ resultTypes: ['violations'], selectors: false })
  .then(({ violations }) => violations.map(({ id, nodes }) => id + ': ' + nodes[0].html))`;

/** What axe finds wrong with a page as it stands: rule and element, a line each. */
export async function findViolations(page: Page): Promise<readonly string[]> {
  if (!(await page.evaluate('"axe" in window'))) await page.evaluate(axeSource);
  return page.evaluate(RUN_AXE);
}

/** @param until `settled`: nothing on the page is being worked out any more; `started`: every island answers */
export async function openPage(
  { address, browser }: ServedSite,
  path: string,
  options: BrowserContextOptions = {},
  until: 'settled' | 'started' = 'settled',
): Promise<OpenedPage> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  context.setDefaultTimeout(LONGEST_WAIT);
  await context.addInitScript(WITHOUT_SERVICE_WORKERS);
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => complaints.push(`console ${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => complaints.push(`page error: ${error.message}`));
  page.on('request', (request) => {
    // A page may read what it made itself.
    if (
      !request
        .url()
        .replace(/^blob:/u, '')
        .startsWith(`${address}/`)
    )
      complaints.push(`request to another origin: ${request.url()}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`${response.status()} at ${response.url()}`);
  });
  await page.goto(`${address}/${path}`, { waitUntil: 'load' });
  // An island says so while it works; without JavaScript none ever starts.
  if (options.javaScriptEnabled !== false) {
    const waiting = until === 'started' ? 'astro-island[ssr]' : 'astro-island[ssr], [aria-busy=true]';
    await page.waitForSelector(waiting, { state: 'detached' });
  }
  return { page, complaints, close: () => context.close() };
}
