/**
 * The build as something to publish: made again elsewhere it is the same, byte for byte, so that a
 * release can be verified; made for a sub-path it stays inside it. Compares with `dist/`, which
 * `npm test` builds before.
 */
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildSite, copyProject, root } from '../support/buildSite.ts';
import { dist } from '../support/builtSite.ts';

const BASE = '/some/path/';
const SITE = 'https://host.example';
/** Attributes that hold an address. */
const ADDRESSES = /\s(?:href|src|poster|action|component-url|renderer-url|before-hydration-url)="([^"]*)"/gu;

let folder: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'builds-'));
  const copy = join(folder, 'elsewhere');
  copyProject(copy);
  // What an earlier build left there must be gone.
  mkdirSync(join(folder, 'again', 'gone'), { recursive: true });
  writeFileSync(join(folder, 'again', 'gone', 'index.html'), 'an older page');
  await Promise.all([
    // Another folder, time zone and language: none may leave a trace.
    build(copy, 'again', { TZ: 'Pacific/Auckland', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' }),
    build(root, 'sub', { BASE_PATH: BASE, SITE_URL: SITE }),
  ]);
}, 300_000);
afterAll(() => folder && rmSync(folder, { recursive: true }));

describe('the site built again in another folder, time zone and language', () => {
  it('has the same files as dist/ with the same bytes', () => {
    const first = hashFiles(dist);
    expect(Object.keys(first).length).toBeGreaterThan(40);
    expect(hashFiles(join(folder, 'again'))).toEqual(first);
  });
});

describe('a build that fails', () => {
  it('over a table with problems leaves the site that was there, byte for byte, and nothing beside it', async () => {
    const before = [hashFiles(join(folder, 'sub')), readdirSync(folder)];
    const table = readFileSync(join(root, 'data', 'arms.csv'), 'utf8');
    const wrong = join(folder, 'elsewhere', 'wrong.csv');
    writeFileSync(wrong, table.replace(/,parallel,/u, ',both,'));
    await expect(build(root, 'sub', { EVIDENCE: wrong })).rejects.toThrow(
      /the site is not built: \d+ problems?\n.*line \d+, `design`: expected one of/u,
    );
    expect([hashFiles(join(folder, 'sub')), readdirSync(folder)]).toEqual(before);
  }, 300_000);

  it('into a folder that holds the project touches nothing', async () => {
    const before = readdirSync(join(folder, 'elsewhere'));
    await expect(build(join(folder, 'elsewhere'), 'elsewhere', {})).rejects.toThrow(
      /expected one that does not hold the project/u,
    );
    expect(readdirSync(join(folder, 'elsewhere'))).toEqual(before);
  }, 300_000);

  it.each([
    ['SITE_URL', 'ftp:'],
    ['BASE_PATH', '../up'],
  ])(
    'over %s=%s says so before anything is built',
    async (name, value) => {
      const said = build(root, 'none', { [name]: value });
      await expect(said).rejects.toThrow(`environment variable ${name}: expected`);
      expect(existsSync(join(folder, 'none'))).toBe(false);
    },
    300_000,
  );
});

describe('the site built for a sub-path', () => {
  const list = () => listFiles(join(folder, 'sub'));
  const read = (name: string) => readFileSync(join(folder, 'sub', name), 'utf8');

  it('has no link that leaves the sub-path, and none that leads nowhere', () => {
    const wrong: string[] = [];
    let followed = 0;
    for (const name of list().filter((file) => file.endsWith('.html'))) {
      const page = new URL(`${BASE}${name.replace(/(?:^|(?<=\/))index\.html$/u, '')}`, SITE);
      for (const [, address] of read(name).matchAll(ADDRESSES)) {
        const to = new URL(address.replaceAll('&amp;', '&'), page);
        if (to.origin !== SITE) continue;
        followed++;
        if (!to.pathname.startsWith(BASE)) wrong.push(`${name} links to ${address}, outside ${BASE}`);
        else if (!isServed(to.pathname)) wrong.push(`${name} links to ${address}, which is no file of the build`);
      }
    }
    expect(followed).toBeGreaterThan(500);
    expect(wrong).toEqual([]);
  });

  it('names no place of the site without its sub-path in scripts, styles, data or islands', () => {
    const places = readdirSync(join(folder, 'sub')).map((name) => name.replaceAll('.', '\\.'));
    const named = new RegExp(`(?:["'\`(]|&quot;|&#34;)(/(?:some/path/)?(?:${places.join('|')}))(?=[/"'\`)?#&])`, 'gu');
    const found = list()
      .filter((file) => /\.(?:html|js|css|svg|json|xml|txt|webmanifest)$/u.test(file))
      .flatMap((file) => [...read(file).matchAll(named)].map(([, place]) => ({ file, place })));
    expect(found.length).toBeGreaterThan(500);
    expect(found.filter(({ place }) => !place.startsWith(BASE))).toEqual([]);
  });

  /** As a host of files serves it: a folder's address is its index.html. */
  function isServed(pathname: string): boolean {
    const path = join(folder, 'sub', decodeURIComponent(pathname.slice(BASE.length)));
    const file = pathname.endsWith('/') ? join(path, 'index.html') : path;
    return existsSync(file) && statSync(file).isFile();
  }
});

/** Builds from `from` into a folder of the name. */
function build(from: string, into: string, environment: Readonly<Record<string, string>>): Promise<void> {
  return buildSite(from, join(folder, into), environment);
}

function listFiles(from: string): readonly string[] {
  return readdirSync(from, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(from, name)).isFile())
    .sort();
}

/** SHA-256 of every file by its path. */
function hashFiles(from: string): Record<string, string> {
  const hash = (name: string) =>
    createHash('sha256')
      .update(readFileSync(join(from, name)))
      .digest('hex');
  return Object.fromEntries(listFiles(from).map((name) => [name, hash(name)]));
}
