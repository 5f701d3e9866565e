/**
 * A band's inference with one more study, τ² and ω² held as fitted, for whatever the study comes out at.
 *
 * With the table's rows whitened, X̃ = QR, and the new study's rows among them (+), let its effects be expected plus d.
 * All that the site's inference then holds is linear in z = W₊d (m numbers):
 *     Rβ moves by Q₊'z,   residuals of another study k by −Q_k Q₊'z,   those of the new one by (I − Q₊Q₊')z,
 * and so are the scores s_k whose outer products are the CR2 covariance (cr2.ts); the degrees of freedom do not depend
 * on z. With d ~ N(0, Δ), Δ = Φ₊ + X₊ C X₊', C the CR2 covariance of today's coefficients, the expected covariance is
 * exact:
 *     E[Σ s_k s_k'] = Σ s_k0 s_k0' + Σ T_k' Q₊' Δ̃ Q₊ T_k + K Δ̃ K',
 *     Δ̃ = W₊ΔW₊',   K = U₊'F₊ (I − Q₊Q₊').
 */
import type { Effect } from '../../evidence/effects.ts';
import { choleskyFactor } from '../../numerics/cholesky.ts';
import { leastSquares } from '../../numerics/leastSquares.ts';
import { type BandFit, fitEffects } from '../bandFit.ts';
import { type RobustInference, robustInference } from '../cr2.ts';
import { arrangeColumn } from '../observations.ts';
import type { Settings } from '../settings.ts';
import { makeRoom, smallStudyPart } from '../studyPart.ts';
import { applyWhitening, studyRoot, type WorkingCovariance, whiten } from '../whitening.ts';
import type { PlannedRow } from './plannedRows.ts';
import type { PlanningBand } from './planningBase.ts';

export interface AddedStudy {
  /** The band's rows with the planned ones, as a fit would read them. */
  readonly band: BandFit;
  /** The inference where every arm comes out as the fitted curve says. */
  readonly centre: RobustInference;
  /** Rows of the new study. */
  readonly m: number;
  /** B, m×m: W₊d = B e with e standard normal. */
  readonly spread: Float64Array;
  /** Q₊, m×p. */
  readonly q: Float64Array;
  /** K, p×m. */
  readonly scores: Float64Array;
  /** Place of the new study among the parts. */
  readonly place: number;
}

/** @param rows of the plan in this band, one at least */
export function addStudy(
  { fit: today, scatter }: PlanningBand,
  rows: readonly PlannedRow[],
  settings: Settings,
): AddedStudy {
  const { fit } = today.outcome;
  if (!fit || !scatter) throw new Error('invalid call: a study added to a band without a fit');
  const effects: readonly Effect[] = [...today.effects, ...rows.map(({ effect }) => effect)];
  // For the design alone; its own weights cost nothing to speak of.
  const band = fitEffects(effects, { ...settings, weighting: 'precision', answerOnly: true });
  const data = settings.weighting === 'equal' ? { ...band.data, v: new Float64Array(band.data.n).fill(1) } : band.data;
  const whitening = whiten(data, settings.weighting === 'mixed' ? scatter : { tau2: 0, omega2: 0, rho: 0 });
  const solution = leastSquares(
    band.columns.map((column) => applyWhitening(data, whitening, arrangeColumn(data, column))),
    applyWhitening(data, whitening, data.y),
  );
  const place = data.studies.indexOf(rows[0].effect.arm.study);
  const [from, m, p] = [data.studyStart[place], rows.length, band.columns.length];
  const q = Float64Array.from({ length: m * p }, (_, i) => solution.q[i % p][from + Math.floor(i / p)]);
  const room = makeRoom(m, p);
  // U₊'F₊, a column a row of the study: the score where its residual is 1 and the others are 0.
  const adjusted = new Float64Array(p * m);
  for (let j = 0; j < m; j++) {
    const residuals = new Float64Array(data.n);
    residuals[from + j] = 1;
    const { score } = smallStudyPart(data, whitening, { ...solution, residuals }, place, '', room).part;
    for (let r = 0; r < p; r++) adjusted[r * m + j] = score[r];
  }
  const scores = adjusted.slice();
  for (let r = 0; r < p; r++)
    for (let j = 0; j < m; j++)
      for (let i = 0; i < m; i++)
        for (let c = 0; c < p; c++) scores[r * m + j] -= adjusted[r * m + i] * q[i * p + c] * q[j * p + c];
  const raw = rootOfDeviation(band.data, place, scatter, rows, fit.inference.covariance);
  const spread = new Float64Array(m * m);
  for (let j = 0; j < m; j++) {
    const column = new Float64Array(data.n);
    for (let i = 0; i < m; i++) column[from + i] = raw[i * m + j];
    const whitened = applyWhitening(data, whitening, column);
    for (let i = 0; i < m; i++) spread[i * m + j] = whitened[from + i];
  }
  return { band, centre: robustInference(data, whitening, solution), m, spread, q, scores, place };
}

/** A root of Δ, m×m, rows in the order of the data. */
function rootOfDeviation(
  data: BandFit['data'],
  place: number,
  scatter: WorkingCovariance,
  rows: readonly PlannedRow[],
  covariance: Float64Array,
): Float64Array {
  const [m, first] = [rows.length, data.n - rows.length];
  const root = studyRoot(data, whiten(data, scatter), place);
  const x = Array.from({ length: m }, (_, i) => rows[data.source[data.studyStart[place] + i] - first].x);
  const p = x[0].length;
  const delta = new Float64Array(m * m);
  for (let i = 0; i < m; i++)
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let c = 0; c < m; c++) sum += root[i * m + c] * root[j * m + c];
      for (let r = 0; r < p; r++) for (let c = 0; c < p; c++) sum += x[i][r] * covariance[r * p + c] * x[j][c];
      delta[i * m + j] = sum;
    }
  return choleskyFactor(delta, m);
}
