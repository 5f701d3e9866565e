/**
 * What the effects of an outcome's rows are called. Those of strength are gains, not strength itself; those of fatigue are
 * changes of performance, below 0 where it is lost, so that a higher one is less fatigue, not more.
 */
import type { Settings } from '../model/settings.ts';

interface OutcomeWords {
  /** “90 % of the … at reserve 0”, “…, %”. */
  readonly effect: string;
  /** “At reserve 0 … is 7.2 %”. */
  readonly subject: string;
  /** “less growth”, “better performance”: an effect that is lower or higher than another. */
  readonly lower: string;
  readonly higher: string;
  readonly compared: string;
}

export const OUTCOME_WORDS = {
  growth: { effect: 'growth', subject: 'growth', lower: 'less', higher: 'more', compared: 'growth' },
  strength: {
    effect: 'strength gain',
    subject: 'the strength gain',
    lower: 'less',
    higher: 'more',
    compared: 'strength gain',
  },
  fatigue: {
    effect: 'change of performance',
    subject: 'the change of performance',
    lower: 'worse',
    higher: 'better',
    compared: 'performance',
  },
} as const satisfies Readonly<Record<Settings['outcome'], OutcomeWords>>;
