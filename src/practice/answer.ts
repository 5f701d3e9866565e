/** The answer in one sentence, never stronger than its intervals. */

import { listBands } from '../model/bands.ts';
import type { PracticeAnalysis } from '../model/full.ts';
import { type BandName, LEAST_RELIABLE_DF, type Target } from '../model/result.ts';
import type { TargetInterval, WholeRange } from '../model/wholeRepetitions.ts';
import { countOf } from '../numerics/countOf.ts';
import { writePercent } from '../numerics/percent.ts';
import { LEAST_ADVICE_STUDIES } from './chooseReserve.ts';
import { LOAD_NAMES } from './loadNames.ts';

type Answered = Pick<PracticeAnalysis, 'settings' | 'bands'>;

/** “To keep 90 % of the growth that training to failure brings, about 1 repetition may stay in reserve …” */
export function stateAnswer(analysis: Answered): string {
  const { bands, settings } = analysis;
  const share = `${writePercent(settings.keptShare)} of the growth that training to failure brings`;
  if ('all' in bands) return `To keep ${share}, ${stateTarget(bands.all.target, 'at any load')}.`;
  const { light, heavy } = bands;
  const inLight = stateTarget(light.target, `with light loads (below ${settings.split}\u00a0% of 1RM)`);
  const inHeavy = stateTarget(heavy.target, 'with heavy loads');
  if (light.target.point === null && heavy.target.point === null) {
    return noNumber(settings);
  }
  return `To keep ${share}, ${inLight}; ${inHeavy}.`;
}

/** “2 to 3 repetitions may stay in reserve with heavy loads, about 1 repetition with light ones.” */
export function stateHeadline({ bands, settings }: Answered): string {
  if ('all' in bands) {
    const { whole } = bands.all.target;
    return whole ? `${beginWith(tellAmount(whole))} may stay in reserve at any load.` : noNumber(settings);
  }
  const [heavy, light] = [bands.heavy.target.whole, bands.light.target.whole];
  if (heavy && light) {
    return `${beginWith(tellAmount(heavy))} may stay in reserve with heavy loads, ${tellAmount(light)} with light ones.`;
  }
  if (!heavy && !light) return noNumber(settings);
  const [known, unknown] = heavy ? (['heavy', 'light'] as const) : (['light', 'heavy'] as const);
  return `${beginWith(tellAmount(heavy ?? light ?? { least: 0, most: 0 }))} may stay in reserve with ${LOAD_NAMES[known]}; this evidence gives no number for ${LOAD_NAMES[unknown]}.`;
}

/** What the headline's numbers keep, and how sure they are: “That keeps 90 % of …: heavy loads (…) 3.1, between 1.6 and 4.5.” */
export function stateIntervals({ bands, settings }: Answered): string {
  const parts = [...listBands(bands)].reverse().flatMap(
    ([
      name,
      {
        target: { shown },
      },
    ]) => {
      if (!shown) return [];
      return [
        `${LOAD_NAMES[name]}${limitsOf(name, settings.split)} ${shown.point.toFixed(1)}, ${stateInterval(shown)}`,
      ];
    },
  );
  if (parts.length === 0) return '';
  const share = `${writePercent(settings.keptShare)} of the growth that training to failure brings`;
  return `That keeps ${share}. Estimates, with ${writePercent(settings.confidence)} intervals: ${parts.join('; ')}.`;
}

function limitsOf(name: BandName, split: number | null): string {
  if (name === 'all') return '';
  return name === 'light' ? ` (below ${split}\u00a0% of 1RM)` : ` (from ${split}\u00a0%)`;
}

function noNumber({ keptShare }: Answered['settings']): string {
  return `This evidence gives no reserve that keeps ${writePercent(keptShare)} of the growth that training to failure brings.`;
}

/** As the beginning of a sentence. */
function beginWith(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/**
 * What the answer's sentence leaves unsaid and must not: why a number or an end of its interval is missing,
 * and which intervals rest on too few degrees of freedom. A sentence each; none where nothing is amiss.
 */
export function stateDoubts({ bands }: Pick<PracticeAnalysis, 'bands'>): readonly string[] {
  return listBands(bands).flatMap(([name, { studies, target, unreliable }]) => {
    const where = `With ${LOAD_NAMES[name]},`;
    const why = target.reason === null ? [] : [`${where} ${target.point === null ? 'there is ' : ''}${target.reason}.`];
    const few = unreliable
      ? [`${where} a coefficient has fewer than ${LEAST_RELIABLE_DF} degrees of freedom: the interval is unreliable.`]
      : [];
    const noAdvice =
      target.point !== null && studies < LEAST_ADVICE_STUDIES
        ? [
            `${where} the number rests on ${studies} studies: too few to advise a lifter by, which takes at least ${LEAST_ADVICE_STUDIES}.`,
          ]
        : [];
    return [...why, ...few, ...noAdvice];
  });
}

/** “about 3 repetitions may stay in reserve with heavy loads, between 2.6 and 6.0” */
function stateTarget(target: Target, where: string): string {
  const { shown, whole } = target;
  if (shown === null || whole === null) return `no number can be given ${where}`;
  const amount = tellAmount(whole);
  return `${amount} may stay in reserve ${where}, ${stateInterval(shown)}`;
}

/** “2 to 3 repetitions”, “about 1 repetition”, “less than 1 repetition”. */
function tellAmount({ least, most }: WholeRange): string {
  if (most === 0) return 'less than 1 repetition';
  return least === most ? `about ${countOf(most, 'repetition')}` : `${least} to ${countOf(most, 'repetition')}`;
}

/** The interval in words; “at least” where the evidence sets no upper end. */
function stateInterval({ low, high }: TargetInterval): string {
  return high === null ? `at least ${low.toFixed(1)}` : `between ${low.toFixed(1)} and ${high.toFixed(1)}`;
}
