/** What the lesson rings on the figures, at places that are read from the run. */
import type { Spot } from '../../figures/pointOut.ts';
import { heightOfBar } from '../../figures/simulation/drawnTable.ts';
import type { TableAnswer } from '../../model/coverage.ts';
import { ALL_TRUTHS } from '../../model/truths.ts';
import { toPercent } from '../../numerics/percent.ts';
import type { Lesson } from './lesson.state.ts';
import { trueTargetIn } from './results.ts';
import type { Run } from './running.state.ts';

interface Spots {
  /** On the figure of the first table. */
  readonly table: readonly Spot[];
  /** On the figures of all intervals, by place. */
  readonly intervals: readonly (readonly Spot[])[];
}

const NONE: Spots = { table: [], intervals: [] };

/** @param now the step of the lesson; null where there is none */
export function spotsOf(now: Lesson['now']['value'], { experiment, answers }: Run): Spots {
  if (now === null) return NONE;
  const { seen, guess } = now;
  const growth = ALL_TRUTHS[experiment.truth];
  const target = trueTargetIn(experiment);
  if (seen.shown === 'curve' || seen.shown === 'truth') {
    const reserve = guess === null ? 0 : target;
    const words = guess === null ? 'growth at reserve 0' : 'the true target';
    return { ...NONE, table: [{ x: reserve, y: toPercent(growth(reserve)), words }] };
  }
  if (!seen.hasIntervals) {
    return { ...NONE, table: [{ x: target, y: heightOfBar(0), words: 'where the true target lies' }] };
  }
  const places = answers[0] ?? [];
  return {
    ...NONE,
    intervals: places.map((_, place) =>
      place === seen.look
        ? ringMiss(
            answers.map((table) => table[place]),
            target,
          )
        : [],
    ),
  };
}

/** An interval that misses the truth, in the middle of the picture, at its end that is nearer to the truth. */
function ringMiss(answers: readonly TableAnswer[], target: number): readonly Spot[] {
  const misses = answers.flatMap(({ holds }, i) => (holds === false ? [i] : []));
  const index = misses.find((i) => i >= answers.length / 2) ?? misses.at(-1) ?? -1;
  const { low, high } = answers[index] ?? { low: null, high: null };
  if (low === null) return [];
  const end = low > target || high === null ? low : high;
  return [{ x: end, y: index + 1, words: `an interval that misses the truth, of table ${index + 1}` }];
}
