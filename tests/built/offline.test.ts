/** What the built site needs to be installed and to stand without a network: manifest, icons, and the files that are kept. */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { describeBuild } from '../../scripts/build/serviceWorker.ts';
import type { Built } from '../../src/offline/workerScope.ts';
import { dist } from '../support/builtSite.ts';

const read = (name: string) => readFileSync(join(dist, name), 'utf8');
const pages = readdirSync(dist, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.html'));
const isEmbed = (name: string) => name.startsWith('figures/') && name.endsWith('/embed/index.html');
/** Addresses of no host but the site's own, as files of the build. */
const fileOf = (address: string) => {
  const { origin, pathname } = new URL(address, 'http://site/');
  expect(origin, address).toBe('http://site');
  return join(dist, pathname.endsWith('/') ? `${pathname}index.html` : pathname);
};
const isFile = (path: string) => existsSync(path) && statSync(path).isFile();

describe('the web app manifest', () => {
  const manifest = JSON.parse(read('manifest.webmanifest'));

  it('names the site, opens within it and looks like it', () => {
    expect(manifest.name).toBe('Shy of Failure');
    for (const address of [manifest.start_url, ...manifest.shortcuts.map(({ url }: { url: string }) => url)]) {
      expect(isFile(fileOf(address)), address).toBe(true);
      expect(address.startsWith(manifest.scope)).toBe(true);
    }
    expect(manifest.id).toBe(manifest.start_url);
    expect(manifest.display).toBe('standalone');
    const { document } = parseHTML(read('index.html'));
    const colours = [...document.querySelectorAll('meta[name="theme-color"]')].map((meta) =>
      meta.getAttribute('content'),
    );
    expect(colours).toHaveLength(2);
    expect(new Set(colours).size).toBe(2);
    expect([manifest.theme_color, manifest.background_color]).toEqual([colours[0], colours[0]]);
  });

  it('has icons of the sizes that it says, one of them to be cut to any shape', () => {
    const purposes: string[] = [];
    for (const { src, sizes, type, purpose } of manifest.icons) {
      purposes.push(purpose);
      const bytes = readFileSync(fileOf(src));
      if (type === 'image/svg+xml') expect(bytes.toString('utf8')).toMatch(/^<svg /u);
      else {
        // Width and height in the header of a PNG (ISO/IEC 15948, 11.2.2).
        expect(bytes.subarray(1, 4).toString('latin1')).toBe('PNG');
        expect(`${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`).toBe(sizes);
      }
    }
    expect(purposes.filter((one) => one === 'any').length).toBeGreaterThanOrEqual(3);
    expect(purposes).toContain('maskable');
  });
});

describe('the service worker', () => {
  const script = read('sw.js');
  const [, json] = /=(\{"version":"[\da-f]{16}","files":\[[^\]]+\]\})/u.exec(script) ?? [];
  const built = JSON.parse(json ?? 'null') as Built;
  const kept = built.files.map(({ url }) => fileOf(url));

  it('keeps every page, script, style, font and table as it was built, and nothing that is not there', () => {
    expect(built).toEqual(describeBuild(dist));
    expect(kept.length).toBeGreaterThan(100);
    expect(kept.filter((path) => !isFile(path))).toEqual([]);
    const wanted = [
      ...pages.filter((name) => name !== '404.html' && !isEmbed(name)),
      ...readdirSync(join(dist, '_astro')).map((name) => `_astro/${name}`),
      ...readdirSync(join(dist, 'data'), { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.csv'))
        .map((name) => `data/${name}`),
    ].map((name) => join(dist, name));
    expect(kept).toEqual(expect.arrayContaining(wanted));
  });

  it('knows the content of each file by its hash, or by its name', () => {
    for (const { url, revision, integrity } of built.files) {
      if (url.startsWith('_astro/'))
        expect([revision, url]).toEqual([null, expect.stringMatching(/[.-][\w-]{8}\.\w+$/u)]);
      else
        expect([revision, integrity], url).toEqual([
          expect.stringMatching(/^[\da-f]{8}$/u),
          expect.stringMatching(/^sha256-/u),
        ]);
    }
  });

  it('weighs what README.md says', () => {
    const megabytes = kept.reduce((sum, path) => sum + statSync(path).size, 0) / 1e6;
    const [, said] = /(\d+\.\d) MB/u.exec(readFileSync(new URL('../../README.md', import.meta.url), 'utf8')) ?? [];
    expect(Math.abs(megabytes - Number(said))).toBeLessThan(0.5);
  });

  it('is one script that imports and evaluates nothing and names no other host', () => {
    expect(script).not.toMatch(/\bimport\b|\bexport\b|importScripts|\beval\b|new Function\b/u);
    const hosts = [...script.matchAll(/https?:\/\/[\w.-]+/gu)].map(([host]) => host);
    // In a warning of the library to whoever reads the console; nothing is fetched from there.
    expect(hosts).toEqual(['https://bit.ly']);
  });

  it('is registered by every page but those that stand in frames of other sites', () => {
    const registering = pages.filter((name) => /data-service-worker="\/sw\.js"/u.test(read(name)));
    expect(registering.length).toBeGreaterThan(60);
    expect(registering).toEqual(pages.filter((name) => !isEmbed(name)));
    for (const name of pages.filter(isEmbed)) expect(read(name)).not.toMatch(/serviceWorker|rel="manifest"/u);
  });
});

it('the policy of every page lets it have its worker and its manifest from the site, and from nowhere else', () => {
  for (const name of pages) expect(read(name), name).toMatch(/worker-src 'self';manifest-src 'self'/u);
});
