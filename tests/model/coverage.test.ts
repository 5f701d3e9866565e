/**
 * Counting intervals that hold a truth: as calibration measured it, each table once, in the same way for the same
 * seed; a summary by hand.
 */
import { describe, expect, it } from 'vitest';
import { SEED } from '../../scripts/measure/calibration.ts';
import { seedOf } from '../../scripts/measure/shapeCells.ts';
import { DEFAULT_EXPERIMENT } from '../../src/islands/intervals/experiment.ts';
import { makeWholeRun } from '../../src/islands/intervals/wholeRun.ts';
import { answerTables, type Cell, drawTables, summariseCoverage, type TableAnswer } from '../../src/model/coverage.ts';
import { describeFirst } from '../../src/model/drawnTable.ts';
import { CURVES } from '../../src/model/settings.ts';
import { measured } from '../../src/site/calibration.ts';

const take = <T>(steps: Iterator<T>, count: number): T[] =>
  Array.from({ length: count }, () => steps.next().value as T);

const { cells, fewest, further } = measured.shapes;

describe('200 tables', () => {
  const TABLES = 200;
  /** Truths of every kind, few and many studies, both layouts; refusals in the first. */
  const CELLS: readonly Cell[] = [
    { truth: 'log', studies: 4, layout: 'near' },
    { truth: 'saturating', studies: 8, layout: 'near' },
    { truth: 'plateau', studies: 15, layout: 'near' },
    { truth: 'square root', studies: 30, layout: 'spread' },
    { truth: 'no loss', studies: 8, layout: 'spread' },
  ];

  it.each(CELLS)(
    'of $studies studies around “$truth”, $layout, agree with the calibration within four errors of both',
    (cell) => {
      const stored = [...cells, ...fewest, ...further].find(
        ({ truth, studies, layout }) => truth === cell.truth && studies === cell.studies && layout === cell.layout,
      );
      if (!stored) throw new Error('expected a measured cell');
      const answers = take(answerTables(cell, ['line', 'flexible'], 7), TABLES);
      (['line', 'flexible'] as const).forEach((curve, place) => {
        const own = summariseCoverage(
          answers.map((table) => table[place]),
          stored.trueTarget ?? Number.POSITIVE_INFINITY,
        );
        const before = stored.shapes[curve];
        // Standard error of the difference of two shares, from the stored one; one table in `of` is the least that tells.
        const expectShare = (share: number | null, of: number, was: number | null, wasOf: number) => {
          const p = was ?? Number.NaN;
          const error = Math.max(1 / of, Math.sqrt(p * (1 - p) * (1 / of + 1 / wasOf)));
          expect(Math.abs((share ?? Number.NaN) - p), `${curve}: ${share} for ${p}`).toBeLessThan(4 * error);
        };
        expectShare(own.held, own.given, before.held, before.given);
        expectShare(own.given / TABLES, TABLES, before.given / stored.tables, stored.tables);
      });
    },
  );

  it('are the first of those that calibration draws with its seed', () => {
    const cell = CELLS[1];
    const seed = seedOf(cell, SEED);
    const few = take(answerTables(cell, ['line', 'flexible'], seed), 5);
    expect(take(answerTables(cell, ['line', 'flexible'], seed), 20).slice(0, 5)).toEqual(few);
  });

  it('are the same whatever is fitted to them, and answers the same whatever is fitted beside', () => {
    const cell = CELLS[1];
    const all = take(answerTables(cell, CURVES, 3), 10);
    CURVES.forEach((curve, place) => {
      expect(take(answerTables(cell, [curve], 3), 10).flat()).toEqual(all.map((table) => table[place]));
    });
    expect(take(drawTables(cell, 3), 2)).not.toEqual(take(drawTables(cell, 4), 2));
  });

  it('differ in growth alone around another truth', () => {
    const [one, other] = (['line', 'step'] as const).map((truth) => take(drawTables({ ...CELLS[1], truth }, 3), 3));
    expect(one.map(({ reserves }) => reserves)).toEqual(other.map(({ reserves }) => reserves));
    expect(one[0].observations.map(({ v }) => v)).toEqual(other[0].observations.map(({ v }) => v));
    expect(one[0].observations.map(({ y }) => y)).not.toEqual(other[0].observations.map(({ y }) => y));
  });
});

describe('the first table, described', () => {
  it('is the one that is counted first', () => {
    const cell: Cell = { truth: 'plateau', studies: 8, layout: 'spread' };
    const described = describeFirst(cell, CURVES, 5);
    const [first] = take(answerTables(cell, CURVES, 5), 1);
    expect(described.fits.map(({ answer }) => answer)).toEqual(first);
    const [table] = take(drawTables(cell, 5), 1);
    expect(described.rows.map(({ reserve }) => reserve)).toEqual(table.reserves);
    expect(described.rows.map(({ effect }) => effect)).toEqual(table.observations.map(({ y }) => y));
  });
});

describe('a summary', () => {
  const answer = (part: Partial<TableAnswer>): TableAnswer => ({
    furthest: 8,
    point: 2,
    low: 1,
    high: 4,
    refusal: null,
    holds: true,
    ...part,
  });
  const none = { point: null, low: null, high: null, holds: null } as const;

  it('counts intervals and refusals apart, by hand', () => {
    const answers = [
      answer({}),
      answer({ low: 3, high: null, holds: false }),
      answer({ ...none, refusal: 'fit' }),
      answer({ ...none, refusal: 'growth' }),
      answer({ ...none, refusal: 'noDifference' }),
    ];
    expect(summariseCoverage(answers, 2.5)).toEqual({
      given: 2,
      held: 0.5,
      heldError: Math.sqrt(0.125),
      refused: { fit: 1, growth: 1, noDifference: 1 },
      withoutUpperEnd: 0.5,
      // Widths 3, and 5 up to the furthest reserve.
      medianWidth: 4,
      medianBias: -0.5,
    });
  });

  it('has no share of none', () => {
    const { given, held, medianWidth } = summariseCoverage([answer({ ...none, refusal: 'fit' })], 2);
    expect([given, held, medianWidth]).toEqual([0, null, null]);
    expect(summariseCoverage([answer({})], Number.POSITIVE_INFINITY).medianBias).toBeNull();
  });
});

describe('the run that the page begins with', () => {
  it('is what the worker makes, cut to four decimals', () => {
    const { answers } = makeWholeRun(DEFAULT_EXPERIMENT);
    const { truth, studies, reserves, fit, against, seed } = DEFAULT_EXPERIMENT;
    if (against === 'none') throw new Error('expected two curves');
    const made = take(answerTables({ truth, studies, layout: reserves }, [fit, against], seed), answers.length);
    expect(answers).toHaveLength(TABLES_OF_A_RUN);
    answers.flat().forEach(({ point, low, high, ...rest }, i) => {
      const { point: p, low: l, high: h, ...others } = made.flat()[i];
      expect(rest).toEqual(others);
      for (const [cut, whole] of [
        [point, p],
        [low, l],
        [high, h],
      ] as const) {
        if (whole === null) expect(cut).toBeNull();
        else expect(Math.abs((cut ?? Number.NaN) - whole)).toBeLessThanOrEqual(0.5e-4 + 1e-12);
      }
    });
  });
});

/** As the page and README say. */
const TABLES_OF_A_RUN = 200;
