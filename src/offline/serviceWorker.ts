/**
 * The service worker: keeps one version of the site in the browser, whole, and answers from it, so that the pages work
 * without a network. A version is what one build wrote. Its files are fetched while the version before still answers;
 * if one of them is missing or another than the build wrote, none of them is ever shown. It takes over when the reader
 * says so or when no page of the older version is open, and what only the older one needs goes when its last page has.
 *
 * What the reader has made (tables, programmes) lies elsewhere in the browser and is never touched.
 */
import { cacheNames } from 'workbox-core/cacheNames.js';
import { setCacheNameDetails } from 'workbox-core/setCacheNameDetails.js';
import { PrecacheController } from 'workbox-precaching/PrecacheController.js';
import { PrecacheRoute } from 'workbox-precaching/PrecacheRoute.js';
import { registerRoute } from 'workbox-routing/registerRoute.js';
import { setCatchHandler } from 'workbox-routing/setCatchHandler.js';
import { NetworkFirst } from 'workbox-strategies/NetworkFirst.js';
import { noteOlder, removeOlder } from './olderVersion.ts';
import { type Asked, worker } from './workerScope.ts';

const PREFIX = 'shy-of-failure';
/** Sites below other paths of the same host keep theirs under other names. */
const scope = worker.registration.scope;
setCacheNameDetails({ prefix: PREFIX, suffix: scope });
const VISITED = `${PREFIX}-visited-`;
const { version, files } = worker.BUILT;
const visited = `${VISITED}${version}-${scope}`;

const kept = new PrecacheController();
kept.addToCacheList([...files]);

worker.addEventListener('install', (event) => void kept.install(event));
worker.addEventListener('activate', (event) => {
  event.waitUntil(
    (async () => {
      const isOldStore = (name: string) => name.startsWith(VISITED) && name.endsWith(`-${scope}`) && name !== visited;
      await noteOlder(cacheNames.precache, new Set(kept.getURLsToCacheKeys().values()), isOldStore);
      // So that the page of the very first visit, too, finds its later parts without a network.
      await worker.clients.claim();
      await removeOlder(cacheNames.precache);
    })(),
  );
});
worker.addEventListener('message', (event) => {
  const asked = event.data as Asked;
  if (asked === 'take over') event.waitUntil(worker.skipWaiting());
  if (asked === 'page shown') event.waitUntil(removeOlder(cacheNames.precache));
});

// Settings in an address are for the page's script: its file is the same.
registerRoute(
  new PrecacheRoute(kept, {
    ignoreURLParametersMatching: [/^/u],
    directoryIndex: '',
    cleanURLs: false,
    urlManipulation: ({ url }) => [new URL(url.pathname.replace(/\/index\.html$/u, '/'), url)],
  }),
);
// A page that an older version gave asks for a part of its own: names there change with the content.
registerRoute(
  ({ sameOrigin, url }) => sameOrigin && url.href.startsWith(`${scope}_astro/`),
  async ({ request }) => (await caches.match(request, { cacheName: cacheNames.precache })) ?? fetch(request),
);
// Files to download and figures' frames: as they are now where there is a network, else as they were when last seen.
registerRoute(
  ({ sameOrigin, url }) => sameOrigin && url.href.startsWith(scope),
  new NetworkFirst({
    cacheName: visited,
    plugins: [{ cacheKeyWillBeUsed: async ({ request }) => withoutSettings(request.url) }],
  }),
);
setCatchHandler(async ({ request }) => {
  const address = withoutSettings(request.url);
  // The browser has lost a file that was kept; the site may still have one, though of a later version.
  const found = kept.getCacheKeyForURL(address) === undefined ? null : await fetch(request).catch(() => null);
  if (found) return found;
  if (request.mode !== 'navigate') return Response.error();
  // Hosts lead there themselves.
  if (kept.getCacheKeyForURL(`${address}/`) !== undefined)
    return Response.redirect(request.url.replace(address, `${address}/`));
  const page = await kept.matchPrecache('offline/');
  return page ? new Response(page.body, { status: 503, headers: page.headers }) : Response.error();
});

function withoutSettings(address: string): string {
  const url = new URL(address);
  return `${url.origin}${url.pathname}`;
}
