/** What the scripts of the built site must not do, whatever library they come from. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { dist } from '../support/builtSite.ts';

const folder = `${dist}/_astro/`;

it('no script of a page or worker evaluates text', () => {
  const scripts = readdirSync(folder).filter((name) => name.endsWith('.js'));
  expect(scripts.some((name) => /worker/iu.test(name))).toBe(true);
  expect(scripts.length).toBeGreaterThan(10);
  for (const name of scripts) {
    expect(
      /.{0,80}(?:\beval\b|new Function\b).{0,40}/u.exec(readFileSync(`${folder}${name}`, 'utf8')),
      name,
    ).toBeNull();
  }
});
