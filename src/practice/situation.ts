/** What advice depends on besides the evidence. */
import type { Exercise } from '../evidence/exercises.ts';
import type { TRAINING_STATUSES } from '../evidence/vocabulary.ts';
import type { Company, Guarded } from './cautions.ts';
import type { Judgement } from './judgement.ts';

export const PURPOSES = ['growth', 'strength, main lift', 'strength, accessory', 'staying fresh'] as const;
/** What the set is for. */
export type Purpose = (typeof PURPOSES)[number];

export type TrainingStatus = (typeof TRAINING_STATUSES)[number];

export interface Situation {
  readonly purpose: Purpose;
  /** Per cent of 1RM. */
  readonly load: number;
  /** Repetitions planned in a set of a main lift, at least 1; the other purposes do not read it. */
  readonly planned: number;
  readonly exercise: Pick<Exercise, 'name' | 'partials'> & Guarded;
  readonly company: Company;
  readonly status: TrainingStatus;
  /** Hours from the session to the event; null where none is near. */
  readonly hoursToEvent: number | null;
  readonly judgement: Judgement;
}
