/** What the Studies pages share, worked out once for all of them. */
import { addressStudies } from '../evidence/studyAddress.ts';
import { mapEvidence } from '../model/evidenceMap.ts';
import type { Band, BandName, Estimate } from '../model/result.ts';
import { reportStudies } from '../model/studyReports.ts';
import { pathTo, site } from './site.ts';

const { arms, analysis } = site;

export const reports = reportStudies(arms, analysis);
export const map = mapEvidence(arms, analysis);
const addresses = addressStudies(reports.map(({ study }) => study));

/** A band as all its studies make it, for comparison with it without one. */
export interface WholeBand {
  readonly name: BandName;
  readonly band: Band;
  /** Mean slope; null where the band could not be fitted. */
  readonly slope: Estimate | null;
}

export const wholeBands: readonly WholeBand[] = (Object.entries(analysis.bands) as [BandName, Band][]).map(
  ([name, band]) => ({
    name,
    band,
    slope:
      analysis.checks[name]?.weightings.find(({ weighting }) => weighting === analysis.settings.weighting)?.slope ??
      null,
  }),
);

/** The part of the address that names a study of the table. */
export function addressOf(study: string): string {
  const address = addresses.get(study);
  if (address === undefined) throw new Error(`no study of the table has the name: ${study}`);
  return address;
}

export function pathToStudy(study: string): string {
  return pathTo(`studies/${addressOf(study)}/`);
}
