/** What the shades of the evidence map mean, and what they rest on. */

import { formatPlain } from '../../figures/format.ts';
import { TILE_SIGNS } from '../../figures/gainMap.ts';
import type { LegendEntry } from '../../figures/gainWords.ts';
import { assumedSpread, ENDS_AS_COMPUTED } from '../../figures/plan/planWords.ts';
import type { GainsView } from '../analysis/gainsView.ts';

interface LegendProps {
  /** Beginning of its ids. */
  readonly id: string;
  readonly entries: readonly LegendEntry[];
}

export function GainLegend({ id, entries }: LegendProps) {
  return (
    <div class="gain-legend">
      <p id={`${id}-legend`}>Interval narrower by, in repetitions:</p>
      <ul aria-labelledby={`${id}-legend`}>
        {entries.map(({ look, words }) => (
          <li key={look}>
            <span class={`swatch look-${look}`} aria-hidden="true">
              {look === 'opens' || look === 'unsaid' ? TILE_SIGNS[look] : ''}
            </span>
            {words}
          </li>
        ))}
      </ul>
    </div>
  );
}

interface BasisProps {
  readonly view: GainsView;
  /** Address of the words on how it is worked out. */
  readonly methods: string;
  /** Address of the page where a study is planned. */
  readonly planPage: string;
}

/** Never a promise: what the numbers are worked out with. */
export function GainBasis({ view: { assumptions }, methods, planPage }: BasisProps) {
  const measured =
    typeof assumptions === 'string'
      ? ''
      : ` It measures ${assumptions.measure} (no other measure has more rows here)${assumptions.weeks === null ? '' : `, over ${formatPlain(assumptions.weeks)} ${assumptions.weeks === 1 ? 'week' : 'weeks'} (the median here)`}. What is assumed of it: ${assumedSpread(assumptions)}.`;
  return (
    <p class="small">
      What is expected, not what will be. {ENDS_AS_COMPUTED} The study is drawn from the curve fitted here and differs
      from it as much as studies here differ from one another.{measured} Other people, training or measures may do more
      or less: <a href={methods}>how it is worked out, and when it misleads</a>. <a href={planPage}>Plan a study</a>{' '}
      with arms and measures of your own.
    </p>
  );
}
