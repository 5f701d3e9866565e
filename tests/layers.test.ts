/**
 * The layers of src/: each imports only from itself and those before it, and up to figures nothing
 * touches the document, the machine, the clock or unseeded chance.
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
  /\b(?:document|window|localStorage|navigator|location|fetch|process|Date)\b\s*[.(]|Math\.random|from 'node:/u;

const root = new URL('../src/', import.meta.url).pathname;
const files = readdirSync(root, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.(?:ts|tsx|astro)$/u.test(name))
  .map((name) => ({ name, layer: name.split('/')[0], text: readFileSync(join(root, name), 'utf8') }));

/** Code without its comments. */
const codeOf = (text: string) => text.replace(/\/\*[\s\S]*?\*\//gu, '').replace(/^\s*\/\/.*$/gmu, '');

it('look at every layer and at more than 30 files', () => {
  expect(files.length).toBeGreaterThan(30);
  expect([...new Set(files.map(({ layer }) => layer))].sort()).toEqual([...LAYERS].sort());
});

describe.each(files)('$name', ({ name, layer, text }) => {
  it('imports from its own layer and those before it', () => {
    const imported = [...codeOf(text).matchAll(/from '(\.[^']+)'/gu)].map(
      ([, path]) => join(name, '..', path).split('/')[0],
    );
    const place = LAYERS.indexOf(layer);
    // A page's style sheets are of no layer.
    for (const other of imported.filter((one) => one !== 'styles')) {
      expect(LAYERS.indexOf(other), `${name} imports from ${other}`).toBeLessThanOrEqual(place);
    }
  });

  it('leaves document, machine, clock and chance alone, if its layer is pure', () => {
    const isPure = PURE_LAYERS.includes(layer);
    if (isPure) expect(codeOf(text)).not.toMatch(FORBIDDEN);
    else expect(isPure).toBe(false);
  });
});
