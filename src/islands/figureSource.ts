/** What all figures of some settings are made from, gathered in a worker. */
import { isDemonstration } from '../evidence/demonstration.ts';
import type { Arm } from '../evidence/schema.ts';
import { type EvidenceMap, mapEvidence } from '../model/evidenceMap.ts';
import { analyseInFull, type FullAnalysis } from '../model/full.ts';
import type { Settings } from '../model/settings.ts';
import { loadTableText } from './tableText.ts';

export interface FigureSource {
  readonly analysis: FullAnalysis;
  readonly map: EvidenceMap;
  /** First characters of the table's SHA-256, as the build has it. */
  readonly dataVersion: string;
  readonly demonstration: boolean;
}

export async function gatherFigures(arms: readonly Arm[], table: string, settings: Settings): Promise<FigureSource> {
  const analysis = analyseInFull(arms, settings);
  return {
    analysis,
    map: mapEvidence(arms, analysis),
    dataVersion: await hash(await loadTableText(table)),
    demonstration: isDemonstration(arms),
  };
}

/** Browsers hash only for pages that came over a safe connection; elsewhere the version is not known. */
async function hash(text: string): Promise<string> {
  if (!globalThis.crypto?.subtle) return 'unknown';
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text)));
  return [...digest.subarray(0, 4)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
