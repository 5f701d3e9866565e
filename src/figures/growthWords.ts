/** Title and caption of growth against reserve: no stronger than the intervals behind them. */
import { type Analysis, type Band, type BandName, LEAST_RELIABLE_DF, type Target } from '../model/result.ts';
import { countOf, countStudies } from '../numerics/countOf.ts';
import { writePercent } from '../numerics/percent.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';
import { upperFirst } from './firstLetter.ts';
import { formatChange, formatNumber, formatRange, shownDigits, toShown } from './format.ts';
import { hedge } from './hedge.ts';
import { OUTCOME_WORDS } from './outcomeWords.ts';
import { stateSimplerCurve } from './settingsWords.ts';

/** What differs from growth at reserve 0 for sure, no stronger than its degrees of freedom allow. */
export function titleGrowth({ settings: { outcome } }: Analysis, band: Band, name: BandName): string {
  const where = upperFirst(LOAD_NAMES[name]);
  if (band.failure) return `${where}: no curve could be fitted`;
  const { less, more } = band.difference;
  const { lower, higher, compared } = OUTCOME_WORDS[outcome];
  if (less && more) return `${where}: ${lower} ${compared} at some reserves, ${higher} at others`;
  if (less) return `${where}: ${hedge(`${lower} ${compared} with more in reserve`, less)}`;
  if (more) return `${where}: ${hedge(`${higher} ${compared} with more in reserve`, more)}`;
  return `${where}: no difference of ${compared} by reserve distinguishable from none`;
}

/** Growth at reserve 0 of the average and of a new study; null where a weighting estimates no spread between studies. */
export function titleNewStudy({ settings: { metric } }: Analysis, band: Band, name: BandName): string | null {
  const [first] = band.curvePoints;
  if (!band.atFailure || !first || first.predictionLow === null || first.predictionHigh === null) return null;
  const [low, high] = [first.predictionLow, first.predictionHigh].map((effect) =>
    formatNumber(toShown(effect, metric), shownDigits(metric)),
  );
  return `${upperFirst(LOAD_NAMES[name])}: at reserve 0 ${formatChange(band.atFailure, metric)} on average, ${low} to ${high} in a new study`;
}

/** What was fitted, and what it came to. */
export function captionGrowth({ settings }: Analysis, band: Band, name: BandName): string {
  const { metric, confidence, outcome } = settings;
  if (band.failure) {
    const rows =
      band.rows > 0
        ? ` The marks are the ${countOf(band.rows, 'row')} of ${countStudies(band.studies)} that there are.`
        : '';
    return `Not fitted: ${band.failure.reason}.${rows}`;
  }
  const fit = `${countOf(band.rows, 'row')} of ${countStudies(band.studies)}, ${LOAD_NAMES[name]}; marks by weight, curve with ${writePercent(confidence)} band.`;
  const growth = band.atFailure
    ? `At reserve 0 ${OUTCOME_WORDS[outcome].subject} is ${formatChange(band.atFailure, metric)}.`
    : '';
  const few = band.unreliable
    ? `A coefficient has fewer than ${LEAST_RELIABLE_DF} degrees of freedom: the intervals are unreliable.`
    : '';
  return [fit, stateSimplerCurve(band, settings), growth, stateTarget(band.target, settings.keptShare), few]
    .filter(Boolean)
    .join(' ');
}

/** The target under the picture, and what is missing of it or open about it. */
function stateTarget({ shown, reason }: Target, keptShare: number): string {
  const note = reason === null ? '' : `${upperFirst(reason)}.`;
  if (shown === null) return note;
  const found = `${formatNumber(shown.point, 1)} in reserve keep ${writePercent(keptShare)} of it (${formatRange(shown.low, shown.high, 1)}), the bar at the foot.`;
  return [found, note].filter(Boolean).join(' ');
}
