/**
 * What the styles ask of the root of a page. A rule such as `body:has(.programme) p` has a browser style all of the page
 * anew at every change of it, a key typed or a part that wakes: 25 ms for 2,800 elements, where the change took 1.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const FOLDER = 'src/styles';
const ROOT_HAS = /(?:^|[\s,(])(?:html|body|main|:root)(?:[.[#][\w"=-]+\]?)*:has\(/u;

/** A style sheet without what holds on paper only, and without its comments. */
function onScreen(css: string): string {
  const plain = css.replace(/\/\*[\s\S]*?\*\//gu, '');
  const at = plain.search(/@media print\b/u);
  if (at < 0) return plain;
  let depth = 0;
  for (let i = plain.indexOf('{', at); i < plain.length; i++) {
    depth += { '{': 1, '}': -1 }[plain[i]] ?? 0;
    if (depth === 0) return `${plain.slice(0, at)}${onScreen(plain.slice(i + 1))}`;
  }
  throw new Error(`expected the block that begins at ${at} to end`);
}

const files = readdirSync(FOLDER).filter((name) => name.endsWith('.css'));

describe('The styles of the screen', () => {
  it('are read, without those of paper', () => {
    expect(files.length).toBeGreaterThan(10);
    expect(onScreen('a { b: c } @media print { body:has(d) { e { f: g } } } /* html:has( */ h { i: j }')).not.toMatch(
      ROOT_HAS,
    );
    expect(onScreen('@media (max-width: 1px) { html:has(.kept) { a: b } }')).toMatch(ROOT_HAS);
    expect('.figure:has(svg) { a: b }').not.toMatch(ROOT_HAS);
  });

  it.each(files)('%s asks no root of a page what it holds', (name) => {
    expect(onScreen(readFileSync(`${FOLDER}/${name}`, 'utf8'))).not.toMatch(ROOT_HAS);
  });
});
