/** Addresses of studies: safe in a path, one a study, the same in any order of the table. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addressStudies } from '../../src/evidence/studyAddress.ts';
import { timeRatio } from '../support/timeRatio.ts';

describe('the address of a study', () => {
  it.each([
    ['Plover 2012', 'plover-2012'],
    ['Ørsted & Müller (2019a)', 'orsted-muller-2019a'],
    ['../../etc/passwd', 'etc-passwd'],
    ['研究', 'study'],
    ['—', 'study'],
    ['x'.repeat(500), 'x'.repeat(60)],
  ])('named %s is %s', (name, address) => {
    expect(addressStudies([name]).get(name)).toBe(address);
  });

  it('gets a number where names make the same, and never that of another name', () => {
    expect([...addressStudies(['Plover/2012', 'Plover 2012', 'Plover 2012 2', 'Plover+2012'])]).toEqual([
      ['Plover 2012', 'plover-2012'],
      ['Plover 2012 2', 'plover-2012-2'],
      ['Plover+2012', 'plover-2012-3'],
      ['Plover/2012', 'plover-2012-4'],
    ]);
  });

  it('of 20,000 names without a Latin letter takes a time in proportion to those of 1,000: none looks at the numbers of all others', () => {
    const names = Array.from({ length: 20_000 }, (_, i) => `${String.fromCodePoint(0x4e00 + i)} 2012`);
    const address = (some: readonly string[]) => () => addressStudies(some);
    // Twenty times the names take some 30 times as long, where memory is short 60; to look at all others takes 400 times.
    expect(timeRatio(address(names), address(names.slice(0, 1000)))).toBeLessThan(150);
    const addresses = addressStudies(names);
    expect([addresses.get(names[0]), addresses.get(names.at(-1) ?? '')]).toEqual(['2012', '2012-20000']);
  });

  it('of any names is safe, unique and independent of their order', () => {
    const names = fc.array(fc.oneof(fc.string({ unit: 'grapheme' }), fc.constantFrom('a', 'A', 'a-2', 'á', 'a 2')), {
      maxLength: 12,
    });
    fc.assert(
      fc.property(names, (some) => {
        const addresses = addressStudies(some);
        expect([...addresses.keys()].sort()).toEqual([...new Set(some)].sort());
        expect(new Set(addresses.values()).size).toBe(addresses.size);
        for (const address of addresses.values()) expect(address).toMatch(/^[a-z0-9]+(?:-[a-z0-9]+)*$/u);
        expect(addressStudies([...some].reverse())).toEqual(addresses);
      }),
      { seed: 6, numRuns: 300 },
    );
  });
});
