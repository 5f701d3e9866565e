/**
 * Figures in frames of a page of another origin, in Chromium and Firefox: as high as they need to be at every width, by the
 * snippet as it is handed out; no other frame or page can change that; without JavaScript at the height that is written.
 */
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeFrame } from '../../src/ui/frame.ts';
import { hasFirefox, launchFirefox } from '../support/firefox.ts';
import { chromiumOptions, servePages } from './site.ts';

const index = JSON.parse(readFileSync('dist/figures.json', 'utf8'));
const slugs: readonly string[] = index.figures.map(({ slug }: { slug: string }) => slug);
/** Stands for a figure with a reader's settings. */
const OWN = 'own';
const WIDTHS = [320, 600, 900] as const;

/** Another host than the site's: its page holds what the address asks for. */
async function serveHost(content: (path: string) => string) {
  const server = createServer((request, response) => {
    if (request.url === '/favicon.ico') {
      response.writeHead(204).end();
      return;
    }
    response.setHeader('Content-Type', 'text/html; charset=utf-8');
    response.end(`<!doctype html><html><body style="margin:0">${content(request.url ?? '/')}</body></html>`);
  });
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://localhost:${port}`,
    close: () => new Promise<unknown>((resolve) => server.close(resolve)).then(() => server.closeAllConnections()),
  };
}

/** Markup that a figure's page hands out, with the whole address of the site. */
function snippetOf(slug: string, address: string): string {
  if (slug === OWN)
    return writeFrame({
      address: `${address}/figures/live/embed/?v=2&curve=log#growth-heavy`,
      title: 'x',
      height: 400,
    }).replace(' loading="lazy"', '');
  const page = readFileSync(`dist/figures/${slug}/index.html`, 'utf8');
  const written = /<pre id="frame"[^>]*>([\s\S]*?)<\/pre>/u.exec(page)?.[1] ?? '';
  const markup = written
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&');
  return markup.replace('src="/', `src="${address}/`).replace(' loading="lazy"', '');
}

/** Height of each frame, of its content, what it posted last and all that was posted; said by the host page. */
const NOTE_HEIGHTS = `<script>posted = new Map(); all = [];
  addEventListener('message', (e) => { posted.set(e.source, e.data.height); all.push(e.data.height); })</script>`;
const READ_HEIGHTS = `[...document.querySelectorAll('iframe')].map((frame) => [frame.clientHeight, posted.get(frame.contentWindow) ?? 0])`;

/** Pixels that a frame's content needs, and whether more than the frame shows is there. */
const NEEDED = `(() => {
  const { scrollHeight, scrollWidth } = document.documentElement;
  return [Math.ceil(document.body.getBoundingClientRect().height), scrollHeight > innerHeight || scrollWidth > innerWidth];
})()`;
/** Frames that are out of sight are not laid out anew until they are seen: a window that shows all. */
const TALL = 14_000;

interface Driven {
  /** Opens a page and gives what evaluates in it, and in a frame by its number. */
  open(
    address: string,
    width: number,
  ): Promise<{
    evaluate(script: string): Promise<unknown>;
    inFrame(place: number, script: string): Promise<unknown>;
    resize(width: number): Promise<void>;
  }>;
  close(): Promise<void>;
}

async function driveChromium(): Promise<Driven> {
  const browser = await chromium.launch(chromiumOptions());
  return {
    open: async (address, width) => {
      const page = await browser.newPage({ viewport: { width, height: TALL }, colorScheme: 'dark' });
      await page.goto(address);
      return {
        evaluate: (script) => page.evaluate(script),
        inFrame: async (place, script) => page.frames()[place + 1].evaluate(script),
        resize: (to) => page.setViewportSize({ width: to, height: TALL }),
      };
    },
    close: () => browser.close(),
  };
}

async function driveFirefox(): Promise<Driven> {
  const browser = await launchFirefox();
  return {
    open: async (address, width) => {
      const page = await browser.newPage();
      await page.setViewport({ width, height: TALL });
      await page.goto(address, { waitUntil: 'load' });
      return {
        evaluate: (script) => page.evaluate(script),
        inFrame: async (place, script) => page.frames()[place + 1].evaluate(script),
        resize: (to) => page.setViewport({ width: to, height: TALL }),
      };
    },
    close: () => browser.close(),
  };
}

describe.each([
  ['Chromium', driveChromium, true],
  ['Firefox', driveFirefox, hasFirefox],
] as const)('in %s a page of another origin', (_name, drive, isHere) => {
  let site: Awaited<ReturnType<typeof servePages>>;
  let host: Awaited<ReturnType<typeof serveHost>>;
  let browser: Driven;
  beforeAll(async () => {
    if (!isHere) return;
    site = await servePages();
    host = await serveHost((path) => {
      const asked = path.slice(1);
      if (asked === 'forger')
        return `<script>
        for (const to of [parent, ...Array.from(parent.frames)]) to.postMessage({ type: 'shy-of-failure-height', height: 77 }, '*');
        setInterval(() => parent.postMessage({ type: 'shy-of-failure-height', height: 77 }, '*'), 20);
      </script>`;
      const shown = asked === 'all' ? slugs : asked.split(',');
      return (
        NOTE_HEIGHTS +
        shown
          .map((slug) => (slug === 'forged' ? '<iframe src="/forger"></iframe>' : snippetOf(slug, site.address)))
          .join('\n')
      );
    });
    browser = await drive();
  });
  afterAll(async () => {
    await browser?.close();
    await host?.close();
    await site?.close();
  });

  it.skipIf(!isHere)(
    'shows every figure as high as it is, at 320, 600 and 900 px: the height sent is the height used',
    async () => {
      const page = await browser.open(`${host.address}/all`, WIDTHS[0]);
      for (const width of WIDTHS) {
        await page.resize(width);
        // What each frame needs, has, and said last; and whether anything in it could be scrolled.
        const differing = async () => {
          const heights = (await page.evaluate(READ_HEIGHTS)) as [number, number][];
          const found: string[] = [];
          for (const [place, slug] of slugs.entries()) {
            const [needed, scrolls] = (await page.inFrame(place, NEEDED)) as [number, boolean];
            const [used, sent] = heights[place];
            if (used !== needed || sent !== needed || scrolls)
              found.push(`${slug} needs ${needed}, said ${sent}, has ${used}${scrolls ? ', scrolls' : ''}`);
          }
          return found;
        };
        await expect.poll(differing).toEqual([]);
      }
    },
  );

  it.skipIf(!isHere)('shows a figure with a reader’s settings as high as it is, once it is worked out', async () => {
    const page = await browser.open(`${host.address}/${OWN}`, 600);
    await expect.poll(() => page.inFrame(0, 'document.querySelectorAll("figcaption").length')).toBe(1);
    await expect
      .poll(async () => {
        const [needed, scrolls] = (await page.inFrame(0, NEEDED)) as [number, boolean];
        const [[used, sent]] = (await page.evaluate(READ_HEIGHTS)) as [number, number][];
        return used === needed && sent === needed && needed > 300 && !scrolls;
      })
      .toBe(true);
    // The page round it does not jump: the line that stands there while the figure is worked out has no say.
    expect(await page.evaluate('Math.min(...all)')).toBeGreaterThan(300);
  });

  it.skipIf(!isHere)('takes the height from that frame of that site alone', async () => {
    const page = await browser.open(`${host.address}/growth-light,forged,growth-heavy`, 600);
    const heights = async () => ((await page.evaluate(READ_HEIGHTS)) as [number, number][]).map(([used]) => used);
    await expect.poll(async () => await page.evaluate('posted.size')).toBe(3);
    await page.inFrame(0, `heard = 0; addEventListener('message', () => { heard += 1; })`);
    await page.evaluate(`postMessage({ type: 'shy-of-failure-height', height: 55 }, '*');
      document.querySelectorAll('iframe')[0].contentWindow.postMessage({ type: 'shy-of-failure-height', height: 55 }, '*');`);
    await expect.poll(() => page.evaluate('posted.get(window)')).toBe(55);
    await expect.poll(() => page.inFrame(0, 'heard')).toBeGreaterThan(0);
    await expect.poll(() => page.evaluate('[...posted.values()].includes(77)')).toBe(true);
    const [first, , third] = await heights();
    for (const height of [first, third]) expect(height).toBeGreaterThan(300);
  });
});

it('without JavaScript a frame has the height that is written, which its figure needs at its full width, two lines more at most', async () => {
  const site = await servePages();
  const browser = await chromium.launch(chromiumOptions());
  const page = await (
    await browser.newContext({ javaScriptEnabled: false, viewport: { width: 720, height: 300 } })
  ).newPage();
  // A browser that has not had the site's face yet may show the first page of all in another.
  await page.goto(`${site.address}/figures/${slugs[0]}/embed/`);
  for (const slug of slugs) {
    const written = Number(/height="(\d+)"/u.exec(snippetOf(slug, site.address))?.[1]);
    const oembed = JSON.parse(readFileSync(`dist/figures/${slug}/oembed.json`, 'utf8'));
    expect(oembed.height).toBe(written);
    await page.goto(`${site.address}/figures/${slug}/embed/`);
    const { height } = (await page.locator('body').boundingBox()) ?? { height: Number.NaN };
    expect(written - height, slug).toBeGreaterThanOrEqual(0);
    expect(written - height, slug).toBeLessThanOrEqual(45);
    // Sentences stand apart.
    expect(await page.locator('figcaption').innerText()).toMatch(
      /\. Demonstration: the studies behind this figure are invented\. Shy of Failure/u,
    );
  }
  await browser.close();
  await site.close();
});
