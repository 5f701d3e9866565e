/**
 * The same numbers on every machine: a seeded sample of hostile tables (scripts/measure/) and the shipped table,
 * analysed in Node, Chromium and Firefox by the same source, agree to 1e-9. Browsers' exponentials and logarithms
 * differ in the last digit, so that a decision that hangs on one would show.
 */
import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from '../../scripts/browser.ts';
import { findDifferences } from '../../scripts/measure/hostileChecks.ts';
import { drawHostileCase } from '../../scripts/measure/hostileTables.ts';
import { defaultSettings } from '../../src/model/settings.ts';
import { analyseTables } from '../support/engineInBrowser.ts';
import { hasFirefox, launchFirefox } from '../support/firefox.ts';

const SAMPLE = 200;
const FIRST = 900_001;

const cases = [
  ...Array.from({ length: SAMPLE }, (_, i) => drawHostileCase(FIRST + i)).map(({ text, settings }) => ({
    text,
    settings,
  })),
  { text: readFileSync('data/arms.csv', 'utf8'), settings: defaultSettings },
];
const expected: unknown[] = JSON.parse(analyseTables(cases));

let server: Server;
let address: string;

beforeAll(async () => {
  const script = await bundleEngine();
  const body = JSON.stringify(cases);
  const files: Readonly<Record<string, readonly [string, string]>> = {
    '/': ['text/html', '<!doctype html><title>Engine</title>'],
    '/engine.js': ['text/javascript', script],
    '/cases.json': ['application/json', body],
  };
  server = createServer(({ url }, response) => {
    const [type, text] = files[url ?? ''] ?? ['text/plain', ''];
    response.setHeader('Content-Type', `${type}; charset=utf-8`).end(text);
  });
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
});

afterAll(() => {
  server?.close();
  server?.closeAllConnections();
});

/** What a page works out, in the page's own words. */
const IN_PAGE = `Promise.all([import('/engine.js'), fetch('/cases.json').then((file) => file.json())])
  .then(([engine, cases]) => engine.analyseTables(cases))`;

function expectSame(json: string): void {
  const found: unknown[] = JSON.parse(json);
  expect(found).toHaveLength(cases.length);
  found.forEach((analysis, i) => {
    expect(findDifferences(analysis, expected[i]), `table ${i}`).toEqual([]);
  });
}

describe('the engine', () => {
  it('makes fits of the sample, and refuses others', () => {
    const text = JSON.stringify(expected);
    expect(text.match(/"kind":"too-few-studies"/gu)?.length).toBeGreaterThan(SAMPLE / 10);
    expect(text.match(/"curvePoints":\[\{/gu)?.length).toBeGreaterThan(SAMPLE / 10);
  });

  it('gives in Chromium what it gives in Node', async () => {
    const browser = await chromium.launch({
      executablePath: findChromium() ?? '',
      args: ['--no-sandbox', '--disable-gpu'],
    });
    try {
      const page = await browser.newPage();
      await page.goto(address);
      expectSame(await page.evaluate(IN_PAGE));
    } finally {
      await browser.close();
    }
  });

  it.skipIf(!hasFirefox)('gives in Firefox what it gives in Node', async () => {
    const browser = await launchFirefox();
    try {
      const page = await browser.newPage();
      await page.goto(address);
      expectSame(String(await page.evaluate(IN_PAGE)));
    } finally {
      await browser.close();
    }
  });
});

async function bundleEngine(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      minify: false,
      lib: { entry: 'tests/support/engineInBrowser.ts', formats: ['es'], fileName: 'engine' },
    },
  });
  const [output] = Array.isArray(built) ? built : [built];
  if (!('output' in output)) throw new Error('expected a finished bundle of the engine');
  const script = output.output.find((file) => file.type === 'chunk');
  if (script?.type !== 'chunk') throw new Error('expected the engine in one file');
  return script.code;
}
