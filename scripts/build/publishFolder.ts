/**
 * Puts a finished folder in the place of an older one, whole: readers of the place find the old files or the new ones,
 * and where it fails the old ones.
 */
import { cpSync, existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';

/** A folder that cannot be renamed: on another file system, a mount, or in a folder that may not be written. */
const CANNOT_RENAME = ['EXDEV', 'EBUSY', 'EPERM', 'EACCES', 'EROFS'];

/** Moves a file or folder to another name. */
type Rename = (from: string, to: string) => void;

/**
 * Moves `from` to `to`; what stood there is gone afterwards.
 *
 * By two renames where that is possible. Else the files are copied into `to` under another name first, so that a full
 * disk stops it before anything was touched, and then take the places of the old ones.
 *
 * @param rename stands in for the system's in tests
 * @throws what the file system said, with `to` as it was
 */
export function publishFolder(from: string, to: string, rename: Rename = renameSync): void {
  const aside = `${from}-old`;
  try {
    if (existsSync(to)) exchange(from, to, aside, rename);
    else rename(from, to);
  } catch (error) {
    if (!isCode(error, CANNOT_RENAME)) throw error;
    mkdirSync(to, { recursive: true });
    replaceEntries(from, to, rename);
    rmSync(from, { recursive: true });
  }
  rmSync(aside, { recursive: true, force: true });
}

function exchange(from: string, to: string, aside: string, rename: Rename): void {
  rename(to, aside);
  try {
    rename(from, to);
  } catch (error) {
    rename(aside, to);
    throw error;
  }
}

/** Copies the entries of `from` into a folder in `to`, and exchanges them with what stands in `to`. */
function replaceEntries(from: string, to: string, rename: Rename): void {
  const [fresh, old] = ['.new', '.old'].map((end) => join(to, `${end}-${process.pid}`));
  const before = readdirSync(to);
  const moved: (readonly [from: string, to: string])[] = [];
  const move = (one: string, other: string) => {
    rename(one, other);
    moved.push([one, other]);
  };
  try {
    cpSync(from, fresh, { recursive: true });
    mkdirSync(old);
    for (const name of before) move(join(to, name), join(old, name));
    for (const name of readdirSync(fresh)) move(join(fresh, name), join(to, name));
  } catch (error) {
    for (const [one, other] of moved.reverse()) rename(other, one);
    rmSync(fresh, { recursive: true, force: true });
    rmSync(old, { recursive: true, force: true });
    throw error;
  }
  rmSync(fresh, { recursive: true });
  rmSync(old, { recursive: true });
}

function isCode(error: unknown, codes: readonly string[]): boolean {
  return error instanceof Error && 'code' in error && codes.some((code) => code === error.code);
}
