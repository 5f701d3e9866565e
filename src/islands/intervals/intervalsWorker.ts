/** The worker that draws tables and fits them, telling of them as they come. */
import { answerTables, type Cell, type TableAnswer } from '../../model/coverage.ts';
import { type DescribedTable, describeFirst } from '../../model/drawnTable.ts';
import type { Curve } from '../../model/settings.ts';
import { answerCalls } from '../../ui/workerAnswers.ts';
import type { Operation } from '../../ui/workerCalls.ts';

interface Asked {
  readonly cell: Cell;
  readonly curves: readonly Curve[];
  readonly seed: number;
}

/** Each table's answers, by curve. */
export type Answers = readonly (readonly TableAnswer[])[];

export type IntervalsOperations = {
  /** Tells the tables since it last told any; comes to how long it took, milliseconds. */
  readonly run: Operation<Asked & { readonly tables: number }, number, Answers>;
  readonly look: Operation<Asked, DescribedTable>;
};

/** Milliseconds between one telling and the next: often enough to be watched, rare enough to be drawn meanwhile. */
const TELL = 80;

answerCalls<IntervalsOperations>({
  look: ({ cell, curves, seed }) => describeFirst(cell, curves, seed),
  run: async ({ cell, curves, seed, tables }, { report, signal }) => {
    const drawn = answerTables(cell, curves, seed);
    const start = performance.now();
    let told = start;
    let fresh: (readonly TableAnswer[])[] = [];
    for (let i = 0; i < tables; i++) {
      fresh.push(drawn.next().value);
      if (i < tables - 1 && performance.now() - told < TELL) continue;
      report(fresh);
      fresh = [];
      // Lets the wish to stop come in between.
      await new Promise((resolve) => setTimeout(resolve));
      signal.throwIfAborted();
      told = performance.now();
    }
    return performance.now() - start;
  },
});
