/** One line of a programme against the evidence: what its reserve keeps, what would be advised, and what binds it. */
import type { PracticeAnalysis } from '../../model/full.ts';
import { guardCautions, isUnguarded, LEAST_RESERVE_WHEN_PINNED } from '../cautions.ts';
import { type ChosenReserve, chooseReserve } from '../chooseReserve.ts';
import { type EvidenceNear, evidenceNear } from '../evidenceNear.ts';
import { TAKEN_AS_SAID } from '../judgement.ts';
import { type KeptAnswer, keptAt } from '../kept.ts';
import { judgePlausibility, type Plausibility } from '../plausible.ts';
import type { Situation, TrainingStatus } from '../situation.ts';
import type { ProgrammeLine } from './columns.ts';

/**
 * closer, further: than the advised range; inside: in it; questioned: it would be in it, but so many
 * repetitions do not fit the load; none: there is no range.
 */
export type AgainstAdvice = 'closer' | 'inside' | 'further' | 'questioned' | 'none';

export interface CheckedLine {
  readonly line: ProgrammeLine;
  readonly kept: KeptAnswer;
  readonly advised: ChosenReserve;
  readonly against: AgainstAdvice;
  /** Whether repetitions done and left fit the load. */
  readonly plausibility: Plausibility;
  /** True where the load can pin the lifter, nothing would take it, and less than safety asks for is left. */
  readonly unsafe: boolean;
  readonly near: EvidenceNear;
  /** Cautions of this line; those for every line stand once beside the programme. */
  readonly cautions: readonly string[];
}

/** A reserve, at the decimal at which it is shown, counts as in a range of whole repetitions up to half of one outside it. */
const HALF = 0.5;

export function checkLine(analysis: PracticeAnalysis, line: ProgrammeLine, status: TrainingStatus): CheckedLine {
  const situation = situationOf(line, status);
  const advised = chooseReserve(analysis, situation);
  const plausibility = judgePlausibility({ ...line, relation: line.exercise.relation });
  const against = compareToRange(line.reserve, advised.reserve);
  return {
    line,
    kept: keptAt(analysis, line.load, line.reserve),
    advised,
    // More repetitions than the load allows are no set that could be as advised.
    against: against === 'inside' && plausibility.kind === 'too many' ? 'questioned' : against,
    plausibility,
    unsafe: isUnguarded(situation) && line.reserve < LEAST_RESERVE_WHEN_PINNED,
    near: evidenceNear(analysis, line.load, line.reserve),
    cautions: guardCautions(situation),
  };
}

/** Sets of a programme are checked as work for growth, reserve taken as written. */
function situationOf({ load, repetitions, exercise, company }: ProgrammeLine, status: TrainingStatus): Situation {
  return {
    purpose: 'growth',
    load,
    planned: repetitions,
    exercise,
    company,
    status,
    hoursToEvent: null,
    judgement: TAKEN_AS_SAID,
  };
}

function compareToRange(reserve: number, range: ChosenReserve['reserve']): Exclude<AgainstAdvice, 'questioned'> {
  if (!range) return 'none';
  const shown = Number(reserve.toFixed(1));
  if (shown < range.least - HALF) return 'closer';
  return shown > range.most + HALF ? 'further' : 'inside';
}
