/**
 * Keeps out of the browser's scripts what the libraries carry but no page uses: a plug-in for Vite that
 * answers an import with a small file beside this one. Each of them refuses aloud what it replaces, where
 * that could be asked for. Builds of the site's own pages (Node) and tests use the libraries whole.
 *
 * Evidence is near its bound with all of these: `npm run budget` says how near after each build. When each was made, it
 * weighed more without it by so much: ways of the distributions that Student's t never takes some 10.5 kB (studentsT.ts),
 * map projections 8.1, colour schemes 6.3, the matrix library's class with its functions and statistics some 6, bins and
 * stacks 4.3, tips and pointers 3.1, legends 2.5, dates 2.3, streams and workers of the reader of CSV some 2
 * (textReader.ts), error texts 1.7, the matrix library's source 1.6, its way of matrices that are not symmetric 1.6, the
 * distributions library's log 1.6, curves 0.9, the mark on distributions 0.8, its own arrays 0.5. The test whether
 * generators can be used stands here for the content policy, not for its weight.
 */
import { join } from 'node:path';
import { STUDENTS_T } from './studentsT.ts';
import { leaveOutStreams } from './textReader.ts';

interface StandIn {
  /** The import as it stands in the library's source. */
  readonly source: string;
  /** A part of the path of the file that imports it; without one, any file. */
  readonly importer?: string;
  /** What is taken instead, below the project's folder. */
  readonly file: string;
}

const HERE = 'scripts/standIns';
const STAND_INS: readonly StandIn[] = [
  { source: '@stdlib/assert-has-generator-support', file: `${HERE}/generatorSupport.cjs` },
  ...['float32', 'float64', 'uint8', 'uint16', 'uint32'].map((kind) => ({
    source: `@stdlib/array-${kind}`,
    file: `${HERE}/${kind}.cjs`,
  })),
  ...STUDENTS_T,
  { source: 'debug', importer: '/@stdlib/', file: `${HERE}/debug.cjs` },
  { source: '@stdlib/string-format', file: `${HERE}/errorText.cjs` },
  // The source of the same version, of which the bundler can leave out the decompositions that are not used.
  { source: 'ml-matrix', file: 'node_modules/ml-matrix/src/index.js' },
  // Likewise, to leave parts of it out (textReader.ts).
  { source: 'papaparse', file: 'node_modules/papaparse/papaparse.js' },
  { source: './matrix', importer: '/ml-matrix/src/', file: `${HERE}/matrixClass.js` },
  { source: '../matrix', importer: '/ml-matrix/src/', file: `${HERE}/matrixClass.js` },
  { source: 'd3-geo', file: `${HERE}/mapProjections.js` },
  { source: './schemes.js', importer: '/@observablehq/plot/src/scales/', file: `${HERE}/colourSchemes.js` },
  { source: './scales/schemes.js', importer: '/@observablehq/plot/src/', file: `${HERE}/colourSchemes.js` },
  { source: './marks/tip.js', importer: '/@observablehq/plot/src/', file: `${HERE}/tips.js` },
  { source: './interactions/pointer.js', importer: '/@observablehq/plot/src/', file: `${HERE}/tips.js` },
  { source: '../interactions/pointer.js', importer: '/@observablehq/plot/src/', file: `${HERE}/tips.js` },
  { source: '../curve.js', importer: '/@observablehq/plot/src/marks/', file: `${HERE}/curves.js` },
  { source: '../transforms/bin.js', importer: '/@observablehq/plot/src/marks/', file: `${HERE}/sums.js` },
  { source: '../transforms/stack.js', importer: '/@observablehq/plot/src/marks/', file: `${HERE}/sums.js` },
  { source: './legends.js', importer: '/@observablehq/plot/src/', file: `${HERE}/legends.js` },
  { source: 'd3-time-format', file: `${HERE}/clockTimes.js` },
  { source: '\0vite/preload-helper.js', file: `${HERE}/laterScripts.js` },
];

/** The part of Vite's plugin that is needed. */
interface Resolver {
  readonly name: string;
  readonly enforce: 'pre';
  applyToEnvironment(environment: { name: string }): boolean;
  configEnvironment(name: string): { build: { modulePreload: object } } | null;
  resolveId(source: string, importer: string | undefined): string | null;
  transform(code: string, id: string): string | null;
}

export function standIns(root: string): Resolver {
  return {
    name: 'stand-ins',
    enforce: 'pre',
    applyToEnvironment: ({ name }) => name === 'client',
    // Nothing is asked for in advance of a later script (laterScripts.js), so none lists what that would be.
    configEnvironment: (name) =>
      name === 'client' ? { build: { modulePreload: { polyfill: false, resolveDependencies: () => [] } } } : null,
    resolveId(source, importer = '') {
      const standIn = STAND_INS.find((one) => one.source === source && importer.includes(one.importer ?? ''));
      return standIn ? join(root, standIn.file) : null;
    },
    transform(code, id) {
      // Makes each distribution at once when it is loaded, so that the bundler keeps all 16; one is used.
      if (id.includes('/d3-random/'))
        return code.replaceAll('= (function source', '= /* @__PURE__ */ (function source');
      if (id.includes('/papaparse/papaparse.js')) return leaveOutStreams(code);
      if (id.includes('/@observablehq/plot/src/format.js')) return formatLater(code);
      return id.includes('/ml-matrix/src/dc/evd.js') ? leaveOutAsymmetric(code) : null;
    },
  };
}

const AT_ONCE = 'const format = numberFormat(locale);\n  return (i) => (i != null && !isNaN(i) ? format.format(i)';

/**
 * Has the charts library make its writer of numbers when it writes one, which no figure has it do, in place of when it is
 * loaded: browsers take up to 30 ms to read their rules of writing numbers.
 */
function formatLater(code: string): string {
  if (!code.includes(AT_ONCE)) throw new Error('the formats of the charts library read otherwise: look at formatLater');
  return code.replace(AT_ONCE, 'return (i) => (i != null && !isNaN(i) ? numberFormat(locale).format(i)');
}

const ASYMMETRIC = /orthes\(n, H, ort, V\);\s*hqr2\(n, e, d, V, H\);/u;

/** Leaves out the way of a matrix that is not symmetric, which is more than half of the decomposition; asking for it throws. */
function leaveOutAsymmetric(code: string): string {
  if (!ASYMMETRIC.test(code))
    throw new Error('the decomposition of ml-matrix reads otherwise: look at leaveOutAsymmetric');
  return code.replace(ASYMMETRIC, "throw new Error('a matrix that is not symmetric was to be decomposed');");
}
