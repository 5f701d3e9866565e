/**
 * Observations in the order the fit works in: rows of a study stand together, and inside a study
 * the rows of a cohort (measured on the same people) stand together. A row without a cohort is a
 * group of one. Studies and cohorts are sorted by name so that the order of a table never matters.
 */

export interface Observation {
  readonly study: string;
  /** Empty or null: shares its errors with no row. Meaningful only inside its study. */
  readonly cohort: string | null;
  /** Effect on the analysis scale. */
  readonly y: number;
  /** Sampling variance of y, above 0. */
  readonly v: number;
}

export interface Observations {
  readonly n: number;
  readonly y: Float64Array;
  readonly v: Float64Array;
  /** Names of the studies, ascending. */
  readonly studies: readonly string[];
  /** Study k holds rows studyStart[k] up to studyStart[k + 1], exclusive. */
  readonly studyStart: Int32Array;
  /** Study k holds cohort groups studyGroups[k] up to studyGroups[k + 1], exclusive. */
  readonly studyGroups: Int32Array;
  /** Group g holds rows groupStart[g] up to groupStart[g + 1], exclusive. */
  readonly groupStart: Int32Array;
  /** source[i]: place of row i in the list that was given. */
  readonly source: Int32Array;
}

/** @param list in any order; `source` says where each went */
export function arrangeObservations(list: readonly Observation[]): Observations {
  const n = list.length;
  // A row without a cohort gets a key no cohort can have, so that it stands alone.
  const cohortKey = list.map(({ cohort }, index) => (cohort ? `c${cohort}` : `r${index}`));
  const source = Int32Array.from(list.keys()).sort(
    (a, b) => compare(list[a].study, list[b].study) || compare(cohortKey[a], cohortKey[b]) || a - b,
  );
  const studies: string[] = [];
  const studyStart: number[] = [];
  const studyGroups: number[] = [];
  const groupStart: number[] = [];
  source.forEach((index, row) => {
    const previous = row > 0 ? source[row - 1] : -1;
    const newStudy = row === 0 || list[index].study !== list[previous].study;
    if (newStudy) {
      studies.push(list[index].study);
      studyStart.push(row);
      studyGroups.push(groupStart.length);
    }
    if (newStudy || cohortKey[index] !== cohortKey[previous]) groupStart.push(row);
  });
  return {
    n,
    y: Float64Array.from(source, (index) => list[index].y),
    v: Float64Array.from(source, (index) => list[index].v),
    studies,
    studyStart: Int32Array.from([...studyStart, n]),
    studyGroups: Int32Array.from([...studyGroups, groupStart.length]),
    groupStart: Int32Array.from([...groupStart, n]),
    source,
  };
}

/** A column of the list's, in the order of the observations. */
export function arrangeColumn({ n, source }: Observations, column: ArrayLike<number>): Float64Array {
  const arranged = new Float64Array(n);
  for (let i = 0; i < n; i++) arranged[i] = column[source[i]];
  return arranged;
}

/** The observations without study `k`; `source` then counts in the list without its rows. */
export function withoutStudy(data: Observations, k: number): Observations {
  const { n, studyStart, studyGroups, groupStart } = data;
  const [from, to] = [studyStart[k], studyStart[k + 1]];
  const [groupsFrom, groupsTo] = [studyGroups[k], studyGroups[k + 1]];
  /** Without the entries of the study; what follows is `less` lower. */
  const cut = (starts: Int32Array, first: number, next: number, less: number) =>
    Int32Array.from([...starts.subarray(0, first), ...starts.subarray(next).map((start) => start - less)]);
  const without = (values: Float64Array) => Float64Array.from([...values.subarray(0, from), ...values.subarray(to)]);
  const left = new Uint8Array(n).fill(1);
  for (let i = from; i < to; i++) left[data.source[i]] = 0;
  const place = new Int32Array(n);
  for (let index = 1; index < n; index++) place[index] = place[index - 1] + left[index - 1];
  const source = [...data.source.subarray(0, from), ...data.source.subarray(to)];
  return {
    n: n - (to - from),
    y: without(data.y),
    v: without(data.v),
    studies: data.studies.filter((_, other) => other !== k),
    studyStart: cut(studyStart, k, k + 1, to - from),
    studyGroups: cut(studyGroups, k, k + 1, groupsTo - groupsFrom),
    groupStart: cut(groupStart, groupsFrom, groupsTo, to - from),
    source: Int32Array.from(source, (index) => place[index]),
  };
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
