/**
 * The site built from the published trials: every page is complete and says how they were read, no picture is empty
 * without its reason, no number is none, and nothing calls them invented.
 */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readArms, readStudies } from '../../src/evidence/table.ts';
import { stateTable } from '../../src/ownTable/stateTable.ts';
import { buildSite, copyProject, root } from '../support/buildSite.ts';

const TABLE = 'data/published/arms.csv';
const { arms } = readArms(readFileSync(join(root, TABLE), 'utf8'), TABLE);
const { reading = 'nothing', studies } = stateTable(TABLE, arms);

let folder: string;
const dist = () => join(folder, 'site');
let pages: readonly { readonly name: string; readonly html: string; readonly text: string }[];
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'published-build-'));
  const copy = join(folder, 'project');
  copyProject(copy);
  await buildSite(copy, dist(), { EVIDENCE: TABLE });
  pages = readdirSync(dist(), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.html'))
    .sort()
    .map((name) => {
      const html = readFileSync(join(dist(), name), 'utf8');
      return { name, html, text: textOf(html) };
    });
}, 300_000);
afterAll(() => folder && rmSync(folder, { recursive: true }));

/** What a reader reads of a piece of a page. */
function textOf(html: string): string {
  return html
    .replaceAll(/<(script|style)\b[\s\S]*?<\/\1>/gu, ' ')
    .replaceAll(/<[^>]*>/gu, ' ')
    .replaceAll('&amp;', '&')
    .replaceAll(/\s+/gu, ' ');
}

const isFrame = ({ name }: { readonly name: string }) => name.endsWith('embed/index.html');
const among = (pattern: RegExp) =>
  pages.flatMap(({ name, text }) => {
    const found = pattern.exec(text);
    return found ? [`${name}: ${text.slice(Math.max(0, found.index - 60), found.index + 60)}`] : [];
  });

describe('the site built from the published trials', () => {
  it('has a page for every trial beside the others', () => {
    expect(pages.filter(({ name }) => /^studies\/[^/]+\/index\.html$/u.test(name))).toHaveLength(studies);
    expect(pages.length).toBeGreaterThan(studies + 10);
  });

  it('says on every page how they were read and what counts for the answer', () => {
    expect(pages.filter((page) => !isFrame(page) && !page.text.includes(reading)).map(({ name }) => name)).toEqual([]);
  });

  it('calls nothing invented but the methods’ simulated tables and the programme’s example', () => {
    expect(among(/demonstration/iu)).toEqual([]);
    expect(among(/invented/iu).map((found) => found.split(':')[0])).toEqual([
      'methods/index.html',
      'programme/index.html',
    ]);
  });

  it('shows no number that is none', () => {
    expect(among(/\bNaN\b|\bundefined\b|\bInfinity\b|\[object/u)).toEqual([]);
    expect(pages.filter(({ html }) => /<svg[\s\S]*?(?:NaN|Infinity)[\s\S]*?<\/svg>/u.test(html))).toEqual([]);
    // A number as a computer writes it, with all that a subtraction leaves.
    expect(among(/\d\.\d*(?:0{6}|9{6})\d/u)).toEqual([]);
  });

  it('has no empty picture without its reason beside it, and no table without a row', () => {
    const figures = pages.flatMap(({ name, html }) =>
      [...html.matchAll(/<figure\b[\s\S]*?<\/figure>/gu)].map(([figure]) => ({ name, figure })),
    );
    expect(figures.length).toBeGreaterThan(40);
    const empty = figures.filter(({ figure }) => !/<(?:circle|path|rect)\b/u.test(figure));
    const unexplained = empty.filter(
      ({ figure }) => !/no estimate, since|not fitted: |too few studies/iu.test(textOf(figure)),
    );
    expect(unexplained.map(({ name, figure }) => `${name}: ${textOf(figure).slice(0, 200)}`)).toEqual([]);
    expect(pages.filter(({ html }) => /<tbody[^>]*>\s*<\/tbody>/u.test(html)).map(({ name }) => name)).toEqual([]);
  });

  it('says why there is no target, and what it would take', () => {
    const answer = pages.find(({ name }) => name === 'index.html')?.text;
    expect(answer).toMatch(/This evidence gives no reserve that keeps 90.% of the growth/u);
    expect(answer).toMatch(/With light loads, there is no target: .* With heavy loads, there is no target: /u);
    expect(answer).toMatch(/A target takes at least 4 studies, to advise a lifter at least 5/u);
    expect(pages.find(({ name }) => name === 'target/index.html')?.text).toMatch(
      /This evidence gives no number to follow at this load\./u,
    );
  });

  it('gives every trial its reference', () => {
    const file = readFileSync(join(root, 'data/published/studies.csv'), 'utf8');
    const lines = readStudies(file, 'studies.csv').studies;
    const missing = lines.filter(({ title, doi }) =>
      pages.every(
        ({ text, html }) => !(text.includes(title) && (doi === null || html.includes(`https://doi.org/${doi}`))),
      ),
    );
    expect(missing.map(({ study }) => study)).toEqual([]);
  });

  it('has no link that leads nowhere', () => {
    const wrong = pages.flatMap(({ name, html }) => {
      const at = new URL(name.replace(/index\.html$/u, ''), 'https://host.example/');
      return [...html.matchAll(/\s(?:href|src)="([^"]*)"/gu)].flatMap(([, address]) => {
        const to = new URL(address.replaceAll('&amp;', '&'), at);
        if (to.origin !== at.origin) return [];
        const path = join(dist(), decodeURIComponent(to.pathname));
        const file = to.pathname.endsWith('/') ? join(path, 'index.html') : path;
        return existsSync(file) && statSync(file).isFile() ? [] : [`${name} links to ${address}`];
      });
    });
    expect(wrong).toEqual([]);
  });
});
