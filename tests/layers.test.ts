/**
 * The layers of src/: each imports only from itself and those before it, nothing but published values from
 * outside, and up to figures nothing touches the document, the machine, the clock or unseeded chance.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const LAYERS: readonly string[] = [
  'numerics',
  'evidence',
  'model',
  'practice',
  'figures',
  'ui',
  'ownTable',
  'offline',
  'islands',
  'site',
  'components',
  'layouts',
  'pages',
];
const PURE_LAYERS = LAYERS.slice(0, 5);
/** The room of islands/ that the others may ask. */
const SHARED_ROOM = 'analysis';
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

/** Paths below src/ that a file imports. */
const importsOf = ({ name, text }: (typeof files)[number]) =>
  [...codeOf(text).matchAll(IMPORT)].map(([, path]) => join(name, '..', path));

it('look at every layer and at more than 30 files', () => {
  expect(files.length).toBeGreaterThan(30);
  expect([...new Set(files.map(({ layer }) => layer))].sort()).toEqual([...LAYERS].sort());
  const imports = files.flatMap(importsOf);
  expect(imports.length).toBeGreaterThan(500);
  for (const one of [
    'ownTable/loadTable.ts',
    'islands/table/tableWorker.ts',
    'evidence/zodConfig.ts',
    'styles/site.css',
  ])
    expect(imports).toContain(one);
});

it.each(files)('$name imports from its own layer and those before it', (file) => {
  const allowed = LAYERS.slice(0, LAYERS.indexOf(file.layer) + 1);
  // A page's style sheets are of no layer.
  const others = importsOf(file).filter((path) => !path.startsWith('styles/') && !PUBLISHED.test(path));
  expect(others.filter((path) => !allowed.includes(path.split('/')[0]))).toEqual([]);
});

const roomOf = (path: string) => /^islands\/([^/]+)\//u.exec(path)?.[1];
it.each(files.filter(({ layer }) => layer === 'islands'))('$name stays in its room', (file) => {
  const rooms = importsOf(file).flatMap((path) => roomOf(path) ?? []);
  expect(roomOf(file.name)).toBeDefined();
  expect(rooms.filter((room) => room !== roomOf(file.name) && room !== SHARED_ROOM)).toEqual([]);
});

const pure = files.filter(({ layer }) => PURE_LAYERS.includes(layer));
it.each(pure)('$name leaves document, machine, clock and chance alone', ({ text }) => {
  expect(codeOf(text)).not.toMatch(FORBIDDEN);
});

it('no file imports itself by a way round', () => {
  const graph = new Map(files.map((file) => [file.name, importsOf(file)]));
  const done = new Set<string>();
  const circles: string[] = [];
  const visit = (name: string, way: readonly string[]): void => {
    if (way.includes(name)) circles.push([...way.slice(way.indexOf(name)), name].join(' → '));
    else if (!done.has(name)) for (const next of graph.get(name) ?? []) visit(next, [...way, name]);
    done.add(name);
  };
  for (const { name } of files) visit(name, []);
  expect(circles).toEqual([]);
});

it('nothing that the worker of Evidence reads plans studies: its scripts are at their bound', () => {
  const graph = new Map(files.map((file) => [file.name, importsOf(file)]));
  const seen = new Set<string>();
  const visit = (name: string): void => {
    if (seen.has(name)) return;
    seen.add(name);
    for (const next of graph.get(name) ?? []) visit(next);
  };
  visit('islands/evidence/evidenceWorker.ts');
  expect(seen).toContain('model/analyse.ts');
  expect([...seen].filter((name) => name.startsWith('model/plan/'))).toEqual([]);
});

it('no file is over 250 lines, and half of them have at most 80', () => {
  const lengths = files.map(({ name, text }) => ({ name, lines: text.split('\n').length - 1 }));
  expect(lengths.filter(({ lines }) => lines > 250)).toEqual([]);
  const sorted = lengths.map(({ lines }) => lines).sort((a, b) => a - b);
  expect(sorted[Math.floor(sorted.length / 2)]).toBeLessThanOrEqual(80);
});
