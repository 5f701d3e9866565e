/**
 * The notebook to take home. What is proven: it is of the format 4.5, by the facts of its published schema
 * (https://nbformat.readthedocs.io/en/latest/format_description.html) and, where it is installed, by nbformat itself;
 * its cells, run in order, print the site's numbers; each step is explained before it is done.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { readArms } from '../../src/evidence/table.ts';
import { splitCells, writeNotebook } from '../../src/figures/takeHome/notebook.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { anySettings } from '../support/settingsArbitrary.ts';
import { LANGUAGES, packByEnding, readPrinted, run, steps } from '../support/takeHomeScripts.ts';

const { arms } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const folder = mkdtempSync(join(tmpdir(), 'notebook-'));
afterAll(() => rmSync(folder, { recursive: true }));
const python = LANGUAGES[1].command;

/** What every cell has; nothing else is allowed in one. */
const common = {
  id: z.string().check(z.regex(/^[a-zA-Z0-9-_]{1,64}$/u)),
  metadata: z.record(z.string(), z.unknown()),
  source: z.union([z.string(), z.array(z.string())]),
};
const format = z.strictObject({
  nbformat: z.literal(4),
  nbformat_minor: z.literal(5),
  metadata: z.looseObject({
    kernelspec: z.looseObject({ name: z.string(), display_name: z.string() }),
    language_info: z.looseObject({ name: z.string() }),
  }),
  cells: z.array(
    z.discriminatedUnion('cell_type', [
      z.strictObject({ ...common, cell_type: z.literal('markdown') }),
      z.strictObject({
        ...common,
        cell_type: z.literal('code'),
        execution_count: z.null(),
        outputs: z.array(z.never()),
      }),
    ]),
  ),
});

function notebookOf(settings = settingsSchema.parse({})): z.infer<typeof format> {
  return format.parse(JSON.parse(packByEnding(arms, settings).get('.ipynb') ?? ''));
}

/** Runs the code of the cells one after the other, each as a piece of its own, as a notebook's reader does. */
function runCells(command: string, text: string) {
  const notebook = join(folder, 'analysis.ipynb');
  const runner = join(folder, 'runCells.py');
  writeFileSync(notebook, text);
  writeFileSync(
    runner,
    `import json, sys
sys.stdout.reconfigure(errors="backslashreplace")
names = {}
for cell in json.load(open(sys.argv[1], encoding="utf-8"))["cells"]:
    if cell["cell_type"] == "code":
        exec(compile("".join(cell["source"]), cell["id"], "exec"), names)
`,
  );
  return run(command, runner, notebook);
}

describe('the notebook', () => {
  const { cells } = notebookOf();

  it('is of the format 4.5, its cells with names of their own', () => {
    expect(cells.length).toBeGreaterThan(12);
    expect(new Set(cells.map(({ id }) => id)).size).toBe(cells.length);
    expect(() => format.parse({ ...notebookOf(), more: 1 })).toThrow();
  });

  it('explains each step before it is done: effects, design, weights, REML, CR2, degrees of freedom, target', () => {
    const titles = cells.flatMap(({ cell_type: kind, source }) =>
      kind === 'markdown' ? (/^##? (.+)/u.exec([source].flat().join(''))?.[1] ?? 'none') : [],
    );
    const steps = [/effects/iu, /design/iu, /weights/iu, /REML/u, /CR2/u, /degrees of freedom/iu, /target/iu, /site/u];
    for (const [i, step] of steps.entries()) expect(titles[i + 1]).toMatch(step);
    // Words, data, then words and code in turn.
    const kinds = cells.map(({ cell_type: kind }) => kind);
    expect(kinds.slice(0, 2)).toEqual(['markdown', 'code']);
    for (const [i, kind] of kinds.slice(2).entries()) expect(kind).toBe(i % 2 === 0 ? 'markdown' : 'code');
  });

  it('says what was chosen and that the studies are invented', () => {
    const head = [cells[0].source].flat().join('');
    expect(head).toMatch(/DEMONSTRATION: the studies behind these rows are invented/u);
    expect(head).toMatch(/Growth to keep: 90 %/u);
  });

  it('has the words of a table as words, whatever markup they look like', () => {
    const hostile = settingsSchema.parse({ include: { withoutStudies: ['*a* [x](http://y) $z$\n# T', '<b>'] } });
    const head = [notebookOf(hostile).cells[0].source].flat().join('');
    expect(head).toContain('\\*a\\* \\[x\\](http://y) \\$z\\$ \\# T, \\<b\\>');
  });

  it('prints the site’s numbers when its cells are run in order, for settings of every kind', () => {
    if (python === null) return console.log('LEFT OUT: Python with numpy and scipy is not installed here');
    for (const settings of [settingsSchema.parse({}), ...fc.sample(anySettings(arms), { seed: 4, numRuns: 5 })]) {
      const { status, stdout, stderr } = runCells(python, packByEnding(arms, settings).get('.ipynb') ?? '');
      expect(status, stderr).toBe(0);
      for (const { what, here, site } of readPrinted(stdout))
        expect(Math.abs(here - site), `${JSON.stringify(settings)} ${what}`).toBeLessThanOrEqual(
          1e-6 * Math.abs(site || 1),
        );
    }
    expect(
      readPrinted(runCells(python, packByEnding(arms, settingsSchema.parse({})).get('.ipynb') ?? '').stdout).length,
    ).toBe(36);
  });

  it('is valid to nbformat itself', () => {
    if (python === null || run(python, '-c', 'import nbformat').status !== 0)
      return console.log('LEFT OUT: nbformat for Python is not installed here');
    const file = join(folder, 'valid.ipynb');
    writeFileSync(file, packByEnding(arms, settingsSchema.parse({})).get('.ipynb') ?? '');
    const { status, stderr } = run(
      python,
      '-c',
      'import nbformat, sys; nbformat.validate(nbformat.read(sys.argv[1], as_version=nbformat.NO_CONVERT))',
      file,
    );
    expect(stderr).toBe('');
    expect(status).toBe(0);
  });
});

describe('a marked script', () => {
  it('is split into words and code, nothing of it lost', () => {
    expect(splitCells('x\n# %% [markdown]\n# # A\n#\n# b # c\n\n# %%\nx = 1  # %% not a mark\n\n\ny\n')).toEqual([
      { isWords: true, text: '# A\n\nb # c' },
      { isWords: false, text: 'x = 1  # %% not a mark\n\n\ny' },
    ]);
    const whole = splitCells(steps.python).map(({ text }) => text);
    const lines = (text: string) => text.split('\n').filter((line) => line.trim() !== '').length;
    const marks = steps.python.match(/^# %%/gmu)?.length ?? 0;
    const empty = steps.python.match(/^#$/gmu)?.length ?? 0;
    expect(lines(whole.join('\n'))).toBe(lines(steps.python) - marks - empty);
    expect(JSON.parse(writeNotebook([])).cells).toEqual([]);
  });
});
