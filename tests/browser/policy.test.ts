/** The content policy of every built page: scripts and styles by hash or from the site, and nothing in a page that would need more. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';

const pages = readdirSync('dist', { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.html'));

it('looks at more than forty pages', () => expect(pages.length).toBeGreaterThan(40));

describe.each(pages)('%s', (name) => {
  const { document } = parseHTML(readFileSync(join('dist', name), 'utf8'));

  it('forbids what it does not load, and allows neither inline code nor eval', () => {
    const policy = document.querySelector('meta[http-equiv="content-security-policy"]')?.getAttribute('content') ?? '';
    expect(policy).toMatch(/default-src 'none'/u);
    expect(policy).toMatch(/script-src 'self' 'sha256-/u);
    expect(policy).not.toMatch(/unsafe|https?:|\*/u);
  });

  it('has no handler, style or script address in its text', () => {
    const all = [...document.querySelectorAll('*')];
    const attributes = all.flatMap((element) => [...element.attributes].map((one) => `${one.name}=${one.value}`));
    expect(attributes.length).toBeGreaterThan(20);
    expect(attributes.filter((one) => /^(?:on\w+|style)=|^\w+=\s*javascript:/iu.test(one))).toEqual([]);
  });
});
