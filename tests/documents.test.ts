/**
 * The pages for readers of the project say what is there: every command, file and name in README.md and
 * DEVELOPERS.md exists, and the row that DEVELOPERS.md follows from CSV to circle has the numbers given there.
 */
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { computeEffect } from '../src/evidence/effects.ts';
import { readArms } from '../src/evidence/table.ts';
import { growthByReserve } from '../src/figures/growthByReserve.ts';
import { analyse } from '../src/model/analyse.ts';
import { defaultSettings } from '../src/model/settings.ts';
import { drawPlot } from '../src/site/drawFigure.ts';

const read = (name: string) => readFileSync(name, 'utf8');
const DOCUMENTS = [
  'README.md',
  'DEVELOPERS.md',
  'data/README.md',
  'data/published/README.md',
  'src/model/README.md',
] as const;
const documents = DOCUMENTS.map((name) => ({ name, text: read(name) }));
const scripts: Readonly<Record<string, string>> = JSON.parse(read('package.json')).scripts;

/** Folders that a page's paths may begin in. */
const ROOTS = ['', 'src/', 'src/model/', 'tests/reference/'] as const;
/** Of the built site, of whoever reads the page, or of a library. */
const NOT_OURS = /^(?:dist|_astro|my|table|zod)\/|^(?:data\/)?template\.csv$|^licences\.txt$|^figures\.json$/u;
const findFile = (path: string) => ROOTS.map((root) => `${root}${path}`).find((place) => existsSync(place));

describe.each(documents)('$name', ({ name, text }) => {
  const inCode = [...text.matchAll(/`([^`\n]+)`/gu)].map(([, code]) => code);

  it('names files and folders that exist', () => {
    const paths = inCode
      .filter(
        (code) => /^[\w.[\]-]+(?:\/[\w.[\]-]+)*\/?$/u.test(code) && /\/|\.(?:ts|tsx|md|csv|json|R|cff)$/u.test(code),
      )
      .filter((code) => !NOT_OURS.test(code));
    const own = name.replace(/[^/]*$/u, '');
    // The tables are meant by their names alone.
    const isThere = (path: string) =>
      findFile(path) !== undefined || existsSync(`${own}${path}`) || existsSync(`data/${path}`);
    expect(paths.length).toBeGreaterThan(3);
    expect(paths.filter((path) => !isThere(path))).toEqual([]);
  });

  it('names commands that package.json has', () => {
    const commands = [...text.matchAll(/(?<=`|^|&& )npm (?:run )?([a-z]+)/gmu)].map(([, command]) => command);
    expect(commands.length).toBeGreaterThan(0);
    expect(commands.filter((command) => command !== 'ci' && !(command in scripts))).toEqual([]);
  });

  it('gives each name the file that it is in', () => {
    const places = [...text.matchAll(/`(\w+)` \(`([\w./-]+\.tsx?)`\)/gu)].map(([, symbol, path]) => ({ symbol, path }));
    if (name === 'DEVELOPERS.md') expect(places.length).toBeGreaterThan(30);
    const isDefined = ({ symbol, path }: (typeof places)[number]) =>
      new RegExp(`^(?:export )?(?:async )?(?:function\\*?|const|interface|type|class) ${symbol}\\b`, 'mu').test(
        read(findFile(path) ?? path),
      );
    expect(places.filter((place) => !isDefined(place))).toEqual([]);
  });
});

it('README.md and DEVELOPERS.md name every script of package.json', () => {
  const text = read('README.md') + read('DEVELOPERS.md');
  const isNamed = (script: string) => new RegExp(`npm (?:run )?${script}\\b`, 'u').test(text);
  expect(Object.keys(scripts).filter((script) => !isNamed(script))).toEqual([]);
});

describe('the row that DEVELOPERS.md follows', () => {
  const text = read('DEVELOPERS.md');
  const { arms } = readArms(read('data/arms.csv'), 'arms.csv');
  const [arm] = arms;
  const analysis = analyse(arms, defaultSettings);
  const row = 'heavy' in analysis.bands ? analysis.bands.heavy.fitted.find(({ line }) => line === 2) : undefined;

  it('is line 2 of the shipped table', () => {
    expect(arm).toMatchObject({ line: 2, study: 'Plover 1996', arm: '75 % to failure', muscle: 'quadriceps' });
    expect(text).toContain(`${arm.muscle} ${arm.baseline_mean} mm before and ${arm.followup_mean} mm after`);
  });

  it('has the effect, the variance and the weight that are given', () => {
    const effect = computeEffect(arm, { metric: 'log-ratio', assumedCorrelation: Number.NaN });
    if (typeof effect === 'string') throw new Error(effect);
    expect(text).toContain(`y = ln(45.96/41.25) = ${effect.y.toFixed(4)}, v = ${effect.v.toFixed(7)}`);
    expect(text).toContain(`with ${(100 * (row?.weight ?? Number.NaN)).toFixed(2)} % of the weight`);
  });

  it('is the circle that is given', () => {
    const figure = growthByReserve(analysis, { band: 'heavy' });
    const drawn = figure.plot.marks?.flatMap((mark) => (mark as { data?: { line?: number }[] } | null)?.data ?? []);
    const item = drawn?.find((one) => one?.line === 2) as { reserve: number; growth: number; radius: number };
    expect(text).toContain(
      `reserve ${item.reserve}, growth ${item.growth.toFixed(2)} %, radius ${item.radius.toFixed(2)}`,
    );
    expect(drawPlot(figure)).toContain(`<circle r="${item.radius}"`);
  });
});
