/**
 * The scripts and the notebook to take home, really run: they fit the rows again in another language and agree with
 * the site to 6 digits, whatever was chosen and whatever stands in a table. Where R or Python with numpy and scipy is
 * not installed, that is said in one line and the scripts are only written and looked at; CI installs both.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { writeLiterals } from '../../src/figures/takeHome/literals.ts';
import { analyse } from '../../src/model/analyse.ts';
import { listBands } from '../../src/model/bands.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { CELLS, CHARACTERS } from '../support/awkwardTexts.ts';
import { anySettings } from '../support/settingsArbitrary.ts';
import { type Cells, makeArms, makeTable } from '../support/tables.ts';
import { LANGUAGES, type Language, packByEnding, readPrinted, runTogether } from '../support/takeHomeScripts.ts';

const { arms } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const folder = mkdtempSync(join(tmpdir(), 'take-home-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** R takes no line of more than 4,095 bytes from a pipe or a terminal; far below it no escape is ever broken. */
const LONGEST_LINE = 1500;
/** Six digits: both climb to the maximum until steps are rounding; what is left is the difference of two roundings. */
const SAME = 1e-6;
/** Settings in the sample: 40, with which intercepts, variances, targets and refusals of each kind come up. */
const SAMPLE = 40;

const sample = fc.sample(anySettings(arms), { seed: 20261126, numRuns: SAMPLE });
const packed = sample.map((settings) => packByEnding(arms, settings));

/** True where the language is not here, which is said. */
function isLeftOut({ name, command }: Language): boolean {
  if (command === null) console.log(`LEFT OUT: ${name} is not installed here, so its scripts were only written`);
  return command === null;
}

function textOf(files: ReadonlyMap<string, string>, ending: string): string {
  const text = files.get(ending);
  if (text === undefined) throw new Error(`expected a file ${ending}, received ${[...files.keys()]}`);
  return text;
}

describe(`${SAMPLE} settings drawn from all there are`, () => {
  it('make fits of every curve and weighting, with and without a target, and some that are refused', () => {
    const bands = sample.flatMap((settings) => listBands(analyse(arms, settings).bands).map(([, band]) => band));
    const fitted = bands.filter(({ failure }) => !failure);
    expect(new Set(fitted.map(({ curve }) => curve)).size).toBe(5);
    expect(new Set(sample.map(({ weighting }) => weighting)).size).toBe(3);
    expect(fitted.length).toBeGreaterThan(SAMPLE / 2);
    expect(fitted.length).toBeLessThan(bands.length);
    expect(fitted.filter(({ target }) => target.point !== null).length).toBeGreaterThan(10);
    expect(fitted.filter(({ target }) => target.point === null).length).toBeGreaterThan(5);
  });

  it.each(LANGUAGES)('give scripts for $name of short lines in ASCII', ({ ending }) => {
    const lines = packed.flatMap((files) => textOf(files, ending).split('\n'));
    expect(lines.length).toBeGreaterThan(SAMPLE * 100);
    expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThan(LONGEST_LINE);
  });

  it.each(LANGUAGES)('print the site’s numbers to 6 digits in $name', (language) => {
    if (isLeftOut(language)) return;
    const printed = runTogether(
      language,
      packed.map((files) => textOf(files, language.ending)),
      folder,
    );
    expect(printed).toHaveLength(SAMPLE);
    printed.forEach((text, i) => {
      const numbers = readPrinted(text);
      const analysis = analyse(arms, sample[i]);
      const bands = listBands(analysis.bands);
      // The numbers that it says are the site's are the site's.
      for (const [name, { coefficients, tau2, target }] of bands) {
        const siteOf = (what: string) => numbers.find((one) => one.what === `${name} ${what}`)?.site;
        for (const { term, estimate } of coefficients)
          expect(siteOf(`${term}: estimate`), term).toBeCloseTo(estimate, 7);
        if (tau2 !== null) expect(siteOf('variance between studies')).toBeCloseTo(tau2, 7);
        if (target.point === null) expect(siteOf('target')).toBeUndefined();
        else expect(siteOf('target')).toBeCloseTo(target.point, 7);
      }
      for (const { what, here, site } of numbers)
        expect(
          Math.abs(here - site),
          `${JSON.stringify(sample[i])}\n${what}: here ${here}, site ${site}`,
        ).toBeLessThanOrEqual(SAME * Math.abs(site || 1));
      if (bands.every(([, { failure }]) => failure)) expect(text).toContain('nothing was fitted');
      else expect(numbers.length).toBeGreaterThan(3);
    });
  });
});

describe('a table whose cells hold quotes, backslashes, line breaks, other scripts and very long names', () => {
  const awkward = [
    ...CHARACTERS,
    ...CELLS,
    'Ж'.repeat(450),
    '"\\'.repeat(300),
    '😀'.repeat(450),
    '# %% [markdown]',
    '{x} $y$',
  ];
  // The reader refuses some of them, control characters for one; a script must bear all that it takes.
  const names = awkward
    .map((text, i) => `${i}: ${text}`.trim())
    .filter((study) => readArms(makeTable([{ study }]), 'x.csv').problems.length === 0);
  const hostile = makeArms(
    names.flatMap((study, k) =>
      [0, 2, 5, 9].map(
        (reserve): Cells => ({
          study,
          arm: `reserve ${reserve}`,
          cohort: k % 2 === 0 ? `"${study}` : `reserve ${reserve}`,
          reserve_reps: String(reserve),
          attempted_failure: reserve === 0 ? 'yes' : 'no',
          followup_mean: (43 - 0.3 * reserve + Math.sin(k + reserve)).toFixed(2),
        }),
      ),
    ),
  );
  const left = names.filter((_, i) => i % 9 === 0);
  const files = packByEnding(hostile, settingsSchema.parse({ include: { withoutStudies: left } }));

  it.each(LANGUAGES)('gives a script for $name that runs, in short lines of ASCII', (language) => {
    const text = textOf(files, language.ending);
    const data = text.slice(text.indexOf('STUDIES'), text.indexOf('RHO'));
    expect(data).toMatch(/^[\x20-\x7e\n]+$/u);
    expect(Math.max(...text.split('\n').map((line) => Buffer.byteLength(line)))).toBeLessThan(LONGEST_LINE);
    if (isLeftOut(language)) return;
    const [printed] = runTogether(language, [text], folder);
    const numbers = readPrinted(printed);
    expect(numbers.length).toBeGreaterThan(10);
    for (const { what, here, site } of numbers)
      expect(Math.abs(here - site), what).toBeLessThanOrEqual(SAME * Math.abs(site || 1));
  });

  it.each(LANGUAGES)('is read back by $name letter for letter, but for what no string of R can hold', (language) => {
    if (isLeftOut(language)) return;
    expect(names.length).toBeGreaterThan(20);
    const texts = [...awkward, ...names];
    const literals = texts.map((text) => writeLiterals(text).join(language.ending === '.R' ? ', ' : ' '));
    const [printed] = runTogether(
      language,
      [
        language.ending === '.R'
          ? literals.map((one) => `cat(utf8ToInt(enc2utf8(paste0(${one}))), "\\n")`).join('\n')
          : literals.map((one) => `print(*map(ord, ${one}))`).join('\n'),
      ],
      folder,
    );
    const codes = (text: string) => [...text].map((letter) => letter.codePointAt(0)).join(' ');
    const expected = texts.map((text) => codes(text.replace(/\p{Cs}/gu, '\ufffd').replaceAll('\0', '\ufffd')));
    expect(
      printed
        .trimEnd()
        .split('\n')
        .map((line) => line.trim()),
    ).toEqual(expected.map((line) => line.trim()));
  });
});

describe('the files of the defaults', () => {
  const files = packByEnding(arms, settingsSchema.parse({}));

  it.each(LANGUAGES)('say that the studies are invented, in $name too', ({ ending }) => {
    expect(textOf(files, ending)).toMatch(/DEMONSTRATION: the studies behind these rows are invented/u);
  });

  it('have the rows of the analysis, line by line', () => {
    const { bands } = JSON.parse(textOf(files, '.json'));
    const lines = textOf(files, '-rows.csv').trim().split('\n').slice(1);
    const rows = Object.values(bands as Record<string, { rows: number }>).reduce((sum, band) => sum + band.rows, 0);
    expect(lines).toHaveLength(rows);
  });
});
