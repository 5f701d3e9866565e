/**
 * The CSV of a figure. What is proven: each figure drawn from the numbers of its CSV alone, with the same
 * options, is the same picture to a thousandth of a pixel.
 */
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { listFigures } from '../../src/figures/catalogue.ts';
import type { Figure } from '../../src/figures/figure.ts';
import { writeFigureCsv } from '../../src/figures/figureFiles.ts';
import { groupMarks, listPlotted } from '../../src/figures/plotted.ts';
import { drawBare } from '../../src/site/drawFigure.ts';
import { settleSvg } from '../support/settleSvg.ts';
import { makeEvidence, shippedArms } from '../support/shippedFigures.ts';

const evidence = makeEvidence(shippedArms, { swept: true });
const { figures } = listFigures(evidence);
const context = {
  dataVersion: '0a1b2c3d',
  demonstration: true,
  settings: evidence.analysis.settings,
  address: '/figures/x/',
  mark: null,
};

/** Puts what a CSV says in the place of what the marks were made with. */
function redraw(plot: Figure['plot'], csv: string): string {
  const { data } = Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true });
  groupMarks(plot).forEach(([, marks], i) => {
    const rows = data.filter(({ layer }) => layer === String(i + 1)).map(readRow);
    // A row without columns of its own was a number or word by itself.
    const values = rows.map((row) => (Object.keys(row).join() === 'value' ? row.value : row));
    for (const mark of marks) mark.data = values;
  });
  return settleSvg(drawBare(plot));
}

function readRow({ layer: _layer, 'drawn as': _kind, note: _note, ...cells }: Record<string, string>) {
  return Object.fromEntries(
    Object.entries(cells)
      .filter(([, cell]) => cell !== '')
      .map(([name, cell]) => [name, /^-?\d/u.test(cell) && !Number.isNaN(Number(cell)) ? Number(cell) : cell]),
  );
}

describe('the CSV of', () => {
  it.each(figures)('$slug draws the same picture again', (made) => {
    const csv = writeFigureCsv(made, context);
    const first = settleSvg(drawBare(made.figure.plot));
    expect(redraw(made.figure.plot, csv)).toBe(first);
    expect(first.length).toBeGreaterThan(1500);
  });

  it('a figure with a number changed draws another picture', () => {
    const [made] = listFigures(evidence, 'growth-heavy').figures;
    const first = settleSvg(drawBare(made.figure.plot));
    const csv = writeFigureCsv(made, context);
    const changed = csv.replace(/("area, line",,)0,(\d)/u, '$10,1$2');
    expect(changed).not.toBe(csv);
    expect(redraw(made.figure.plot, changed)).not.toBe(first);
  });

  it('says in every row that the data are invented, where they are, and nothing where they are not', () => {
    const lines = writeFigureCsv(figures[0], context).trim().split('\r\n');
    expect(lines[0]).toMatch(/,note$/u);
    for (const line of lines.slice(1)) expect(line).toMatch(/,invented for demonstration$/u);
    expect(writeFigureCsv(figures[0], { ...context, demonstration: false })).not.toMatch(/invented|note/u);
  });

  it('growth has a row for every row of the fit, with its study, line and weight', () => {
    const rows = listPlotted(listFigures(evidence, 'growth-light').figures[0].figure.plot).flatMap(
      (layer) => layer.rows,
    );
    const marks = rows.filter((row) => 'weight' in row);
    if ('all' in evidence.analysis.bands) throw new Error('expected two bands');
    const { fitted } = evidence.analysis.bands.light;
    expect(marks.map(({ line, study, weight }) => [line, study, weight])).toEqual(
      fitted.map(({ line, study, weight }) => [line, study, Number(weight.toPrecision(10))]),
    );
  });
});

it('a datum that has no place in a cell is refused by name', () => {
  const plot = { marks: [{ data: [{ place: [1, 2] }], ariaLabel: 'dot' }] } as unknown as Figure['plot'];
  expect(() => listPlotted(plot)).toThrow('invalid datum; place is neither number nor word: [1,2]');
});
