/** How much evidence stands near a load and reserve, and how far the question lies from the studied range. */
import type { PracticeAnalysis } from '../model/full.ts';
import { countOf, countStudies } from '../numerics/countOf.ts';

/** Points of per cent of 1RM, and repetitions, within which an arm counts as near. */
const NEAR = { load: 10, reserve: 1 } as const;

export interface EvidenceNear {
  readonly arms: number;
  readonly studies: number;
  /** The closest arm, load and reserve each measured by how far “near” reaches; null where no row has a load. */
  readonly nearest: { readonly load: number; readonly reserve: number } | null;
  /** Points of per cent of 1RM that the load lies outside all studied loads; 0 inside. */
  readonly loadOutside: number;
}

/**
 * @param load per cent of 1RM
 * @param reserve repetitions; null asks about the load alone
 */
export function evidenceNear(
  analysis: Pick<PracticeAnalysis, 'bands'>,
  load: number,
  reserve: number | null,
): EvidenceNear {
  const rows = Object.values(analysis.bands)
    .flatMap(({ fitted, unfitted = [] }) => [...fitted, ...unfitted])
    .flatMap(({ study, arm, load: trained, reserve: left }) =>
      trained === null ? [] : [{ study, arm, load: trained, reserve: left }],
    );
  const distance = (row: { load: number; reserve: number }) =>
    Math.max(
      Math.abs(row.load - load) / NEAR.load,
      reserve === null ? 0 : Math.abs(row.reserve - reserve) / NEAR.reserve,
    );
  const near = rows.filter((row) => distance(row) <= 1);
  const nearest = rows.reduce<(typeof rows)[number] | null>(
    (best, row) => (best === null || distance(row) < distance(best) ? row : best),
    null,
  );
  const loads = rows.map((row) => row.load);
  const outside =
    loads.length === 0
      ? 0
      : Math.max(0, load - loads.reduce((a, b) => Math.max(a, b)), loads.reduce((a, b) => Math.min(a, b)) - load);
  return {
    arms: new Set(near.map(({ study, arm }) => JSON.stringify([study, arm]))).size,
    studies: new Set(near.map(({ study }) => study)).size,
    nearest: nearest ? { load: nearest.load, reserve: nearest.reserve } : null,
    loadOutside: outside,
  };
}

/** “9 arms of 6 studies within 10 points of this load and 1 repetition of this reserve” */
export function stateNear({ arms, studies, nearest, loadOutside }: EvidenceNear, hasReserve: boolean): string {
  const place = `within ${NEAR.load} points of this load${hasReserve ? ` and ${NEAR.reserve} repetition of this reserve` : ''}`;
  const found =
    arms > 0
      ? `${countOf(arms, 'arm')} of ${countStudies(studies)} ${place}`
      : nearest
        ? `no arm ${place}; the nearest trained at ${oneDecimal(nearest.load)}\u00a0% with ${oneDecimal(nearest.reserve)} in reserve`
        : 'no arm with a load';
  return loadOutside > 0
    ? `${found}; the load lies ${countOf(oneDecimal(loadOutside), 'point')} outside all that was studied`
    : found;
}

function oneDecimal(value: number): number {
  return Number(value.toFixed(1));
}
