/**
 * References of a study. What is proven: BibTeX and RIS read back with Citation.js to the cells they were
 * made from, for each shipped study and for names and titles that these formats find hard; the two
 * styles against references written by hand from their rules; the files' form.
 */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Entry } from '../../scripts/references/entry.ts';
import { readBibtex } from '../../scripts/references/readBibtex.ts';
import { readRis } from '../../scripts/references/readRis.ts';
import { toStudyCells } from '../../scripts/references/studyCells.ts';
import { STUDY_COLUMNS, type Study } from '../../src/evidence/schema.ts';
import { readStudies } from '../../src/evidence/table.ts';
import { toCslItem } from '../../src/site/cslItem.ts';
import { writeReference } from '../../src/site/references.ts';

const { studies: shipped } = readStudies(readFileSync('data/studies.csv', 'utf8'), 'studies.csv');

const plover: Study = {
  study: 'Plover 2012',
  authors: 'Plover AB, Wren C',
  year: 2012,
  title: 'Reserve in the leg press',
  journal: 'Journal of Plovering',
  volume: '12(3)',
  pages: '101–110',
  doi: '10.1000/example',
  note: null,
  line: 2,
};

const AWKWARD: readonly (readonly [string, Partial<Study>])[] = [
  [
    'accents',
    { authors: 'Åström Ö, Müller Ä, Łukasz Ż, Çelik Ş', title: 'Étude de la fatigue à l’échec: ½ naïve façon' },
  ],
  ['other scripts', { authors: '王 小, Петров И, Παπάς Α', title: '筋肥大 and β-alanine at 10 µm² ≤ 5 😀' }],
  ['braces', { title: '{Braces} that {open and }close{', journal: '{J' }],
  [
    'ampersands and the other signs of TeX',
    { title: 'R&D: 50 % of #1 costs $5_000 ~ x^2 \\alpha', journal: 'Arts & Crafts' },
  ],
  ['quotation marks and dashes in pairs', { title: "The “best” ''worst'' ``way'' -- or --- \"so\" a--b-c" }],
  ['signs of comparison', { title: 'Effects with p <0.05 and d >1 < 2' }],
  ['“von” and “van der”', { authors: 'von Essen CD, van der Berg J, de la Cruz M, d’Arcy P, al-Hassan Q' }],
  ['capital particles', { authors: 'De Lima A, Van Damme B, Dos Santos C, Garcia y Lopez D' }],
  ['a suffix', { authors: 'Smith JA Jr, Plover B III' }],
  ['an organisation', { authors: 'World Health Organization, Sports and Science & Co, WHO' }],
  ['a hyphen and an apostrophe in a name', { authors: "Smith-Jones A, O'Neil B, O’Brien C" }],
  ['one author', { authors: 'Plover A' }],
  ['many authors', { authors: Array.from({ length: 60 }, (_, i) => `Wren${'abcdefghij'[i % 10]} A`).join(', ') }],
  ['no DOI', { doi: null }],
  ['a DOI with signs', { doi: '10.1002/(SICI)1097-4598(199)22:1<1::AID-M_1>2.0.CO;2-#%&' }],
  ['nothing but what is required', { journal: null, volume: null, pages: null, doi: null }],
  ['a volume without issue, an article number', { volume: '12', pages: 'e0123' }],
  ['an issue without volume', { volume: '(3)', pages: 'S1–S9' }],
  ['issues in a range', { volume: '12(3-4)', pages: '7' }],
  ['a title of 480 characters', { title: 'Reserve and '.repeat(40).trim() }],
  ['a title like a line of RIS', { title: 'ER  - TY  - JOUR @article{x, title' }],
  ['capitals', { title: 'EMG, MRI and DXA in McArdle’s NASA cohort' }],
];

/** What the formats carry: all cells but the study's own name and the note, spaces made single. */
function cellsOf(study: Study) {
  const text = (value: string | number | null) =>
    String(value ?? '')
      .replace(/\s+/gu, ' ')
      .normalize('NFC');
  const { authors, year, title, journal, volume, pages, doi } = study;
  return Object.fromEntries(
    Object.entries({ authors, year, title, journal, volume, pages, doi }).map(([name, value]) => [name, text(value)]),
  );
}

function readBack({ entries, problems }: { entries: readonly Entry[]; problems: readonly unknown[] }) {
  expect(problems).toEqual([]);
  expect(entries).toHaveLength(1);
  const { cells, problems: ofNames } = toStudyCells(entries[0].item);
  expect(ofNames).toEqual([]);
  const { study: _study, note: _note, ...others } = cells;
  return others;
}

describe('BibTeX and RIS', () => {
  it('of every shipped study read back to its cells', () => {
    expect(shipped.length).toBeGreaterThan(30);
    for (const study of shipped) {
      const { bibtex, ris } = writeReference(study);
      expect(readBack(readBibtex(bibtex, 'x.bib'))).toEqual(cellsOf(study));
      expect(readBack(readRis(ris, 'x.ris'))).toEqual(cellsOf(study));
    }
  });

  it.each(AWKWARD)('of a study with %s read back to its cells', (_what, changes) => {
    const study = { ...plover, ...changes };
    const { bibtex, ris } = writeReference(study);
    expect(readBack(readBibtex(bibtex, 'x.bib'))).toEqual(cellsOf(study));
    expect(readBack(readRis(ris, 'x.ris'))).toEqual(cellsOf(study));
  });

  it('of any title and journal that the schema accepts read back to them', () => {
    const cell = fc
      .string({
        unit: fc.oneof(
          fc.constantFrom(...'aA1 -\'`"{}\\&%$#_^~<>@,;:=é|'),
          fc.string({ unit: 'grapheme', minLength: 1, maxLength: 1 }),
        ),
        minLength: 1,
        maxLength: 40,
      })
      .map((text) => text.replace(/\s+/gu, ' ').trim().normalize('NFC'))
      .filter((text) => text !== '' && STUDY_COLUMNS.title.cell.safeParse(text).success);
    let tried = 0;
    fc.assert(
      fc.property(cell, cell, (title, journal) => {
        tried++;
        const study = { ...plover, title, journal };
        const { bibtex, ris } = writeReference(study);
        expect(readBack(readBibtex(bibtex, 'x.bib'))).toEqual(cellsOf(study));
        expect(readBack(readRis(ris, 'x.ris'))).toEqual(cellsOf(study));
      }),
      { seed: 6, numRuns: 300 },
    );
    expect(tried).toBeGreaterThanOrEqual(300);
  });

  it('carry the note, so that an invented study says so in a reference manager too', () => {
    const { bibtex, ris, cslJson } = writeReference(shipped[0]);
    for (const text of [bibtex, ris, cslJson]) expect(text).toContain('invented for demonstration');
  });

  it('leave out a DOI that has not the form of one, and what stands before one that has', () => {
    for (const text of Object.values(writeReference({ ...plover, doi: 'unknown' })))
      expect(text).not.toMatch(/unknown/u);
    for (const text of Object.values(writeReference({ ...plover, doi: 'doi:10.1000/x' })))
      expect(text).toContain('10.1000/x');
  });

  it('have a key of letters and digits without accents', () => {
    const { bibtex, ris } = writeReference({ ...plover, study: 'von Müller-Łö 2012b' });
    expect(bibtex).toMatch(/^@article\{vonMullerŁo2012b,/u);
    expect(ris).toMatch(/^ID {2}- vonMullerŁo2012b\r$/mu);
  });

  it('of RIS has a tag on every line, first and last page apart and CRLF at each end', () => {
    const { ris } = writeReference(plover);
    const lines = ris.split('\r\n');
    expect(lines.at(0)).toBe('TY  - JOUR');
    expect(lines.slice(-2)).toEqual(['ER  - ', '']);
    expect(lines).toEqual(expect.arrayContaining(['AU  - Plover, A B', 'PY  - 2012', 'SP  - 101', 'EP  - 110']));
    for (const line of lines.slice(0, -1)) expect(line).toMatch(/^[A-Z][A-Z0-9] {2}- [^\r\n]*$/u);
  });

  it('of BibTeX has its braces closed in pairs, whatever the title', () => {
    const { bibtex } = writeReference({ ...plover, title: '}}{ \\} {x', doi: '10.1000/a}b{' });
    let depth = 0;
    for (const character of bibtex) {
      if (character === '{') depth++;
      if (character === '}') depth--;
      expect(depth).toBeGreaterThanOrEqual(0);
    }
    expect(depth).toBe(0);
  });
});

describe('the styles', () => {
  // Written by hand: Publication Manual of the APA (7th edition), section 9; NLM, Citing Medicine (2nd edition), chapter 1.
  it('APA of an article', () => {
    expect(writeReference(plover).apa).toBe(
      'Plover, A. B., & Wren, C. (2012). Reserve in the leg press. Journal of Plovering, 12(3), 101–110. https://doi.org/10.1000/example',
    );
  });

  it('Vancouver of an article, without a number before it', () => {
    expect(writeReference(plover).vancouver).toBe(
      'Plover AB, Wren C. Reserve in the leg press. Journal of Plovering. 2012;12(3):101–10. doi:10.1000/example',
    );
  });

  it('of “von”, a suffix and an organisation', () => {
    const { apa, vancouver } = writeReference({ ...plover, authors: 'von Essen CD, Smith J Jr, Plover Society' });
    expect(apa).toMatch(/^von Essen, C\. D\., Smith, J\., Jr\.?, & Plover Society\. \(2012\)\./u);
    expect(vancouver).toMatch(/^von Essen CD, Smith J Jr, Plover Society\. Reserve/u);
  });

  it('of a study without journal, pages and DOI have no gaps', () => {
    const { apa, vancouver } = writeReference({ ...plover, journal: null, volume: null, pages: null, doi: null });
    expect(apa).toBe('Plover, A. B., & Wren, C. (2012). Reserve in the leg press.');
    expect(vancouver).toBe('Plover AB, Wren C. Reserve in the leg press. 2012.');
  });

  it('of one study after another are of the one that was asked for', () => {
    const other = writeReference({ ...plover, title: 'Another title' });
    expect(other.apa).toContain('Another title');
    expect(other.apa).not.toContain('leg press');
    expect(writeReference(plover)).toEqual(writeReference({ ...plover }));
  });

  it('are plain text: signs of markup stand as they are', () => {
    expect(writeReference({ ...plover, title: 'R&D with p <0.05' }).apa).toContain('R&D with p <0.05');
  });
});

it('CSL-JSON is a list of the one item, and its names keep the particle apart', () => {
  const study = { ...plover, authors: 'von Essen CD, Plover Society' };
  const [item] = JSON.parse(writeReference(study).cslJson);
  expect(item).toEqual(toCslItem(study));
  expect(item).toMatchObject({
    type: 'article-journal',
    author: [{ 'non-dropping-particle': 'von', family: 'Essen', given: 'C D' }, { literal: 'Plover Society' }],
    issued: { 'date-parts': [[2012]] },
    volume: '12',
    issue: '3',
    page: '101-110',
    DOI: '10.1000/example',
  });
});

it('the reading and styling libraries are imported in components alone, which no island imports', () => {
  const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((name) =>
    /\.(?:ts|tsx|astro)$/u.test(name),
  );
  const importing = files.filter((name) =>
    /from '@citation-js|import '@citation-js/u.test(readFileSync(`src/${name}`, 'utf8')),
  );
  expect(importing.sort()).toEqual(['site/cslItem.ts', 'site/references.ts']);
});
