/** What a person calls the words that cells of `arms.csv` are chosen from. The types name a word that has none yet. */
import type { CellOf } from './column.ts';
import type { ARM_COLUMNS, ArmColumn } from './schema.ts';

type WordOf<Name extends ArmColumn> = Extract<CellOf<(typeof ARM_COLUMNS)[Name]>, string>;
/** Columns whose cells hold one of some words. */
type ChosenColumn = {
  [Name in ArmColumn]: [WordOf<Name>] extends [never] ? never : string extends WordOf<Name> ? never : Name;
}[ArmColumn];

const CHOICES: { readonly [Name in ChosenColumn]: Readonly<Record<WordOf<Name>, string>> } = {
  design: {
    parallel: 'different people',
    'within-person': 'limbs of the same people',
    crossover: 'the same people, one after the other',
  },
  concerns: { low: 'little concern', some: 'some concerns', high: 'high risk' },
  training_status: { untrained: 'not trained before', trained: 'trained before' },
  sex: { female: 'women', male: 'men', mixed: 'women and men' },
  joints: { single: 'one joint', multi: 'several joints' },
  failure_definition: {
    technique: 'the agreed form could not be kept',
    'full range': 'the full range could not be completed',
    muscular: 'the muscle could do no more',
    task: 'it would not have passed the rules of the lift',
  },
  reserve_basis: {
    reported: 'measured or asked',
    prescribed: 'what people were told to leave',
    repetitions: 'repetitions possible minus those done',
    'share-of-maximum': 'a stated share of the repetitions possible',
    'velocity-loss': 'the slowing of the bar',
    'load-table': 'repetitions done and the load',
  },
  beyond_failure: {
    none: 'none',
    partials: 'repetitions of shortened range',
    'load-drops': 'less load at once',
    'rest-pause': 'a few seconds of rest, then more',
    assisted: 'repetitions with help',
  },
  outcome: { growth: 'growth of a muscle', strength: 'strength', fatigue: 'fatigue after one session' },
  ci_kind: { confidence: 'confidence', credible: 'credible (of a posterior)' },
  effect_metric: { 'log-ratio': 'log of after over before', standardised: 'standardised' },
  effect_standardiser: {
    'baseline-sd': 'the SD before',
    'pooled-sd': 'the SDs before and after, pooled',
    'change-sd': 'the SD of the change',
  },
  how_read: {
    'full text': 'the full text',
    abstract: 'the abstract alone',
    'second-hand': 'another paper that quotes it',
  },
};

/** What a person calls a word of a column; the word itself where it needs no other. */
export function nameChoice(column: ArmColumn, word: string): string {
  const words: Readonly<Record<string, string>> | undefined = Object.hasOwn(CHOICES, column)
    ? CHOICES[column as ChosenColumn]
    : undefined;
  return words && Object.hasOwn(words, word) ? words[word] : word;
}
