/** Addresses of studies: safe in a path, one a study, the same in any order of the table. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addressStudies } from '../../src/evidence/studyAddress.ts';

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

  it('of 20,000 names without a Latin letter is found in seconds: none looks at the numbers of all others', () => {
    const names = Array.from({ length: 20_000 }, (_, i) => `${String.fromCodePoint(0x4e00 + i)} 2012`);
    const start = performance.now();
    const addresses = addressStudies(names);
    expect(performance.now() - start).toBeLessThan(4000);
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
