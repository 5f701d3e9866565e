/** The table of studies: which rows are shown, in which order, and what the status line says. */
import { describe, expect, it } from 'vitest';
import { createStudyTable, type StudyRow } from '../../../src/islands/studies/sorting.state.ts';

const row = (words: string, design: string, outcomes: string[], year: number | null): StudyRow => ({
  words,
  facts: { design: [design], outcomes },
  values: [words, year],
});
const ROWS = [
  row('Plover leg press', 'parallel', ['growth', 'strength'], 1996),
  row('Müller arm curl', 'within-person', ['growth'], null),
  row('Wren leg press', 'crossover', ['fatigue'], 2007),
  row('Heron squat', 'parallel', ['growth'], 1996),
];
const make = () => createStudyTable(Object.freeze(ROWS), ['Study', 'Year']);

describe('the table of studies', () => {
  it('shows all rows as they stand at first', () => {
    const { shown, status, changed } = make();
    expect(shown.value).toEqual([0, 1, 2, 3]);
    expect(status.value).toBe('4 of 4 studies');
    expect(changed.value).toBe(false);
  });

  it('sorts rising, then falling; equals keep their order and what is missing stands last both times', () => {
    const { shown, status, sortBy } = make();
    sortBy(1);
    expect(shown.value).toEqual([0, 3, 2, 1]);
    expect(status.value).toBe('4 of 4 studies, by Year, rising');
    sortBy(1);
    expect(shown.value).toEqual([2, 0, 3, 1]);
    expect(status.value).toBe('4 of 4 studies, by Year, falling');
    sortBy(0);
    expect(shown.value).toEqual([3, 1, 0, 2]);
  });

  it('finds every part of what is sought, in any case and without marks', () => {
    const { shown, sought, status } = make();
    sought.value = ' PRESS  leg ';
    expect(shown.value).toEqual([0, 2]);
    sought.value = 'muller';
    expect(shown.value).toEqual([1]);
    sought.value = 'no such study';
    expect(status.value).toBe('0 of 4 studies');
  });

  it('keeps rows that have all chosen words, one of several counting', () => {
    const { shown, choose, reset, changed } = make();
    choose('outcomes', 'growth');
    expect(shown.value).toEqual([0, 1, 3]);
    choose('design', 'parallel');
    expect(shown.value).toEqual([0, 3]);
    choose('outcomes', '');
    choose('design', 'crossover');
    expect(shown.value).toEqual([2]);
    expect(changed.value).toBe(true);
    reset();
    expect(shown.value).toEqual([0, 1, 2, 3]);
  });

  it('that takes the place of another keeps what was sought, chosen and sorted by', () => {
    const before = make();
    before.sought.value = 'leg press';
    before.choose('design', 'parallel');
    before.sortBy(1);
    const { shown, status } = createStudyTable([...ROWS].reverse(), ['Study', 'Year'], before.choicesNow());
    expect(shown.value).toEqual([3]);
    expect(status.value).toBe('1 of 4 studies, by Year, rising');
  });
});
