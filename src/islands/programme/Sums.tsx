/** What the lines of a version come to: growth by muscle, recovery on the calendar, and cautions. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { formatChange, formatShare } from '../../figures/format.ts';
import type { Metric } from '../../model/settings.ts';
import { countOf, nameLines } from '../../numerics/countOf.ts';
import { isBlock, weekToShow } from '../../practice/programme/checkedWeeks.ts';
import type { MuscleCheck } from '../../practice/programme/muscles.ts';
import type { ProgrammeCheck } from '../../practice/programme/report.ts';
import { TableHead } from '../../ui/TableHead.tsx';
import { LaterCalendar } from './LaterPictures.tsx';
import type { ProgrammeState } from './programme.state.ts';

interface Props {
  readonly state: ProgrammeState;
  readonly check: ProgrammeCheck;
  readonly name: string;
  readonly numberOf: (line: number) => number;
  /** The calendar as the build drew the worked example’s. */
  readonly drawn: ComponentChildren;
}

export function ProgrammeSums({ state, check, name, numberOf, drawn }: Props) {
  const { by, of } = state.checking.made.value;
  const { calendar } = of.input;
  const [chosen, setChosen] = useState<number | null>(null);
  const weeks = check.weeks.map(({ week }) => week);
  const shown = chosen !== null && weeks.includes(chosen) ? chosen : weekToShow(check.sessions);
  const cautions = [...new Set(check.lines.flatMap((line) => line.cautions))];
  return (
    <>
      <div class="pair sums">
        <section aria-label={`Muscles of ${name.toLowerCase()}`}>
          <Muscles muscles={[...check.muscles, check.overall]} metric={by.settings.metric} numberOf={numberOf} />
        </section>
        <div>
          {isBlock(check.weeks) && (
            <label class="entry choice">
              <span>Week of the calendar</span>
              <select value={shown} onChange={(event) => setChosen(Number(event.currentTarget.value))}>
                {weeks.map((week) => (
                  <option key={week} value={week}>
                    week {week}
                  </option>
                ))}
              </select>
            </label>
          )}
          <LaterCalendar
            sessions={check.sessions}
            by={by}
            calendar={calendar}
            week={isBlock(check.weeks) ? shown : null}
          >
            {drawn}
          </LaterCalendar>
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
                  <br /> <span class="small">without {nameLines(leftOut.map(numberOf))}</span>
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
