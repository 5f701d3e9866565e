/** Licences of every dependency against the list of those allowed. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { listPackages } from '../../scripts/licences/installed.ts';
import {
  ALLOWED_LICENCES,
  EXCEPTIONS,
  isMetBy,
  refuseLicence,
  SHIPPED_LICENCES,
} from '../../scripts/licences/policy.ts';

const packages = listPackages(fileURLToPath(new URL('../..', import.meta.url)));

describe('the packages of the lock file', () => {
  it('are several hundred, for production and for development, each with a licence that is allowed', () => {
    expect(packages.length).toBeGreaterThan(300);
    expect(packages.filter(({ isDevelopment }) => isDevelopment).length).toBeGreaterThan(20);
    expect(packages.find(({ name }) => name === 'preact')?.licence).toBe('MIT');
    expect(packages.flatMap(({ name, licence }) => refuseLicence(name, licence) ?? [])).toEqual([]);
  });

  it('need every exception that is made', () => {
    for (const { name, licence, reason } of EXCEPTIONS) {
      const needed = packages.filter((one) => name.test(one.name) && licence.test(one.licence));
      expect(needed.length, String(name)).toBeGreaterThan(0);
      for (const one of needed) expect(isMetBy(one.licence, ALLOWED_LICENCES), one.name).toBe(false);
      expect(reason.length).toBeGreaterThan(40);
    }
  });

  it('are listed by the command, with its verdict', () => {
    const { stdout, status } = spawnSync(process.execPath, ['scripts/licences.ts'], { encoding: 'utf8' });
    expect(status).toBe(0);
    expect(stdout).toMatch(/^citeproc 2\S+ +CPAL-1\.0 OR AGPL-1\.0 +development$/mu);
    expect(stdout).toMatch(/Every licence is allowed\.\n$/u);
  });
});

describe('a licence', () => {
  it.each([
    ['MIT', true],
    ['MIT OR GPL-3.0-only', true],
    ['(MIT OR CC0-1.0)', true],
    ['Apache-2.0 AND BSL-1.0', true],
    ['MIT AND GPL-3.0-only', false],
    ['GPL-3.0-or-later', false],
    ['SEE LICENSE IN file', false],
    ['none stated', false],
    ['', false],
  ])('%s may be used: %s', (licence, allowed) => {
    expect(isMetBy(licence, ALLOWED_LICENCES)).toBe(allowed);
  });

  it('that binds who changes the package may be used to build, not be sent to browsers', () => {
    expect(isMetBy('MPL-2.0', ALLOWED_LICENCES)).toBe(true);
    expect(isMetBy('MPL-2.0', SHIPPED_LICENCES)).toBe(false);
  });

  it('of an exception counts for its package alone, and only as it stands', () => {
    expect(refuseLicence('citeproc', 'CPAL-1.0 OR AGPL-1.0')).toBeNull();
    expect(refuseLicence('citeproc', 'AGPL-1.0')).toMatch(/citeproc has licence “AGPL-1.0”/u);
    expect(refuseLicence('other', 'CPAL-1.0 OR AGPL-1.0')).toMatch(/neither allowed nor an exception/u);
  });
});
