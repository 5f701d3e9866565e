/** What all figures of some settings are made from, gathered in a worker. */
import { isDemonstration } from '../../evidence/demonstration.ts';
import type { Arm } from '../../evidence/schema.ts';
import { newestYearOf } from '../../figures/citing/figureItem.ts';
import { countBase } from '../../model/evidenceBase.ts';
import { type EvidenceMap, mapEvidence } from '../../model/evidenceMap.ts';
import { analyseThenCheck, type FullAnalysis } from '../../model/full.ts';
import type { Settings } from '../../model/settings.ts';
import { shownVersionOf } from '../../ownTable/shownVersion.ts';
import { stateNeeds } from '../../practice/evidenceNeeded.ts';

export interface FigureSource {
  readonly analysis: FullAnalysis;
  readonly map: EvidenceMap;
  /** What bands without a target lack; empty where all have one. */
  readonly needs: string;
  /** First characters of the table's SHA-256, as the build has it. */
  readonly dataVersion: string;
  readonly demonstration: boolean;
  /** Year of the newest study in the table. */
  readonly newestYear: number;
  /** False while the checks, which are most of the work, are still to come. */
  readonly checked: boolean;
}

/** At once what needs no check, then all. */
export function* gatherFigures(
  arms: readonly Arm[],
  table: string,
  settings: Settings,
): Generator<FigureSource, FigureSource> {
  const { unchecked, check } = analyseThenCheck(arms, settings);
  const source = {
    map: mapEvidence(arms, unchecked),
    needs: stateNeeds(countBase(arms, unchecked)),
    dataVersion: shownVersionOf(table),
    demonstration: isDemonstration(arms),
    newestYear: newestYearOf(arms),
  };
  yield { ...source, analysis: { ...unchecked, checks: {} }, checked: false };
  return { ...source, analysis: { ...unchecked, checks: check() }, checked: true };
}
