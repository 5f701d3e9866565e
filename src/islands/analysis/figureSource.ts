/** What all figures of some settings are made from, gathered in a worker. */
import { isDemonstration } from '../../evidence/demonstration.ts';
import type { Arm } from '../../evidence/schema.ts';
import { type EvidenceMap, mapEvidence } from '../../model/evidenceMap.ts';
import { analyseThenCheck, type FullAnalysis } from '../../model/full.ts';
import type { Settings } from '../../model/settings.ts';
import { loadTableText } from '../../ownTable/tableText.ts';

export interface FigureSource {
  readonly analysis: FullAnalysis;
  readonly map: EvidenceMap;
  /** First characters of the table's SHA-256, as the build has it. */
  readonly dataVersion: string;
  readonly demonstration: boolean;
  /** False while the checks, which are most of the work, are still to come. */
  readonly checked: boolean;
}

/** At once what needs no check, then all. */
export async function* gatherFigures(
  arms: readonly Arm[],
  table: string,
  settings: Settings,
): AsyncGenerator<FigureSource> {
  const { unchecked, check } = analyseThenCheck(arms, settings);
  const source = {
    map: mapEvidence(arms, unchecked),
    dataVersion: await hash(await loadTableText(table)),
    demonstration: isDemonstration(arms),
  };
  yield { ...source, analysis: { ...unchecked, checks: {} }, checked: false };
  yield { ...source, analysis: { ...unchecked, checks: check() }, checked: true };
}

/** Browsers hash only for pages that came over a safe connection; elsewhere the version is not known. */
async function hash(text: string): Promise<string> {
  if (!globalThis.crypto?.subtle) return 'unknown';
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text)));
  return [...digest.subarray(0, 4)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
