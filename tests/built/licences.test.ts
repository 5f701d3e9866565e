/** What the built site is made of: packages that may be sent to browsers, with their licences beside them. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isMetBy, SHIPPED_LICENCES } from '../../scripts/licences/policy.ts';
import { dist } from '../support/builtSite.ts';

const notices = readFileSync(`${dist}/licences.txt`, 'utf8');
/** Name, version and licence of every package, as the bundler met them while it wrote the site. */
const shipped = [...notices.matchAll(/^(@?[\w./-]+) (\d+\.\d+\.\d+\S*) \(([^()]+)\)$/gmu)].map(
  ([, name, , licence]) => ({
    name,
    licence,
  }),
);

describe('licences.txt', () => {
  it('names the packages of pages, workers and fonts', () => {
    const names = shipped.map(({ name }) => name);
    for (const one of [
      'preact',
      'astro',
      '@observablehq/plot',
      'papaparse',
      'ml-matrix',
      'zod',
      '@fontsource-variable/source-sans-3',
    ]) {
      expect(names).toContain(one);
    }
    // Of a worker alone.
    expect(names).toContain('@stdlib/stats-base-dists-t-quantile');
    // Of the service worker alone.
    expect(names).toContain('workbox-precaching');
  });

  it('names none whose licence does not let it be sent to browsers', () => {
    expect(shipped.filter(({ licence }) => !isMetBy(licence, SHIPPED_LICENCES))).toEqual([]);
  });

  it('names nothing that writes references, and no script holds it', () => {
    expect(shipped.filter(({ name }) => /citeproc|citation-js/u.test(name))).toEqual([]);
    const scripts = readdirSync(`${dist}/_astro`).filter((name) => name.endsWith('.js'));
    expect(scripts.length).toBeGreaterThan(5);
    for (const name of scripts) {
      expect(readFileSync(`${dist}/_astro/${name}`, 'utf8'), name).not.toMatch(/citeproc|citation-?js|CSL\.Engine/iu);
    }
  });

  it('holds the text of a licence for every package', () => {
    expect(notices).toMatch(/Permission is hereby granted, free of charge/u);
    expect(notices).toMatch(/SIL OPEN FONT LICENSE/u);
    expect(notices).not.toMatch(/comes without the text of its licence/u);
  });
});
