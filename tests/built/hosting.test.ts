/**
 * What a host is told about the built site: `_headers`, the nginx example and the publishing workflow say
 * the same, and it fits the files that are there.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { dist } from '../support/builtSite.ts';

const root = new URL('../../', import.meta.url);
const read = (name: string) => readFileSync(new URL(name, root), 'utf8');
/** Addresses of all files of the build; a page by its folder. */
const addresses = readdirSync(dist, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map(({ parentPath, name }) => join(parentPath, name).slice(dist.length))
  .map((path) => path.replace(/\/index\.html$/u, '/'));
const pages = addresses.filter((address) => address.endsWith('/'));
const embeds = pages.filter((address) => /^\/figures\/[^/]+\/embed\/$/u.test(address));

interface Rule {
  readonly pattern: string;
  readonly headers: readonly (readonly [string, string])[];
}

/** Patterns with the indented headers below each; lines from # on are comments. */
const rules: readonly Rule[] = read('dist/_headers')
  .split(/\n(?=\/)/u)
  .slice(1)
  .map((block) => {
    const [pattern, ...lines] = block.split('\n').filter((line) => line.trim() !== '' && !line.startsWith('#'));
    return { pattern, headers: lines.map((line) => line.trim().split(/: (.*)/u, 2) as [string, string]) };
  });

/** Headers that `_headers` gives an address: of every pattern that matches it. */
function headersOf(address: string): (readonly [string, string])[] {
  return rules
    .filter(({ pattern }) => {
      const source = pattern.replaceAll('*', '.*').replaceAll(/:\w+/gu, '[^/]+');
      return new RegExp(`^${source}$`, 'u').test(address);
    })
    .flatMap(({ headers }) => headers);
}

const nginx = read('src/assets/hosting/nginx.conf.example');
/** Value that nginx gives an address with a status: fixed, or from the map of the variable. */
function nginxHeader(name: string, address: string, status = 200): string | undefined {
  const [, fixed, variable] =
    new RegExp(`^ +add_header ${name} (?:"([^"]*)"|(\\$\\w+)) always;`, 'mu').exec(nginx) ?? [];
  if (!variable) return fixed;
  const [, subject = '', body = ''] = new RegExp(`map "?([^"]*?)"? \\${variable} \\{([^}]*)\\}`, 'u').exec(nginx) ?? [];
  const [, fallback] = /default +"([^"]*)"/u.exec(body) ?? [];
  const uri = address.endsWith('/') ? `${address}index.html` : address;
  const asked = subject.replace('$status', String(status)).replace('$uri', uri);
  const found = [...body.matchAll(/^ +"?~(.+?)"? +"([^"]*)";/gmu)].find(([, pattern]) =>
    new RegExp(pattern, 'u').test(asked),
  );
  return found ? found[2] : fallback;
}

describe('_headers', () => {
  it('guards every file and lets the figures to embed, and no other page, stand in a frame', () => {
    expect(pages.length).toBeGreaterThan(40);
    expect(embeds.length).toBeGreaterThan(5);
    for (const address of pages) {
      const headers = headersOf(address);
      const framing = headers.filter(([name]) => name === 'Content-Security-Policy').map(([, value]) => value);
      expect(framing, address).toEqual(embeds.includes(address) ? [] : ["frame-ancestors 'none'"]);
    }
    for (const address of addresses) {
      const names = headersOf(address).map(([name]) => name);
      expect(new Set(names).size, `${address}: a header twice`).toBe(names.length);
      for (const name of [
        'X-Content-Type-Options',
        'Referrer-Policy',
        'Permissions-Policy',
        'Cross-Origin-Opener-Policy',
      ]) {
        expect(names, address).toContain(name);
      }
    }
  });

  it('says the same of every form of an address: with its slash, without, and by the name of the file', () => {
    for (const address of pages) {
      for (const form of [address.replace(/(?<=.)\/$/u, ''), address, `${address}index.html`]) {
        const framing = headersOf(form).filter(([name]) => name === 'Content-Security-Policy');
        const wanted = embeds.includes(address) ? [] : [['Content-Security-Policy', "frame-ancestors 'none'"]];
        expect(framing, form).toEqual(wanted);
      }
    }
    for (const missing of ['/404', '/404.html']) {
      expect(new Map(headersOf(missing)).get('Content-Security-Policy'), missing).toBe("frame-ancestors 'none'");
    }
  });

  it('lets browsers keep for good what has a hash in its name, and nothing else', () => {
    const kept = addresses.filter((address) => /max-age/u.test(new Map(headersOf(address)).get('Cache-Control') ?? ''));
    expect(kept.length).toBeGreaterThan(20);
    expect(kept).toEqual(addresses.filter((address) => address.startsWith('/_astro/')));
    for (const address of kept) expect(address).toMatch(/[.-][\w-]{8}\.\w+$/u);
  });
});

describe.each([
  ['_headers', (address: string) => new Map(headersOf(address)).get('Cache-Control')],
  ['the nginx example', (address: string) => nginxHeader('Cache-Control', address)],
])('%s', (_, cachingOf) => {
  it('has the service worker asked for anew each time', () => {
    expect(addresses).toContain('/sw.js');
    expect(cachingOf('/sw.js')).toBe('no-cache');
  });
});

it('both give the web app manifest its type', () => {
  expect(addresses).toContain('/manifest.webmanifest');
  expect(new Map(headersOf('/manifest.webmanifest')).get('Content-Type')).toBe('application/manifest+json');
  expect(nginx).toMatch(/^ {8}application\/manifest\+json +webmanifest;$/mu);
});

describe('the nginx example', () => {
  it('gives every file what _headers gives it', () => {
    for (const address of addresses) {
      const wanted = new Map(headersOf(address));
      for (const name of [
        'X-Content-Type-Options',
        'Referrer-Policy',
        'Permissions-Policy',
        'Cross-Origin-Opener-Policy',
      ]) {
        expect(nginxHeader(name, address), `${name} of ${address}`).toBe(wanted.get(name));
      }
      const caching = wanted.get('Cache-Control') ?? 'public, max-age=0, must-revalidate';
      expect(nginxHeader('Cache-Control', address), address).toBe(caching);
    }
    for (const address of pages) {
      const framing = new Map(headersOf(address)).get('Content-Security-Policy') ?? '';
      expect(nginxHeader('Content-Security-Policy', address), address).toBe(framing);
    }
  });

  it('lets no page but the embedded figures stand in a frame, by the name of the file or of the folder', () => {
    for (const page of pages.flatMap((address) => [address, `${address}index.html`])) {
      const wanted = embeds.some((embed) => page.startsWith(embed)) ? '' : "frame-ancestors 'none'";
      expect(nginxHeader('Content-Security-Policy', page), page).toBe(wanted);
      expect(nginxHeader('Content-Security-Policy', `/sub${page}`), page).toBe(wanted);
    }
    for (const other of [
      '/404.html',
      '/figures/growth-heavy/embed/other.html',
      '/figures/growth-heavy/embed/a/index.html',
    ]) {
      expect(nginxHeader('Content-Security-Policy', other), other).toBe("frame-ancestors 'none'");
    }
  });

  it('lets no browser keep the answer that a file is missing', () => {
    expect(nginxHeader('Cache-Control', '/_astro/gone.12345678.js')).toMatch(/immutable/u);
    expect(nginxHeader('Cache-Control', '/sub/_astro/gone.12345678.js')).toMatch(/immutable/u);
    expect(nginxHeader('Cache-Control', '/_astro/gone.12345678.js', 404)).toMatch(/must-revalidate/u);
  });
});

describe('the publishing workflow', () => {
  const workflow = read('.github/workflows/publish.yml');

  it('installs, tests, builds for its address and publishes, in that order', () => {
    const steps = [...workflow.matchAll(/(?:run|uses): (.+)$/gmu)].map(([, step]) => step.replace(/@v\d+$/u, ''));
    const order = ['npm ci', 'npm test', 'actions/configure-pages', 'npm run build', 'actions/deploy-pages'];
    expect(steps.filter((step) => order.includes(step))).toEqual(order);
    expect(workflow).toMatch(/BASE_PATH: \$\{\{ steps\.pages\.outputs\.base_path \}\}\/\n/u);
    expect(workflow).toMatch(/SITE_URL: \$\{\{ steps\.pages\.outputs\.origin \}\}\n/u);
    expect(workflow).toMatch(/EVIDENCE: \$\{\{ vars\.EVIDENCE \|\| 'data\/arms\.csv' \}\}\n/u);
  });

  it('uses the platform’s own actions, each at one major version', () => {
    const uses = [...workflow.matchAll(/uses: (.+)$/gmu)].map(([, action]) => action);
    expect(uses.length).toBe(5);
    for (const action of uses) expect(action).toMatch(/^actions\/[\w-]+@v\d+$/u);
  });
});
