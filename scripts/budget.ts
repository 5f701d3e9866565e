/**
 * Weighs the built pages as a host sends them (Brotli, as every current browser accepts) and fails
 * where one is heavier than it may be.
 *
 *     npm run budget
 *
 * A page's script is everything it can load: its own, what that imports at once or later, and its
 * workers. Fonts are weighed apart. Prints every page's weights; exit code 1 above a bound.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';

interface Weights {
  readonly page: string;
  /** HTML, styles and the script that the page loads by itself, bytes. */
  readonly transferred: number;
  /** All script that the page can ever load, bytes. */
  readonly script: number;
}

/** Bytes at most, by page. */
const BOUNDS: Readonly<Record<string, Partial<Record<'transferred' | 'script', number>>>> = {
  'index.html': { transferred: 60_000 },
  'evidence/index.html': { script: 180_000 },
};

/** Imports that are loaded with a script, and every name of a script in it: those and the later ones. */
const STATIC = /(?:from|import)\s*["'`]\.\/([\w.-]+\.js)["'`]/gu;
const ANY = /["'`](?:\.\/|[^"'`\s]*\/_astro\/)([\w.-]+\.js)["'`]/gu;

const DIST = new URL('../dist/', import.meta.url).pathname;
const compressed = new Map<string, number>();

const pages = readdirSync(DIST, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.html'))
  .sort();
if (pages.length === 0) {
  console.error('dist/ has no pages: run `npm run build` first');
  process.exit(2);
}
const weights = pages.map(weigh);
let isOver = false;
for (const { page, transferred, script } of weights.filter(({ page }) => !/^studies\/.+\/index/u.test(page))) {
  const bounds = BOUNDS[page] ?? {};
  const over = [
    ...(transferred > (bounds.transferred ?? Infinity) ? [`ABOVE ${bounds.transferred} transferred`] : []),
    ...(script > (bounds.script ?? Infinity) ? [`ABOVE ${bounds.script} of script`] : []),
  ];
  if (over.length > 0) isOver = true;
  console.log(
    `${page.padEnd(36)} ${String(transferred).padStart(8)} transferred ${String(script).padStart(8)} script in all  ${over.join(', ')}`,
  );
}
for (const name of Object.keys(BOUNDS)) {
  if (!pages.includes(name)) {
    console.error(`dist/ has no ${name}, which has a bound`);
    isOver = true;
  }
}
if (isOver) process.exitCode = 1;

function weigh(page: string): Weights {
  const html = readFileSync(join(DIST, page), 'utf8');
  const styles = [...html.matchAll(/href="[^"]*\/(_astro\/[\w.-]+\.css)"/gu)].map(([, name]) => name);
  const own = [...html.matchAll(/<script[^>]*src="[^"]*\/(_astro\/[\w.-]+\.js)"/gu)].map(([, name]) => name);
  const islands = [...html.matchAll(/(?:component|renderer)-url="[^"]*\/(_astro\/[\w.-]+\.js)"/gu)].map(
    ([, name]) => name,
  );
  const sum = (names: Iterable<string>) => [...names].reduce((total, name) => total + sizeOf(name), 0);
  return {
    page,
    transferred: brotliCompressSync(html).length + sum(styles) + sum(follow([...own, ...islands], STATIC)),
    script: sum(follow([...own, ...islands], ANY)),
  };
}

/** Scripts and what they name, transitively. */
function follow(names: readonly string[], pattern: RegExp): Set<string> {
  const found = new Set<string>();
  const add = (name: string) => {
    if (found.has(name)) return;
    found.add(name);
    for (const [, next] of readFileSync(join(DIST, name), 'utf8').matchAll(pattern)) add(`_astro/${next}`);
  };
  for (const name of names) add(name);
  return found;
}

function sizeOf(name: string): number {
  const known = compressed.get(name) ?? brotliCompressSync(readFileSync(join(DIST, name))).length;
  compressed.set(name, known);
  return known;
}
