/** Growth kept at each whole reserve, light beside heavy, with their difference. */
import { formatNumber, formatShare } from '../figures/format.ts';
import { OUTCOME_WORDS } from '../figures/outcomeWords.ts';
import type { KeptShareDifference } from '../model/differenceResult.ts';
import type { FullAnalysis } from '../model/full.ts';
import { writePercent } from '../numerics/percent.ts';
import { listGrowthKept } from '../practice/growthKept.ts';
import { LOAD_HEADINGS } from '../practice/loadNames.ts';
import { Scroll } from './Scroll.tsx';
import { TableHead } from './TableHead.tsx';
import { WithInterval } from './WithInterval.tsx';

export function GrowthKeptTable({ analysis }: { readonly analysis: FullAnalysis }) {
  const rows = listGrowthKept(analysis);
  const [{ bands }] = rows;
  const { outcome, confidence } = analysis.settings;
  const { effect } = OUTCOME_WORDS[outcome];
  const hasDifference = rows.some(({ difference }) => difference !== null);
  return (
    <Scroll label={`${effect} kept by reserve`}>
      <table>
        <caption>
          Share of the {effect} at reserve 0 that the fitted curve keeps, with {writePercent(confidence)} intervals
          {hasDifference && '; the difference is in percentage points, above 0 where heavy loads keep more'}.
        </caption>
        <TableHead
          columns={[
            'In reserve',
            ...bands.map(({ name }) => LOAD_HEADINGS[name]),
            ...(hasDifference ? ['Heavy minus light'] : []),
          ]}
        />
        <tbody>
          {rows.map((row) => (
            <tr key={row.reserve}>
              <th scope="row">{row.reserve}</th>
              {row.bands.map(({ name, kept }) => (
                <td key={name}>
                  {kept.share ? <WithInterval text={formatShare(kept.share)} /> : `not known: ${kept.reason}`}
                </td>
              ))}
              {hasDifference && (
                <td>
                  <WithInterval text={showDifference(row.difference, row.reserve)} />
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function showDifference(difference: KeptShareDifference | null, reserve: number): string {
  if (reserve === 0) return '0';
  if (!difference) return 'not known';
  const [point, low, high] = [difference.estimate, difference.ciLow, difference.ciHigh].map((value) =>
    formatNumber(100 * value, 0),
  );
  return `${point} (${low} to ${high})`;
}
