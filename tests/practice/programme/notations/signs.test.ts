/** Signs round a number, in lines and in cells alike: a bound is refused, “about” is taken and said; none vanishes. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCellOf, readLines } from './readLine.ts';

const BOUNDS_BEFORE = ['<', '>', '≤', '≥', '<=', '>=', '±', 'at least ', 'at most ', 'up to ', 'more than ', 'under '];
const BOUNDS_AFTER = ['+', '?', ' or more', ' or fewer'];
const ABOUT = ['~', '≈', 'about ', 'around ', 'approx. ', 'roughly '];

/** A number of each field where it stands in a line, and in a cell. */
const PLACES = [
  { field: 'reserve', column: 'RIR', value: 2, write: (n: string) => `3x8, 75%, ${n} RIR` },
  { field: 'reserve', column: 'RIR', value: 2, write: (n: string) => `3x8, 75%, RIR ${n}` },
  { field: 'reserve', column: 'RIR', value: 2, write: (n: string) => `3x8, 75%, leave ${n} in the tank` },
  { field: 'load', column: '%1RM', value: 75, write: (n: string) => `3x8, ${n}%, 2 RIR` },
  { field: 'repetitions', column: 'Reps', value: 8, write: (n: string) => `3 sets, ${n} reps, 75%, 2 RIR` },
  { field: 'sets', column: 'Sets', value: 3, write: (n: string) => `${n} sets, 8 reps, 75%, 2 RIR` },
] as const;

const place = fc.constantFrom(...PLACES);
const bound = fc.oneof(
  fc.constantFrom(...BOUNDS_BEFORE).map((sign) => (n: number) => `${sign}${n}`),
  fc.constantFrom(...BOUNDS_AFTER).map((sign) => (n: number) => `${n}${sign}`),
);

describe('a bound', () => {
  it('is refused in its own field, in a line as in a cell, and all else is read', () => {
    fc.assert(
      fc.property(place, bound, ({ field, column, value, write }, sign) => {
        for (const read of [readLines(`Mon leg press ${write(sign(value))}`), readCellOf(column, sign(value))]) {
          expect(read.columns).toEqual([field]);
          expect(read.asked[0]).toMatch(/if that is what is meant, or both ends of a range|without the plus/u);
          const [line] = read.values;
          for (const other of ['sets', 'repetitions', 'load', 'reserve'] as const) {
            expect(line[other] === null, other).toBe(other === field);
          }
        }
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it.each([
    ['3x5+', /“3x5” without the plus/u],
    ['3x5+ 75%', /“3x5” without the plus/u],
    ['3+x5', /Write “3x5”/u],
    ['3x8 75%+', /Write “75%”/u],
    ['3x8 75% RPE ≥8', /Write “RPE 8”/u],
    ['3x8 75%, max RPE 8', /Write “RPE 8”/u],
    ['3x8 75% RPE 8 max', /Write “RPE 8”/u],
    ['3x8 75% 2-3+ RIR', /Write “2-3 RIR”/u],
    ['3x8, 75%, RIR 2 minimum', /Write “RIR 2”/u],
    ['3x8 75%, at least two in reserve', /Write “two in reserve”/u],
    ['3x8 80% ±5%', /received “±5%”/u],
    ['3x8 80% +/- 5%', /received “\+\/- 5%”/u],
  ])('“%s” is told how to be written', (said, fix) => {
    expect(readLines(`Mon leg press ${said}`).asked.join('\n')).toMatch(fix);
  });

  it('and “about” round two numbers are each said', () => {
    const { values, taken, columns } = readLines('Mon leg press ~3x8+ 75% 2 RIR');
    expect(values[0]).toMatchObject({ sets: { value: { most: 3 } }, repetitions: null });
    expect([taken, columns]).toEqual([['“~3” is taken as 3.'], ['repetitions']]);
  });

  it('round each of two numbers leaves neither', () => {
    expect(readLines('Mon leg press ≥3x8+ 75% 2 RIR').values[0]).toMatchObject({ sets: null, repetitions: null });
  });

  it.each([
    ['RIR', '-2'],
    ['%1RM', '+5'],
    ['Reps', '–8'],
  ] as const)('in a column %s a number with a sign before it, “%s”, is refused', (column, text) => {
    expect(readCellOf(column, text).asked.join()).toMatch(/without a sign before it/u);
  });
});

describe('“about”', () => {
  it('is taken as the number, which is said, in a line as in a cell', () => {
    fc.assert(
      fc.property(place, fc.constantFrom(...ABOUT), ({ field, column, value, write }, sign) => {
        const written = `${sign}${value}`;
        for (const read of [readLines(`Mon leg press ${write(written)}`), readCellOf(column, written)]) {
          expect(read.asked).toEqual([]);
          expect(read.values[0][field]?.value).toMatchObject({ least: value, most: value });
          expect(read.taken).toContain(`“${written}” is taken as ${value}.`);
        }
      }),
      { seed: 12, numRuns: 200 },
    );
  });

  it('of a rating is said beside what the rating is taken as', () => {
    const { taken, values } = readLines('Mon leg press 3x8 75% RPE ~8');
    expect(values[0].reserve?.value).toEqual({ least: 2, most: 2 });
    expect(taken).toEqual(['“~8” is taken as 8.', expect.stringMatching(/^An effort rating of 8 out of ten/u)]);
  });
});

describe('signs that are of no number', () => {
  it.each([
    'leg press -> 3x8 -> 75% -> 2 RIR',
    '> leg press 3x8 75% 2 RIR',
    'leg press 3x8 75% 2 RIR, rest ~2 min',
    'leg press 3x8 75% 2 RIR, rest 3 min',
    'leg press 3x8 75% 2 RIR + spotter',
  ])('leave “%s” as it is', (text) => {
    const { asked, values } = readLines(`Mon ${text}`.replace('Mon >', '> Mon'));
    expect(asked).toEqual([]);
    expect(values[0]).toMatchObject({ load: { value: { most: 75 } }, reserve: { value: { least: 2, most: 2 } } });
  });

  it('and words like them stand in names', () => {
    expect(readLines('Mon bent over row 3x8 75% 2 RIR').cells[0].exercise).toBe('barbell row');
    expect(readLines('Mon bent over 3x8 75% 2 RIR').values[0].exercise?.value).toBe('bent over');
  });
});
