/**
 * Puts the service worker beside the pages, bundled with them, and writes into it which files it keeps. `BUILT` in its
 * script (`src/offline/workerScope.ts`) is where they go.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import type { PrecacheEntry } from 'workbox-precaching/_types.js';
import type { Built } from '../../src/offline/workerScope.ts';

export const WORKER_FILE = 'sw.js';
const SOURCE = fileURLToPath(new URL('../../src/offline/serviceWorker.ts', import.meta.url));
/** As the bundler leaves it: read once, from the worker's global object or what stands for it. */
const PLACE = /\b[\w$]+\.BUILT\b/gu;

/** Their names change with what is in them. */
const NAMED_BY_CONTENT = /^_astro\//u;
/** Pages, and what they read or show. Figures' frames and files are kept by whoever opens them. */
const KEPT = /^(?:.+\/)?index\.html$|^data\/.+\.csv$|^favicon\.svg$|^icons\/[^/]+$|^manifest\.webmanifest$/u;
const NOT_KEPT = /^figures\/[^/]+\/embed\//u;

/**
 * In place of a service worker while the site is worked on: one that an earlier `npm start` left at the same address
 * would go on answering with its pages.
 */
const WITHDRAWAL = `self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil((async () => {
  await self.registration.unregister();
  for (const client of await self.clients.matchAll({ type: 'window' })) client.navigate(client.url);
})()));
`;

/** Comes after the integrations that write pages and before the one that publishes them. */
export function serviceWorker(): AstroIntegration {
  return {
    name: 'service-worker',
    hooks: {
      'astro:config:setup': ({ command, updateConfig }) => {
        if (command === 'build') updateConfig({ vite: { plugins: [bundleWorker] } });
      },
      'astro:server:setup': ({ server }) => {
        server.middlewares.use((request, response, next) => {
          // The server takes the site's sub-path off.
          if (request.url?.split('?')[0] !== `/${WORKER_FILE}`) return next();
          response.setHeader('Content-Type', 'text/javascript').end(WITHDRAWAL);
        });
      },
      'astro:build:done': ({ dir, logger }) => {
        const root = fileURLToPath(dir);
        const built = describeBuild(root);
        const script = readFileSync(join(root, WORKER_FILE), 'utf8');
        const places = script.match(PLACE)?.length ?? 0;
        if (places !== 1)
          throw new Error(`${WORKER_FILE}: expected one place for the files to keep, BUILT, received ${places}`);
        writeFileSync(
          join(root, WORKER_FILE),
          script.replace(PLACE, () => JSON.stringify(built)),
        );
        logger.info(`${WORKER_FILE} has browsers keep ${built.files.length} files`);
      },
    },
  };
}

/** Among the site's scripts, in one file that imports nothing, as service workers must be everywhere. */
const bundleWorker = {
  name: 'bundle-service-worker',
  apply: 'build' as const,
  applyToEnvironment: ({ name }: { readonly name: string }) => name === 'client',
  buildStart(this: { emitFile(file: { type: 'chunk'; id: string; fileName: string }): string }) {
    this.emitFile({ type: 'chunk', id: SOURCE, fileName: WORKER_FILE });
  },
};

/** The files of a build that browsers keep, by their addresses beside the worker, and what tells it from other builds. */
export function describeBuild(root: string): Built {
  const files = readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => relative(root, join(parentPath, name)).replaceAll(sep, '/'))
    .filter((name) => NAMED_BY_CONTENT.test(name) || (KEPT.test(name) && !NOT_KEPT.test(name)))
    .sort()
    .map((name) => describeFile(root, name));
  return { version: digest(JSON.stringify(files)).toString('hex').slice(0, 16), files };
}

function describeFile(root: string, name: string): PrecacheEntry {
  // A page's address is its folder.
  const url = name.replace(/(?:^|(?<=\/))index\.html$/u, '') || './';
  if (NAMED_BY_CONTENT.test(name)) return { url, revision: null };
  const hash = digest(readFileSync(join(root, name)));
  // The browser refuses a file that is not the one: of another build, or changed on its way.
  return { url, revision: hash.toString('hex').slice(0, 8), integrity: `sha256-${hash.toString('base64')}` };
}

function digest(content: string | Buffer): Buffer {
  return createHash('sha256').update(content).digest();
}
