/** What a title may claim of an estimate that few studies stand behind. */
import { type Estimate, isUnreliable } from '../model/result.ts';

/** The finding, with a doubt where the estimate has too few degrees of freedom for its interval. */
export function hedge(finding: string, estimate: Pick<Estimate, 'df'>): string {
  return isUnreliable([estimate]) ? `${finding}, if so few studies can be relied on` : finding;
}
