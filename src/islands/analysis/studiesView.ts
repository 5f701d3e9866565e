/** What the Studies pages show of a table, worked out in one go: for the build, and for a reader's own table. */
import type { Arm } from '../../evidence/schema.ts';
import { analyse } from '../../model/analyse.ts';
import { type EvidenceMap, mapEvidence } from '../../model/evidenceMap.ts';
import type { BandsChecks } from '../../model/full.ts';
import type { Settings } from '../../model/settings.ts';
import { reportStudies, type StudyReport, type WholeBand, wholeBandsOf } from '../../model/studyReports.ts';

export interface StudiesView {
  readonly settings: Settings;
  readonly reports: readonly StudyReport[];
  readonly map: EvidenceMap;
  readonly wholeBands: readonly WholeBand[];
  /** False while each study's influence is still being worked out. */
  readonly hasInfluence: boolean;
}

/** @param checks of the bands; empty where they are not known yet */
export function viewStudies(arms: readonly Arm[], settings: Settings, checks: BandsChecks): StudiesView {
  const analysis = { ...analyse(arms, settings), checks };
  return {
    settings,
    reports: reportStudies(arms, analysis),
    map: mapEvidence(arms, analysis),
    wholeBands: wholeBandsOf(analysis),
    hasInfluence: Object.keys(checks).length > 0,
  };
}
