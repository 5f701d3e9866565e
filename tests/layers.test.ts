/**
 * The layers of src/: each imports only from itself and those before it, nothing but published values from
 * outside, and up to figures nothing touches the document, the machine, the clock or unseeded chance.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const LAYERS: readonly string[] = [
  'numerics',
  'evidence',
  'model',
  'practice',
  'figures',
  'islands',
  'components',
  'layouts',
  'pages',
];
const PURE_LAYERS = LAYERS.slice(0, 5);
const FORBIDDEN =
  /\b(?:document|window|localStorage|navigator|location|fetch|process|Date|setTimeout)\b\s*[.(]|Math\.random|performance\.now|globalThis|from 'node:/u;
/** Static, for its effect alone, when it is wanted, and of a worker. */
const IMPORT = /(?:\bfrom |\bimport |\bimport\(|new URL\()'(\.[^']+)'/gu;
/** Values of others that are read as they lie. */
const PUBLISHED = /^\.\.\/data\/\w+\.json$/u;

const root = new URL('../src/', import.meta.url).pathname;
const files = readdirSync(root, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.(?:ts|tsx|astro)$/u.test(name))
  .map((name) => ({ name, layer: name.split('/')[0], text: readFileSync(join(root, name), 'utf8') }));

/** Code without its comments. */
const codeOf = (text: string) => text.replace(/\/\*[\s\S]*?\*\//gu, '').replace(/^\s*\/\/.*$/gmu, '');

it('look at every layer and at more than 30 files', () => {
  expect(files.length).toBeGreaterThan(30);
  expect([...new Set(files.map(({ layer }) => layer))].sort()).toEqual([...LAYERS].sort());
  const imports = files.flatMap(({ text }) => [...codeOf(text).matchAll(IMPORT)].map(([, path]) => path));
  expect(imports.length).toBeGreaterThan(500);
  for (const one of ['./ownTable.ts', './tableWorker.ts', '../evidence/zodConfig.ts', '../styles/site.css'])
    expect(imports).toContain(one);
});

describe.each(files)('$name', ({ name, layer, text }) => {
  it('imports from its own layer and those before it', () => {
    const allowed = LAYERS.slice(0, LAYERS.indexOf(layer) + 1);
    const imported = [...codeOf(text).matchAll(IMPORT)].map(([, path]) => join(name, '..', path));
    // A page's style sheets are of no layer.
    const others = imported.filter((path) => !path.startsWith('styles/') && !PUBLISHED.test(path));
    expect(others.filter((path) => !allowed.includes(path.split('/')[0]))).toEqual([]);
  });

  it('leaves document, machine, clock and chance alone, if its layer is pure', () => {
    const isPure = PURE_LAYERS.includes(layer);
    if (isPure) expect(codeOf(text)).not.toMatch(FORBIDDEN);
    else expect(isPure).toBe(false);
  });
});
