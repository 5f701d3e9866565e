/**
 * Adding studies from a reference manager's export: reading the three formats as managers write them,
 * which entries are new, their names, the lines that are appended, and the command as a person runs it.
 */
import { copyFileSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BIBTEX } from '../../scripts/references/bibtex.ts';
import { CSL_JSON } from '../../scripts/references/cslJson.ts';
import { readExport } from '../../scripts/references/entry.ts';
import { planAdditions } from '../../scripts/references/planAdditions.ts';
import { RIS } from '../../scripts/references/ris.ts';
import { type StudyCells, toStudyCells } from '../../scripts/references/studyCells.ts';
import { nameStudies } from '../../scripts/references/studyName.ts';
import { appendRows } from '../../src/evidence/appendRows.ts';
import { formatProblem } from '../../src/evidence/problem.ts';
import { STUDY_COLUMNS } from '../../src/evidence/schema.ts';
import { readStudies } from '../../src/evidence/table.ts';
import { run, useFolder } from '../support/runScript.ts';

const ris = (...lines: string[]) => ['TY  - JOUR', ...lines, 'ER  - ', ''].join('\r\n');
const cellsOfRis = (...lines: string[]) => toStudyCells(readExport(RIS, ris(...lines), 'x.ris').entries[0].item).cells;
const cellsOfBibtex = (text: string) => toStudyCells(readExport(BIBTEX, text, 'x.bib').entries[0].item).cells;
const cells = (changes: Partial<StudyCells> = {}): StudyCells => ({
  study: 'Plover 2012',
  authors: 'Plover A',
  year: '2012',
  title: 'A title',
  journal: '',
  volume: '',
  pages: '',
  doi: '',
  note: '',
  ...changes,
});

describe('RIS', () => {
  it('of one manager is read into every cell', () => {
    expect(
      cellsOfRis(
        'AU  - Plover, Anna B.',
        'AU  - Wren,C.',
        'TI  - A title',
        '  that goes on',
        'T2  - Journal',
        'PY  - 2012',
        'DA  - 2011/12/01',
        'VL  - 12',
        'IS  - 3',
        'SP  - 101',
        'EP  - 110',
        'DO  - https://doi.org/10.1000/X',
        'AB  - Not read',
      ),
    ).toEqual(
      cells({
        study: '',
        authors: 'Plover AB, Wren C',
        title: 'A title that goes on',
        journal: 'Journal',
        volume: '12(3)',
        pages: '101–110',
        doi: '10.1000/X',
      }),
    );
  });

  it('of another, with older tags, is read the same', () => {
    expect(
      cellsOfRis(
        'A1  - Plover,A.B.',
        'A1  - Wren C',
        'T1  - A <i>title</i>',
        'JO  - J.',
        'JF  - Journal',
        'Y1  - 2012/03/04/',
        'VL  - 12',
        'CP  - 3',
        'SP  - 101-110',
        'UR  - https://doi.org/10.1000/x',
      ),
    ).toMatchObject({
      authors: 'Plover AB, Wren C',
      title: 'A title',
      journal: 'Journal',
      year: '2012',
      volume: '12(3)',
      pages: '101–110',
      doi: '10.1000/x',
    });
  });

  it('with an article number, a short journal or a publisher alone takes what there is', () => {
    expect(cellsOfRis('TI  - T', 'C7  - e99').pages).toBe('e99');
    expect(cellsOfRis('TI  - T', 'J2  - J Plov').journal).toBe('J Plov');
    expect(cellsOfRis('TI  - T', 'PB  - A press').journal).toBe('A press');
  });

  it('keeps two spaces and a hyphen in a title, a repeated DOI from failing, and a text that is no DOI for the check', () => {
    expect(cellsOfRis('TI  - Before  - after').title).toBe('Before - after');
    expect(cellsOfRis('TI  - T', 'DO  - 10.1000/1', 'DO  - 10.1000/2').doi).toBe('10.1000/1');
    expect(cellsOfRis('TI  - T', 'DO  - not known').doi).toBe('not known');
  });

  it('of a type that nobody knows is read as a general reference', () => {
    const { entries } = readExport(RIS, 'TY  - PREP\nAU  - Plover, A\nTI  - A title\nPY  - 2012\nER  - \n', 'x.ris');
    expect(toStudyCells(entries[0].item).cells).toMatchObject({ authors: 'Plover A', title: 'A title', year: '2012' });
  });

  it('has records at their lines, with or without an end, whatever stands between them', () => {
    const { entries, problems } = readExport(
      RIS,
      `Provider: a base\n\n${ris('TI  - One')}\nRecord 2 of 3\n${ris('TI  - Two')}TY  - JOUR\nTI  - Three`,
      'x.ris',
    );
    expect(problems).toEqual([]);
    expect(entries.map(({ line, item }) => [line, item.title])).toEqual([
      [3, 'One'],
      [8, 'Two'],
      [11, 'Three'],
    ]);
  });

  it.each([
    ['no record', 'nothing here\n', null, /at least one record that begins with a line “TY/u],
    ['a tag before its record', `AU  - Plover, A\n${ris('TI  - T')}`, 1, /a line “TY {2}- …” before the others/u],
  ])('with %s says so', (_what, text, line, expected) => {
    const { problems } = readExport(RIS, text, 'x.ris');
    expect(problems.map((problem) => problem.line)).toEqual([line]);
    expect(problems[0].expected).toMatch(expected);
    expect(problems[0].value).toBe(text.split(/\r?\n/u, 1)[0]);
  });
});

describe('BibTeX', () => {
  it('with abbreviations, commands, braces and a resolver’s address is read into every cell', () => {
    expect(
      cellsOfBibtex(`@string{jap = "Journal of Plovering"}
        @comment{a manager's own}
        @ARTICLE{x, author = {Plover, Anna-Maria and Ludwig van Wren and {Plover Society} and Smith, Jr., John},
          title = {{The} {NASA} effect of \\emph{in vivo} H$_2$O \\& \\'{e}l\\"ove in
            lines}, journal = jap, year = 2012, volume = 12, number = {3}, pages = {101--110}, doi = {https://doi.org/10.1000/X\\_Y}}`),
    ).toEqual(
      cells({
        study: '',
        authors: 'Plover AM, van Wren L, Plover Society, Smith J Jr',
        title: 'The NASA effect of in vivo H₂O & élöve in lines',
        journal: 'Journal of Plovering',
        volume: '12(3)',
        pages: '101–110',
        doi: '10.1000/X_Y',
      }),
    );
  });

  it('in the fields of BibLaTeX is read the same', () => {
    expect(
      cellsOfBibtex(
        '@article{x, author={Souza, Ana de and al-Hassan, Q}, title={T}, subtitle={S}, journaltitle={J}, date={2012-03-01}, eid={e9}, volume={1}, number={2}}',
      ),
    ).toMatchObject({
      authors: 'de Souza A, al-Hassan Q',
      title: expect.stringMatching(/^T/u),
      journal: 'J',
      year: '2012',
      pages: 'e9',
      volume: '1(2)',
    });
  });

  it('takes from its parent what a crossref leaves out', () => {
    const text =
      '@inproceedings{a, author={Plover, A}, title={T}, crossref={b}}\n@proceedings{b, title={P}, year={2012}}';
    expect(cellsOfBibtex(text)).toMatchObject({ title: 'T', year: '2012' });
  });

  it('with entries that cannot be read gives the others, and each of those with its line', () => {
    const good = (key: string) => `@article{${key}, author={Plover, A}, title={${key}}, year={2012}}\n`;
    const text = `${good('one')}@article{two, title={never closed\n${good('three')}@article{four title={no comma}}\n${good('five')}`;
    const { entries, problems } = readExport(BIBTEX, text, 'x.bib');
    expect(entries.map(({ label, line }) => [label, line])).toEqual([
      ['one', 1],
      ['three', 3],
      ['five', 5],
    ]);
    expect(problems.map(({ line }) => line)).toEqual([2, 4]);
    expect(problems.map(formatProblem)[1]).toMatch(
      /expected an entry with its braces closed .*received “@article\{four title/u,
    );
  });

  it('with an abbreviation that cannot be read names it, and reads the entries', () => {
    const text = '@string{one = "One"}\n@string{two = \u0002 "}\n@article{a, title={T}, journal=one}\n';
    const { entries, problems } = readExport(BIBTEX, text, 'x.bib');
    expect(problems.map(({ line, value }) => [line, value.slice(0, 11)])).toEqual([[2, '@string{two']]);
    expect(entries.map(({ line, item }) => [line, item['container-title']])).toEqual([[3, 'One']]);
  });

  it('with an abbreviation that nobody defined says so in place of leaving the cell empty', () => {
    const text =
      '@article{a, title={T}, journal = nowhere, year=2012}\n@article{b, title={journal = x, y}, journal = {}}\n';
    const { entries, problems } = readExport(BIBTEX, text, 'x.bib');
    expect(problems.map(formatProblem)).toEqual([
      'line 1: expected an abbreviation that the export defines with @string, received “journal = nowhere”.',
    ]);
    // What looks like one inside a title is none, and an empty field is no mistake.
    expect(entries.map(({ label }) => label)).toEqual(['b']);
    for (const name of ['constructor', 'toString', '__proto__']) {
      expect(
        readExport(BIBTEX, `@article{a, title={T}, journal=${name}}`, 'x.bib').problems.map(({ value }) => value),
      ).toEqual([`journal=${name}`]);
    }
    expect(readExport(BIBTEX, '@article{b, title={T}, journal = {}, month = jan}\n', 'x.bib').problems).toEqual([]);
  });

  it('has the signs that TeX writes as commands, and names a command that nobody knows', () => {
    const title = '{\\AA}rhus: 3 $\\times$ 10, p $\\leq$ 0.05 $\\pm$ 1\\,mm, na{\\"\\i}ve {\\ss} \\textbackslash{}x';
    expect(cellsOfBibtex(`@article{a, title={${title}}}`).title).toBe('Århus: 3 × 10, p ≤ 0.05 ± 1 mm, naïve ß \\x');
    const { entries, problems } = readExport(BIBTEX, '@article{a, title={A \\foo{b}}, abstract={\\bar}}', 'x.bib');
    expect(entries).toEqual([]);
    expect(problems.map(formatProblem)).toEqual([
      'line 1: expected a command of TeX that can be read, received “title = … \\foo …”. Write the character itself.',
    ]);
  });

  it('gives the line of entries that share a key', () => {
    const { entries } = readExport(BIBTEX, '@article{a, title={1}}\n\n@article{a, title={2}}', 'x.bib');
    expect(entries.map(({ line, item }) => [line, item.title])).toEqual([
      [1, '1'],
      [3, '2'],
    ]);
  });

  it('has its entries at their lines where one stands behind another, or a value looks like one', () => {
    const text = '@article{a, title={A}} @article{b, title={B}}\n@article{c, title={C, not\n@article{d, title=...}}}\n';
    const { entries, problems } = readExport(BIBTEX, text, 'x.bib');
    expect(problems).toEqual([]);
    expect(entries.map(({ label, line }) => [label, line])).toEqual([
      ['a', 1],
      ['b', 1],
      ['c', 2],
    ]);
  });

  it('without an entry says so', () => {
    expect(readExport(BIBTEX, 'https://example.org/', 'x.bib').problems[0].expected).toMatch(/at least one entry/u);
  });
});

describe('CSL-JSON', () => {
  const read = (value: unknown) => readExport(CSL_JSON, JSON.stringify(value, null, 2), 'x.json');
  const cellsOf = (value: unknown) => toStudyCells(read(value).entries[0].item).cells;

  it('is read into every cell', () => {
    expect(
      cellsOf([
        {
          id: 'plover2012',
          type: 'article-journal',
          author: [
            { family: 'Plover', given: 'Anna-Maria' },
            { family: 'Essen', 'non-dropping-particle': 'von', given: 'C. D.' },
            { family: 'Smith', given: 'John', suffix: 'Jr.' },
            { literal: 'Plover Society' },
          ],
          issued: { 'date-parts': [['2012', 3]] },
          title: 'A <i>title</i> ≤ 5',
          'container-title': 'Journal',
          volume: 12,
          issue: '3',
          page: '101-110',
          DOI: 'https://doi.org/10.1000/X',
          abstract: 'Not read',
        },
      ]),
    ).toEqual(
      cells({
        study: '',
        authors: 'Plover AM, von Essen CD, Smith J Jr, Plover Society',
        title: 'A title ≤ 5',
        journal: 'Journal',
        volume: '12(3)',
        pages: '101–110',
        doi: '10.1000/X',
      }),
    );
  });

  it('of one item without a list, with titles in lists and a date in words, is read as well', () => {
    expect(cellsOf({ title: ['T'], 'container-title': ['J'], issued: { literal: '2012 spring' } })).toMatchObject({
      title: 'T',
      journal: 'J',
      year: '2012',
    });
  });

  it('has items at their lines, called by their key or their number', () => {
    const { entries } = readExport(
      CSL_JSON,
      '[{"id": "a", "title": "A"},\n\n {"title": "{\\n["}, {"id": 7}]',
      'x.json',
    );
    expect(entries.map(({ line, label }) => [line, label])).toEqual([
      [1, 'a'],
      [3, 'item 2'],
      [3, '7'],
    ]);
  });

  it.each([
    ['a name without parts', { author: [{ family: 'Plover', given: 'A' }, {}] }, 'authors', /a list of names/u],
    ['a name that is a list', { author: [{ family: ['Plover'], given: 'A' }] }, 'authors', /a list of names/u],
    ['names in one text', { author: 'Plover A, Wren B' }, 'authors', /a list of names/u],
    ['a bare year', { issued: '2012' }, 'year', /a date such as/u],
    ['a journal that is no text', { 'container-title': { long: 'J' } }, 'journal', /text/u],
  ])('with %s says so in place of leaving it out', (_what, item, column, expected) => {
    const { entries, problems } = read([{ title: 'A' }, item]);
    expect(entries.map(({ label }) => label)).toEqual(['item 1']);
    expect(problems.map((problem) => [problem.line, problem.column])).toEqual([[5, column]]);
    expect(problems[0].expected).toMatch(expected);
  });

  it('has no problem with properties that are there and empty', () => {
    const { entries, problems } = read([{ title: 'T', author: [], issued: null, page: '', volume: null }]);
    expect([entries.length, problems]).toEqual([1, []]);
  });

  it.each([
    ['what is no item', '[{"title": "A"},\n 7]', 2, 'an item in braces', '7'],
    ['no item', '[]', null, 'at least one item such as [{"id": "key", …}]', '[]'],
    ['nothing', '', 1, 'JSON without an error', ''],
    ['a bracket that is not closed', '[{"title": "A"},\n{"title": "B"]', 2, 'JSON without an error', ']'],
  ])('with %s says so', (_what, text, line, expected, value) => {
    const { problems } = readExport(CSL_JSON, text, 'x.json');
    expect(problems.map((problem) => [problem.line, problem.expected, problem.value])).toEqual([
      [line, expected, value],
    ]);
  });
});

describe('names', () => {
  it.each([
    ['accents', 'Åström, Ö. and Müller, Ä. and Łukasz, Ż. and Çelik, Ş.', 'Åström Ö, Müller Ä, Łukasz Ż, Çelik Ş'],
    [
      'accents as TeX writes them',
      '{\\AA}str{\\"o}m, {\\"O}. and M{\\"u}ller, \\"{A}. and Garc{\\\'\\i}a, Jos\\\'e and Y{\\i}ld{\\i}z, A.',
      'Åström Ö, Müller Ä, García J, Yıldız A',
    ],
    ['other scripts', '王, 小 and Петров, Иван', '王 小, Петров И'],
    [
      'particles',
      'von Essen, Carl D. and van der Berg, J. and de la Cruz, M. and d’Arcy, P. and {al-Hassan}, Q.',
      'von Essen CD, van der Berg J, de la Cruz M, d’Arcy P, al-Hassan Q',
    ],
    ['capital particles', 'De Lima, A. and Garcia y Lopez, D.', 'De Lima A, Garcia y Lopez D'],
    ['a suffix', 'Smith, Jr, John A. and Plover, III, B.', 'Smith JA Jr, Plover B III'],
    [
      'an organisation',
      '{World Health Organization} and {Sports and Science \\& Co}',
      'World Health Organization, Sports and Science & Co',
    ],
    ['hyphens and apostrophes', "Smith-Jones, Anna-Maria and O'Neil, B.", "Smith-Jones AM, O'Neil B"],
  ])('of BibTeX with %s are the table’s', (_what, author, expected) => {
    expect(cellsOfBibtex(`@article{x, author = {${author}}, title = {T}, year = 2012}`).authors).toBe(expected);
  });

  it.each([
    ['von Essen, Carl D.', 'von Essen CD'],
    ['d’Arcy, P.', 'd’Arcy P'],
    ['al-Hassan, Q', 'al-Hassan Q'],
    ['Smith, John A., Jr', 'Smith JA Jr'],
    ['World Health Organization', 'World Health Organization'],
    ['Петров, Иван', 'Петров И'],
  ])('of RIS: %s', (name, expected) => {
    expect(cellsOfRis(`AU  - ${name}`, 'TI  - T').authors).toBe(expected);
  });

  it('of sixty authors are sixty', () => {
    const names = Array.from({ length: 60 }, (_, i) => `Wren${'abcdefghij'[i % 10]}, A.`);
    expect(cellsOfBibtex(`@article{x, author={${names.join(' and ')}}, title={T}}`).authors.split(', ')).toHaveLength(
      60,
    );
    expect(cellsOfRis(...names.map((name) => `AU  - ${name}`), 'TI  - T').authors.split(', ')).toHaveLength(60);
  });
});

describe('any text at all', () => {
  const bib =
    '@string{j = "J"}\n@article{a, author={Plover, A and {B C}}, title={T \\emph{x} $y$ \\begin{i}z\\end{i}}, journal=j, date={2012}}\n' +
    '@article{b, author={Wren, B}, title={U}, year={2013}}\n';
  const json =
    '[{"id":"a","author":[{"family":"Plover","given":"A"}],"title":"T <i>x</i>","issued":{"date-parts":[[2012,3]]},"page":"1-2"},\n' +
    '{"id":7,"author":[{"literal":"B C"}],"title":"U","issued":{"raw":"2013"},"DOI":"10.1000/x"}]';
  const records =
    ris('AU  - Plover, A', 'TI  - T', 'PY  - 2012', 'SP  - 1') + ris('A1  - Wren,B', 'T1  - U', 'DO  - 10.1000/x');

  it.each([
    // One change spoils one entry: the other is still there, except where it reaches over both.
    ['RIS', records, RIS, 900],
    ['BibTeX', bib, BIBTEX, 900],
    // Most changes leave no JSON.
    ['CSL-JSON', json, CSL_JSON, 200],
  ] as const)('put into %s is read without an exception, into entries or problems', (_what, whole, format, least) => {
    let withEntries = 0;
    fc.assert(
      fc.property(
        fc.nat(whole.length),
        fc.nat(12),
        fc.oneof(
          fc.string({ unit: 'binary', maxLength: 20 }),
          fc.constantFrom('{', '}', '"', '\\', '@', ' and ', ',', 'TY  - ', 'ER  - ', '\n'),
        ),
        (from, count, piece) => {
          const { entries, problems } = readExport(
            format,
            whole.slice(0, from) + piece + whole.slice(from + count),
            'x',
          );
          const plan = planAdditions(entries, [], 'x', format.fields);
          if (entries.length > 0) withEntries++;
          expect(entries.length + problems.length).toBeGreaterThan(0);
          expect(plan.added.length + plan.already.length + plan.problems.length).toBeGreaterThanOrEqual(entries.length);
          for (const row of plan.added) {
            const text = appendRows(
              'study,authors,year,title,journal,volume,pages,doi,note\n',
              [row],
              STUDY_COLUMNS,
              'x',
            ).text;
            expect(
              readStudies(`study,authors,year,title,journal,volume,pages,doi,note\n${text}`, 'x').problems,
            ).toEqual([]);
          }
        },
      ),
      { seed: 7, numRuns: 1000 },
    );
    expect(withEntries).toBeGreaterThan(least);
  });
});

describe('a plan', () => {
  const table = readStudies(
    'study,authors,year,title,doi\nPlover 2012,Plover A,2012,"A title, about reserve",10.1000/A\nWren 2013,Wren A,2013,Another,\n',
    'studies.csv',
  ).studies;
  const plan = (text: string) => planAdditions(readExport(RIS, text, 'x.ris').entries, table, 'x.ris', RIS.fields);
  const record = (title: string, year: string, ...more: string[]) =>
    ris('AU  - Plover, A', `TI  - ${title}`, `PY  - ${year}`, ...more);

  it('finds a study again by its DOI in other letters, or by its title and year in another dress', () => {
    const { added, already, problems } = plan(
      record('Quite another title', '2014', 'DO  - https://doi.org/10.1000/a') +
        record('A Title about “Réserve”.', '2012') +
        record('A title about reserve', '2012', 'DO  - 10.1000/b'),
    );
    expect([added, problems]).toEqual([[], []]);
    expect(already.map(({ because, as }) => [because, as])).toEqual([
      ['the same DOI', 'Plover 2012, line 2'],
      ['the same title and year', 'Plover 2012, line 2'],
      ['the same title and year, though another DOI', 'Plover 2012, line 2'],
    ]);
  });

  it('adds the same title of another year, and an entry that the export has twice once', () => {
    const { added, already } = plan(record('Another', '2014') + record('Another', '2014'));
    expect(added.map(({ study, title }) => [study, title])).toEqual([['Plover 2014', 'Another']]);
    expect(already.map(({ as }) => as)).toEqual(['the entry of line 1']);
  });

  it.each([
    [
      'no author',
      ris('TI  - T', 'PY  - 2012'),
      'authors',
      /received nothing\. Add a line AU to the entry\. It is entry record 1, “T”/u,
    ],
    ['no title', ris('AU  - Plover, A', 'PY  - 2012'), 'title', /Add a line TI to the entry\. It is entry record 1\./u],
    [
      'no year',
      ris('AU  - Plover, A', 'TI  - T'),
      'year',
      /`year`: expected a value, received nothing\. Add a line PY/u,
    ],
    ['a year in words', record('T', 'in press'), 'year', /received “in press”/u],
    [
      'a formula as its title',
      record('=HYPERLINK(1)', '2012'),
      'title',
      /not starting with = \+ - or @.*A spreadsheet would calculate it/u,
    ],
    ['a formula as its volume', record('T', '2012', 'VL  - +1'), 'volume', /received “\+1”/u],
    ['markup in its title', record('T <img src=x>', '2012'), 'title', /looks like markup/u],
    ['a title of 501 characters', record('x'.repeat(501), '2012'), 'title', /501 characters; shorten it/u],
    [
      'a comma in an organisation',
      ris('AU  - Plover, A, of the Marsh, Ltd', 'TI  - T', 'PY  - 2012'),
      'authors',
      /names without commas inside/u,
    ],
    [
      'a given name without a letter',
      ris('AU  - Plover, ?', 'TI  - T', 'PY  - 2012'),
      'authors',
      /a given name that begins with a letter/u,
    ],
  ] as const)(
    'leaves out an entry with %s and says which, where and what was expected',
    (_what, text, column, message) => {
      const { added, problems } = plan(text);
      expect(added).toEqual([]);
      expect(problems.map((problem) => [problem.file, problem.line, problem.column])).toEqual([['x.ris', 1, column]]);
      expect(formatProblem(problems[0])).toMatch(message);
    },
  );

  it.each([
    ['“and others”', 'Plover, A and others', /every author by name/u],
    ['commas in place of “and”', 'Plover A, Wren B, Heron C', /Jr, Sr, II or the like/u],
    ['many commas in place of “and”', 'Plover A, Wren B, Heron C, Teal D', /names separated by “and”/u],
  ])('does not guess at authors with %s', (_what, author, expected) => {
    const exported = readExport(BIBTEX, `@article{k, author={${author}}, title={T}, year={2012}}`, 'x.bib');
    const { added, problems } = planAdditions(exported.entries, [], 'x.bib', BIBTEX.fields);
    expect(added).toEqual([]);
    expect([...exported.problems, ...problems].map((problem) => problem.column)).toEqual(['authors']);
    expect([...exported.problems, ...problems][0].expected).toMatch(expected);
  });
});

describe('names of studies', () => {
  const named = (count: number, authors = 'Plover A', year = '2012') =>
    Array.from({ length: count }, () => ({ authors, year }));

  it.each([
    ['are family name and year', named(1, 'von Essen CD, Wren A'), [], ['von Essen 2012']],
    ['of an organisation are its name', named(1, 'World Health Organization'), [], ['World Health Organization 2012']],
    ['have letters from a where two new ones share it', named(2), [], ['Plover 2012a', 'Plover 2012b']],
    ['go on from one without a letter', named(1), ['Plover 2012'], ['Plover 2012b']],
    ['go on from the highest letter', named(2), ['Plover 2012a', 'Plover 2012c'], ['Plover 2012d', 'Plover 2012e']],
    ['do not tell capitals from small letters', named(1), ['PLOVER 2012'], ['Plover 2012b']],
    ['leave other names alone', named(1), ['Plover 2012 pilot', 'Plover 20123'], ['Plover 2012']],
  ] as const)('%s', (_what, studies, taken, names) => {
    expect(nameStudies(studies, taken)).toEqual(names);
  });

  it('of thirty go past z and are all different', () => {
    const names = nameStudies(named(30), []);
    expect(names.slice(25, 28)).toEqual(['Plover 2012z', 'Plover 2012aa', 'Plover 2012ab']);
    expect(nameStudies(named(1), names)).toEqual(['Plover 2012ae']);
    expect(new Set(names).size).toBe(30);
  });
});

describe('appended lines', () => {
  const header = 'study,authors,year,title,journal,volume,pages,doi,note';
  const awkward = cells({ authors: 'Plover A, Wren B', title: 'A "title"; with signs', journal: ' J' });

  it.each([
    ['LF', `${header}\n`, 'Plover 2012,"Plover A, Wren B",2012,"A ""title""; with signs"," J",,,,\n'],
    ['CRLF', `${header}\r\n`, 'Plover 2012,"Plover A, Wren B",2012,"A ""title""; with signs"," J",,,,\r\n'],
    [
      'no break at its end',
      `${header}\r\nx,y,2000,z,,,,,`,
      '\r\nPlover 2012,"Plover A, Wren B",2012,"A ""title""; with signs"," J",,,,\r\n',
    ],
    [
      'semicolons',
      header.replaceAll(',', ';'),
      '\nPlover 2012;Plover A, Wren B;2012;"A ""title""; with signs";" J";;;;\n',
    ],
    [
      'other columns in another order',
      'shelf,title,year,authors,study\n',
      ',"A ""title""; with signs",2012,"Plover A, Wren B",Plover 2012\n',
    ],
  ])('follow the file: %s', (_what, existing, expected) => {
    expect(appendRows(existing, [awkward], STUDY_COLUMNS, 'studies.csv').text).toBe(expected);
  });

  it('name the columns that the table does not have', () => {
    expect(
      appendRows('study,authors,year,title\n', [cells({ doi: '10.1000/x' })], STUDY_COLUMNS, 'studies.csv').unwritten,
    ).toEqual(['doi']);
  });

  it('are none where there is nothing to add', () => {
    expect(appendRows(header, [], STUDY_COLUMNS, 'studies.csv')).toEqual({ text: '', unwritten: [] });
  });
});

describe('the command', () => {
  const { folder, file } = useFolder('references');
  const runReferences = (...parameters: string[]) => run('references', ...parameters);
  const good = file(
    'good.ris',
    `\ufeff${ris('AU  - Plover, Anna', 'TI  - A new study, of reserve', 'PY  - 1996', 'DO  - 10.1000/new')}${ris('AU  - Plover, A', 'TI  - Repetitions in reserve in the leg press: an invented study', 'PY  - 1996')}`,
  );

  it('without --write prints what it would add, changes nothing and ends in 0', () => {
    const before = readFileSync('data/studies.csv');
    const { status, stdout, stderr } = runReferences(good);
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(
      /1 to data\/studies\.csv would be added \(nothing is written without --write\):\nPlover 1996b,Plover A,1996,"A new study, of reserve",,,,10\.1000\/new,\n/u,
    );
    expect(stdout).toMatch(
      /1 already there:\n {2}line 7, “Repetitions in reserve[^\n]*: the same title and year as Plover 1996, line 2\n/u,
    );
    expect(stdout).toMatch(
      /warning: studies\.csv: line 50, `study`: expected a study that has arms in arms\.csv, received “Plover 1996b”/u,
    );
    expect(readFileSync('data/studies.csv').equals(before)).toBe(true);
  });

  it('with --write keeps every byte of the table, appends valid rows, and adds nothing the second time', () => {
    const existing = Buffer.from(`\ufeff${readFileSync('data/studies.csv', 'utf8').trim().replaceAll('\n', '\r\n')}`);
    const table = file('studies.csv', existing);
    expect(runReferences(good, '--table', table, '--write')).toMatchObject({ status: 0, stderr: '' });
    const written = readFileSync(table);
    expect(written.subarray(0, existing.length).equals(existing)).toBe(true);
    expect(written.subarray(existing.length).toString()).toBe(
      '\r\nPlover 1996b,Plover A,1996,"A new study, of reserve",,,,10.1000/new,\r\n',
    );
    const { studies, problems, warnings } = readStudies(written.toString(), 'studies.csv');
    expect([studies.length, problems, warnings]).toEqual([49, [], []]);
    expect(runReferences(good, '--table', table, '--write').stdout).toMatch(/\n0 to .* added\n2 already there/u);
    expect(readFileSync(table).equals(written)).toBe(true);
  });

  it('reads an export in UTF-16 or Windows-1252 and the arms in UTF-16, and says how', () => {
    const elsewhere = mkdtempSync(join(folder, 'encodings-'));
    const [table, arms] = [join(elsewhere, 'studies.csv'), join(elsewhere, 'arms.csv')];
    writeFileSync(table, readFileSync('data/studies.csv'));
    writeFileSync(arms, `\ufeff${readFileSync('data/arms.csv', 'utf8')}`, 'utf16le');
    const text = ris('AU  - Åberg, Anna', 'TI  - A new study', 'PY  - 2011');
    const exports = [
      [Buffer.from(`\ufeff${text}`, 'utf16le'), 'UTF-16 (little-endian)'],
      [Buffer.from(text, 'latin1'), 'Windows-1252: look whether these are right: Å'],
    ] as const;
    for (const [bytes, encoding] of exports) {
      const { status, stdout } = runReferences(file('other.ris', bytes), '--table', table);
      expect(status).toBe(0);
      expect(stdout).toContain(encoding);
      expect(stdout).toContain('\nÅberg 2011,Åberg A,2011,A new study,');
      expect(stdout).toMatch(/warning: studies\.csv: line 50, `study`: expected a study that has arms in arms\.csv/u);
    }
  });

  it('fills a table that has only a header, and says that there are no arms to compare with', () => {
    const elsewhere = mkdtempSync(join(folder, 'new-'));
    const table = join(elsewhere, 'studies.csv');
    writeFileSync(table, 'study,authors,year,title\n');
    const { status, stdout } = runReferences(good, '--table', table, '--write');
    expect(status).toBe(0);
    expect(stdout).toMatch(/warning: .* has no column doi; what the entries say there is not written/u);
    expect(stdout).toMatch(/no .*arms\.csv beside the table, so that its studies were not compared/u);
    expect(readStudies(readFileSync(table, 'utf8'), 'studies.csv').studies.map(({ study }) => study)).toEqual([
      'Plover 1996a',
      'Plover 1996b',
    ]);
  });

  it('says which studies of the arms beside the table have no line', () => {
    const elsewhere = mkdtempSync(join(folder, 'arms-'));
    copyFileSync('data/arms.csv', join(elsewhere, 'arms.csv'));
    const table = join(elsewhere, 'studies.csv');
    writeFileSync(table, readFileSync('data/studies.csv', 'utf8').replace(/^Wren 2007.*\n/mu, ''));
    expect(runReferences(good, '--table', table).stdout).toMatch(
      /warning: arms\.csv: line \d+, `study`: expected a study that has a line in studies\.csv, received “Wren 2007”/u,
    );
  });

  it('adds what it can of an export with problems, lists them and ends in 1', () => {
    const table = join(mkdtempSync(join(folder, 'some-')), 'studies.csv');
    copyFileSync('data/studies.csv', table);
    const some = file(
      'some.bib',
      '@article{a, author={Teal, A}, title={New}, year={2020}}\n@article{b, title={No author}, year={2020}}\n',
    );
    const { status, stdout, stderr } = runReferences(some, '--table', table, '--write');
    expect(status).toBe(1);
    expect(stdout).toMatch(/1 to .* added:\nTeal 2020,Teal A,2020,New/u);
    expect(stderr).toMatch(
      /some\.bib: line 2, `authors`: expected a value, received nothing\. Add a field author to the entry\. It is entry b, “No author”/u,
    );
    expect(readFileSync(table, 'utf8')).toMatch(/\nTeal 2020,Teal A,2020,New,,,,,\n$/u);
  });

  it('adds nothing to a table with problems and lists them', () => {
    const table = file('wrong.csv', 'study,authors,year,title\nPlover 2012,Plover A,next year,T\n');
    const { status, stderr } = runReferences(good, '--table', table, '--write');
    expect(status).toBe(1);
    expect(stderr).toMatch(/wrong\.csv: line 2, `year`[\s\S]*nothing is added/u);
    expect(readFileSync(table, 'utf8')).toMatch(/next year,T\n$/u);
  });

  it('does not add to a table that is not UTF-8', () => {
    const table = file(
      'latin.csv',
      Buffer.from('study,authors,year,title\nPlover 2012,M\u00f6we A,2012,T\n', 'latin1'),
    );
    const { status, stderr } = runReferences(good, '--table', table, '--write');
    expect(status).toBe(1);
    expect(stderr).toMatch(/UTF-8/u);
  });

  it.each([
    ['no export', [], /expected one export, received 0[\s\S]*usage/u],
    ['two exports', ['a.ris', 'b.bib'], /expected one export, received 2/u],
    ['an unknown option', ['a.ris', '--colour'], /--colour[\s\S]*usage/u],
    ['an option without its value', ['a.ris', '--table'], /--table[\s\S]*usage/u],
    ['another kind of file', ['a.docx'], /a file that ends in \.ris, \.bib or \.json, received a\.docx/u],
    ['an export that is not there', ['none.ris'], /cannot read the export none\.ris: expected a file, found nothing/u],
    [
      'a table that is not there',
      [good, '--table', 'none.csv'],
      /cannot read the table none\.csv: expected a file, found nothing/u,
    ],
    [
      'a folder as the table',
      [good, '--table', 'data'],
      /cannot read the table data: expected a file, found a folder/u,
    ],
  ])('with %s ends in 2 with what was wrong', (_what, parameters, message) => {
    const { status, stderr } = runReferences(...parameters);
    expect(status).toBe(2);
    expect(stderr).toMatch(message);
  });
});
