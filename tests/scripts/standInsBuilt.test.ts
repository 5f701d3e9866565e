/**
 * What stands in for parts of the libraries changes no number and no cell: scripts built with the stand-ins, as browsers
 * get them, against the libraries whole, to the last digit.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import fc from 'fast-check';
import Papa from 'papaparse';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { standIns } from '../../scripts/standIns/index.ts';
import { openCsv, readBlocks } from '../../src/evidence/csv.ts';
import { normalQuantile, studentQuantile, studentTwoSidedP } from '../../src/numerics/distributions.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'stand-ins-'));
let built: {
  readonly distributions: typeof import('../../src/numerics/distributions.ts');
  readonly csv: typeof import('../../src/evidence/csv.ts');
  readonly papa: { readonly default: typeof Papa };
};

beforeAll(async () => {
  const entries = {
    distributions: join(ROOT, 'src/numerics/distributions.ts'),
    csv: join(ROOT, 'src/evidence/csv.ts'),
    papa: join(ROOT, 'node_modules/papaparse/papaparse.js'),
  };
  await build({
    root: ROOT,
    configFile: false,
    logLevel: 'error',
    plugins: [standIns(ROOT)],
    build: { outDir: folder, emptyOutDir: true, lib: { entry: entries, formats: ['es'], fileName: '[name].js' } },
  });
  const load = (name: string) => import(/* @vite-ignore */ pathToFileURL(join(folder, `${name}.js`)).href);
  built = { distributions: await load('distributions'), csv: await load('csv'), papa: await load('papa') };
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** From a tenth below the least of a fit, which is 1, to where t is normal; whole ones take ways of their own. */
const degrees = fc.oneof(
  fc.integer({ min: 1, max: 2000 }),
  fc.double({ min: 0.4, max: 60, noNaN: true }),
  fc.double({ min: 0.4, max: 1e9, noNaN: true }),
);
const share = fc.oneof(
  fc.double({ min: 0, max: 1, noNaN: true }),
  fc.integer({ min: 1, max: 300 }).map((power) => 10 ** -power),
  fc.constantFrom(0, 0.025, 0.05, 0.5, 0.95, 0.975, 1),
);

describe('Student’s t and the normal distribution', () => {
  it('have the quantiles that the library gives whole', () => {
    fc.assert(
      fc.property(share, degrees, (p, df) => {
        expect(built.distributions.studentQuantile(p, df)).toBe(studentQuantile(p, df));
        expect(built.distributions.normalQuantile(p)).toBe(normalQuantile(p));
      }),
      { numRuns: 3000 },
    );
  });

  it('have its tail probabilities, near and far', () => {
    fc.assert(
      fc.property(fc.double({ min: -8, max: 12, noNaN: true }), degrees, (power, df) => {
        const t = 10 ** power;
        expect(built.distributions.studentTwoSidedP(t, df)).toBe(studentTwoSidedP(t, df));
      }),
      { numRuns: 3000 },
    );
  });

  it('refuse aloud what the script is built without', () => {
    // With fewer degrees of freedom than any fit has, the library sums in a way that is left out.
    expect(() => built.distributions.studentTwoSidedP(2100, 0.0059)).toThrow(/built without/u);
  });
});

describe('the reader of CSV', () => {
  it('reads the same records and says the same of each file', () => {
    const text = fc.array(fc.constantFrom('a', '1.5', ',', ';', '\t', '"', '""', '\n', '\r\n', ' ', 'é'), {
      maxLength: 60,
    });
    fc.assert(
      fc.property(text, (parts) => {
        const read = (csv: Pick<typeof built.csv, 'openCsv' | 'readBlocks'>) => {
          const source = csv.openCsv(parts.join(''), 'x.csv', new Set(['a']));
          return { source, blocks: [...csv.readBlocks(source, 'x.csv')] };
        };
        expect(read(built.csv)).toEqual(read({ openCsv, readBlocks }));
      }),
      { numRuns: 500 },
    );
  });

  it('writes the same cells', () => {
    fc.assert(
      fc.property(fc.array(fc.array(fc.string({ unit: 'grapheme' }), { minLength: 1 }), { minLength: 1 }), (rows) => {
        expect(built.papa.default.unparse(rows)).toBe(Papa.unparse(rows));
      }),
    );
  });

  it('refuses aloud what the script is built without', () => {
    expect(() => built.papa.default.parse('a,b')).toThrow(/known delimiter/u);
  });
});
