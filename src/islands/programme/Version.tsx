/** One version of a programme: its problems or its lines, muscles, calendar and cautions. */
import { useState } from 'preact/hooks';
import { formatChange, formatPlain, formatShare } from '../../figures/format.ts';
import { stateAgainst } from '../../figures/programmeFindings.ts';
import { recoveryCalendar } from '../../figures/recoveryCalendar.ts';
import type { Metric } from '../../model/settings.ts';
import { writePercent } from '../../numerics/percent.ts';
import { writeDay } from '../../practice/programme/columns.ts';
import type { CheckedLine } from '../../practice/programme/line.ts';
import type { MuscleCheck } from '../../practice/programme/muscles.ts';
import type { ProgrammeCheck, Version } from '../../practice/programme/report.ts';
import { FigureView } from '../../ui/FigureView.tsx';
import { ProblemList } from '../../ui/ProblemList.tsx';
import { showReserve } from '../../ui/reserveWords.ts';
import { Scroll } from '../../ui/Scroll.tsx';
import { TableHead } from '../../ui/TableHead.tsx';
import { ProgrammeAsked } from './Asked.tsx';
import type { ProgrammeState, VersionName } from './programme.state.ts';

interface Props {
  readonly state: ProgrammeState;
  readonly version: Version;
  readonly which: VersionName;
  readonly name: string;
}

export function ProgrammeVersion({ state, version, which, name }: Props) {
  const heading = `version-${which}`;
  const { problems, warnings, asked, check } = version;
  return (
    <section aria-label={name}>
      <h2 id={heading} tabIndex={-1}>
        {name}
      </h2>
      {problems.length > 0 && (
        <ProblemList
          heading={`${problems.length} ${problems.length === 1 ? 'entry needs' : 'entries need'} mending before this version is checked`}
          problems={problems}
        />
      )}
      {asked.map((one) => (
        <ProgrammeAsked key={one.name} state={state} asked={one} heading={heading} />
      ))}
      {warnings.length > 0 && <ProblemList heading="Unusual, but possible; the check goes on" problems={warnings} />}
      {check && <Checked state={state} check={check} name={name} />}
    </section>
  );
}

/** Lines that are laid out at once; a longer table would hold up the page at every keystroke. */
const FIRST_LINES = 60;

function Checked({
  state,
  check,
  name,
}: {
  readonly state: ProgrammeState;
  readonly check: ProgrammeCheck;
  readonly name: string;
}) {
  const [showsAll, setShowsAll] = useState(false);
  const { settings } = state.checking.made.value.by;
  const cautions = [...new Set(check.lines.flatMap((line) => line.cautions))];
  const unsafe = check.lines.filter((line) => line.unsafe);
  return (
    <>
      {unsafe.length > 0 && (
        <p class="problem">
          <strong>Not safe as written:</strong>{' '}
          {unsafe.map(({ line }) => `${line.exercise.name} on ${writeDay(line.day)} (line ${line.line})`).join('; ')}.
          An exercise that can pin the lifter is never taken to failure without a spotter or safety arms.
        </p>
      )}
      <Scroll label={`Lines of ${name.toLowerCase()}`}>
        <table>
          <caption>
            Each line against the evidence: the share of growth at reserve 0 that its reserve keeps (interval), and what
            would be advised for {writePercent(settings.keptShare)}.
          </caption>
          <TableHead
            columns={[
              'Line',
              'Exercise, day, sets × repetitions, load',
              'In reserve',
              'Advised',
              'Verdict',
              'Growth kept',
            ]}
          />
          <tbody>
            {(showsAll ? check.lines : check.lines.slice(0, FIRST_LINES)).map((line) => (
              <Line key={line.line.line} checked={line} />
            ))}
          </tbody>
        </table>
      </Scroll>
      {!showsAll && check.lines.length > FIRST_LINES && (
        <p class="buttons">
          <button type="button" onClick={() => setShowsAll(true)}>
            Show all {check.lines.length} lines
          </button>
        </p>
      )}
      <div class="pair">
        <Scroll label={`Muscles of ${name.toLowerCase()}`}>
          <Muscles muscles={[...check.muscles, check.overall]} metric={settings.metric} />
        </Scroll>
        <FigureView
          figure={recoveryCalendar(check.sessions, state.checking.made.value.by, {
            calendar: state.programme.value.calendar,
          })}
          heading="h3"
        />
      </div>
      {cautions.length > 0 && (
        <ul class="small">
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
    </>
  );
}

function Line({ checked }: { readonly checked: CheckedLine }) {
  const { line, kept, advised, near } = checked;
  const { day, exercise, sets, repetitions, load, reserve, how } = line;
  return (
    <tr>
      <td>{line.line}</td>
      <th scope="row">
        {exercise.name}
        <br />
        <span class="small">
          {writeDay(day)}, {sets} × {repetitions}, {formatPlain(load)}&nbsp;%{how && `; ${how}`}
        </span>
      </th>
      <td>{formatPlain(reserve)}</td>
      <td>{showReserve(advised.reserve)}</td>
      <td>{stateAgainst(checked)}</td>
      <td>
        {kept.share ? formatShare(kept.share) : `not known: ${kept.reason}`}
        {near.loadOutside > 0 && (
          <>
            <br />
            <span class="small">load outside all that was studied</span>
          </>
        )}
      </td>
    </tr>
  );
}

function Muscles({ muscles, metric }: { readonly muscles: readonly MuscleCheck[]; readonly metric: Metric }) {
  return (
    <table>
      <caption>
        Each muscle: the share of growth that its sets keep, and how growth would change with the same sets at the most
        reserve advised.
      </caption>
      <TableHead columns={['Muscle', 'Sets', 'Growth kept', 'At the targets']} />
      <tbody>
        {muscles.map(({ muscle, sets, kept, atTargets, leftOut }) => (
          <tr key={muscle ?? 'all'}>
            <th scope="row">{muscle ?? 'all sets together'}</th>
            <td>{sets}</td>
            <td>
              {kept ? formatShare(kept) : 'not known'}
              {leftOut.length > 0 && (
                <>
                  <br />
                  <span class="small">
                    without {leftOut.length === 1 ? 'line' : 'lines'} {leftOut.join(', ')}
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
