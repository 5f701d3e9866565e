/**
 * How a measure usually scatters in a table: the medians, over its rows, of the coefficient of variation before
 * training and of the correlation of before with after, where a row prints or implies them. A planned arm takes its
 * sampling variance from these.
 */
import { median } from 'simple-statistics';
import { type CountedArm, hasPeople } from '../../evidence/countedArm.ts';
import { groupRows } from '../../evidence/groupRows.ts';
import type { Arm } from '../../evidence/schema.ts';
import { resolveStatistics } from '../../evidence/statistics.ts';
import { countOf } from '../../numerics/countOf.ts';
import type { Settings } from '../settings.ts';

/** A number that is usual, and what it rests on, in words. */
export interface Usual {
  readonly value: number;
  /** Rows and studies behind it; 0 where it is the setting, was given or is any. */
  readonly rows: number;
  readonly studies: number;
  readonly from: 'measure' | 'all measures' | 'setting' | 'given' | 'any';
  readonly words: string;
}

export interface UsualMeasure {
  readonly measure: string;
  /** Rows of the outcome that measured it. */
  readonly rows: number;
  /** null where no row says; `reason` then says what is missing. */
  readonly coefficientOfVariation: Usual | null;
  readonly correlation: Usual;
  readonly reason: string | null;
}

/** Studies that a usual number needs: a single one would be taken for all (common practice, no source). */
const LEAST_STUDIES = 2;

/** The measures of the outcome, those of most rows first. */
export function listUsualMeasures(
  arms: readonly Arm[],
  settings: Pick<Settings, 'outcome' | 'assumedCorrelation'>,
): readonly UsualMeasure[] {
  const all = arms.filter(({ outcome }) => outcome === settings.outcome);
  const groups = [...groupRows(all, ({ measure }) => measure)].sort(
    ([a, m], [b, n]) => n.length - m.length || (a < b ? -1 : 1),
  );
  const assumed = settings.assumedCorrelation[settings.outcome];
  return groups.map(([measure, rows]): UsualMeasure => {
    const ofRows = <Value>(find: (from: readonly Arm[]) => Value | null) => find(rows) ?? find(all);
    const coefficientOfVariation = ofRows((from) =>
      medianOf(from, variationOf, measure, from === all, 'print an SD before beside its mean'),
    );
    const correlation = ofRows((from) =>
      medianOf(from, correlationOf, measure, from === all, 'give the correlation of before with after'),
    ) ?? {
      value: assumed,
      rows: 0,
      studies: 0,
      from: 'setting',
      words: `the setting for this outcome, since fewer than ${LEAST_STUDIES} studies give a correlation`,
    };
    const reason = coefficientOfVariation
      ? null
      : `fewer than ${LEAST_STUDIES} studies of ${settings.outcome} print a standard deviation before training beside its mean, so that no usual one can be taken: a plan has to give its coefficient of variation`;
    return { measure, rows: rows.length, coefficientOfVariation, correlation, reason };
  });
}

function medianOf(
  rows: readonly Arm[],
  numberOf: (arm: CountedArm) => number | null,
  measure: string,
  isAll: boolean,
  what: string,
): Usual | null {
  const found = rows.flatMap((arm) => {
    const value = hasPeople(arm) ? numberOf(arm) : null;
    return value === null ? [] : [{ study: arm.study, value }];
  });
  const studies = new Set(found.map(({ study }) => study)).size;
  if (studies < LEAST_STUDIES) return null;
  return {
    value: median(found.map(({ value }) => value)),
    rows: found.length,
    studies,
    from: isAll ? 'all measures' : 'measure',
    words: `median of ${countOf(found.length, 'row')} of ${studies} studies of ${isAll ? 'any measure' : measure} that ${what}`,
  };
}

function variationOf(arm: CountedArm): number | null {
  const { baselineMean, baselineSd, unit } = resolveStatistics(arm, 0);
  return unit === 'row' && baselineMean !== null && baselineSd !== null && baselineMean > 0
    ? baselineSd / baselineMean
    : null;
}

/** The row's own correlation, which does not move with what is assumed. */
function correlationOf(arm: CountedArm): number | null {
  const [low, high] = [0, 0.5].map((assumed) => resolveStatistics(arm, assumed).correlation);
  return low !== null && low === high ? low : null;
}
