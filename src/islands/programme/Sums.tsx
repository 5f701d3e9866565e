/** What the lines of a version come to: growth by muscle, recovery on the calendar, and cautions. */
import { useMemo } from 'preact/hooks';
import { formatChange, formatShare } from '../../figures/format.ts';
import { recoveryCalendar } from '../../figures/recoveryCalendar.ts';
import type { Metric } from '../../model/settings.ts';
import { countOf } from '../../numerics/countOf.ts';
import type { MuscleCheck } from '../../practice/programme/muscles.ts';
import type { ProgrammeCheck } from '../../practice/programme/report.ts';
import { FigureView } from '../../ui/FigureView.tsx';
import { TableHead } from '../../ui/TableHead.tsx';
import type { ProgrammeState } from './programme.state.ts';

interface Props {
  readonly state: ProgrammeState;
  readonly check: ProgrammeCheck;
  readonly name: string;
  readonly numberOf: (line: number) => number;
}

export function ProgrammeSums({ state, check, name, numberOf }: Props) {
  const { by, of } = state.checking.made.value;
  const { calendar } = of.input;
  const figure = useMemo(() => recoveryCalendar(check.sessions, by, { calendar }), [check, by, calendar]);
  const cautions = [...new Set(check.lines.flatMap((line) => line.cautions))];
  return (
    <>
      <div class="pair sums">
        <section aria-label={`Muscles of ${name.toLowerCase()}`}>
          <Muscles muscles={[...check.muscles, check.overall]} metric={by.settings.metric} numberOf={numberOf} />
        </section>
        <div>
          <FigureView figure={figure} heading="h3" />
          {calendar.event === null && (
            <p class="small ask-event">
              No event is set. <a href="#event-day">Choose its day</a> and each session is judged by whether it is
              recovered by then.
            </p>
          )}
        </div>
      </div>
      {cautions.length > 0 && (
        <ul class="small cautions-of-lines">
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
    </>
  );
}

interface MusclesProps {
  readonly muscles: readonly MuscleCheck[];
  readonly metric: Metric;
  readonly numberOf: (line: number) => number;
}

function Muscles({ muscles, metric, numberOf }: MusclesProps) {
  return (
    <table>
      <caption>
        Each muscle: the share of growth that its sets keep, and how growth would change with the same sets at the most
        reserve advised.
      </caption>
      <TableHead columns={['Muscle', 'Growth kept', 'At the targets']} />
      <tbody>
        {muscles.map(({ muscle, sets, kept, atTargets, leftOut }) => (
          <tr key={muscle ?? 'all'}>
            <th scope="row">
              {muscle ?? 'all sets together'}
              <br /> <span class="small">{countOf(sets, 'set')}</span>
            </th>
            <td>
              {kept ? formatShare(kept) : 'not known'}
              {leftOut.length > 0 && (
                <>
                  <br />{' '}
                  <span class="small">
                    without {leftOut.length === 1 ? 'line' : 'lines'} {leftOut.map(numberOf).join(', ')}
                  </span>
                </>
              )}
            </td>
            <td>{atTargets ? formatChange(atTargets, metric) : 'no change'}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
