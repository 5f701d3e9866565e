/** Every package that the lock file names, with its licence. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

export interface InstalledPackage {
  readonly name: string;
  readonly version: string;
  /** SPDX expression as stated; “none stated” without one. */
  readonly licence: string;
  /** True where only development asks for it. */
  readonly isDevelopment: boolean;
}

interface Locked {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly link?: boolean;
}

/**
 * Sorted by name and version. Packages for other systems are listed too, though not installed here.
 *
 * @param root folder of package-lock.json
 * @throws where the lock file is of another form than npm 7 and later write
 */
export function listPackages(root: string): readonly InstalledPackage[] {
  const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
    lockfileVersion: number;
    packages?: Record<string, Locked>;
  };
  if (!lock.packages) {
    throw new Error(`package-lock.json is of version ${lock.lockfileVersion}; expected 2 or 3, which list packages`);
  }
  return Object.entries(lock.packages)
    .filter(([path, { link }]) => path !== '' && !link)
    .map(([path, { version = '', license, dev = false }]) => ({
      name: path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length),
      version,
      licence: license ?? statedLicence(join(root, path)),
      isDevelopment: dev,
    }))
    .sort((a, b) => compare(a.name, b.name) || compare(a.version, b.version));
}

/** Licence that an installed package states itself. */
export function statedLicence(folder: string): string {
  try {
    const { license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    return typeof license === 'string' ? license : (license?.type ?? 'none stated');
  } catch {
    return 'none stated';
  }
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
