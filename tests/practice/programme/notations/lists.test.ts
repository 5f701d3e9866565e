/** Numbers set by set, and numbers in no order that is known: refused in the field that they are of, with the fix. */
import { describe, expect, it } from 'vitest';
import { readCellOf, readLines } from './readLine.ts';

describe('a list of numbers, one for each set,', () => {
  it.each([
    ['RPE 7/8/9', 'reserve', /one with “RPE 7”, one with “RPE 8”, one with “RPE 9”; or.*“RPE 7-9”/u],
    ['7/8/9 RPE', 'reserve', /one with “RPE 7”/u],
    ['RPE 7-8-9', 'reserve', /one with “RPE 7”/u],
    ['2/1/0 RIR', 'reserve', /one with “2 RIR”, one with “1 RIR”, one with “0 RIR”; or.*“0-2 RIR”/u],
    ['2/1 RIR', 'reserve', /one with “2 RIR”, one with “1 RIR”/u],
    ['RIR 2/1/0', 'reserve', /one with “2 RIR”/u],
    ['RIR 2, 1, 0', 'reserve', /one with “0 RIR”/u],
    ['RIR 2,1,0', 'reserve', /one with “0 RIR”/u],
    ['3/2/1 reps in reserve', 'reserve', /one with “3 RIR”/u],
  ])('“%s” leaves its field empty', (said, column, fix) => {
    const { values, columns, asked, taken } = readLines(`Mon leg press 3x8 75% ${said}`);
    expect(columns).toEqual([column]);
    expect(asked[0]).toMatch(fix);
    expect(taken).toEqual([]);
    expect(values[0]).toMatchObject({
      reserve: null,
      sets: { value: { most: 3 } },
      repetitions: { value: { most: 8 } },
    });
  });

  it.each(['70/75/80%', '70/75%', '70/75/80 kg'])('of loads, “%s”, is one of loads', (said) => {
    const { values, columns, asked } = readLines(`Mon leg press 3x8 ${said} 2 RIR`);
    expect(columns).toEqual(['load']);
    expect(asked[0]).toMatch(/one load for all sets of a line.*one with “70 ?(?:%|kg)”, one with “75 ?(?:%|kg)”/u);
    expect(values[0]).toMatchObject({ load: null, reserve: { value: { most: 2 } } });
  });

  it.each([
    ['RPE', '7/8/9', 'reserve', /“RPE 7”/u],
    ['RIR', '2/1/0', 'reserve', /“2 RIR”/u],
    ['%1RM', '70/75/80', 'load', /“70%”/u],
    ['Sets', '3/4', 'sets', /one number of sets/u],
    ['Reps', '12/10/8', 'repetitions', /“1x12”, “1x10”, “1x8”/u],
  ] as const)('in a column %s, “%s”, is of that column', (column, text, field, fix) => {
    const { columns, asked } = readCellOf(column, text);
    expect(columns).toEqual([field]);
    expect(asked[0]).toMatch(fix);
  });
});

describe('three numbers with signs for times', () => {
  it.each([
    ['75x8x3', /Write “3x8” for 3 sets of 8, or “8x3” for 8 sets of 3, .*“75%” of 1RM or “75 kg”/u],
    ['72,5 x 8 x 3', /Write “3x8”.*“72,5%”/u],
    ['5x5x5', /Write “5x5” for 5 sets of 5, then the load with its unit/u],
    ['3x8x75', /Write “3x8” for 3 sets of 8, .*“75%” of 1RM or “75 kg”/u],
  ])('“%s” are asked about once, and the fix is named', (said, fix) => {
    const { asked } = readLines(`Mon leg press ${said} 2 RIR`);
    expect(asked).toHaveLength(1);
    expect(asked[0]).toMatch(fix);
  });

  it('of which the last says its unit are read', () => {
    expect(readLines('Mon leg press 3x8x72,5% 2 RIR').cells[0]).toMatchObject({
      sets: '3',
      repetitions: '8',
      load: '72.5',
    });
  });
});

describe('a number that its column does not allow', () => {
  it.each([
    ['Sets', '75', /Write sets before repetitions/u],
    ['%1RM', '140', /write it as “80%”/u],
    ['RIR', '40', /write it as “2 RIR”/u],
    ['Sets', 'four', /Write a number, “3”/u],
    ['RIR', '2 min', /Write a number, “2 RIR”/u],
    ['RIR', 'some', /Write a number, “2 RIR”/u],
  ] as const)('in a column %s, “%s”, names the fix', (column, text, fix) => {
    expect(readCellOf(column, text).asked.join()).toMatch(fix);
  });
});

describe('repetitions possible', () => {
  it.each(['possible 12,5', 'possible: 12.5', '12,5 possible', '12,5 reps possible'])('are read in “%s”', (said) => {
    const { asked, values } = readLines(`Mon leg press 3x12, ${said}`);
    expect(asked).toEqual([]);
    expect(values[0]).toMatchObject({ possible: { value: { least: 12.5, most: 12.5 } }, notes: [] });
  });

  it('are the same in a line and in a column', () => {
    const [cell] = readLines('Day;Exercise;Sets;Reps;Possible\nMon;leg press;3;12;12,5').cells;
    expect(cell).toEqual(readLines('Mon leg press 3x12 possible 12,5').cells[0]);
  });
});
