/** Weighs the built pages against their bounds; `npm run budget -- --help` says how. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';
import { CallError, runScript } from './terminal/call.ts';

interface Weights {
  /** HTML, styles and the script that the page loads by itself, bytes. */
  readonly transferred: number;
  /** All script that the page can ever load, bytes. */
  readonly script: number;
}

/** Bytes at most, by page. */
const BOUNDS: Readonly<Record<string, Partial<Record<'transferred' | 'script', number>>>> = {
  'index.html': { transferred: 60_000 },
  'evidence/index.html': { script: 180_000 },
  'programme/index.html': { transferred: 175_000 },
};

/** Imports that are loaded with a script, and every name of a script in it: those and the later ones. */
const STATIC = /(?:from|import)\s*["'`]\.\/([\w.-]+\.js)["'`]/gu;
const ANY = /["'`](?:\.\/|[^"'`\s]*\/_astro\/)([\w.-]+\.js)["'`]/gu;

const DIST = new URL('../dist/', import.meta.url).pathname;
const compressed = new Map<string, number>();

const HELP = `usage: npm run budget

Weighs the built pages as a host sends them (Brotli, as every current browser accepts). A page's script is
everything it can load: its own, what that imports at once or later, and its workers. Fonts are weighed apart.

Exit code 0: every page is within its bounds. 1: one is heavier, or a page with a bound is not there.
2: wrong call, or nothing is built.`;

runScript({ help: HELP }, () => {
  const pages = listPages();
  const over: string[] = [];
  for (const page of pages.filter((name) => !/^studies\/.+\/index/u.test(name))) {
    const { transferred, script } = weigh(page);
    console.log(
      `${page.padEnd(36)} ${String(transferred).padStart(8)} transferred ${String(script).padStart(8)} script in all`,
    );
    const bounds = BOUNDS[page] ?? {};
    if (transferred > (bounds.transferred ?? Infinity))
      over.push(`${page}: expected at most ${bounds.transferred} bytes transferred, received ${transferred}`);
    if (script > (bounds.script ?? Infinity))
      over.push(`${page}: expected at most ${bounds.script} bytes of script in all, received ${script}`);
  }
  over.push(
    ...Object.keys(BOUNDS)
      .filter((name) => !pages.includes(name))
      .map((name) => `${name}: has a bound, but is not built`),
  );
  if (over.length > 0) throw new CallError(over.join('\n'), 1);
});

/** Built pages, by their path below dist/. */
function listPages(): readonly string[] {
  if (!existsSync(DIST)) throw new CallError(`expected the built site at ${DIST}: run \`npm run build\` first`, 2);
  return readdirSync(DIST, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.html'))
    .sort();
}

function weigh(page: string): Weights {
  const html = readFileSync(join(DIST, page), 'utf8');
  const styles = [...html.matchAll(/href="[^"]*\/(_astro\/[\w.-]+\.css)"/gu)].map(([, name]) => name);
  const own = [...html.matchAll(/<script[^>]*src="[^"]*\/(_astro\/[\w.-]+\.js)"/gu)].map(([, name]) => name);
  const islands = [...html.matchAll(/(?:component|renderer)-url="[^"]*\/(_astro\/[\w.-]+\.js)"/gu)].map(
    ([, name]) => name,
  );
  const sum = (names: Iterable<string>) => [...names].reduce((total, name) => total + sizeOf(name), 0);
  return {
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
