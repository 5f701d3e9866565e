/**
 * Small-study pattern: do less precise rows show larger effects? The standard error is added to the
 * curve as a moderator in the same robust model (Egger et al. 1997, BMJ 315:629; robust and
 * multilevel: Rodgers & Pustejovsky 2021, Psychol Methods 26:141). A slope away from 0 may come from
 * unpublished small studies, or from small studies that differ in something else.
 */
import type { Effect } from '../../evidence/effects.ts';
import { type BandFit, foretell, rangeOf } from '../bandFit.ts';
import { fitCarriedArranged } from '../carriedFit.ts';
import type { Estimate } from '../result.ts';
import { inferContrast } from '../robust.ts';
import type { Settings } from '../settings.ts';

export interface SmallStudyPattern {
  /** Change of the effect per unit of standard error; null with a reason. */
  readonly slope: Estimate | null;
  /** Every row's standard error as it is tested, and the row's distance from the fitted curve, for the picture. */
  readonly rows: readonly {
    readonly line: number;
    readonly study: string;
    readonly standardError: number;
    /** Null where no curve could be fitted. */
    readonly deviation: number | null;
  }[];
  readonly reason: string | null;
}

/** Share of a standard error by which rounding alone can set equal ones apart. */
const SAME_ERROR = 1e-9;

/** @param band whose curve stays in the model beside the standard error */
export function testSmallStudies(band: BandFit, settings: Settings): SmallStudyPattern {
  const errors = band.effects.map((effect) => precisionOf(effect, settings.metric));
  const fitted = band.outcome.fit && foretell(band.columns, band.outcome.fit);
  const rows = band.effects.map(({ arm, y }, i) => ({
    line: arm.line,
    study: arm.study,
    standardError: errors[i],
    deviation: fitted && y - fitted[i],
  }));
  rows.sort((a, b) => a.line - b.line);
  const range = rangeOf(errors);
  if (range && range.high - range.low <= SAME_ERROR * range.high) {
    return { slope: null, rows, reason: `every row has standard error ${range.low.toPrecision(3)}` };
  }
  const { fit, failure } = fitCarriedArranged(band.data, [...band.columns, errors], settings);
  if (!fit) return { slope: null, rows, reason: failure.reason };
  const contrast = [...band.columns.map(() => 0), 1];
  return { slope: inferContrast(fit.inference, contrast, settings.confidence), rows, reason: null };
}

/**
 * The standard error; of a standardised change the part that does not depend on the change itself,
 * √(v − d²/2n), which is √(2 (1 − r)/n) where v was computed here, without which effect and error would be related
 * by construction (Pustejovsky & Rodgers 2019, Res Synth Methods 10:57). A printed variance counts alike, so that
 * rows compare whatever they were made from; whole where the number of people is not known, or the part is not above 0.
 */
function precisionOf({ arm, y, v }: Effect, metric: Settings['metric']): number {
  const part = metric === 'standardised' && arm.n !== null ? v - y ** 2 / (2 * arm.n) : v;
  return Math.sqrt(part > 0 ? part : v);
}
