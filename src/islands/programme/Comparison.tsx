/** The second version against the first: what the change is expected to be worth and to cost. */
import { formatChange } from '../../figures/format.ts';
import { stateVersions } from '../../figures/programmeFindings.ts';
import { isUnreliable } from '../../model/result.ts';
import type { Metric } from '../../model/settings.ts';
import type { MuscleDifference } from '../../practice/programme/report.ts';
import { TableHead } from '../../ui/TableHead.tsx';
import type { ProgrammeState } from './programme.state.ts';
import { usePaper } from './usePaper.ts';

export function ProgrammeComparison({ state }: { readonly state: ProgrammeState }) {
  const isPaper = usePaper();
  const { report, by, of } = state.checking.made.value;
  const { comparison } = report;
  if (!comparison) return null;
  const { settings } = by;
  return (
    <section aria-label="Comparison">
      <h2>What the change is worth and costs</h2>
      <p class="saying" aria-live="polite" id="finding">
        {stateVersions(comparison, of.input.calendar, by)}
      </p>
      <details open={isPaper}>
        <summary>By muscle</summary>
        <table>
          <caption>
            Expected growth of version two minus version one, by muscle, with its interval. The evidence speaks of how
            near to failure sets end, not of how many there are: every set counts alike.
          </caption>
          <TableHead columns={['Muscle', 'Difference in growth']} />
          <tbody>
            {[...comparison.muscles, comparison.overall].map((one) => (
              <tr key={one.muscle ?? 'all'}>
                <th scope="row">
                  {one.muscle ?? 'all sets together'}
                  <br />{' '}
                  <span class="small">
                    sets: {one.sets.first} → {one.sets.second}
                  </span>
                </th>
                <td>{showDifference(one, settings.metric)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  );
}

function showDifference({ difference, reason }: MuscleDifference, metric: Metric): string {
  if (!difference) return `none: ${reason}`;
  const open = difference.ciLow <= 0 && difference.ciHigh >= 0 ? ', not distinguishable from nothing' : '';
  const few = isUnreliable([difference]) ? '; interval unreliable' : '';
  return `${formatChange(difference, metric)}${open}${few}`;
}
