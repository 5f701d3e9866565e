/**
 * A notebook for Python from a script whose cells are marked: `# %%` begins code, `# %% [markdown]` words, which stand in
 * comments. Format 4.5 as https://nbformat.readthedocs.io describes it; nothing is run yet, so there are no outputs.
 */

interface Cell {
  readonly isWords: boolean;
  readonly text: string;
}

/** Cells of a marked script, in order; what stands before the first mark is none. */
export function splitCells(script: string): readonly Cell[] {
  return script
    .split(/^# %%/mu)
    .slice(1)
    .map((part) => {
      const [mark, ...lines] = part.split('\n');
      const isWords = mark.includes('[markdown]');
      const text = lines.map((line) => (isWords ? line.replace(/^# ?/u, '') : line)).join('\n');
      return { isWords, text: text.trim() };
    });
}

/** @param cells the first may be of words or code */
export function writeNotebook(cells: readonly Cell[]): string {
  const notebook = {
    nbformat: 4,
    nbformat_minor: 5,
    metadata: {
      kernelspec: { display_name: 'Python 3', language: 'python', name: 'python3' },
      language_info: { name: 'python' },
    },
    cells: cells.map(({ isWords, text }, i) => {
      const source = text.split(/(?<=\n)/u);
      const common = { id: `cell-${i + 1}`, metadata: {}, source };
      return isWords
        ? { cell_type: 'markdown', ...common }
        : { cell_type: 'code', ...common, execution_count: null, outputs: [] };
    }),
  };
  return `${JSON.stringify(notebook, null, 1)}\n`;
}
