/** What the Studies pages share, worked out once for all of them. */
import { addressStudies } from '../evidence/studyAddress.ts';
import { mapEvidence } from '../model/evidenceMap.ts';
import { reportStudies, wholeBandsOf } from '../model/studyReports.ts';
import { pathTo, site } from './site.ts';

const { arms, analysis } = site;

export const reports = reportStudies(arms, analysis);
export const regions = mapEvidence(arms, analysis);
const addresses = addressStudies(reports.map(({ study }) => study));

export const wholeBands = wholeBandsOf(analysis);

/** The part of the address that names a study of the table. */
export function addressOf(study: string): string {
  const address = addresses.get(study);
  if (address === undefined) throw new Error(`no study of the table has the name: ${study}`);
  return address;
}

export function pathToStudy(study: string): string {
  return pathTo(`studies/${addressOf(study)}/`);
}
