/** Targets by repetition range, as they are told to a lifter, beside common practice. */
import { REPETITIONS_SOURCE } from '../evidence/repetitions.ts';
import { formatNumber, formatTarget, formatWhole } from '../figures/format.ts';
import type { PracticeAnalysis } from '../model/full.ts';
import { writePercent } from '../numerics/percent.ts';
import { COMMON_PRACTICE_TAG, FURTHEST_USEFUL_RESERVE } from '../practice/commonPractice.ts';
import { SOURCE_NAMES } from '../practice/loadNames.ts';
import { listTargets } from '../practice/targetTable.ts';
import { Scroll } from './Scroll.tsx';
import { TableHead } from './TableHead.tsx';

export function TargetTable({ analysis }: { readonly analysis: PracticeAnalysis }) {
  const confidence = writePercent(analysis.settings.confidence);
  return (
    <>
      <Scroll label="Targets by repetition range">
        <table class="wide">
          <caption>
            Repetitions that may stay in reserve, by how many are possible in the set. The load is the one at which the
            named number of repetitions is possible on average (bench press; {REPETITIONS_SOURCE}).
          </caption>
          <TableHead
            columns={[
              'Possible in the set',
              'In practice',
              `Estimate, ${confidence} interval`,
              'Read from',
              'Common practice',
            ]}
          />
          <tbody>
            {listTargets(analysis).map(({ range, load, inPractice, source, target, unreliable }) => (
              <tr key={range.name}>
                <th scope="row">
                  {range.name}
                  <br />
                  <span class="small">
                    {range.typical} at about {formatNumber(load, 0)}&nbsp;%
                  </span>
                </th>
                <td class="big">{formatWhole(inPractice)}</td>
                <td>{target.point === null ? target.reason : formatTarget(target)}</td>
                <td>
                  {SOURCE_NAMES[source]}
                  {unreliable && '; interval unreliable'}
                </td>
                <td>up to about {range.upTo}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="small">
        The last column is <em>{COMMON_PRACTICE_TAG}</em>, as is the habit of staying within about{' '}
        {FURTHEST_USEFUL_RESERVE} repetitions of failure for growth at all. The other columns are computed from the
        table of studies. <em>In practice</em> are the whole repetitions inside the interval up to the estimate, or else
        the nearest to it.
      </p>
    </>
  );
}
