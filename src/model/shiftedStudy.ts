/**
 * (Φ + iσ)⁻¹ of one study's block Φ of the working covariance, in time proportional to its rows.
 *
 * Φ + iσ is a complex diagonal d + iσ plus one real outer product a cohort plus τ² 11', each taken in by
 * Sherman & Morrison (1950, Ann Math Stat 21:124). Real parts only add up, so that no pivot can vanish.
 */
import type { Observations } from './observations.ts';
import type { Whitening } from './whitening.ts';

export interface ShiftedStudy {
  /** Bounds of Φ's eigenvalues. */
  readonly least: number;
  readonly most: number;
  /**
   * real + i imaginary ← (Φ + iσ)⁻¹ Z.
   *
   * @param z m×q, row-major, as are `real` and `imaginary`
   */
  readonly solve: (z: Float64Array, q: number, sigma: number, real: Float64Array, imaginary: Float64Array) => void;
  /** Φ Z, m×q. */
  readonly multiply: (z: Float64Array, q: number) => Float64Array;
}

export function shiftStudy(data: Observations, whitening: Whitening, k: number): ShiftedStudy {
  const from = data.studyStart[k];
  const m = data.studyStart[k + 1] - from;
  const { tau2 } = whitening.at;
  const diagonal = whitening.rootWeight.subarray(from, from + m).map((root) => 1 / (root * root));
  // A cohort's outer product is (stretch² − 1) aa' with a = √d times its direction.
  const along = diagonal.map((d, i) => Math.sqrt(d) * whitening.groupDirection[from + i]);
  const groups = Array.from({ length: data.studyGroups[k + 1] - data.studyGroups[k] }, (_, place) => {
    const g = data.studyGroups[k] + place;
    return {
      start: data.groupStart[g] - from,
      end: data.groupStart[g + 1] - from,
      strength: whitening.groupStretch[g] ** 2 - 1,
    };
  });
  const cohorts = groups.filter(({ strength }) => strength > 0);
  let largestCohort = 0;
  for (const { start, end, strength } of cohorts) {
    let size = 0;
    for (let i = start; i < end; i++) size += along[i] ** 2;
    largestCohort = Math.max(largestCohort, strength * size);
  }
  const weightReal = new Float64Array(m);
  const weightImaginary = new Float64Array(m);
  const onesReal = new Float64Array(m);
  const onesImaginary = new Float64Array(m);

  /** z ← (D + cohorts + iσ)⁻¹ z, given the inverse diagonal in `weightReal` and `weightImaginary`. */
  function undoCohorts(q: number, real: Float64Array, imaginary: Float64Array): void {
    for (let i = 0; i < m; i++)
      for (let c = i * q; c < (i + 1) * q; c++) {
        const [re, im] = [real[c], imaginary[c]];
        real[c] = re * weightReal[i] - im * weightImaginary[i];
        imaginary[c] = re * weightImaginary[i] + im * weightReal[i];
      }
    for (const { start, end, strength } of cohorts) {
      let pivotReal = 1;
      let pivotImaginary = 0;
      for (let i = start; i < end; i++) {
        pivotReal += strength * along[i] ** 2 * weightReal[i];
        pivotImaginary += strength * along[i] ** 2 * weightImaginary[i];
      }
      const size = pivotReal ** 2 + pivotImaginary ** 2;
      for (let c = 0; c < q; c++) {
        let re = 0;
        let im = 0;
        for (let i = start; i < end; i++) {
          re += along[i] * real[i * q + c];
          im += along[i] * imaginary[i * q + c];
        }
        const shareReal = (strength * (re * pivotReal + im * pivotImaginary)) / size;
        const shareImaginary = (strength * (im * pivotReal - re * pivotImaginary)) / size;
        for (let i = start; i < end; i++) {
          const [wr, wi] = [along[i] * weightReal[i], along[i] * weightImaginary[i]];
          real[i * q + c] -= wr * shareReal - wi * shareImaginary;
          imaginary[i * q + c] -= wr * shareImaginary + wi * shareReal;
        }
      }
    }
  }

  function solve(z: Float64Array, q: number, sigma: number, real: Float64Array, imaginary: Float64Array): void {
    for (let i = 0; i < m; i++) {
      const size = diagonal[i] ** 2 + sigma ** 2;
      weightReal[i] = diagonal[i] / size;
      weightImaginary[i] = -sigma / size;
    }
    real.set(z);
    imaginary.fill(0);
    undoCohorts(q, real, imaginary);
    if (tau2 === 0) return;
    onesReal.fill(1);
    onesImaginary.fill(0);
    undoCohorts(1, onesReal, onesImaginary);
    let pivotReal = 1;
    let pivotImaginary = 0;
    for (let i = 0; i < m; i++) {
      pivotReal += tau2 * onesReal[i];
      pivotImaginary += tau2 * onesImaginary[i];
    }
    const size = pivotReal ** 2 + pivotImaginary ** 2;
    for (let c = 0; c < q; c++) {
      let re = 0;
      let im = 0;
      for (let i = 0; i < m; i++) {
        re += real[i * q + c];
        im += imaginary[i * q + c];
      }
      const shareReal = (tau2 * (re * pivotReal + im * pivotImaginary)) / size;
      const shareImaginary = (tau2 * (im * pivotReal - re * pivotImaginary)) / size;
      for (let i = 0; i < m; i++) {
        real[i * q + c] -= onesReal[i] * shareReal - onesImaginary[i] * shareImaginary;
        imaginary[i * q + c] -= onesReal[i] * shareImaginary + onesImaginary[i] * shareReal;
      }
    }
  }

  function multiply(z: Float64Array, q: number): Float64Array {
    const out = new Float64Array(m * q);
    for (let c = 0; c < q; c++) {
      let total = 0;
      for (let i = 0; i < m; i++) {
        total += z[i * q + c];
        out[i * q + c] = diagonal[i] * z[i * q + c];
      }
      for (let i = 0; i < m; i++) out[i * q + c] += tau2 * total;
      for (const { start, end, strength } of cohorts) {
        let sum = 0;
        for (let i = start; i < end; i++) sum += along[i] * z[i * q + c];
        for (let i = start; i < end; i++) out[i * q + c] += strength * along[i] * sum;
      }
    }
    return out;
  }

  return {
    least: diagonal.reduce((least, d) => Math.min(least, d)),
    most: diagonal.reduce((most, d) => Math.max(most, d)) + largestCohort + tau2 * m,
    solve,
    multiply,
  };
}
