/** A finished build takes the place of an older one whole, or not at all, whatever the file system allows. */
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { publishFolder } from '../../scripts/build/publishFolder.ts';

const OLD = { 'index.html': 'old', 'gone/index.html': 'old only', '.hidden': 'old' };
const NEW = { 'index.html': 'new', '_astro/a.js': 'new only', '.nojekyll': '' };

let folder: string;
let from: string;
let to: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'publish-'));
  [from, to] = [join(folder, 'fresh'), join(folder, 'dist')];
  write(from, NEW);
});
afterEach(() => rmSync(folder, { recursive: true }));

function write(into: string, files: Readonly<Record<string, string>>): void {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(into, name)), { recursive: true });
    writeFileSync(join(into, name), text);
  }
}

function read(from: string): Record<string, string> {
  const names = readdirSync(from, { recursive: true, encoding: 'utf8' }).filter((name) =>
    statSync(join(from, name)).isFile(),
  );
  return Object.fromEntries(names.map((name) => [name, readFileSync(join(from, name), 'utf8')]));
}

function refuse(code: string): never {
  throw Object.assign(new Error(`${code}: refused`), { code });
}

/** Renames inside a folder alone, as where the folder is a mount. */
const renameInside = (code: string) => (one: string, other: string) =>
  one.startsWith(join(to, '/')) ? renameSync(one, other) : refuse(code);

describe('a finished folder', () => {
  it('comes where nothing was', () => {
    publishFolder(from, to);
    expect(read(folder)).toEqual(prefixed(NEW));
  });

  it('takes the place of an older one, of which nothing stays', () => {
    write(to, OLD);
    publishFolder(from, to);
    expect(read(folder)).toEqual(prefixed(NEW));
  });

  it.each(['EXDEV', 'EBUSY', 'EPERM', 'EACCES'])('does so where the folder cannot be renamed (%s)', (code) => {
    write(to, OLD);
    publishFolder(from, to, renameInside(code));
    expect(read(folder)).toEqual(prefixed(NEW));
  });

  it('comes to another file system where nothing was', () => {
    publishFolder(from, to, renameInside('EXDEV'));
    expect(read(folder)).toEqual(prefixed(NEW));
  });
});

describe('an older folder stays as it was', () => {
  it('where the new one cannot be moved to its place for an unknown reason', () => {
    write(to, OLD);
    const rename = (one: string, other: string) => (one === from ? refuse('EIO') : renameSync(one, other));
    expect(() => publishFolder(from, to, rename)).toThrow('EIO');
    expect(read(to)).toEqual(OLD);
  });

  it.each([1, 2, 3, 4, 5, 6])('where exchanging its entries fails at the %sth', (last) => {
    write(to, OLD);
    let renames = 0;
    let failed = false;
    const rename = (one: string, other: string) => {
      if (!one.startsWith(join(to, '/'))) refuse('EXDEV');
      // Fails once; what is undone afterwards works.
      if (++renames === last && !failed) {
        failed = true;
        refuse('ENOSPC');
      }
      renameSync(one, other);
    };
    expect(() => publishFolder(from, to, rename)).toThrow('ENOSPC');
    expect(read(to)).toEqual(OLD);
    expect(read(from)).toEqual(NEW);
  });
});

function prefixed(files: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(Object.entries(files).map(([name, text]) => [join('dist', name), text]));
}
