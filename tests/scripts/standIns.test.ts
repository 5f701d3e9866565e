/** The figures ask no more of a stand-in than it gives: what it refuses would stop a page in the browser only. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

it('every curve that a figure names is one that the browser’s script has', async () => {
  const file = '../../scripts/standIns/curves.js';
  const { maybeCurve }: { maybeCurve: (name: string) => unknown } = await import(file);
  const folder = new URL('../../src/figures/', import.meta.url);
  const names = readdirSync(folder)
    .filter((name) => name.endsWith('.ts'))
    .flatMap((name) => [...readFileSync(new URL(name, folder), 'utf8').matchAll(/\bcurve: '([a-z]+(?:-[a-z]+)*)',/gu)])
    .map(([, name]) => name);
  expect(names).toContain('step-after');
  for (const name of names) expect(() => maybeCurve(name), name).not.toThrow();
  expect(() => maybeCurve('basis')).toThrow(/"basis"/u);
});
